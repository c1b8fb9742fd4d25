"""Improve a timetable by small changes at random: order, cuts between blocks, and persons."""

import math
import random
from collections.abc import Sequence
from typing import NamedTuple

from changeover.switch.search import Clock
from changeover.switch.timetable.changes import changes_of
from changeover.switch.timetable.decode import Block, Decoder, blocks_of, told
from changeover.switch.timetable.model import Stint
from changeover.switch.timetable.rest import Rest

WARM, COLD = 1.0, 0.2
"""How many minutes worse a change may make the work, first and last; our own choice, by trial."""

TURNS = 20
"""Changes between two looks at the clock, some 4 ms; our own choice, by trial."""

SPREAD = 0.02
"""What an earlier mean end of all blocks counts beside the length; our own choice, by trial."""


class Improver:
    """Simulated annealing from a timetable: a change for the worse is kept at times, ever less.

    ``best`` is the shortest timetable met, ``length`` the minute at which it ends.
    """

    def __init__(self, rest: Rest, stints: Sequence[Stint], clock: Clock, until: float) -> None:
        self._rest, self._clock, self._until = rest, clock, until
        self._draw = random.Random(clock.limits.seed)  # noqa: S311 -- no secret hangs on it
        self._decoder = Decoder(rest)
        self._changes = changes_of(rest, self._decoder)
        self._began = clock.spent
        self.best: list[Stint] = list(stints)
        self.length = _last(self.best)
        self._now: list[Block] = []
        self._cost = math.inf
        self._begin_from(self.best)

    def offer(self, stints: Sequence[Stint]) -> None:
        """Keep another timetable when it is shorter; changes go on from where they are.

        By trial they come further from there than from one that is put together tightly.
        """
        if _last(stints) < self.length:
            self.best, self.length = list(stints), _last(stints)

    def work(self, until: float, bound: int) -> bool:
        """Try changes until a moment on the clock; say whether a bound has been reached."""
        while self._now and self.length > bound and self._clock.spent < until:
            for _ in range(TURNS):
                self._turn()
        return self.length <= bound

    def _begin_from(self, stints: Sequence[Stint]) -> None:
        blocks = blocks_of(self._rest, stints)
        starts = self._decoder.times(blocks)
        if blocks and starts is not None:
            self._now, self._cost = blocks, _cost(blocks, starts).total
            self._keep(blocks, starts)

    def _turn(self) -> None:
        tried = self._draw.choice(self._changes)(self._now, self._draw)
        if tried is None:
            return
        allowed = self._cost - self._heat * math.log(1 - self._draw.random())
        starts = self._decoder.times(tried, allowed)
        if starts is None:
            return
        cost = _cost(tried, starts)
        if cost.total <= allowed:
            self._now, self._cost = tried, cost.total
            if cost.length < self.length:
                self._keep(tried, starts)

    def _keep(self, blocks: Sequence[Block], starts: Sequence[int]) -> None:
        made = told(blocks, starts)
        if _last(made) < self.length:
            self.best, self.length = made, _last(made)

    @property
    def _heat(self) -> float:
        cooled = (self._clock.spent - self._began) / max(1e-9, self._until - self._began)
        return float(WARM * (COLD / WARM) ** min(1.0, cooled))


def _last(stints: Sequence[Stint]) -> int:
    return max((stint.end for stint in stints), default=0)


class _Cost(NamedTuple):
    """The length in minutes, and the length with a little for ending early on the whole."""

    length: int
    total: float


def _cost(blocks: Sequence[Block], starts: Sequence[int]) -> _Cost:
    ends = [start + block.minutes for start, block in zip(starts, blocks, strict=True)]
    return _Cost(max(ends), max(ends) + SPREAD * sum(ends) / len(ends))
