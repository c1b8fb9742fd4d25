"""The cheapest round of one planter where each job done is worth something, by time.

Rounds are found by dynamic programming over (job, jobs remembered, time): a round may come back
to a job only after it has forgotten it, and each job says which jobs are still remembered when
the planter is there (ng-routes: Baldacci, Mingozzi & Roberti 2011, "New route relaxation and
pricing strategies for the vehicle routing problem", Operations Research 59; cited from memory).
The more is remembered, the nearer a round is to one that does no job twice.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from changeover.switch.season.numbers import NEVER, Numbers

Floats = NDArray[np.float64]
Whole = NDArray[np.int64]

LOOK = 32
"""Steps of time between two looks at the wish to stop; our own choice."""

EQUAL = 1e-5
"""Sums of the same figures in another order differ by less; our own choice."""


class Ended(Exception):
    """The time is over, or somebody wants to stop, in the middle of a calculation."""


@dataclass(frozen=True)
class Steps:
    """One planter's jobs on a grid of time: all arrays by its own jobs, ``jobs`` their numbers.

    ``step[i, j]`` is the time from the end of i to the end of j, ``first`` that from the start of
    the season, ``earliest`` the first end in time for the release; all rounded down to the grid.
    ``arc``, ``leave`` and ``home`` are what the ways cost, and ``late[j, t]`` the lateness in
    cents of an end at grid time t, infinite where it may not be.
    """

    grid: int
    jobs: Whole
    step: Whole
    first: Whole
    earliest: Whole
    arc: Floats
    leave: Floats
    home: Floats
    late: Floats

    @property
    def times(self) -> int:
        """How many points of time the grid has."""
        return int(self.late.shape[1])


def steps_of(numbers: Numbers, planter: int, grid: int, last: Sequence[int], ways: bool) -> Steps:
    """Return a planter's jobs on a grid of ``grid`` minutes, in which no job ends after ``last``.

    Times are rounded down, so that every plan is still there and none costs more. ``ways`` says
    whether changes between jobs cost their minutes or nothing.
    """
    jobs = np.array([job for job in numbers.jobs if numbers.minutes[planter][job]], dtype=np.int64)
    change = np.array(numbers.change[planter], dtype=np.int64)
    minutes = np.array(numbers.minutes[planter], dtype=np.int64)[jobs]
    release = np.array(numbers.release, dtype=np.int64)[jobs]
    fixed = np.array([start or 0 for start in numbers.start], dtype=np.int64)[jobs]
    yard = numbers.yard
    first = (numbers.ready[planter] + change[yard, jobs] + minutes) // grid
    cost = change.astype(float) if ways else np.zeros(change.shape)
    return Steps(
        grid,
        jobs,
        (change[np.ix_(jobs, jobs)] + minutes) // grid,
        first,
        np.maximum(first, (np.maximum(release, fixed) + minutes) // grid),
        cost[np.ix_(jobs, jobs)],
        cost[yard, jobs],
        cost[jobs, yard],
        _late(numbers, jobs, grid, last),
    )


def _late(numbers: Numbers, jobs: Whole, grid: int, last: Sequence[int]) -> Floats:
    """Return the lateness of each job at each time, infinite after the last end allowed."""
    times = max((last[job] for job in jobs), default=0) // grid + 1
    ends = np.arange(times) * grid
    late = np.zeros((len(jobs), times))
    for row, job in enumerate(jobs):
        due = numbers.due[job]
        if due is not None:
            late[row] = numbers.cents[job] * np.maximum(0, (ends - 1) // numbers.day - due)
        late[row, ends > last[job]] = np.inf
    return late


@dataclass(frozen=True)
class Round:
    """Jobs in order by their row in the planter's steps, with cost of ways and of lateness."""

    jobs: tuple[int, ...]
    ways: float
    late: float


def round_of(steps: Steps, jobs: Sequence[int]) -> Round:
    """Return the round that does the given rows of jobs, as early as it can."""
    now = int(max(steps.first[jobs[0]], steps.earliest[jobs[0]]))
    ways, late = float(steps.leave[jobs[0]]), _at(steps, jobs[0], now)
    for come, go in pairwise(jobs):
        now = int(max(now + steps.step[come, go], steps.earliest[go]))
        ways += float(steps.arc[come, go])
        late += _at(steps, go, now)
    return Round(tuple(jobs), ways + float(steps.home[jobs[-1]]), late)


def _at(steps: Steps, job: int, now: int) -> float:
    return float(steps.late[job, now]) if now < steps.times else np.inf


