"""Times for blocks of work taken in a given order: each as early as the rules of the work allow."""

import math
from bisect import bisect_left, bisect_right, insort
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from changeover.switch.timetable.apart import pairs_apart
from changeover.switch.timetable.model import Activity, Person, Stint
from changeover.switch.timetable.rest import Rest

Hours = Sequence[tuple[int, int]]


@dataclass(frozen=True)
class Block:
    """Rows of one activity (or all of it) given to persons, without times yet.

    ``first`` and ``count`` are the index of the first row and the number of rows.
    """

    activity: Activity
    persons: tuple[str, ...]
    first: int
    count: int
    mode: int

    @cached_property
    def minutes(self) -> int:
        return self.activity.modes[self.mode].duration(self.count)

    @cached_property
    def rows(self) -> tuple[int, ...]:
        return self.activity.rows[self.first : self.first + self.count]

    @cached_property
    def uses(self) -> tuple[tuple[str, int], ...]:
        """The shared tools held, and how many of each."""
        return tuple(self.activity.modes[self.mode].uses.items())


def blocks_of(rest: Rest, stints: Sequence[Stint]) -> list[Block]:
    """Return the blocks of a timetable's new stints, in the order of their starts."""
    own = {activity.key: activity for activity in rest.todo}
    blocks = []
    for stint in sorted(stints, key=lambda each: (each.start, each.end)):
        activity = own[stint.activity]
        first = activity.rows.index(min(stint.rows)) if stint.rows else 0
        blocks.append(Block(activity, stint.persons, first, len(stint.rows), stint.mode))
    return blocks


class _Placed(NamedTuple):
    block: Block
    end: int


class Decoder:
    """Gives times to blocks in an order; plain numbers throughout, since it runs very often."""

    def __init__(self, rest: Rest) -> None:
        self._rest = rest
        self._release = {each.key: rest.release(each) for each in rest.todo}
        self._rows = {each.key: each.rows for each in rest.todo}
        self._hours: Mapping[str, Hours] = {each.name: each.hours for each in rest.work.crew}
        own = {each.key: each for each in rest.todo}
        self._before = {
            each.key: [
                (key, whole, rest.gap(own[key], each) or 0)
                for keys, whole in ((each.after, True), (each.after_by_row, False))
                for key in keys
                if key in own
            ]
            for each in rest.todo
        }
        self._apart = [(one.key, other.key) for one, other in pairs_apart(rest.todo)]

    def times(self, blocks: Sequence[Block], latest: float = math.inf) -> list[int] | None:
        """Return the start of each block, None when one comes before what it waits for.

        None too when somebody does two things that different persons must do, and as soon as a
        block ends after the ``latest`` minute.
        """
        if self._apart and not self._kept_apart(blocks):
            return None
        board = _Times(self._rest, self._hours)
        left: dict[str, int] = {}
        for block in blocks:
            left[block.activity.key] = left.get(block.activity.key, 0) + 1
        placed: dict[str, list[_Placed]] = {key: [] for key in left}
        starts = []
        for block in blocks:
            begin = self._earliest(block, placed, left)
            if begin is not None:
                begin = board.fit(block, begin)
            if begin is None or begin + block.minutes > latest:
                return None
            board.put(block.activity, block.persons, block.uses, begin, begin + block.minutes)
            placed[block.activity.key].append(_Placed(block, begin + block.minutes))
            left[block.activity.key] -= 1
            starts.append(begin)
        return starts

    def _kept_apart(self, blocks: Iterable[Block]) -> bool:
        who: dict[str, set[str]] = {}
        for block in blocks:
            who.setdefault(block.activity.key, set()).update(block.persons)
        return all(who[one].isdisjoint(who[other]) for one, other in self._apart)

    def _earliest(
        self, block: Block, placed: Mapping[str, list[_Placed]], left: Mapping[str, int]
    ) -> int | None:
        key = block.activity.key
        earliest = self._release[key]
        rows = block.rows
        for before, whole, wait in self._before[key]:
            if left[before] and (whole or not self._covered(before, rows, placed[before])):
                return None
            for other, end in placed[before]:
                if end + wait > earliest and (whole or _meet(rows, other.rows)):
                    earliest = end + wait
        return earliest

    def _covered(self, key: str, rows: tuple[int, ...], placed: Iterable[_Placed]) -> bool:
        """Tell whether an activity is placed on all its rows between some others."""
        every = self._rows[key]
        if not every or not rows:
            return False
        needed = _between(every, rows)
        return sum(_between(other.rows, rows) for other, _ in placed) == needed


