"""A bound that no plan of a season beats, from the cheapest rounds of its planters.

That each job is done once is left out and paid for instead: each job is worth something, and
what the planters' cheapest rounds cost then, with the worth of all jobs, is a bound whatever the
worth (Lagrangian relaxation: Geoffrion 1974). The worth comes from a linear programme over the
rounds found so far (column generation: Dantzig & Wolfe 1960), kept in a box around the best worth
so far (Marsten, Hogan & Blankenship 1975, "The boxstep method"). Where its rounds do a job twice,
they are made to remember it (Roberti & Mingozzi 2014, "Dynamic ng-path relaxation"). All cited
from memory.
"""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from changeover.switch.season.numbers import Numbers, Sequences
from changeover.switch.season.rounds import (
    Ended,
    Floats,
    Round,
    Rounds,
    last_ends,
    round_of,
    steps_of,
)

CLOSE = 1e-3
"""A share of the cost; the worth is good enough when it could rise by less. Our own choice."""

MEMORY = 7
"""How many jobs are remembered at a job at most; our own choice, by trial."""

TIMES = 400
"""Points of time on the first grid; our own choice, by trial."""

KEPT = 1200
"""How many rounds the linear programme holds at most; our own choice, by trial."""


@dataclass(frozen=True)
class Asked:
    """What is bounded: lateness in cents, or the minutes of the ways of plans ``late`` at most.

    ``late`` is the lateness allowed in cents, ``horizon`` a minute by which the plans are over,
    or, where lateness is bounded, any minute: what ends after it costs what it costs then.
    ``grid`` and ``finest`` are the minutes to which times are rounded down, first and last.
    """

    ways: bool
    late: int
    horizon: int
    grid: int
    finest: int


