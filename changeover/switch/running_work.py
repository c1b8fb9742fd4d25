"""Work with seed aboard: filling, fans, drives and what is entered in the cab."""

from changeover.planter.places import PLANTER, Place
from changeover.planter.settings import WorkPlace
from changeover.planter.setup import working_rows, working_spacing
from changeover.quantities import show
from changeover.switch.clean_ticks import FILL
from changeover.switch.plan import Plan
from changeover.switch.setting_work import by_place, setting_tasks
from changeover.switch.tasks import Change, Task

SEED = "seed"


def tank_setting_tasks(plan: Plan) -> list[Task]:
    """Return the tasks for the user's own settings at the tanks."""
    return setting_tasks(plan, WorkPlace.TANK, frozenset({SEED}))


def fill_tasks(plan: Plan) -> list[Task]:
    """Return one task for each lot that is filled in, over all its tanks or row hoppers."""
    by_lot: dict[str, list[Change]] = {}
    for setting in plan.settings:
        for change in plan.changes(setting) if setting.key == SEED else ():
            by_lot.setdefault(str(change.after), []).append(change)
    return [_fill_task(plan, lot, tuple(changes)) for lot, changes in by_lot.items()]


def _fill_task(plan: Plan, number: str, changes: tuple[Change, ...]) -> Task:
    places = by_place(changes)
    lot = plan.lots.get(number)
    name = f", {lot.name}" if lot is not None and lot.name else ""
    return plan.task(
        f"{FILL}/{number}",
        WorkPlace.TANK,
        f"Fill with lot {number}{name}",
        tuple(places),
        ["fill_hopper" if plan.row_hoppers else "fill_tank"],
        ["climb", *(["treated", "dust"] if plan.treated else [])],
        changes=places,
        tools=("seed lubricant",),
        steps=(
            f"Read the tag on every bag before it is opened: it must say {number}",
            "Close the door; no old seed in the container, funnel or conveyor",
            "Keep one tag with the switch",
        ),
    )


def fan_tasks(plan: Plan) -> list[Task]:
    """Return a task for each setting of the fans that changes."""
    return setting_tasks(plan, WorkPlace.FAN, frozenset())


def drive_tasks(plan: Plan) -> list[Task]:
    """Return a task for each setting of the drives that changes."""
    return setting_tasks(plan, WorkPlace.DRIVE, frozenset())


def cab_tasks(plan: Plan) -> list[Task]:
    """Return what is entered in the cab: one visit for all of it, and the row spacing."""
    changed = [(s, found) for s in plan.settings_at(WorkPlace.CAB) if (found := plan.changes(s))]
    tasks = _spacing_task(plan)
    if changed:
        places = by_place(change for _, changes in changed for change in changes)
        phrases = [
            f"{setting.name.lower()} {plan.words.phrase(setting, changes, brackets=True)}"
            for setting, changes in changed
        ]
        lines = [plan.words.lines(setting, changes) for setting, changes in changed]
        steps = tuple(line for found in lines for line in found)
        tasks.insert(0, _cab_task(plan, "enter", ", ".join(phrases), tuple(places), places, steps))
    return tasks


def _cab_task(
    plan: Plan,
    key: str,
    phrase: str,
    places: tuple[Place, ...],
    changes: dict[Place, tuple[Change, ...]],
    steps: tuple[str, ...] = (),
) -> Task:
    return plan.task(
        f"cab_{key}",
        WorkPlace.CAB,
        f"Cab: {phrase}",
        places,
        ["enter_cab"],
        changes=changes,
        steps=steps,
        by_tick=not changes,
    )


def _spacing_task(plan: Plan) -> list[Task]:
    """Enter the row spacing where rows are let down or locked up; the setup has no cell for it."""
    old = working_spacing(plan.planter, plan.before)
    new = working_spacing(plan.planter, plan.target)
    rows = len(working_rows(plan.planter, plan.target))
    if old == new or not plan.difference.changes:
        return []
    texts = [show(spacing, "row_spacing", plan.words.units) for spacing in (old, new)]
    phrase = f"row spacing {texts[0]} → {texts[1]}, {rows} rows"
    return [_cab_task(plan, "spacing", phrase, (PLANTER,), {})]