def _between(every: tuple[int, ...], rows: tuple[int, ...]) -> int:
    return bisect_right(every, rows[-1]) - bisect_left(every, rows[0])


def _meet(one: tuple[int, ...], other: tuple[int, ...]) -> bool:
    return not one or not other or (one[0] <= other[-1] and other[0] <= one[-1])


class _Times:
    """What is taken so far: persons, machine states and shared tools, as stretches of minutes."""

    def __init__(self, rest: Rest, hours: Mapping[str, Hours]) -> None:
        self._gap = rest.work.state_minutes
        self._hours = hours
        self._busy: dict[str, list[tuple[int, int]]] = {each.name: [] for each in rest.work.crew}
        self._states: dict[str, list[tuple[int, int]]] = {}
        self._tools: dict[str, list[tuple[int, int, int]]] = {name: [] for name in rest.work.tools}
        self._capacity = rest.work.tools
        for stint in rest.under_way:
            activity = rest.work.activity(stint.activity)
            uses = activity.modes[stint.mode].uses.items()
            self.put(activity, stint.persons, uses, stint.start, stint.end)

    def put(
        self,
        activity: Activity,
        persons: Sequence[str],
        uses: Iterable[tuple[str, int]],
        start: int,
        end: int,
    ) -> None:
        """Take persons, the state of the machine and tools for a stretch of minutes."""
        for name in persons:
            insort(self._busy[name], (start, end))
        if activity.state is not None:
            _join(self._states.setdefault(activity.state, []), start, end)
        for tool, amount in uses:
            if amount:
                self._tools[tool].append((start, end, amount))

    def fit(self, block: Block, start: int) -> int | None:
        """Return the first minute from a start at which a block fits, None outside all hours."""
        minutes, state, gap = block.minutes, block.activity.state, self._gap
        others = [
            taken for other, taken in self._states.items() if state is not None and other != state
        ]
        while True:
            begin = start
            for name in block.persons:
                start = _past(self._busy[name], start, minutes)
                hours = self._hours[name]
                if hours:
                    at_work = _at_work(hours, start, minutes)
                    if at_work is None:
                        return None
                    start = at_work
            for taken in others:
                start = _past_states(taken, start, minutes, gap)
            for tool, amount in block.uses:
                taken_tool = self._tools[tool]
                if amount and taken_tool:
                    start = _past_tool(taken_tool, start, minutes, self._capacity[tool] - amount)
            if start == begin:
                return start


def _join(taken: list[tuple[int, int]], start: int, end: int) -> None:
    """Add a stretch to others in the order of time that do not meet, joined with those it meets."""
    at = 0
    while at < len(taken) and taken[at][1] < start:
        at += 1
    last = at
    while last < len(taken) and taken[last][0] <= end:
        start, end = min(start, taken[last][0]), max(end, taken[last][1])
        last += 1
    taken[at:last] = [(start, end)]


def _past(taken: Sequence[tuple[int, int]], start: int, minutes: int) -> int:
    """Return the first start from which minutes are clear of stretches in the order of time."""
    for begin, end in taken:
        if begin >= start + minutes and begin > start:
            break
        if end > start and begin < start + minutes:
            start = end
    return start


def _past_states(taken: Sequence[tuple[int, int]], start: int, minutes: int, gap: int) -> int:
    """Return the first start clear of stretches in the order of time by some minutes."""
    for begin, end in taken:
        if begin >= start + minutes + gap:
            break
        if end + gap > start:
            start = end + gap
    return start


def _past_tool(taken: Sequence[tuple[int, int, int]], start: int, minutes: int, room: int) -> int:
    """Return the first start from which no more than ``room`` of a tool is held by others."""
    while True:
        during = [each for each in taken if each[0] < start + minutes and start < each[1]]
        if sum(each[2] for each in during) <= room:
            return start
        moments = [start, *(begin for begin, _, _ in during if begin > start)]
        if all(
            sum(amount for begin, end, amount in during if begin <= at < end) <= room
            for at in moments
        ):
            return start
        start = min(end for _, end, _ in during)


def _at_work(hours: Hours, start: int, minutes: int) -> int | None:
    for begin, end in hours:
        if max(begin, start) + minutes <= end:
            return max(begin, start)
    return None


def told(blocks: Sequence[Block], starts: Sequence[int]) -> list[Stint]:
    """Return the stints of blocks with their starts."""
    return [
        Stint(each.activity.key, start, start + each.minutes, each.persons, each.rows, each.mode)
        for each, start in zip(blocks, starts, strict=True)
    ]


def able_for(crew: Sequence[Person], activity: Activity) -> list[str]:
    """Return the names of those who can do an activity."""
    return [person.name for person in crew if person.can(activity)]
