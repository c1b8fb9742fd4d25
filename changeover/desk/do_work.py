"""Doing the work: the edits that tick tasks off, whole or by row, and what comes next."""

from collections.abc import Iterable

from changeover.desk.edits import TickTask
from changeover.desk.plan_switch import WorkView
from changeover.planter.places import Place
from changeover.switch.tasks import Task


def tick_whole(view: WorkView, task: Task, *, done: bool = True) -> TickTask:
    """Return the edit that ticks a task off at every place where it is open, or unticks it all."""
    places = view.progress.left(task) if done else task.places
    return _tick(view, task, places, done=done)


def tick_places(
    view: WorkView, task: Task, places: Iterable[Place], *, done: bool = True
) -> TickTask:
    """Return the edit that ticks a task off at some places, or takes it back there."""
    wanted = frozenset(places)
    return _tick(view, task, tuple(p for p in task.places if p in wanted), done=done)


def tick_rows(view: WorkView, task: Task, rows: Iterable[int], *, done: bool = True) -> TickTask:
    """Return the edit that ticks a task off at those of its places that are these rows."""
    wanted = frozenset(rows)
    places = (place for place in task.places if place.row in wanted)
    return tick_places(view, task, places, done=done)


def _tick(view: WorkView, task: Task, places: tuple[Place, ...], *, done: bool) -> TickTask:
    return TickTask(view.board.planter.name, task.key, places, done=done, units=view.board.units)
