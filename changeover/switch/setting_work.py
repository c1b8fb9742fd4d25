"""The plain task that brings one setting, or several at one visit, from as found to target."""

from collections import Counter
from collections.abc import Iterable, Mapping

from changeover.planter.places import Place, Scope
from changeover.planter.settings import Setting, WorkPlace
from changeover.planter.setup import Value
from changeover.switch.plan import Plan
from changeover.switch.tasks import Change, PartCount, Task
from changeover.switch.wording import name_of, places_text

CAUTIONS: Mapping[WorkPlace, tuple[str, ...]] = {
    WorkPlace.TANK: ("climb",),
    WorkPlace.METER: ("stopped",),
    WorkPlace.ROW_UNIT: ("raised", "pinch"),
    WorkPlace.FAN: ("fan",),
    WorkPlace.DRIVE: ("stopped", "pinch"),
    WorkPlace.CAB: (),
}
TOOLS: Mapping[str, tuple[str, ...]] = {
    "vacuum": ("vacuum gauge",),
    "closing": ("spring handle",),
    "sprockets": ("wrench set",),
}
ELEMENTS: Mapping[str, str] = {
    "depth": "set_depth",
    "closing": "set_closing",
    "vacuum": "set_fan",
    "sprockets": "change_sprockets",
}


def by_place(changes: Iterable[Change]) -> dict[Place, tuple[Change, ...]]:
    """Return changes under the places at which they are ticked off, in the order found."""
    found: dict[Place, tuple[Change, ...]] = {}
    for change in changes:
        found[change.cell.place] = (*found.get(change.cell.place, ()), change)
    return found


def parts_of(changes: Iterable[Change]) -> tuple[tuple[PartCount, ...], tuple[PartCount, ...]]:
    """Return the parts that go on and those that come off; one not known comes off uncounted."""
    swaps = [change for change in changes if change.part]
    return _counted(c.after for c in swaps), _counted(c.before for c in swaps)


def _counted(codes: Iterable[Value | None]) -> tuple[PartCount, ...]:
    counts = Counter(str(code) for code in codes if code is not None)
    return tuple(PartCount(code, count) for code, count in counts.items())


def setting_tasks(plan: Plan, work_place: WorkPlace, leave: frozenset[str]) -> list[Task]:
    """Return one task for each setting of a work place that changes, but for those left out."""
    return [
        setting_task(plan, setting, changes)
        for setting in plan.settings_at(work_place)
        if setting.key not in leave and (changes := plan.changes(setting))
    ]


def setting_task(plan: Plan, setting: Setting, changes: tuple[Change, ...]) -> Task:
    """Return the task that sets one setting at every place where it changes."""
    places = by_place(changes)
    parts_in, parts_out = parts_of(changes)
    return plan.task(
        f"set_{setting.key}",
        setting.work_place,
        title_of(plan, setting, changes),
        tuple(places),
        [ELEMENTS.get(setting.key, "swap_part" if changes[0].part else "set_other")],
        _cautions(setting),
        changes=places,
        tools=TOOLS.get(setting.key, ()),
        steps=steps_of(plan, setting, changes),
        parts_in=parts_in,
        parts_out=parts_out,
    )


def _cautions(setting: Setting) -> tuple[str, ...]:
    oil = ("oil",) if setting.scope is Scope.DOWN_PRESSURE else ()
    return (*CAUTIONS[setting.work_place], *oil)


def title_of(plan: Plan, setting: Setting, changes: tuple[Change, ...]) -> str:
    """Return the line of a single setting's task: ``Depth notch 8 → 5; row 11: 9 → 5``."""
    phrase = plan.words.phrase(setting, changes)
    if setting.work_place is WorkPlace.FAN:
        return f"{setting.name} {phrase}, read at {reading_rows(plan, changes)}"
    return f"{name_of(setting)} {phrase}"


def reading_rows(plan: Plan, changes: Iterable[Change]) -> str:
    """Name the rows at which a fan's gauge is read: the first and the last down of each group."""
    found: list[int] = []
    for change in changes:
        every = plan.planter.rows_of(change.cell.place)
        rows = [row for row in every if row not in plan.difference.locked] or every
        found += [rows[0], rows[-1]]
    numbers = [str(row) for row in dict.fromkeys(found)]
    return f"rows {', '.join(numbers)}" if len(numbers) > 1 else f"row {numbers[0]}"


def steps_of(plan: Plan, setting: Setting, changes: tuple[Change, ...]) -> tuple[str, ...]:
    """Return the list of from → to by places where there is more than one, and what it means."""
    lines = plan.words.lines(setting, changes)
    shown = lines if len(lines) > 1 else ()
    return (*shown, *_depth_of_notches(plan, changes)) if setting.key == "depth" else shown


def _depth_of_notches(plan: Plan, changes: tuple[Change, ...]) -> tuple[str, ...]:
    """Say how deep each target notch plants, rows with an offset of their own apart."""
    depths: dict[tuple[int, str], list[Place]] = {}
    for change in changes:
        row = change.cell.place.row or 1
        notch = int(change.after)
        text = plan.words.depth(notch, row)
        depths.setdefault((notch, text), []).append(change.cell.place)
    return tuple(
        f"Notch {notch} plants {text} deep on {places_text(places)}"
        for (notch, text), places in depths.items()
    )
