"""Tasks: what is to be done, where, on which rows, with what, and in which order."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from types import MappingProxyType

from changeover.planter.places import Place
from changeover.planter.settings import WorkPlace
from changeover.planter.setup import Cell, Value
from changeover.quantities import Quantity, check_kind


class MachineState(StrEnum):
    """The state in which the planter must be for a task; two states exclude each other."""

    ANY = "any"
    RAISED = "raised and locked"
    LOWERED = "lowered"
    FAN_RUNNING = "fan running"
    POWER_OFF = "power off"


class TaskKind(StrEnum):
    """What a task is for: making the machine safe, cleaning, setting, or proving."""

    SAFE = "make safe"
    CLEAN = "clean"
    SET = "set"
    PROVE = "prove"


@dataclass(frozen=True)
class Change:
    """One cell going from its value as found to its target; ``part`` marks a part swapped."""

    cell: Cell
    before: Value | None
    after: Value
    part: bool = False


@dataclass(frozen=True)
class PartCount:
    """A number of one part that comes off the planter or goes on."""

    part: str
    count: int


@dataclass(frozen=True)
class Task:
    """One line of the worklist.

    ``key`` stays the same when the plan is made again; ``places`` are what can be ticked off
    one by one (rows, fans, tanks or the planter); ``changes`` maps each of them to the cells
    it sets. ``minutes_fixed`` and ``minutes_each`` are times: once, and for each place.
    ``needs`` holds the keys of tasks that come first. ``by_tick`` marks work that leaves nothing
    in the as-found settings, such as cleaning: it is done at a place only when ticked there.
    ``proves`` are the cells that a proof step stands for, those between its places included;
    ``cleans`` says how far work that cleans goes, in the words of ``switch.clean_ticks``.
    """

    key: str
    work_place: WorkPlace
    title: str
    places: tuple[Place, ...]
    changes: Mapping[Place, tuple[Change, ...]]
    minutes_fixed: Quantity
    minutes_each: Quantity
    state: MachineState = MachineState.ANY
    tools: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    steps: tuple[str, ...] = ()
    parts_in: tuple[PartCount, ...] = ()
    parts_out: tuple[PartCount, ...] = ()
    needs: tuple[str, ...] = ()
    persons: int = 1
    why: str = ""
    kind: TaskKind = TaskKind.SET
    by_tick: bool = False
    proves: frozenset[Cell] = frozenset()
    cleans: frozenset[str] = frozenset()

    @property
    def family(self) -> str:
        """The part of the key before the stroke: a tick of a family holds at its place.

        Tasks of one family never share a place, so a tick survives a new plan that groups the
        places otherwise.
        """
        return self.key.partition("/")[0]

    @property
    def minutes(self) -> Quantity:
        """The time for all places together."""
        total: Quantity = self.minutes_fixed + len(self.places) * self.minutes_each
        return total


@dataclass(frozen=True)
class Worklist:
    """The tasks of one switch in the order of work; ``cautions`` hold for all of it.

    ``levels`` says by name how far each level of clean-out goes, in the words of a task's
    ``cleans``.
    """

    tasks: tuple[Task, ...] = ()
    cautions: tuple[str, ...] = ()
    levels: Mapping[str, frozenset[str]] = field(default_factory=lambda: MappingProxyType({}))

    def at(self, work_place: WorkPlace) -> tuple[Task, ...]:
        return tuple(task for task in self.tasks if task.work_place is work_place)

    def task(self, key: str) -> Task:
        """Return a task by its key. Raises KeyError."""
        for task in self.tasks:
            if task.key == key:
                return task
        raise KeyError(key)


@dataclass(frozen=True)
class Tick:
    """A task ticked off at one place: by whom and when (ISO 8601 text, UTC)."""

    task: str
    place: Place
    who: str
    when: str


@dataclass(frozen=True)
class StandardTime:
    """The user's own minutes, which win over the program's.

    ``task`` is a task's key, the family before the stroke in it, or the name of one element of
    work in the table of standard minutes.
    """

    task: str
    fixed: Quantity
    each: Quantity

    def __post_init__(self) -> None:
        check_kind(self.fixed, "time", f"Standard time of {self.task}")
        check_kind(self.each, "time", f"Standard time of {self.task} for each place")


@dataclass(frozen=True)
class Claim:
    """Another planter whose switch needs the same part: how many, and how many it will lack."""

    planter: str
    needed: int
    short: int = 0


@dataclass(frozen=True)
class KitLine:
    """One part of the kit: how many are needed, usable on the shelf, and missing.

    ``released`` come off this planter during the switch and must be inspected before use;
    ``to_inspect`` wait on the shelf for that already. ``taken`` of those on the shelf go to
    switches of other planters that come first, ``coming`` are released by such and inspected in
    time. ``claims`` are all other switches that need the part.
    """

    part: str
    name: str
    needed: int
    on_shelf: int
    bins: tuple[str, ...] = ()
    released: int = 0
    to_inspect: int = 0
    taken: int = 0
    coming: int = 0
    claims: tuple[Claim, ...] = ()

    @property
    def free(self) -> int:
        """How many on the shelf are left for this planter."""
        return max(0, self.on_shelf - self.taken)

    @property
    def short(self) -> int:
        return max(0, self.needed - self.free - self.coming)

    @property
    def short_together(self) -> int:
        """How many are short for this planter and the others that need the part."""
        return self.short + sum(claim.short for claim in self.claims)


@dataclass(frozen=True)
class Kit:
    """Parts to lay out and parts that come back."""

    lines: tuple[KitLine, ...] = ()
    back: tuple[PartCount, ...] = field(default_factory=tuple)
