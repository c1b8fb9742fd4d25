"""Depth digs: mean and interval by row, share in tolerance, notch change, digs still needed."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import ceil, sqrt

import numpy as np

from changeover.proof.bench import Standing
from changeover.proof.intervals import Floats, Interval, mean_interval, student_quantile, wilson
from changeover.quantities import Q, Quantity, Refusal, check_kind

WANTED = Q(0.125, "in")  # ± an eighth of an inch on the mean: common practice, no source
MOST_DIGS = 10_000
DEEPEST = Q(12.0, "in")


@dataclass(frozen=True)
class DepthGoal:
    """The depth wanted, how far a seed may lie from it, and the share that must lie within.

    One provincial standard, DB32/T 1023-2007, asks for 80 % in tolerance; ``share_least`` is the
    user's, None where there is none.
    """

    target: Quantity
    tolerance: Quantity
    share_least: float | None = None

    def __post_init__(self) -> None:
        check_kind(self.target, "depth", "The target depth")
        check_kind(self.tolerance, "depth", "The tolerance of depth")
        if not 0 < self.target.to("in").magnitude <= DEEPEST.magnitude:
            raise Refusal("The target depth must be above 0 and at most 12 in.")
        if not 0 < self.tolerance.to("in").magnitude <= DEEPEST.magnitude:
            raise Refusal("The tolerance of depth must be above 0 and at most 12 in.")
        if self.share_least is not None and not 0 <= self.share_least <= 1:
            raise Refusal("The share wanted in tolerance must be from 0 to 100 %.")


@dataclass(frozen=True)
class DepthDigs:
    """What the digs of one row say; depths are quantities, shares 0 to 1.

    ``interval`` bounds the mean, in the unit of ``mean``, ``digs_needed`` says how many more bring
    the mean within an eighth of an inch (both None for one dig); ``share_interval`` bounds the
    share of digs in tolerance (None without a goal); ``standing`` is that of the mean to target ±
    tolerance, ``share_standing`` that of the share.
    """

    row: int
    n: int
    mean: Quantity
    sd: Quantity | None
    interval: Interval | None
    in_tolerance: float | None
    share_interval: Interval | None
    digs_needed: int | None
    standing: Standing
    share_standing: Standing


def judge_depth(
    row: int, depths: Quantity, goal: DepthGoal | None = None, level: float = 0.95
) -> DepthDigs:
    """Return the verdict on one row's digs, an array of depths; without a goal nothing is judged.

    Raises Refusal without digs, or for a depth outside 0 to 12 in.
    """
    unit = str(depths.units)
    x = np.atleast_1d(np.asarray(depths.magnitude, dtype=np.float64))
    _check(row, x, float(DEEPEST.to(unit).magnitude))
    interval = mean_interval(x, level)
    inside = None if goal is None else _inside(x, goal, unit)
    share = None if inside is None else wilson(inside, x.size, level)
    sd = float(x.std(ddof=1)) if x.size > 1 else None
    return DepthDigs(
        row=row,
        n=x.size,
        mean=Q(float(x.mean()), unit),
        sd=None if sd is None else Q(sd, unit),
        interval=interval,
        in_tolerance=None if inside is None else inside / x.size,
        share_interval=share,
        digs_needed=None if sd is None else _more(x.size, Q(sd, unit), level),
        standing=_standing(interval, goal, unit),
        share_standing=_share_standing(share, goal),
    )


def judge_depths(
    rows: Mapping[int, Quantity], goal: DepthGoal | None = None, level: float = 0.95
) -> tuple[DepthDigs, ...]:
    """Return the verdict on every row, in order of row. Raises Refusal when there are none."""
    if not rows:
        raise Refusal("There are no depth digs; enter at least one row.")
    return tuple(judge_depth(row, rows[row], goal, level) for row in sorted(rows))


def digs_for(sd: Quantity, within: Quantity = WANTED, level: float = 0.95) -> int:
    """Return the digs after which the mean is known to ± ``within``, both lengths.

    The least n with t·s/√n at most ``within``, t with n − 1 degrees of freedom. Raises Refusal
    when the spread is so wide that 10 000 digs would not do.
    """
    s = float((sd / within).to("count").magnitude)
    n = 2
    while student_quantile(level, n - 1) * s / sqrt(n) > 1:
        n = max(n + 1, ceil(n * 1.02))
        if n > MOST_DIGS:
            raise Refusal("The depths scatter too widely to fix a mean; look for a loose row unit.")
    while n > 2 and student_quantile(level, n - 2) * s / sqrt(n - 1) <= 1:
        n -= 1
    return n


def notch_change(digs: DepthDigs, target: Quantity, step: Quantity) -> int | None:
    """Return the notches to go deeper (above 0) or shallower, by that row's depth per notch.

    ``step`` is the depth between notches, a length. 0 when the mean lies within half a step of
    the target; None when the digs are too few or too scattered to say: the interval of the mean
    then spans more than the change proposed. Raises Refusal for a step not above zero.
    """
    size = float(step.to("in").magnitude)
    if not size > 0:
        raise Refusal("The depth between notches must be above zero.")
    if digs.interval is None:
        return None
    off = float((target - digs.mean).to("in").magnitude)
    change = _nearest(off / size)
    half = float(Q(digs.interval.width / 2, digs.mean.units).to("in").magnitude)
    return change if change == 0 or half < abs(off) else None


def _nearest(steps: float) -> int:
    return ceil(abs(steps) - 0.5 - 1e-9) * (1 if steps > 0 else -1)


def _more(n: int, sd: Quantity, level: float) -> int:
    return max(0, digs_for(sd, WANTED, level) - n)


def _check(row: int, x: Floats, deepest: float) -> None:
    if x.size == 0:
        raise Refusal(f"Row {row}: there are no depth digs; enter at least one.")
    wrong = ~((x >= 0) & (x <= deepest))
    if wrong.any():
        at = int(np.argmax(wrong))
        raise Refusal(f"Row {row}, dig {at + 1}: a depth of {x[at]:g} is not possible; check it.")


def _inside(x: Floats, goal: DepthGoal, unit: str) -> int:
    target, tolerance = _bounds(goal, unit)
    return int(np.count_nonzero(np.abs(x - target) <= tolerance * (1 + 1e-9)))


def _bounds(goal: DepthGoal, unit: str) -> tuple[float, float]:
    return float(goal.target.to(unit).magnitude), float(goal.tolerance.to(unit).magnitude)


def _standing(interval: Interval | None, goal: DepthGoal | None, unit: str) -> Standing:
    if goal is None:
        return Standing.NO_LIMIT
    if interval is None:
        return Standing.OPEN
    target, tolerance = _bounds(goal, unit)
    low, high = target - tolerance, target + tolerance
    if low <= interval.low and interval.high <= high:
        return Standing.WITHIN
    outside = interval.high < low or interval.low > high
    return Standing.SHORT if outside else Standing.OPEN


def _share_standing(share: Interval | None, goal: DepthGoal | None) -> Standing:
    if share is None or goal is None or goal.share_least is None:
        return Standing.NO_LIMIT
    if share.low >= goal.share_least:
        return Standing.WITHIN
    return Standing.SHORT if share.high < goal.share_least else Standing.OPEN
