"""Proof steps: something is read, counted or dug for every thing that was changed."""

import zlib
from collections.abc import Iterable, Mapping
from typing import Literal

from changeover.planter.places import Place, Scope
from changeover.planter.settings import Setting, WorkPlace
from changeover.planter.setup import Cell, working_rows, working_spacing
from changeover.quantities import Units, show
from changeover.seed.rate import row_length_thousandth
from changeover.switch.difference import ROW_LOCK
from changeover.switch.meter_work import meter_settings
from changeover.switch.plan import Plan
from changeover.switch.setting_work import by_place, reading_rows
from changeover.switch.sown_rate import sown_rate
from changeover.switch.tasks import Change, MachineState, Task, TaskKind
from changeover.switch.wording import MOST_IN_TITLE, places_text, rows_text

DUG = 5
RATE = ("seed_rate", "cells", "sprockets")


def proof_tasks(plan: Plan) -> list[Task]:
    """Return the proof of every setting that changes, nearest to the shed first.

    A proof's key changes with the targets it proves, so that a tick never stands for another.
    Filling is proved in its own task, by the tag.
    """
    changed = {s.key: found for s in plan.settings if (found := plan.changes(s))}
    inside = {s.key for s in meter_settings(plan)}
    apart = {*inside, *RATE, "seed", "vacuum", "depth", "closing", ROW_LOCK}
    other = [s for s in plan.settings if s.key in changed and s.key not in apart]
    return [
        *[_look(plan, setting, changed[setting.key]) for setting in other],
        *_locks(plan, changed.get(ROW_LOCK, ())),
        *_gauge(plan, changed.get("vacuum", ())),
        *_spin(plan, [c for key in changed if key in inside for c in changed[key]]),
        *_rate(plan, [c for key in changed if key in RATE for c in changed[key]]),
        *_dig(plan, changed.get("depth", ())),
        *_furrow(plan, changed.get("closing", ())),
    ]


def _family(name: str, changes: Iterable[Change]) -> str:
    """Name a proof after its targets."""
    targets = sorted({f"{change.cell.setting}={change.after}" for change in changes})
    return f"prove_{name}.{zlib.crc32('|'.join(targets).encode()):08x}"


def _cells(changes: Iterable[Change]) -> frozenset[Cell]:
    return frozenset(change.cell for change in changes)


def _look(plan: Plan, setting: Setting, changes: tuple[Change, ...]) -> Task:
    places = tuple(by_place(changes))
    goals: dict[str, list[Place]] = {}
    for change in changes:
        goals.setdefault(plan.words.value(setting, change.cell.place, change.after), []).append(
            change.cell.place
        )
    sign = plan.words.sign(setting, changes[0].after)
    return plan.task(
        _family(setting.key, changes),
        setting.work_place,
        f"Look again: {setting.name.lower()} stands at " + ", ".join(f"{g}{sign}" for g in goals),
        places,
        ["look"],
        kind=TaskKind.PROVE,
        proves=_cells(changes),
        steps=tuple(f"{goal}{sign} on {places_text(at)}" for goal, at in goals.items()),
    )


def _locks(plan: Plan, changes: tuple[Change, ...]) -> list[Task]:
    if not changes:
        return []
    down = rows_text(working_rows(plan.planter, plan.target))
    task = plan.task(
        _family(ROW_LOCK, changes),
        WorkPlace.ROW_UNIT,
        f"Look along the bar: {down} down, every pin home",
        tuple(by_place(changes)),
        ["look"],
        ["raised"],
        kind=TaskKind.PROVE,
        proves=_cells(changes),
    )
    return [task]


def _gauge(plan: Plan, changes: tuple[Change, ...]) -> list[Task]:
    if not changes:
        return []
    setting = next(s for s in plan.settings if s.key == "vacuum")
    texts = dict.fromkeys(plan.words.value(setting, c.cell.place, c.after) for c in changes)
    sign = plan.words.sign(setting, changes[0].after)
    task = plan.task(
        _family("vacuum", changes),
        WorkPlace.FAN,
        f"Read the gauge at {reading_rows(plan, changes)}: {', '.join(texts)}{sign}",
        tuple(by_place(changes)),
        ["read_gauge"],
        ["fan"],
        kind=TaskKind.PROVE,
        proves=_cells(changes),
        tools=("vacuum gauge",),
        steps=("Discs turned full of seed first", "Write down near and far row of each fan"),
    )
    return [task]


def _spin(plan: Plan, changes: list[Change]) -> list[Task]:
    if not changes:
        return []
    places = sorted(by_place(changes), key=lambda place: place.row or 0)
    task = plan.task(
        _family("meter", changes),
        WorkPlace.METER,
        "Spin or bench test: count skips and doubles in 100 cells",
        tuple(places),
        ["spin_test"],
        ["fan", *(["treated"] if plan.treated else [])],
        kind=TaskKind.PROVE,
        proves=_cells(changes),
        state=MachineState.FAN_RUNNING,
        tools=("bench stand",),
        steps=("Run the meter full of seed at its vacuum", "Write down cells, skips and doubles"),
    )
    return [task]