@dataclass
class Relaxation:
    """The bound as it grows: ``bound`` is proven at any moment.

    ``found`` is told of every round by planter and jobs, so that it can be used in a plan.
    """

    numbers: Numbers
    asked: Asked
    stop: Callable[[], bool]
    tell: Callable[[float], None]
    bound: float = 0.0
    rounds: list[Rounds] = field(default_factory=list)
    worth: Floats = field(default_factory=lambda: np.zeros(0))
    _columns: dict[tuple[int, tuple[int, ...]], Round] = field(default_factory=dict)
    _width: float = 0.0
    _near: float = -np.inf
    _grid: int = 1

    def begin(self, plan: Sequences) -> None:
        """Begin with the rounds of a plan, and with what each job saves where it is left out."""
        self._lay_out(self.asked.grid)
        self.worth = np.zeros(self._rows)
        for planter, jobs in enumerate(plan):
            steps = self.rounds[planter].steps
            own = {int(job): row for row, job in enumerate(steps.jobs)}
            rows = tuple(own[job] for job in jobs)
            if rows:
                whole_round = round_of(steps, rows)
                self._add(planter, whole_round)
                for row in rows:
                    rest = tuple(other for other in rows if other != row)
                    less = self._cost(round_of(steps, rest)) if rest else 0.0
                    self.worth[steps.jobs[row]] = max(0.0, self._cost(whole_round) - less)
        cost, saved = self._cost_of_all(), float(self.worth.sum())
        if np.isfinite(saved) and saved > 0:
            self.worth *= cost / saved
        else:
            self.worth[:] = 0.0
        self.worth = np.minimum(self.worth, self._most)
        self._width = max(1.0, cost / self._rows)

    def refine(self, grid: int) -> None:
        """Go on with a finer grid of time, from the worth and the rounds found so far."""
        memory = [rounds.memory for rounds in self.rounds]
        columns, self._columns = self._columns, {}
        self._lay_out(grid)
        for rounds, kept in zip(self.rounds, memory, strict=True):
            rounds.memory = kept
            rounds.build()
        for planter, jobs in columns:
            self._add(planter, round_of(self.rounds[planter].steps, jobs))

    def _lay_out(self, grid: int) -> None:
        asked, numbers, self._grid = self.asked, self.numbers, grid
        last = last_ends(numbers, asked.late, asked.horizon)
        self.rounds = [
            Rounds(steps_of(numbers, planter, grid, last, asked.ways))
            for planter in numbers.planters
        ]

    @property
    def _rows(self) -> int:
        """Jobs, and a row for the lateness of all when it is limited and not forbidden."""
        return self.numbers.yard + int(self._limited)

    @property
    def _limited(self) -> bool:
        return self.asked.ways and self.asked.late > 0

    def _cost(self, each: Round) -> float:
        return each.ways if self.asked.ways else each.late

    def _cost_of_all(self) -> float:
        return sum(self._cost(each) for each in self._columns.values())

    def _add(self, planter: int, each: Round) -> None:
        if np.isfinite(each.late):
            self._columns[planter, each.jobs] = each

    def run(self) -> None:
        """Raise the bound until nothing is left to raise, the time is over, or it is stopped.

        Each time the worth has come to its end, more is remembered, and the grid made finer.
        """
        try:
            while True:
                self._raise_worth()
                more = self._remember()
                if self._grid > self.asked.finest:
                    self.refine(max(self.asked.finest, self._grid // 2))
                elif not more:
                    return
        except Ended:
            return

    def _raise_worth(self) -> None:
        """Raise the bound with the rounds as they are, to its end."""
        self._near = self._price(self.worth)
        while True:
            most, worth, inside = self._master()
            close = CLOSE * max(1.0, abs(most))
            if most - self._near <= close and inside:
                return
            value = self._price(worth)
            if value > self._near:
                self._near, self.worth = value, worth
                if most - value <= close:
                    self._width *= 2
            else:
                self._width *= 0.85
            if len(self._columns) > KEPT:
                self._forget(worth)

    def _price(self, worth: Floats) -> float:
        """Return the bound that a worth of the jobs proves, keeping the rounds found for it."""
        jobs = self.numbers.yard
        late_worth = -worth[jobs] if self._limited else float(not self.asked.ways)
        total = float(worth[:jobs].sum())
        if self._limited:
            total += float(worth[jobs]) * self.asked.late
        for planter, rounds in enumerate(self.rounds):
            least, found = rounds.cheapest(worth[rounds.steps.jobs], late_worth, self.stop)
            total += least
            for each in found:
                self._add(planter, each)
        self.bound = max(self.bound, total)
        self.tell(self.bound)
        return total

    def _master(self) -> tuple[float, Floats, bool]:
        """Return the most that worth in the box could prove, that worth, and if it is inside."""
        from scipy.optimize import linprog
        from scipy.sparse import csc_array

        rows, planters = self._rows, len(self.rounds)
        table, costs = self._table()
        low = np.minimum(self.worth - self._widths, self._most)
        high = np.minimum(self.worth + self._widths, self._most)
        spare = np.eye(rows + planters)[:, :rows]
        extra = [spare, -spare, np.eye(rows + planters)[:, self.numbers.yard :]]
        right = np.concatenate([np.ones(self.numbers.yard), *self._right, np.ones(planters)])
        programme: Any = linprog
        solved = programme(
            np.concatenate([costs, high, -low, np.zeros(planters + rows - self.numbers.yard)]),
            A_eq=csc_array(np.hstack([table, *extra])),
            b_eq=right,
            method="highs-ds",
        )
        if self.stop() or solved.status != 0:
            raise Ended
        count = len(costs)
        self._shares = solved.x[:count]
        worth = np.clip(solved.eqlin.marginals[:rows], low, high)
        if self._limited:
            worth[-1] = min(0.0, worth[-1])
        bought = solved.x[count : count + 2 * rows].reshape(2, -1)[:, high > low]
        bought[0, (high == self._most)[high > low]] = 0.0
        return float(solved.fun), worth, bool(bought.max(initial=0.0) < CLOSE)

    @property
    def _most(self) -> Floats:
        """Return what each job may be worth at most: its lateness when it ends after the horizon.

        Jobs that end after it are the last of their rounds, so that leaving them out leaves the
        rest of the plan as it was; each then costs at least that.
        """
        most = np.full(self._rows, np.inf)
        if not self.asked.ways:
            for job, (due, cents) in enumerate(
                zip(self.numbers.due, self.numbers.cents, strict=True)
            ):
                days = self.asked.horizon // self.numbers.day - due if due is not None else 0
                most[job] = cents * max(0, days)
        return most

    @property
    def _right(self) -> Iterator[Floats]:
        if self._limited:
            yield np.array([float(self.asked.late)])

    @property
    def _widths(self) -> Floats:
        """How far the worth of each job may go from the best."""
        widths = np.full(self._rows, self._width)
        if self._limited:
            widths[-1] = self._width / min(cents for cents in self.numbers.cents if cents)
        return widths

    def _table(self) -> tuple[Floats, Floats]:
        """Return for each round found how often it does each job, its lateness and its planter."""
        rows = self._rows
        table = np.zeros((rows + len(self.rounds), len(self._columns)))
        for column, ((planter, jobs), each) in enumerate(self._columns.items()):
            np.add.at(table[:, column], self.rounds[planter].steps.jobs[list(jobs)], 1.0)
            if self._limited:
                table[rows - 1, column] = each.late
            table[rows + planter, column] = 1.0
        return table, np.array([self._cost(each) for each in self._columns.values()])

    def _forget(self, worth: Floats) -> None:
        """Keep the better half of the rounds."""
        table, costs = self._table()
        left = costs - worth @ table[: self._rows]
        left -= np.where(self._shares_now(len(costs)) > 0, np.inf, 0.0)
        keep = set(np.argsort(left)[: KEPT // 2].tolist())
        items = list(self._columns.items())
        self._columns = dict(item for number, item in enumerate(items) if number in keep)

    def _shares_now(self, count: int) -> Floats:
        return np.concatenate([self._shares, np.zeros(count - len(self._shares))])

    def _remember(self) -> bool:
        """Let the planters remember the jobs that their rounds do twice; tell if there are any."""
        cycles: list[tuple[int, float, int, tuple[int, ...]]] = []
        shares = self._shares_now(len(self._columns))
        for share, (planter, jobs) in zip(shares, self._columns, strict=True):
            if share > CLOSE:
                cycles += [(len(each), -share, planter, each) for each in _cycles(jobs)]
        grown = [self._grow(planter, jobs) for _, _, planter, jobs in sorted(cycles)]
        if not any(grown):
            return False
        for rounds in self.rounds:
            rounds.build()
        columns, self._columns = self._columns, {}
        for (planter, jobs), each in columns.items():
            if self.rounds[planter].allows(jobs):
                self._add(planter, each)
            else:
                once = tuple(dict.fromkeys(jobs))
                self._add(planter, round_of(self.rounds[planter].steps, once))
        return True

    def _grow(self, planter: int, cycle: Sequence[int]) -> bool:
        """Let a planter remember the first job of a cycle at the others, if there is room."""
        memory, job = self.rounds[planter].memory, cycle[0]
        missing = [other for other in set(cycle[1:]) if job not in memory[other]]
        if not missing or any(len(memory[other]) >= MEMORY for other in missing):
            return False
        for other in missing:
            memory[other].append(job)
        return True


def _cycles(jobs: Sequence[int]) -> Iterator[tuple[int, ...]]:
    """Yield the parts of a round from a job to before the same job again."""
    seen: dict[int, int] = {}
    for place, job in enumerate(jobs):
        if job in seen:
            yield tuple(jobs[seen[job] : place])
        seen[job] = place


def asked_of(numbers: Numbers, late: int, ways: bool, horizon: int) -> Asked:
    """Return what to ask for plans that are at most ``late`` cents late, with a grid to begin with.

    ``horizon`` is that of Asked. Lateness wants the time to the minute in the end, ways do not.
    """
    grid = max(1, max(last_ends(numbers, late, horizon)) // TIMES)
    return Asked(ways, late, horizon, grid, grid if ways else 1)


def late_unit(numbers: Numbers) -> int:
    """Return the cents of which every cost of lateness is a multiple."""
    return math.gcd(*numbers.cents) or 1


def whole(bound: float, unit: int) -> int:
    """Return the least multiple of a unit not under a bound, allowing for rounding."""
    return math.ceil((bound - 1e-6 * abs(bound) - 1e-4) / unit) * unit
