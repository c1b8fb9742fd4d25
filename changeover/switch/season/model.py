"""What a season is planned from and what comes out: jobs, planters and slots, in plain values."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

YARD = ""
"""In a planter's switch and move times: where it stands now (from), or home after all (to)."""


@dataclass(frozen=True)
class SeasonJob:
    """A field to be planted.

    ``minutes`` maps each planter that can do it to its planting minutes there. ``release`` is
    the first day on which it can begin and ``due`` the last on which it is not late (days from
    the season's first day, 0); ``late_cost`` is the cost of each whole day after ``due``.
    ``parts`` names sets of parts that it needs: one set is on one planter on any one day.
    """

    key: str
    minutes: Mapping[str, int]
    release: int = 0
    due: int | None = None
    late_cost: float = 0.0
    parts: frozenset[str] = frozenset()


@dataclass(frozen=True)
class SeasonPlanter:
    """A planter, with the minutes between any two jobs on it.

    ``switch`` and ``move`` map pairs of job keys (from, to) to minutes; the key ``""`` stands
    for the planter as it is now (from) and for the yard after the last job (to). Pairs left out
    take no time. ``ready`` is the first day on which it can work.
    """

    name: str
    switch: Mapping[tuple[str, str], int] = field(default_factory=dict)
    move: Mapping[tuple[str, str], int] = field(default_factory=dict)
    ready: int = 0


@dataclass(frozen=True)
class Fixed:
    """A job that somebody has put on a planter, and at a minute of work if ``start`` is given."""

    job: str
    planter: str
    start: int | None = None


@dataclass(frozen=True)
class Season:
    """Jobs and planters, with the hours of a day and the share of days fit for planting.

    A calendar day counts for ``hours_per_day`` × ``suitable_share`` hours of work, as expected
    over the season. Nothing begins before day ``today``.
    """

    jobs: tuple[SeasonJob, ...]
    planters: tuple[SeasonPlanter, ...]
    hours_per_day: float = 10.0
    suitable_share: float = 1.0
    today: int = 0
    fixed: tuple[Fixed, ...] = ()

    @property
    def minutes_per_day(self) -> int:
        """Whole minutes of work expected of a calendar day."""
        return round(60 * self.hours_per_day * self.suitable_share)


@dataclass(frozen=True)
class Slot:
    """A job on a planter: minutes of work from the season's start, and calendar days.

    ``switch`` and ``move`` are the minutes spent before it; ``late_days`` whole days after due.
    """

    job: str
    planter: str
    start: int
    end: int
    first_day: int
    last_day: int
    switch: int
    move: int
    late_days: int
    late_cost: float


@dataclass(frozen=True)
class Order:
    """One order of the jobs on the planters, with its cost of lateness and minutes between jobs."""

    slots: tuple[Slot, ...]
    late_cost: float
    switch: int
    move: int

    @property
    def between(self) -> int:
        """The minutes of switching and moving, the way home included."""
        return self.switch + self.move

    def on(self, planter: str) -> tuple[Slot, ...]:
        """Return the slots of one planter in the order of time."""
        mine = (slot for slot in self.slots if slot.planter == planter)
        return tuple(sorted(mine, key=lambda slot: slot.start))


class SeasonStatus(StrEnum):
    """What the search proved: nothing better can be, or only that this can be done."""

    OPTIMAL = "optimal"
    FEASIBLE = "feasible"


@dataclass(frozen=True)
class SeasonPlan:
    """The best order found, what is proved of it, and two simple orders beside it.

    ``late_bound`` is the proven least cost of lateness of any plan; ``between_bound`` the proven
    least minutes of switching and moving of any plan that is no later than this one.
    ``as_entered`` and ``nearest_due`` take the jobs one by one, each to the planter that is done
    with it first; None where that breaks a fixed job.
    """

    best: Order
    late_bound: float
    between_bound: int
    status: SeasonStatus
    as_entered: Order | None
    nearest_due: Order | None
    stopped: bool = False

    @property
    def late_gap(self) -> float:
        """The share of the cost of lateness that the bound leaves open."""
        cost = self.best.late_cost
        return (cost - self.late_bound) / cost if cost else 0.0

    @property
    def between_gap(self) -> float:
        """The share of the minutes between jobs that the bound leaves open."""
        minutes = self.best.between
        return (minutes - self.between_bound) / minutes if minutes else 0.0

    @property
    def gap(self) -> float:
        """The wider of the two gaps."""
        return max(self.late_gap, self.between_gap)