class Rounds:
    """The states and ways of one planter; ``memory[j]`` are the jobs remembered at job j."""

    def __init__(self, steps: Steps) -> None:
        self.steps = steps
        self.memory: list[list[int]] = [[] for _ in steps.jobs]
        self.build()

    def build(self) -> None:
        """Lay out the states and the ways between them, after the memory has changed."""
        sizes = [1 << len(kept) for kept in self.memory]
        self._base = np.concatenate([[0], np.cumsum(sizes)]).astype(np.int64)
        self._job = np.repeat(np.arange(len(sizes)), sizes)
        found = list(self._ways())
        if found:
            come, go, source, target = (np.concatenate(each) for each in zip(*found, strict=True))
        else:
            come = go = source = target = np.zeros(0, dtype=np.int64)
        order = np.argsort(target, kind="stable")
        self._source, self._target = source[order], target[order]
        self._reached, self._starts = np.unique(self._target, return_index=True)
        self._step = self.steps.step[come[order], go[order]]
        self._arc = self.steps.arc[come[order], go[order]]
        self._pad = int(self._step.max(initial=1))
        self._index = (self._pad - self._step) * len(self._job) + self._source

    def _ways(self) -> Iterator[tuple[Whole, Whole, Whole, Whole]]:
        """Yield job and state on either side of the ways between two jobs."""
        steps = self.steps
        latest = steps.times - 1 - np.argmax(np.isfinite(steps.late[:, ::-1]), axis=1)
        for come, kept in enumerate(self.memory):
            states = np.arange(1 << len(kept))
            for go, wanted in enumerate(self.memory):
                end = max(steps.earliest[come] + steps.step[come, go], steps.earliest[go])
                if go == come or end > latest[go] or steps.earliest[come] > latest[come]:
                    continue
                free = states
                if go in kept:
                    free = states[(states >> kept.index(go)) & 1 == 0]
                new = np.zeros(len(free), dtype=np.int64)
                for bit, job in enumerate(wanted):
                    if job == come:
                        new |= 1 << bit
                    elif job in kept:
                        new |= ((free >> kept.index(job)) & 1) << bit
                ones = np.ones(len(free), dtype=np.int64)
                yield come * ones, go * ones, self._base[come] + free, self._base[go] + new

    @property
    def states(self) -> int:
        """How many states there are at each time."""
        return len(self._job)

    def allows(self, jobs: Sequence[int]) -> bool:
        """Tell whether a round forgets each job before it does it again."""
        remembered: set[int] = set()
        for job in jobs:
            if job in remembered:
                return False
            remembered = (remembered & set(self.memory[job])) | {job}
        return True

    def cheapest(
        self, worth: Floats, late_worth: float, stop: Callable[[], bool], most: int = 6
    ) -> tuple[float, list[Round]]:
        """Return the least cost of a round and up to ``most`` rounds that cost less than nothing.

        ``worth`` is what each own job done is worth, and ``late_worth`` what a cent of lateness
        costs. Every round costs its ways and lateness less what its jobs are worth; the empty
        round costs nothing. Raises Ended when ``stop`` says so.
        """
        if not len(self.steps.jobs):
            return 0.0, []
        ends = self._reach(worth, late_worth, stop)
        rounds: list[Round] = []
        taken: set[int] = set()
        for state in np.argsort(ends)[: 40 * most]:
            job = int(self._job[state])
            if ends[state] >= -EQUAL or len(rounds) == most:
                break
            if job not in taken:
                taken.add(job)
                rounds.append(round_of(self.steps, self._back(int(state))))
        return min(0.0, float(ends.min(initial=0.0))), rounds

    def _reach(self, worth: Floats, late_worth: float, stop: Callable[[], bool]) -> Floats:
        """Fill the table of least costs by time and state; return those of coming home."""
        steps, states, pad = self.steps, len(self._job), self._pad
        with np.errstate(invalid="ignore"):
            late = np.where(np.isinf(steps.late), np.inf, late_worth * steps.late)
        early = np.arange(steps.times)[None, :] < steps.earliest[:, None]
        self._gain = np.where(early, np.inf, late - worth[:, None])
        gain = np.ascontiguousarray(self._gain[self._job].T)
        table = self._table = np.full((pad + steps.times, states), np.inf)
        flat = table.ravel()
        begin = self._base[:-1]
        costly = bool(self._arc.any())
        reached = np.empty(len(self._index))
        for now in range(int(steps.first.min(initial=0)), steps.times):
            if now % LOOK == 0 and stop():
                raise Ended
            row = table[pad + now]
            if len(reached):
                flat[now * states :].take(self._index, out=reached, mode="clip")
                if costly:
                    np.add(reached, self._arc, out=reached)
                row[self._reached] = np.minimum.reduceat(reached, self._starts)
            first = np.where(steps.first <= now, steps.leave, np.inf)
            row[begin] = np.minimum(row[begin], first)
            row += gain[now]
            np.minimum(row, table[pad + now - 1], out=row)
        return np.asarray(table[-1] + steps.home[self._job])

    def _back(self, state: int) -> tuple[int, ...]:
        """Return the jobs of the cheapest round that ends in a state."""
        table, pad, now = self._table, self._pad, self.steps.times - 1
        jobs: list[int] = []
        while True:
            job, value = int(self._job[state]), table[pad + now, state]
            now = int(np.argmax(table[pad : pad + now + 1, state] <= value))
            jobs.append(job)
            left = value - self._gain[job, now]
            low, high = np.searchsorted(self._target, [state, state + 1])
            starts = state == self._base[job] and self.steps.first[job] <= now
            if starts and self.steps.leave[job] <= left + EQUAL:
                return tuple(reversed(jobs))
            before = table[pad + now - self._step[low:high], self._source[low:high]]
            best = low + int(np.argmin(before + self._arc[low:high]))
            now, state = now - int(self._step[best]), int(self._source[best])


def last_ends(numbers: Numbers, late: int, horizon: int) -> list[int]:
    """Return the last minute at which each job can end in a plan at most so late, in cents."""
    last = []
    for job in numbers.jobs:
        due, fixed = numbers.due[job], numbers.start[job]
        end = NEVER
        if due is not None and numbers.cents[job]:
            end = (due + 1 + late // numbers.cents[job]) * numbers.day
        if fixed is not None:
            most = max(numbers.minutes[planter][job] for planter in numbers.able(job))
            end = min(end, fixed + most)
        last.append(min(end, horizon))
    return last
