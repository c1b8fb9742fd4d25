"""How many cells a bench run needs to tell a good meter from a bad one, by exact binomials."""

from dataclasses import dataclass
from functools import lru_cache
from math import ceil, log, log1p, sqrt
from statistics import NormalDist

import numpy as np

from changeover.proof.exact import binomial_probabilities
from changeover.quantities import Refusal

MOST_CELLS = 20_000
STEPS_TO_SETTLE = 3  # rises of the alarm count with the power kept: then the run is settled


@dataclass(frozen=True)
class RunPlan:
    """A bench run's plan: cells for each row, and the count of events that raises the alarm."""

    cells: int
    alarm_at: int
    false_alarm: float
    power: float


def alarm_count(cells: int, good: float, false_alarm: float) -> int:
    """Return the least count that a good meter reaches with probability at most ``false_alarm``.

    ``good`` is the share of events of a good meter, 0 to 1.
    """
    reach = np.cumsum(binomial_probabilities(cells, good)[::-1])[::-1]
    return int(np.argmax(np.append(reach, 0.0) <= false_alarm))


@lru_cache(maxsize=256)
def plan_run(
    good: float, bad: float, rows: int = 1, power: float = 0.8, false_alarm: float = 0.05
) -> RunPlan:
    """Return the least cells from which every run tells share ``bad`` from ``good``.

    One-sided; the false-alarm rate is divided by the number of rows (Bonferroni), so that it
    holds for the whole planter. The power of an exact test falls at each step of the alarm
    count, so a shorter run may reach it by luck: the plan is the least run above which none
    falls short. Raises Refusal unless 0 <= good < bad < 1, or above 20 000 cells.
    """
    _check(good, bad, rows, power, false_alarm)
    each = false_alarm / rows
    if good == 0:  # one event is then proof enough, at any number of cells
        return _plan(ceil(log(1 - power) / log1p(-bad)), good, bad, each)
    about = _about(good, bad, power, each)
    if about > MOST_CELLS:
        raise Refusal(f"Telling {bad:.2%} from {good:.2%} needs over {MOST_CELLS} cells a row.")
    return _plan(_last_short(good, bad, power, each, about) + 1, good, bad, each)


def _about(good: float, bad: float, power: float, each: float) -> float:
    """The cells needed by the normal approximation, which shows where to look."""
    quantile = NormalDist().inv_cdf
    spread = quantile(1 - each) * sqrt(good * (1 - good)) + quantile(power) * sqrt(bad * (1 - bad))
    return (spread / (bad - good)) ** 2


def _last_short(good: float, bad: float, power: float, each: float, about: float) -> int:
    """The longest run that still falls short, followed from where all do to where none does."""
    cells = int(about / 2)
    while cells and _reached(cells, alarm_count(cells, good, each), bad) >= power:
        cells //= 2
    alarm, last, steps = alarm_count(cells, good, each), cells, 0
    while steps < STEPS_TO_SETTLE:
        cells += 1
        before, alarm = alarm, _next_alarm(cells, alarm, good, each)
        if _reached(cells, alarm, bad) < power:
            last, steps = cells, 0
        elif alarm != before:
            steps += 1
    return last


def _next_alarm(cells: int, alarm: int, good: float, each: float) -> int:
    """One more cell raises the alarm count by one or not at all."""
    return alarm + 1 if _reached(cells, alarm, good) > each else alarm


def _reached(cells: int, alarm: int, share: float) -> float:
    """The probability of at least ``alarm`` events."""
    from scipy.special import bdtrc

    return 1.0 if alarm < 1 else float(bdtrc(alarm - 1, cells, share))


def _plan(cells: int, good: float, bad: float, each: float) -> RunPlan:
    alarm = alarm_count(cells, good, each)
    return RunPlan(cells, alarm, _reached(cells, alarm, good), _reached(cells, alarm, bad))


def _check(good: float, bad: float, rows: int, power: float, false_alarm: float) -> None:
    if not 0 <= good < bad < 1:
        raise Refusal("The share of a bad meter must lie above that of a good one, both in 0 to 1.")
    if rows < 1 or not 0.5 <= power < 1 or not 0 < false_alarm <= 0.5:
        raise Refusal("A plan needs 1 row or more, a power from 50 % and a false alarm up to 50 %.")
