"""Tasks that a person adds, and tasks split for a person: both survive a new plan of the work."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from changeover.planter.places import PLANTER, Place
from changeover.planter.settings import WorkPlace
from changeover.quantities import Q, Quantity, Refusal, figure_in
from changeover.switch.setting_work import parts_of
from changeover.switch.tasks import MachineState, Task, Worklist

ONE_OF_A_KIND = ("own", "finding")
NO_TIME = Q(0.0, "min")


@dataclass(frozen=True)
class OwnTask:
    """A task that a person added. ``name`` is its key among the planter's own tasks.

    ``after`` and ``before`` name what comes first and what waits for it: families of tasks,
    whole or up to their point (``clean_tank``), or own tasks. A family that a later plan lacks
    stands for all of its sort of work; what the plan lacks wholly is passed over.
    """

    name: str
    title: str
    work_place: WorkPlace
    places: tuple[Place, ...] = (PLANTER,)
    minutes_fixed: Quantity = field(default_factory=lambda: NO_TIME)
    minutes_each: Quantity = field(default_factory=lambda: NO_TIME)
    state: MachineState = MachineState.ANY
    tools: tuple[str, ...] = ()
    persons: int = 1
    after: tuple[str, ...] = ()
    before: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if not self.name.strip() or "/" in self.name:
            raise Refusal(f"An own task cannot be named “{self.name}”; use letters and figures.")
        if not self.title.strip():
            raise Refusal(f"The own task “{self.name}” says nothing; write what is to be done.")
        if not self.places or len(set(self.places)) < len(self.places):
            raise Refusal(f"The own task “{self.name}” needs places, each of them once.")
        what = f"The minutes of the own task “{self.name}”"
        times = (self.minutes_fixed, self.minutes_each)
        if min(figure_in("min", one, "time", what) for one in times) < 0:
            raise Refusal(f"The own task “{self.name}” cannot take less than no time.")
        if self.persons < 1:
            raise Refusal(f"The own task “{self.name}” needs at least one person.")

    @property
    def key(self) -> str:
        return f"own.{self.name}"


@dataclass(frozen=True)
class Split:
    """Places of a family of tasks that are done apart from the rest, such as one person's rows."""

    family: str
    name: str
    places: frozenset[Place]

    def __post_init__(self) -> None:
        if not self.name.strip() or not self.places:
            raise Refusal(f"A split of “{self.family}” needs a name and at least one place.")


def with_own_tasks(
    worklist: Worklist, own: Iterable[OwnTask] = (), splits: Iterable[Split] = ()
) -> Worklist:
    """Return a worklist with tasks split and a person's own tasks set in where they belong.

    Splitting keeps a task's family, so that ticks hold; the fixed minutes count for each part.
    Raises Refusal when tasks would wait for each other in a circle, or own tasks share a name.
    """
    tasks = worklist.tasks
    for split in splits:
        tasks = _split(tasks, split)
    tasks = _added(tasks, tuple(own))
    return replace(worklist, tasks=in_order(tasks))


def _split(tasks: tuple[Task, ...], split: Split) -> tuple[Task, ...]:
    """Cut the tasks of a family in two, and let what waited for one wait for both parts."""
    parts = {task.key: _parts(task, split) for task in tasks}
    return tuple(
        replace(
            part,
            needs=tuple(new.key for key in part.needs for new in parts[key]),
        )
        for task in tasks
        for part in parts[task.key]
    )


def _parts(task: Task, split: Split) -> tuple[Task, ...]:
    apart = tuple(place for place in task.places if place in split.places)
    rest = tuple(place for place in task.places if place not in split.places)
    if sort_of(task.family) != sort_of(split.family) or not apart:
        return (task,)
    stroke = "" if "/" in task.key else "/"
    one = replace(at_places(task, apart), key=f"{task.key}{stroke}~{split.name}")
    one = replace(one, title=f"{task.title} ({split.name})")
    return (at_places(task, rest), one) if rest else (one,)


def sort_of(family: str) -> str:
    """Return the sort of work of a family: what it is of, such as a lot or a target, is left out.

    So a split of the meters' work holds whatever a later plan cleans out of them.
    """
    head, _, _ = family.partition(".")
    return family if head in ONE_OF_A_KIND else head


def at_places(task: Task, places: tuple[Place, ...]) -> Task:
    """Return a task at some of its places only, its changes and parts with them."""
    changes = {place: task.changes[place] for place in places if place in task.changes}
    parts_in, parts_out = parts_of(change for every in changes.values() for change in every)
    return replace(task, places=places, changes=changes, parts_in=parts_in, parts_out=parts_out)


def _added(tasks: tuple[Task, ...], own: tuple[OwnTask, ...]) -> tuple[Task, ...]:
    names = [task.name for task in own]
    for name in names:
        if names.count(name) > 1:
            raise Refusal(f"Two own tasks are named “{name}”; rename one.")
    keys: dict[str, list[str]] = {}
    for task in tasks:
        for name in {task.family, task.family.partition(".")[0]}:
            keys.setdefault(name, []).append(task.key)
    for added in own:
        keys.setdefault(added.name, []).append(added.key)
    waits = _waits(own, keys)
    every = (*tasks, *(_task(task) for task in own))
    return tuple(
        replace(t, needs=tuple(dict.fromkeys([*t.needs, *waits.get(t.key, ())]))) for t in every
    )


def _waits(own: tuple[OwnTask, ...], keys: Mapping[str, list[str]]) -> dict[str, list[str]]:
    """Return what each task waits for on account of a person's own tasks."""
    found: dict[str, list[str]] = {}
    for task in own:
        for name in task.after:
            found.setdefault(task.key, []).extend(_named(name, keys))
        for name in task.before:
            for key in _named(name, keys):
                found.setdefault(key, []).append(task.key)
    return found


def _named(name: str, keys: Mapping[str, list[str]]) -> list[str]:
    """Return the tasks of a family, or where a later plan has none such, of its sort of work."""
    return keys.get(name) or keys.get(sort_of(name), [])


def _task(own: OwnTask) -> Task:
    return Task(
        key=own.key,
        work_place=own.work_place,
        title=own.title,
        places=own.places,
        changes={},
        minutes_fixed=own.minutes_fixed,
        minutes_each=own.minutes_each,
        state=own.state,
        tools=own.tools,
        persons=own.persons,
        why="added by hand",
        by_tick=True,
    )


def in_order(tasks: tuple[Task, ...]) -> tuple[Task, ...]:
    """Return tasks so that each comes after what it needs, otherwise in the order given.

    Raises Refusal, naming two of the tasks, when they wait for each other in a circle.
    """
    placed: dict[str, Task] = {}
    waiting = list(tasks)
    while waiting:
        open_keys = {task.key for task in waiting}
        ready = next((task for task in waiting if open_keys.isdisjoint(task.needs)), None)
        if ready is None:
            raise Refusal(_circle(waiting))
        placed[ready.key] = ready
        waiting.remove(ready)
    return tuple(placed.values())


def _circle(waiting: list[Task]) -> str:
    """Name two neighbours of a circle among tasks that all wait for one another."""
    by_key = {task.key: task for task in waiting}
    task, seen = waiting[0], set[str]()
    while task.key not in seen:
        seen.add(task.key)
        task = by_key[next(key for key in task.needs if key in by_key)]
    first = by_key[next(key for key in task.needs if key in by_key)]
    return (
        f"“{task.title}” and “{first.title}” wait for each other; take one of them out of what "
        "the other comes after."
    )
