"""What a crew timetable is made from and what comes out, in plain values."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum


class SearchStatus(StrEnum):
    """What a search proved: that nothing is better, or only that this can be done."""

    OPTIMAL = "optimal"
    FEASIBLE = "feasible"


@dataclass(frozen=True)
class Mode:
    """One way to do an activity: whole minutes, minutes for each row, persons and shared tools.

    ``minutes`` is spent once by everyone who takes a share, ``minutes_per_row`` on each of the
    rows of that share, counted in whole seconds; a share is rounded up to whole minutes.
    ``uses`` maps the name of a shared tool to how many are held meanwhile.
    """

    minutes: int = 0
    minutes_per_row: float = 0.0
    persons: int = 1
    uses: Mapping[str, int] = field(default_factory=dict)

    def duration(self, rows: int) -> int:
        """Return the whole minutes for a share of ``rows`` rows."""
        return self.minutes + math.ceil(rows * self.seconds_per_row / 60)

    @property
    def seconds_per_row(self) -> int:
        return round(60 * self.minutes_per_row)


@dataclass(frozen=True)
class Activity:
    """One piece of work in the timetable.

    With ``rows`` (numbers along the bar, ascending) and one person in each mode, the rows are
    shared out: everyone takes at most one block of rows that follow one another. Otherwise the
    activity is done in one go by ``persons`` persons together.
    ``after`` names activities that end before any of this one begins; ``after_by_row`` those
    that must have ended only on the rows that a block covers. ``state`` is the state of the
    machine: two activities may overlap only when their states are equal or one has none.
    ``place`` is where along the bar (in row numbers) work without rows is done.
    ``not_by`` names activities of which nobody who takes part does this one, before or after;
    ``barred`` the persons who must not do it.
    """

    key: str
    modes: tuple[Mode, ...]
    rows: tuple[int, ...] = ()
    after: tuple[str, ...] = ()
    after_by_row: tuple[str, ...] = ()
    state: str | None = None
    skill: str | None = None
    place: int | None = None
    not_by: tuple[str, ...] = ()
    barred: frozenset[str] = frozenset()

    @property
    def shared_out(self) -> bool:
        """Whether the rows are divided into blocks, one a person."""
        return bool(self.rows) and all(mode.persons == 1 for mode in self.modes)


@dataclass(frozen=True)
class Person:
    """One of the crew: skills, hours (pairs of minutes from the start) and where they stand.

    No ``hours`` means all the time; no ``place`` means that the first walk is not counted.
    """

    name: str
    skills: frozenset[str] = frozenset()
    hours: tuple[tuple[int, int], ...] = ()
    place: int | None = None

    def can(self, activity: Activity) -> bool:
        skilled = activity.skill is None or activity.skill in self.skills
        return skilled and self.name not in activity.barred


@dataclass(frozen=True)
class Work:
    """All that is to be done, by whom and with how many of each shared tool.

    ``state_minutes`` pass between the end of work in one state of the machine and the start of
    work in another (raising, locking, letting a fan run down).
    """

    activities: tuple[Activity, ...]
    crew: tuple[Person, ...] = ()
    tools: Mapping[str, int] = field(default_factory=dict)
    state_minutes: int = 0

    def activity(self, key: str) -> Activity:
        """Return an activity by its key. Raises KeyError."""
        for activity in self.activities:
            if activity.key == key:
                return activity
        raise KeyError(key)


@dataclass(frozen=True)
class Stint:
    """A stretch of time that persons spend on one activity, on a block of its rows.

    ``start`` and ``end`` are whole minutes from the start of the timetable; ``rows`` stand in
    the order of work, from either end of the block; ``mode`` is the index of the way in which
    it is done.
    """

    activity: str
    start: int
    end: int
    persons: tuple[str, ...] = ()
    rows: tuple[int, ...] = ()
    mode: int = 0


@dataclass(frozen=True)
class Timetable:
    """A timetable with what was proved of it.

    ``length`` is the minute at which the last stint ends and ``bound`` the proven least length;
    ``walk`` is the way walked in row widths and ``walk_bound`` the proven least way among
    timetables of this length, 0 where the search proves nothing of it. ``stopped`` tells that
    the search was interrupted.
    """

    stints: tuple[Stint, ...]
    length: int
    bound: int
    walk: int
    walk_bound: int
    status: SearchStatus
    stopped: bool = False

    @property
    def gap(self) -> float:
        """The share of the length that the bound leaves open, 0 when proven least."""
        return (self.length - self.bound) / self.length if self.length else 0.0

    @property
    def starts(self) -> dict[str, int]:
        """The first minute of each activity."""
        return {key: min(stint.start for stint in self.of(key)) for key in self.keys}

    @property
    def ends(self) -> dict[str, int]:
        """The minute at which each activity is over."""
        return {key: max(stint.end for stint in self.of(key)) for key in self.keys}

    @property
    def who(self) -> dict[str, tuple[str, ...]]:
        """The persons at each activity, in the order of their stints."""
        return {
            key: tuple(dict.fromkeys(name for stint in self.of(key) for name in stint.persons))
            for key in self.keys
        }

    @property
    def keys(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(stint.activity for stint in self.stints))

    def of(self, key: str) -> tuple[Stint, ...]:
        """Return the stints of one activity."""
        return tuple(stint for stint in self.stints if stint.activity == key)

    def by(self, person: str) -> tuple[Stint, ...]:
        """Return the stints of one person in the order of time."""
        mine = (stint for stint in self.stints if person in stint.persons)
        return tuple(sorted(mine, key=lambda stint: (stint.start, stint.end)))
