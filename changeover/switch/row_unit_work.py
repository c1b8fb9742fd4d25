"""Work on the row units: rows let down or locked up, depth, closing and the user's own."""

from changeover.planter.settings import LOCKED_UP, WorkPlace
from changeover.switch.difference import ROW_LOCK
from changeover.switch.plan import Plan
from changeover.switch.setting_work import by_place, setting_tasks
from changeover.switch.tasks import Change, Task
from changeover.switch.wording import rows_text


def row_unit_tasks(plan: Plan) -> list[Task]:
    """Return a task for each row-unit setting that changes, but for the locking of rows."""
    return setting_tasks(plan, WorkPlace.ROW_UNIT, frozenset({ROW_LOCK}))


def _lock_changes(plan: Plan, *, up: bool) -> tuple[Change, ...]:
    return tuple(
        change
        for setting in plan.settings
        if setting.key == ROW_LOCK
        for change in plan.changes(setting)
        if (change.after == LOCKED_UP) is up
    )


def let_down_tasks(plan: Plan) -> list[Task]:
    """Return the task that lets locked rows down, which comes before any work on them."""
    changes = _lock_changes(plan, up=False)
    return [_lock_task(plan, changes, up=False)] if changes else []


def lock_up_tasks(plan: Plan) -> list[Task]:
    """Return the task that locks rows up, which comes after their clean-out."""
    changes = _lock_changes(plan, up=True)
    return [_lock_task(plan, changes, up=True)] if changes else []


def _lock_task(plan: Plan, changes: tuple[Change, ...], *, up: bool) -> Task:
    places = by_place(changes)
    rows = rows_text(place.row for place in places if place.row is not None)
    return plan.task(
        f"{ROW_LOCK}/{'up' if up else 'down'}",
        WorkPlace.ROW_UNIT,
        f"Lock up {rows}" if up else f"Let down {rows}",
        tuple(places),
        ["lock_row" if up else "let_down_row"],
        ["unlock_row", "raised", "pinch"],
        changes=places,
        persons=2,
        tools=("lock pins",),
        steps=(
            ("Lift, pin home, see the pin through", "Shut the row's drive and vacuum off")
            if up
            else ("Take the weight, draw the pin, let down", "Open the row's drive and vacuum")
        ),
    )
