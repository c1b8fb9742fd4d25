"""Times for blocks of work taken in a given order: each as early as the rules of the work allow."""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from changeover.switch.timetable.model import Activity, Person, Stint
from changeover.switch.timetable.rest import Rest


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

    @property
    def minutes(self) -> int:
        return self.activity.modes[self.mode].duration(self.count)

    @property
    def rows(self) -> tuple[int, ...]:
        return self.activity.rows[self.first : self.first + self.count]


def blocks_of(rest: Rest, stints: Sequence[Stint]) -> list[Block]:
    """Return the blocks of a timetable's new stints, in the order of their starts."""
    own = {activity.key: activity for activity in rest.todo}
    blocks = []
    for stint in sorted(stints, key=lambda each: (each.start, each.end)):
        activity = own[stint.activity]
        first = activity.rows.index(min(stint.rows)) if stint.rows else 0
        blocks.append(Block(activity, stint.persons, first, len(stint.rows), stint.mode))
    return blocks


class Decoder:
    """Gives times to blocks in an order; plain numbers throughout, since it runs very often."""

    def __init__(self, rest: Rest) -> None:
        self._rest = rest
        self._release = {each.key: rest.release(each) for each in rest.todo}
        self._rows = {each.key: each.rows for each in rest.todo}
        self._hours = {person.name: person.hours for person in rest.work.crew}
        own = {each.key for each in rest.todo}
        self._before = {
            each.key: [
                *((key, True) for key in each.after if key in own),
                *((key, False) for key in each.after_by_row if key in own),
            ]
            for each in rest.todo
        }

    def times(self, blocks: Sequence[Block]) -> list[int] | None:
        """Return the start of each block, None when one comes before what it waits for."""
        board = _Times(self._rest)
        starts = []
        for block in blocks:
            begin = self._earliest(block, board)
            if begin is not None:
                begin = board.fit(block, begin, self._hours)
            if begin is None:
                return None
            board.put(block, begin)
            starts.append(begin)
        return starts

    def _earliest(self, block: Block, board: "_Times") -> int | None:
        earliest = self._release[block.activity.key]
        rows = block.rows
        for key, whole in self._before[block.activity.key]:
            needed = self._needed(key, None if whole else rows)
            for placed in board.placed.get(key, ()):
                if whole or _meet(rows, placed.rows):
                    wait = board.gap if _apart(placed.state, block.activity.state) else 0
                    earliest = max(earliest, placed.end + wait)
                    needed -= self._needed(key, None if whole else rows, placed.rows)
            if needed > 0:
                return None
        return earliest

    def _needed(
        self, key: str, rows: tuple[int, ...] | None, of: tuple[int, ...] | None = None
    ) -> int:
        """Return how many rows of an activity (or of some) must be over; 1 for work in one go."""
        every = self._rows[key] if of is None else of
        if not every:
            return 1
        if not rows:
            return len(every)
        return bisect_right(every, rows[-1]) - bisect_left(every, rows[0])


def _meet(one: tuple[int, ...], other: tuple[int, ...]) -> bool:
    return not one or not other or (one[0] <= other[-1] and other[0] <= one[-1])


def _apart(one: str | None, other: str | None) -> bool:
    return one is not None and other is not None and one != other


class _Placed(NamedTuple):
    rows: tuple[int, ...]
    end: int
    state: str | None


class _Times:
    """What is taken so far: persons, machine states and shared tools, as stretches of minutes."""

    def __init__(self, rest: Rest) -> None:
        self.gap = rest.work.state_minutes
        self.placed: dict[str, list[_Placed]] = {}
        self._busy: dict[str, list[tuple[int, int]]] = {each.name: [] for each in rest.work.crew}
        self._states: list[tuple[int, int, str]] = []
        self._tools: dict[str, list[tuple[int, int, int]]] = {name: [] for name in rest.work.tools}
        self._capacity = rest.work.tools
        for stint in rest.under_way:
            activity = rest.work.activity(stint.activity)
            self._take(activity, stint.persons, stint.mode, stint.start, stint.end)

    def put(self, block: Block, start: int) -> None:
        """Take the persons, the state and the tools of a block from its start."""
        end = start + block.minutes
        self._take(block.activity, block.persons, block.mode, start, end)
        placed = _Placed(block.rows, end, block.activity.state)
        self.placed.setdefault(block.activity.key, []).append(placed)

    def _take(
        self, activity: Activity, persons: Sequence[str], mode: int, start: int, end: int
    ) -> None:
        for name in persons:
            self._busy[name].append((start, end))
        if activity.state is not None:
            self._states.append((start, end, activity.state))
        for tool, amount in activity.modes[mode].uses.items():
            self._tools[tool].append((start, end, amount))

    def fit(
        self, block: Block, start: int, hours: dict[str, tuple[tuple[int, int], ...]]
    ) -> int | None:
        """Return the first minute from a start at which a block fits, None outside all hours."""
        minutes, state = block.minutes, block.activity.state
        uses = block.activity.modes[block.mode].uses.items()
        while True:
            begin = start
            for name in block.persons:
                start = _past(self._busy[name], start, minutes)
                if hours[name]:
                    at_work = _at_work(hours[name], start, minutes)
                    if at_work is None:
                        return None
                    start = at_work
            if state is not None:
                others = [(s, e + self.gap) for s, e, other in self._states if other != state]
                start = _past(others, start, minutes + self.gap)
            for tool, amount in uses:
                start = _past_tool(self._tools[tool], start, minutes, self._capacity[tool] - amount)
            if start == begin:
                return start


def _past(taken: Sequence[tuple[int, int]], start: int, minutes: int) -> int:
    """Return the first start from which a stretch of minutes is clear of what is taken."""
    moved = True
    while moved:
        moved = False
        for begin, end in taken:
            if begin < start + minutes and start < end:
                start, moved = end, True
    return start


def _past_tool(taken: Sequence[tuple[int, int, int]], start: int, minutes: int, room: int) -> int:
    """Return the first start from which no more than ``room`` of a tool is held by others."""
    while True:
        during = [each for each in taken if each[0] < start + minutes and start < each[1]]
        moments = [start, *(begin for begin, _, _ in during if begin > start)]
        if all(
            sum(amount for begin, end, amount in during if begin <= at < end) <= room
            for at in moments
        ):
            return start
        start = min(end for _, end, _ in during)


def _at_work(hours: Sequence[tuple[int, int]], start: int, minutes: int) -> int | None:
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
