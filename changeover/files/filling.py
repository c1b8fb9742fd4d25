"""Filling the sheet of a switch from its worklist, progress, kit and setups."""

from collections.abc import Iterable, Mapping
from datetime import UTC, date, datetime

from changeover.files.sheet import (
    SheetKitLine,
    SheetLabel,
    SheetLogLine,
    SheetPart,
    SheetPlace,
    SheetSetting,
    SheetTask,
    Shown,
    WorklistSheet,
)
from changeover.planter.entry import index_of, same_value, show_value
from changeover.planter.machine import Planter
from changeover.planter.parts import Part
from changeover.planter.places import Place
from changeover.planter.settings import Kind, Setting
from changeover.planter.setup import Setup, Value, cells_of
from changeover.quantities import MEASURES, Units, is_quantity, unit_sign
from changeover.switch.bags import Bag
from changeover.switch.clean_log import CleanLog
from changeover.switch.difference import work_settings
from changeover.switch.progress import Progress
from changeover.switch.sections import sections, task_numbers
from changeover.switch.shared_kit import others_text
from changeover.switch.tasks import Kit, KitLine, PartCount, Task, Worklist
from changeover.switch.wording import places_text

UNIT_WORDS: Mapping[Units, str] = {Units.US: "US units", Units.METRIC: "metric units"}


def fill_sheet(
    *,
    planter: Planter,
    settings: tuple[Setting, ...],
    worklist: Worklist,
    done: Progress,
    kit: Kit,
    parts: tuple[Part, ...],
    before: Setup,
    target: Setup,
    now: str,
    next_lot: str,
    field: str,
    made_on: date,
    units: Units,
    log: CleanLog | None = None,
) -> WorklistSheet:
    """Return the sheet of a switch, its tasks numbered under their headings.

    ``now``, ``next_lot`` and ``field`` are the words for what is in the planter, the next lot
    and its field. ``before`` is the setup as the worklist found it. ``log`` is what was
    written down of the clean-out, None when nobody asks for it.
    """
    names = {part.code: part.name for part in parts}
    ordered = [(section.name, task) for section in sections(worklist) for task in section.tasks]
    numbers = task_numbers(worklist)
    return WorklistSheet(
        planter=planter.name,
        now=now,
        next=next_lot,
        field=field,
        made_on=made_on,
        units=UNIT_WORDS[units],
        tasks=tuple(_task(name, task, numbers, done, names) for name, task in ordered),
        kit=tuple(_kit_line(line) for line in kit.lines),
        back=_parts(kit.back, names),
        settings=setting_rows(planter, settings, before, target, units),
        cautions=worklist.cautions,
        log=_log(log) if log is not None else (),
        log_missing=log.missing if log is not None else (),
    )


def _log(log: CleanLog) -> tuple[SheetLogLine, ...]:
    lines = [(line, False) for line in log.lines] + [(line, True) for line in log.inspected]
    return tuple(
        SheetLogLine(
            moment(line.when),
            line.who,
            line.where,
            line.what,
            line.lot_before,
            line.lot_after,
            line.steps,
            line.into,
            inspection,
        )
        for line, inspection in lines
    )


def moment(when: str) -> str:
    """Return an ISO 8601 moment as a person writes it, in UTC; other text as it is."""
    try:
        made = datetime.fromisoformat(when)
    except ValueError:
        return when
    zone = made.astimezone(UTC) if made.tzinfo is not None else made
    return f"{zone:%Y-%m-%d %H:%M}" + (" UTC" if made.tzinfo is not None else "")


def labels_of(planter: str, bags: Iterable[Bag], parts: Iterable[Part]) -> tuple[SheetLabel, ...]:
    """Return a label for every bag of the kit."""
    names = {part.code: part.name for part in parts}
    return tuple(
        SheetLabel(planter, bag.place.label, _parts(bag.parts, names), bag.person) for bag in bags
    )


def _task(
    section: str,
    task: Task,
    numbers: Mapping[str, int],
    done: Progress,
    names: Mapping[str, str],
) -> SheetTask:
    ticked = done.done[task.key]
    return SheetTask(
        number=numbers[task.key],
        section=section,
        title=task.title,
        where=places_text(task.places),
        places=tuple(SheetPlace(_box(place), place in ticked) for place in task.places),
        minutes=float(task.minutes.to("min").magnitude),
        persons=task.persons,
        state=task.state.value,
        tools=task.tools,
        steps=task.steps,
        cautions=task.cautions,
        parts_in=_parts(task.parts_in, names),
        parts_out=_parts(task.parts_out, names),
        after=tuple(sorted(numbers[key] for key in task.needs)),
        why=task.why,
    )


def _box(place: Place) -> str:
    return place.name if place.row is not None else place.label


def _parts(counts: tuple[PartCount, ...], names: Mapping[str, str]) -> tuple[SheetPart, ...]:
    return tuple(SheetPart(c.part, names.get(c.part, ""), c.count) for c in counts)


def _kit_line(line: KitLine) -> SheetKitLine:
    return SheetKitLine(
        line.part,
        line.name,
        line.needed,
        line.on_shelf,
        line.short,
        ", ".join(line.bins),
        line.released,
        line.to_inspect,
        others_text(line),
    )


def setting_rows(
    planter: Planter, settings: tuple[Setting, ...], before: Setup, target: Setup, units: Units
) -> tuple[SheetSetting, ...]:
    """Return every cell that is known or wanted, setting by setting from the left.

    Quantities, and depths through the row's own scale, are figures in the display unit.
    """
    rows: list[SheetSetting] = []
    for setting in work_settings(planter, settings):
        for cell in cells_of(planter, setting):
            now, after = before.get(cell), target.get(cell)
            if now is None and after is None:
                continue
            rows.append(
                SheetSetting(
                    place=cell.place.label,
                    setting=setting.name,
                    before=shown(setting, planter, cell.place, now, units),
                    after=shown(setting, planter, cell.place, after, units),
                    unit=unit_of(setting, planter, units),
                    differs=after is not None and not same_value(setting, now, after),
                )
            )
    return tuple(rows)


def unit_of(setting: Setting, planter: Planter, units: Units) -> str:
    """Return the sign of the unit in which a setting is exported, empty for text and counts."""
    notch = setting.kind is Kind.INDEX and index_of(setting, planter) is None
    if setting.measure is None or not (notch or setting.kind is Kind.QUANTITY):
        return ""
    return unit_sign(MEASURES[setting.measure].unit(units))


def shown(
    setting: Setting, planter: Planter, place: Place, value: Value | None, units: Units
) -> Shown:
    """Return a value as a figure in the display unit where it is one, otherwise as text."""
    if setting.kind is Kind.INDEX and index_of(setting, planter) is None and value is not None:
        value = planter.depth.depth(int(value), place.row or 1)
    if value is None or isinstance(value, int):
        return _plain(setting, planter, place, value, units)
    if is_quantity(value):
        measure = MEASURES[setting.measure or "count"]
        return round(float(value.to(measure.unit(units)).magnitude), measure.digits(units) + 2)
    return str(value)


def _plain(
    setting: Setting, planter: Planter, place: Place, value: int | None, units: Units
) -> Shown:
    if value is None or setting.kind is not Kind.INDEX:
        return value
    return show_value(setting, planter, place, value, units)
