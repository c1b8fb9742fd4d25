"""A bound on the minutes between jobs that no plan of a season beats, by linear programming."""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from changeover.switch.search import Clock
from changeover.switch.season.numbers import NEVER, Numbers

CUT = 1e-6
"""How much less than 1 the way out of some stops must sum to, to be cut off."""

SCALE = 1_000_000
"""Whole units of flow for a way taken once."""


@dataclass(frozen=True)
class Tour:
    """Ways between stops: jobs, then the planters' yards; ``come``, ``go`` and ``minutes`` each."""

    stops: int
    come: NDArray[np.int64]
    go: NDArray[np.int64]
    minutes: NDArray[np.float64]


def tour_of(numbers: Numbers, late: int) -> Tour:
    """Return the round trip over all jobs and yards that every plan at most so late contains.

    Each way costs the least that any planter able to do both jobs takes for it. ``late`` is the
    cost of lateness allowed, in cents: it sets how late each job can end, and with that which
    job can come straight after which.
    """
    ways: list[tuple[int, int, int]] = []
    yards = [numbers.yard + planter for planter in numbers.planters]
    limits = [_limit(numbers, job, late) for job in numbers.jobs]
    for job in numbers.jobs:
        able = set(numbers.able(job))
        for other in numbers.jobs:
            steps = [
                numbers.change[planter][job][other]
                for planter in able & set(numbers.able(other))
                if other != job and _follows(numbers, planter, job, other, limits)
            ]
            if steps:
                ways.append((job, other, min(steps)))
        home = min(numbers.change[planter][job][numbers.yard] for planter in able)
        ways += [(job, yard, home) for yard in yards]
        ways += [(yards[p], job, numbers.change[p][numbers.yard][job]) for p in able]
    ways += [(one, other, 0) for one in yards for other in yards if one != other]
    come, go, minutes = np.array(ways, dtype=np.int64).reshape(-1, 3).T
    return Tour(numbers.yard + len(yards), come, go, minutes.astype(float))


def _limit(numbers: Numbers, job: int, late: int) -> int:
    """Return the last minute at which a job can end in a plan at most so late."""
    due = numbers.due[job]
    if due is None or not numbers.cents[job]:
        return NEVER
    return (due + 1 + late // numbers.cents[job]) * numbers.day


def _follows(numbers: Numbers, planter: int, job: int, other: int, limits: list[int]) -> bool:
    """Tell whether a job can come straight after another on a planter, in time."""
    minutes, begin = numbers.minutes[planter], max(numbers.release[job], numbers.ready[planter])
    begin = max(begin + minutes[job] + numbers.change[planter][job][other], numbers.release[other])
    return begin + minutes[other] <= limits[other]


def least_between(numbers: Numbers, late: int, clock: Clock, until: float) -> int:
    """Return a proven least number of minutes between jobs of any plan at most so late.

    Every stop is left and reached once, and every group of stops is left at least once; groups
    that a solution does not leave are found by least cuts and added until none is left, or the
    time is over (Dantzig, Fulkerson & Johnson 1954).
    """
    from scipy.optimize import linprog
    from scipy.sparse import csr_array

    tour = tour_of(numbers, late)
    count = len(tour.minutes)
    index = np.arange(count)
    ones = np.ones(count)
    shape = (tour.stops, count)
    leave = csr_array((ones, (tour.come, index)), shape=shape)
    reach = csr_array((ones, (tour.go, index)), shape=shape)
    from scipy.sparse import vstack

    once_each: Any = vstack([leave, reach])
    cuts: list[NDArray[np.float64]] = []
    least = np.full(tour.stops, np.inf)
    np.minimum.at(least, tour.go, tour.minutes)
    best = int(least[np.isfinite(least)].sum())
    while not clock.tick(None, float(best)):
        left: Any = -csr_array(np.array(cuts)) if cuts else None
        solved: Any = linprog(
            tour.minutes,
            A_ub=left,
            b_ub=-np.ones(len(cuts)) if cuts else None,
            A_eq=once_each,
            b_eq=np.ones(2 * tour.stops),
            bounds=(0, 1),
            method="highs",
            options={"time_limit": max(0.1, until - clock.spent)},
        )
        if solved.status != 0:
            break
        best = max(best, int(np.ceil(solved.fun * (1 - 1e-7) - 1e-4)))
        new = _groups_not_left(tour, solved.x)
        if not new or clock.spent > until:
            break
        cuts += new
    return best


def _groups_not_left(tour: Tour, taken: NDArray[np.float64]) -> list[NDArray[np.float64]]:
    """Return for each group of stops that is left less than once the ways out of it, as 0 or 1."""
    from scipy.sparse import csr_array
    from scipy.sparse.csgraph import connected_components

    used = taken > CUT
    flow = csr_array(
        (np.rint(taken[used] * SCALE).astype(np.int32), (tour.come[used], tour.go[used])),
        shape=(tour.stops, tour.stops),
    )
    found, names = connected_components(flow, directed=True, connection="strong")
    groups = [names == name for name in range(found)] if found > 1 else _least_cuts(tour, flow)
    rows = {}
    for group in groups:
        out = group[tour.come] & ~group[tour.go]
        if taken[out].sum() < 1 - CUT:
            rows[group.tobytes()] = out.astype(float)
    return list(rows.values())


def _least_cuts(tour: Tour, flow: Any) -> list[NDArray[np.bool_]]:
    """Return the groups of stops on the first stop's side of a least cut from it to each other."""
    from scipy.sparse.csgraph import breadth_first_order, maximum_flow

    groups = []
    for stop in range(1, tour.stops):
        for source, sink in ((0, stop), (stop, 0)):
            best = maximum_flow(flow, source, sink)
            if best.flow_value < SCALE * (1 - 1e-4):
                rest = flow - best.flow
                rest.data = np.maximum(rest.data, 0)
                rest.eliminate_zeros()
                inside = breadth_first_order(rest, source, return_predecessors=False)
                group = np.zeros(tour.stops, dtype=bool)
                group[inside] = True
                groups.append(group)
    return groups
