"""How far a worklist is: what is done, what waits, which rows are ready and the minutes left."""

from collections.abc import Container, Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

from changeover.planter.entry import same_value
from changeover.planter.places import Place
from changeover.planter.settings import Setting, WorkPlace
from changeover.planter.setup import Cell, Setup
from changeover.quantities import Q, Quantity
from changeover.switch.clean_ticks import Cleaned
from changeover.switch.tasks import Change, Task, TaskKind, Tick, Worklist

ROW_WORK = (WorkPlace.METER, WorkPlace.ROW_UNIT)


@dataclass(frozen=True)
class Progress:
    """A worklist with the places that are done at each task, by task key.

    ``made`` are the cells that are at their target, also where other work at the place is left.
    """

    worklist: Worklist
    done: Mapping[str, frozenset[Place]]
    made: frozenset[Cell] = frozenset()

    def left(self, task: Task) -> tuple[Place, ...]:
        """Return the places where a task is still to be done, in their order."""
        return tuple(place for place in task.places if place not in self.done[task.key])

    def changes_left(self, task: Task, place: Place) -> tuple[Change, ...]:
        """Return the changes that a task is still to make at a place."""
        if place in self.done[task.key]:
            return ()
        return tuple(c for c in task.changes.get(place, ()) if c.cell not in self.made)

    def is_done(self, key: str) -> bool:
        """Say whether a task is done at every place. Raises KeyError."""
        return len(self.done[key]) == len(self._task(key).places)

    def waits_for(self, task: Task) -> tuple[Task, ...]:
        """Return the tasks that come first and are not done."""
        return tuple(self._task(key) for key in task.needs if not self.is_done(key))

    @cached_property
    def _tasks(self) -> dict[str, Task]:
        return {task.key: task for task in self.worklist.tasks}

    def _task(self, key: str) -> Task:
        return self._tasks[key]

    @property
    def tasks_total(self) -> int:
        return len(self.worklist.tasks)

    @property
    def tasks_done(self) -> int:
        return sum(self.is_done(task.key) for task in self.worklist.tasks)

    @property
    def finished(self) -> bool:
        return self.tasks_done == self.tasks_total

    @cached_property
    def rows_to_do(self) -> tuple[int, ...]:
        """The rows with cleaning or setting left at their meter or row unit, from the left."""
        left = {
            place.row
            for task in self.worklist.tasks
            if task.work_place in ROW_WORK and task.kind in (TaskKind.CLEAN, TaskKind.SET)
            for place in self.left(task)
            if place.row is not None
        }
        return tuple(sorted(left))

    def rows_ready(self, rows: Iterable[int]) -> tuple[int, ...]:
        """Return those of the rows at which nothing is left at meter or row unit."""
        to_do = set(self.rows_to_do)
        return tuple(row for row in rows if row not in to_do)

    @property
    def minutes_left(self) -> Quantity:
        """The working minutes left, those of every person added up."""
        whole = [self._minutes(task) * task.persons for task in self.worklist.tasks]
        return Q(sum(whole), "min")

    def _minutes(self, task: Task) -> float:
        left = len(self.left(task))
        if not left:
            return 0.0
        each = float(task.minutes_each.to("min").magnitude)
        return float(task.minutes_fixed.to("min").magnitude) + left * each

    @property
    def open_safety(self) -> tuple[Task, ...]:
        """The steps that make the planter safe and are not ticked off."""
        return tuple(
            task
            for task in self.worklist.tasks
            if task.kind is TaskKind.SAFE and not self.is_done(task.key)
        )

    @property
    def next_task(self) -> Task | None:
        """The first task that is not done and waits for nothing, None at the end."""
        ready = (
            task
            for task in self.worklist.tasks
            if not self.is_done(task.key) and not self.waits_for(task)
        )
        return next(ready, None)


def progress(
    worklist: Worklist, ticks: Iterable[Tick], as_found: Setup, settings: tuple[Setting, ...]
) -> Progress:
    """Return how far a worklist is.

    A task is done at a place when every cell it sets there is at its target in ``as_found``
    and, for work that leaves nothing in a cell, when it is ticked there. A tick holds for every
    task of its family at its place, so that it survives a new plan; one for cleaning holds as
    far as it went.
    """
    every = tuple(ticks)
    ticked = {(tick.task.partition("/")[0], tick.place) for tick in every}
    cleaned = Cleaned(every, worklist.levels)
    by_key = {setting.key: setting for setting in settings}
    made = frozenset(
        change.cell
        for task in worklist.tasks
        for changes in task.changes.values()
        for change in changes
        if _is_made(change, as_found, by_key)
    )
    done = {
        task.key: frozenset(
            place
            for place in task.places
            if (not task.by_tick or _is_ticked(task, place, ticked, cleaned))
            and all(change.cell in made for change in task.changes.get(place, ()))
        )
        for task in worklist.tasks
    }
    return Progress(worklist, done, made)


def _is_ticked(
    task: Task, place: Place, ticked: Container[tuple[str, Place]], cleaned: Cleaned
) -> bool:
    return cleaned.has(task, place) if task.cleans else (task.family, place) in ticked


def _is_made(change: Change, as_found: Setup, settings: Mapping[str, Setting]) -> bool:
    return same_value(settings[change.cell.setting], as_found.get(change.cell), change.after)
