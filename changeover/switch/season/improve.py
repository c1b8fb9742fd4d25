"""Improve an order of a season by small changes at random, ever more choosy."""

import math
import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from changeover.switch.season.numbers import Cost, Numbers, Sequences


@dataclass(frozen=True)
class Stage:
    """How a stretch of annealing weighs: our own choice, by trial.

    ``warm`` and ``cold`` are how many minutes worse a change may make the order, first and last;
    ``late_day`` the minutes between jobs that one late day of the cheapest job counts;
    ``by_minute`` the share of it counted by the minute, which leads out of it step by step.
    """

    warm: float
    cold: float
    late_day: float
    by_minute: float


TO_BE_IN_TIME = Stage(800.0, 2.0, 300.0, by_minute=0.6)
TO_STAY_IN_TIME = Stage(400.0, 1.0, 300.0, by_minute=0.8)
TO_BE_LESS_LATE = Stage(2000.0, 3.0, 300.0, by_minute=0.5)
TO_BE_NEAR = Stage(60.0, 0.7, 60.0, by_minute=0.0)

PUSHED = 1000.0
"""What a minute past a fixed start counts in minutes, so that it never pays; our own choice."""

NEAR = 8
"""How many nearest jobs are tried as the one before; our own choice, by trial."""


class Improver:
    """Simulated annealing over the orders of a season, a stretch of turns at a time."""

    def __init__(self, numbers: Numbers, begin: Sequences, seed: int) -> None:
        self._numbers = numbers
        self._draw = random.Random(seed)  # noqa: S311 -- no secret hangs on it
        costs = [cents for cents in numbers.cents if cents]
        self._per_cent = 1 / min(costs) if costs else 0.0
        self._near = [_nearest(numbers, job) for job in numbers.jobs]
        self._now = begin
        self.best, self.best_cost = begin, numbers.cost(begin)

    def restart(self) -> None:
        """Go on from the best order."""
        self._now = self.best

    def offer(self, sequences: Sequences) -> None:
        """Take an order found elsewhere when it is better than the best."""
        cost = self._numbers.cost(sequences)
        if cost < self.best_cost:
            self.best, self.best_cost = sequences, cost

    def turns(self, count: int, cooled: float, stage: Stage = TO_BE_NEAR) -> None:
        """Try ``count`` changes; ``cooled`` is how far the stage is, 0 to 1."""
        heat = stage.warm * (stage.cold / stage.warm) ** min(1.0, cooled)
        weight_now = self._weight(self._now, stage)
        changes: Sequence[Callable[[], Sequences | None]] = (
            self._near_job,
            self._near_job,
            self._take,
            self._exchange,
            self._tails,
        )
        for _ in range(count):
            tried = self._draw.choice(changes)()
            if tried is None or tried == self._now:
                continue
            worse = self._worse(tried, weight_now, stage)
            if worse <= 0 or self._draw.random() < math.exp(-worse / heat):
                self._now = tried
                weight_now += worse
                cost = self._numbers.cost(tried)
                if cost < self.best_cost:
                    self.best, self.best_cost = tried, cost

    def _worse(self, tried: Sequences, weight_now: float, stage: Stage) -> float:
        """Return by how much an order weighs more; of planters apart only those that changed."""
        if self._numbers.shares_parts:
            return self._weight(tried, stage) - weight_now
        return sum(
            self._weight_alone(planter, new, stage) - self._weight_alone(planter, old, stage)
            for planter, (old, new) in enumerate(zip(self._now, tried, strict=True))
            if new is not old
        )

    def _weight(self, sequences: Sequences, stage: Stage) -> float:
        cost = self._numbers.cost(sequences)
        overdue = self._numbers.overdue(sequences) if stage.by_minute else 0.0
        return self._weighed(cost, overdue, stage)

    def _weight_alone(self, planter: int, jobs: tuple[int, ...], stage: Stage) -> float:
        known = self._numbers.alone(planter, jobs)
        return self._weighed(known.cost, known.overdue / self._numbers.day, stage)

    def _weighed(self, cost: Cost, overdue: float, stage: Stage) -> float:
        late = stage.by_minute * overdue + (1 - stage.by_minute) * cost.late
        days = stage.late_day * self._per_cent * late
        return PUSHED * cost.broken + days + cost.between

    def _near_job(self) -> Sequences | None:
        """Put a few jobs behind one from which the change is short."""
        job = self._draw.randrange(self._numbers.yard)
        target = self._draw.choice(self._near[job]) if self._near[job] else self._numbers.yard
        come, at = _place(self._now, job)
        jobs = self._now[come][at : at + self._draw.randint(1, 3)]
        if target in jobs:
            return None
        without = _without(self._now, come, at, len(jobs))
        if target == self._numbers.yard:
            return self._insert(without, self._draw.choice(self._numbers.planters), 0, jobs)
        go, behind = _place(without, target)
        return self._insert(without, go, behind + 1, jobs)

    def _take(self) -> Sequences | None:
        """Put a few jobs anywhere."""
        come, at = _place(self._now, self._draw.randrange(self._numbers.yard))
        jobs = self._now[come][at : at + self._draw.randint(1, 3)]
        without = _without(self._now, come, at, len(jobs))
        go = self._draw.choice(self._numbers.planters)
        return self._insert(without, go, self._draw.randint(0, len(without[go])), jobs)

    def _exchange(self) -> Sequences | None:
        """Exchange two jobs."""
        one, other = (self._draw.randrange(self._numbers.yard) for _ in range(2))
        places = {one: other, other: one}
        changed = tuple(
            tuple(places.get(job, job) for job in jobs) if one in jobs or other in jobs else jobs
            for jobs in self._now
        )
        minutes = self._numbers.minutes
        right = all(
            minutes[planter][job]
            for planter, jobs in enumerate(changed)
            for job in jobs
            if job in places
        )
        return changed if right else None

    def _tails(self) -> Sequences | None:
        """Exchange the rest of two planters' orders."""
        if len(self._now) < 2:
            return None
        one, other = self._draw.sample(self._numbers.planters, 2)
        cut = self._draw.randint(0, len(self._now[one]))
        other_cut = self._draw.randint(0, len(self._now[other]))
        changed = list(self._now)
        changed[one] = self._now[one][:cut] + self._now[other][other_cut:]
        changed[other] = self._now[other][:other_cut] + self._now[one][cut:]
        minutes = self._numbers.minutes
        right = all(minutes[planter][job] for planter in (one, other) for job in changed[planter])
        return tuple(changed) if right else None

    def _insert(
        self, sequences: Sequences, planter: int, at: int, jobs: tuple[int, ...]
    ) -> Sequences | None:
        if not all(self._numbers.minutes[planter][job] for job in jobs):
            return None
        own = sequences[planter]
        new = own[:at] + jobs + own[at:]
        return (*sequences[:planter], new, *sequences[planter + 1 :])


def _place(sequences: Sequences, job: int) -> tuple[int, int]:
    """Return the planter and the place in its order of a job."""
    for planter, jobs in enumerate(sequences):
        if job in jobs:
            return planter, jobs.index(job)
    raise KeyError(job)


def _without(sequences: Sequences, planter: int, at: int, count: int) -> Sequences:
    own = sequences[planter]
    return (*sequences[:planter], own[:at] + own[at + count :], *sequences[planter + 1 :])


def _nearest(numbers: Numbers, job: int) -> list[int]:
    """Return the jobs, or the yard, from which the change to a job is shortest."""
    able = numbers.able(job)
    others = [other for other in (*numbers.jobs, numbers.yard) if other != job]
    others.sort(key=lambda other: min(numbers.change[planter][other][job] for planter in able))
    return others[:NEAR]
