"""A season as plain numbers, and the times, lateness and minutes between jobs of an order."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import NamedTuple

from changeover.switch.season.model import YARD, Order, Season, Slot

CENTS = 100
"""Costs are reckoned in hundredths of a unit, so that the solver's whole numbers hold them."""

Sequences = tuple[tuple[int, ...], ...]
"""For each planter the indexes of its jobs in order."""


class Cost(NamedTuple):
    """What an order costs, worst first: minutes past fixed starts, lateness in cents, minutes."""

    broken: int
    late: int
    between: int


class Known(NamedTuple):
    """What one planter's order costs by itself, the sets of parts it needs, and ``overdue``.

    ``overdue`` is lateness counted by the minute: cents a day times minutes after due.
    """

    cost: Cost
    parts: frozenset[str]
    overdue: int


class Placed(NamedTuple):
    """A job with its start and end in minutes of work."""

    job: int
    start: int
    end: int


@dataclass
class Numbers:
    """A season in whole numbers: jobs and planters by index, the yard as the last job index.

    ``minutes[p][j]`` is 0 where planter p cannot do job j; ``change[p][i][j]`` is switch + move.
    """

    season: Season
    day: int
    minutes: list[list[int]]
    change: list[list[list[int]]]
    ready: list[int]
    release: list[int]
    due: list[int | None]
    cents: list[int]
    start: list[int | None]
    parts: list[frozenset[str]]
    _known: dict[tuple[int, tuple[int, ...]], Known] = field(default_factory=dict)

    @property
    def jobs(self) -> range:
        return range(len(self.release))

    @property
    def planters(self) -> range:
        return range(len(self.ready))

    @property
    def yard(self) -> int:
        return len(self.release)

    @cached_property
    def shares_parts(self) -> bool:
        """Whether two jobs that could be on two planters need the same set of parts."""
        names = [name for parts in self.parts for name in parts]
        return len(self.ready) > 1 and len(names) > len(set(names))

    def able(self, job: int) -> list[int]:
        """Return the planters that can do a job."""
        return [planter for planter in self.planters if self.minutes[planter][job]]

    def late(self, job: int, end: int) -> int:
        """Return the cost in cents of a job that ends at a minute of work."""
        due = self.due[job]
        if due is None or not self.cents[job]:
            return 0
        return self.cents[job] * max(0, (end - 1) // self.day - due)

    def cost(self, sequences: Sequences) -> Cost:
        """Return the cost of an order.

        Planters are reckoned apart and from memory, but those that share a set of parts together.
        """
        known = [self.alone(planter, jobs) for planter, jobs in enumerate(sequences)]
        together = self._together([each.parts for each in known]) if self.shares_parts else ()
        costs = [each.cost for planter, each in enumerate(known) if planter not in together]
        if together:
            some = tuple(
                jobs if planter in together else () for planter, jobs in enumerate(sequences)
            )
            costs.append(self._cost_of(self.placed(some)))
        return Cost(*(sum(each) for each in zip(*costs, strict=True)))

    def overdue(self, sequences: Sequences) -> float:
        """Return lateness counted by the minute, in cents, each planter by itself."""
        known = (self.alone(planter, jobs) for planter, jobs in enumerate(sequences))
        return sum(each.overdue for each in known) / self.day

    def _together(self, names: Sequence[frozenset[str]]) -> set[int]:
        """Return the planters that have a set of parts in common with another."""
        together = set()
        for planter, one in enumerate(names):
            for other in range(planter):
                if one & names[other]:
                    together |= {planter, other}
        return together

    def alone(self, planter: int, jobs: tuple[int, ...]) -> Known:
        """Return what one planter's order costs by itself."""
        key = (planter, jobs)
        known = self._known.get(key)
        if known is None:
            if len(self._known) > KNOWN:
                self._known.clear()
            cost, overdue = self._run(planter, jobs)
            names = frozenset(name for job in jobs for name in self.parts[job])
            known = self._known[key] = Known(cost, names, overdue)
        return known

    def _run(self, planter: int, jobs: tuple[int, ...]) -> tuple[Cost, int]:
        """Run through one planter's order; short steps, since it runs very often."""
        change, minutes, release, limit = (
            self.change[planter], self.minutes[planter], self.release, self._limits
        )  # fmt: skip
        now, steps = self.ready[planter], change[self.yard]
        broken = late = between = overdue = 0
        for job in jobs:
            step = steps[job]
            between += step
            now += step
            if now < release[job]:
                now = release[job]
            if (fixed := self.start[job]) is not None:
                broken += max(0, now - fixed)
                now = max(now, fixed)
            now += minutes[job]
            if now > limit[job]:
                late += self.late(job, now)
                overdue += self.cents[job] * (now - limit[job])
            steps = change[job]
        return Cost(broken, late, between + steps[self.yard]), overdue

    @cached_property
    def _limits(self) -> list[int]:
        """The minute of work at which each job has to end so as not to be late."""
        return [NEVER if due is None else (due + 1) * self.day for due in self.due]

    def _cost_of(self, placed: Sequence[Sequence[Placed]]) -> Cost:
        broken = late = between = 0
        for planter, row in enumerate(placed):
            here = self.yard
            for job, start, end in row:
                fixed = self.start[job]
                broken += start - fixed if fixed is not None else 0
                late += self.late(job, end)
                between += self.change[planter][here][job]
                here = job
            between += self.change[planter][here][self.yard]
        return Cost(broken, late, between)

    def placed(self, sequences: Sequences) -> list[list[Placed]]:
        """Return the times of all jobs: each as early as its planter and its parts allow.

        Of the next jobs of the planters, the one that can begin first gets the shared parts.
        """
        placed: list[list[Placed]] = [[] for _ in sequences]
        held: dict[str, list[tuple[int, int, int]]] = {}
        now = list(self.ready)
        for _ in range(sum(len(jobs) for jobs in sequences)):
            start, planter = min(
                (self._start(planter, sequences[planter], placed[planter], now, held), planter)
                for planter in self.planters
                if len(placed[planter]) < len(sequences[planter])
            )
            job = sequences[planter][len(placed[planter])]
            end = start + self.minutes[planter][job]
            placed[planter].append(Placed(job, start, end))
            now[planter] = end
            for name in self.parts[job]:
                days = (start // self.day, (end - 1) // self.day, planter)
                held.setdefault(name, []).append(days)
        return placed

    def _start(
        self,
        planter: int,
        jobs: tuple[int, ...],
        placed: Sequence[Placed],
        now: Sequence[int],
        held: dict[str, list[tuple[int, int, int]]],
    ) -> int:
        job = jobs[len(placed)]
        here = placed[-1].job if placed else self.yard
        start = max(now[planter] + self.change[planter][here][job], self.release[job])
        start = max(start, self.start[job] or 0)
        taken = [each for name in self.parts[job] for each in held.get(name, ())]
        moved = bool(taken)
        while moved:
            moved = False
            last = (start + self.minutes[planter][job] - 1) // self.day
            for begin, end, other in taken:
                if other != planter and begin <= last and start // self.day <= end:
                    start, moved = (end + 1) * self.day, True
        return start


NEVER = 2**40
"""A minute after every end."""

KNOWN = 200_000
"""How many costs of one planter's order are kept; some 50 MB."""


def numbers_of(season: Season) -> Numbers:
    """Return a season in whole numbers, fixed jobs left only the planter they are fixed on."""
    keys = [*(job.key for job in season.jobs), YARD]
    fixed = {each.job: each for each in season.fixed}
    day = season.minutes_per_day
    return Numbers(
        season=season,
        day=day,
        minutes=[
            [
                job.minutes.get(planter.name, 0)
                if job.key not in fixed or fixed[job.key].planter == planter.name
                else 0
                for job in season.jobs
            ]
            for planter in season.planters
        ],
        change=[
            [
                [
                    planter.switch.get((come, go), 0) + planter.move.get((come, go), 0)
                    if come != go
                    else 0
                    for go in keys
                ]
                for come in keys
            ]
            for planter in season.planters
        ],
        ready=[max(planter.ready, season.today) * day for planter in season.planters],
        release=[max(job.release, season.today) * day for job in season.jobs],
        due=[job.due for job in season.jobs],
        cents=[round(CENTS * job.late_cost) for job in season.jobs],
        start=[fixed[job.key].start if job.key in fixed else None for job in season.jobs],
        parts=[job.parts for job in season.jobs],
    )


def order_of(numbers: Numbers, placed: Sequence[Sequence[Placed]]) -> Order:
    """Return placed jobs as slots with names, days, switches and moves."""
    season = numbers.season
    slots: list[Slot] = []
    switch = move = 0
    for planter, row in zip(season.planters, placed, strict=True):
        here = YARD
        for job_index, start, end in row:
            job = season.jobs[job_index]
            pair = (here, job.key)
            last = (end - 1) // numbers.day
            late = max(0, last - job.due) if job.due is not None else 0
            slots.append(
                Slot(
                    job.key,
                    planter.name,
                    start,
                    end,
                    start // numbers.day,
                    last,
                    planter.switch.get(pair, 0),
                    planter.move.get(pair, 0),
                    late,
                    late * numbers.cents[job_index] / CENTS,
                )
            )
            here = job.key
        if row:
            switch += planter.switch.get((here, YARD), 0)
            move += planter.move.get((here, YARD), 0)
    return Order(
        tuple(slots),
        sum(slot.late_cost for slot in slots),
        switch + sum(slot.switch for slot in slots),
        move + sum(slot.move for slot in slots),
    )