def _rate(plan: Plan, changes: list[Change]) -> list[Task]:
    if not changes:
        return []
    places = tuple(by_place(changes))
    task = plan.task(
        _family("rate", changes),
        WorkPlace.CAB,
        f"First pass: count seeds, {_expected(plan, places)}",
        places,
        ["count_rate"],
        ["road"],
        kind=TaskKind.PROVE,
        proves=_cells(changes),
        state=MachineState.LOWERED,
        tools=("tape measure",),
        steps=("Tie one closing arm up or dig", "Count in one row of each drive, twice"),
    )
    return [task]


def _expected(plan: Plan, places: tuple[Place, ...]) -> str:
    """Say how many seeds lie in the row length of a thousandth of an acre or a hectare."""
    spacing = working_spacing(plan.planter, plan.target)
    area: Literal["acre", "hectare"] = "acre" if plan.words.units is Units.US else "hectare"
    length = show(row_length_thousandth(spacing, area), "row_length", plan.words.units)
    counts = dict.fromkeys(_thousandth(plan, place, area) for place in places)
    known = [text for text in counts if text]
    return f"{' or '.join(known)} in {length} of row" if known else f"in {length} of row"


def _thousandth(plan: Plan, place: Place, area: str) -> str:
    rate = sown_rate(plan, place)
    if rate is None:
        return ""
    return f"{float(rate.to(f'seed/{area}').magnitude) / 1000:.0f}"


def _field_task(
    plan: Plan,
    name: str,
    title: str,
    tool: str,
    changes: tuple[Change, ...],
    goals: Mapping[str, tuple[int, ...]],
) -> Task:
    """Return a proof in the field; ``goals`` are the rows of each target, by its words."""
    tracks = [row for row in _rows(changes) if row in plan.planter.wheel_track_rows]
    steps = ["In the field, at speed, behind the planter"]
    if len(goals) > 1:
        steps += [f"{goal} on {rows_text(rows)}" for goal, rows in goals.items()]
    if tracks:
        steps.append(f"Behind a tire: {rows_text(tracks)}")
    return plan.task(
        _family(name, changes),
        WorkPlace.ROW_UNIT,
        title,
        dug_places(changes, goals, tracks),
        ["dig" if name == "depth" else "look_closing"],
        ["road"],
        kind=TaskKind.PROVE,
        proves=_cells(changes),
        state=MachineState.LOWERED,
        tools=(tool,),
        steps=tuple(steps),
    )


def _dig(plan: Plan, changes: tuple[Change, ...]) -> list[Task]:
    if not changes:
        return []
    rows: dict[str, list[int]] = {}
    for change in changes:
        if isinstance(change.after, int):
            row = change.cell.place.row or 1
            rows.setdefault(plan.words.depth(change.after, row), []).append(row)
    goals = most_first(rows) if rows else {"the depth set": ()}
    title = f"Dig: seed at {_goals_text(goals)}"
    return [_field_task(plan, "depth", title, "depth ruler", changes, goals)]


def _goals_text(goals: Mapping[str, tuple[int, ...]]) -> str:
    """Say the target of most rows, then the others with their rows, as far as they fit."""
    most, *others = goals.items()
    said = [f"{goal} on {rows_text(rows)}" for goal, rows in others[:MOST_IN_TITLE]]
    left = sum(len(rows) for _, rows in others[MOST_IN_TITLE:])
    more = [f"{left} more rows otherwise"] if left > 1 else ["1 more row otherwise"] * left
    return ", ".join([most[0], *said, *more])


def _furrow(plan: Plan, changes: tuple[Change, ...]) -> list[Task]:
    if not changes:
        return []
    setting = next(s for s in plan.settings if s.key == "closing")
    rows: dict[str, list[int]] = {}
    for change in changes:
        goal = f"Closing {plan.words.value(setting, change.cell.place, change.after)}"
        rows.setdefault(goal, []).append(change.cell.place.row or 1)
    title = "Look at the furrow: closed on the seed, not packed over it"
    return [_field_task(plan, "closing", title, "trowel", changes, most_first(rows))]


def most_first(rows: Mapping[str, list[int]]) -> dict[str, tuple[int, ...]]:
    """Return targets with their rows: that of most rows first, the others from the left."""
    most = max(rows, key=lambda goal: len(rows[goal]))
    order = [most, *(goal for goal in rows if goal != most)]
    return {goal: tuple(rows[goal]) for goal in order}


def dug_places(
    changes: tuple[Change, ...], goals: Mapping[str, tuple[int, ...]], tracks: Iterable[int]
) -> tuple[Place, ...]:
    """Return the rows to dig, from the left.

    A spread over the bar with its ends, rows of every target but that of most rows (all of
    them, or a spread where there are many), and the rows in wheel ``tracks``.
    """
    rows = _rows(changes)
    if not rows or changes[0].cell.place.scope is not Scope.ROW:
        return tuple(by_place(changes))
    chosen = {*_spread(rows), *_spread(tuple(tracks))}
    for others in list(goals.values())[1:]:
        chosen.update(_spread(others))
    return tuple(Place.of_row(row) for row in sorted(chosen))


def _rows(changes: tuple[Change, ...]) -> tuple[int, ...]:
    return tuple(one.cell.place.row for one in changes if one.cell.place.row is not None)


def _spread(rows: tuple[int, ...]) -> set[int]:
    """Return rows spread evenly with the first and the last; all where they are few."""
    if len(rows) <= DUG:
        return set(rows)
    return {rows[round((len(rows) - 1) * part / (DUG - 1))] for part in range(DUG)}
