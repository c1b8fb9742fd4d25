"""Confidence intervals: Wilson for a share of events, Student for a mean."""

from dataclasses import dataclass
from statistics import NormalDist
from typing import TypeAlias

import numpy as np
from numpy.typing import ArrayLike, NDArray

from changeover.quantities import Refusal

Floats: TypeAlias = NDArray[np.float64]


@dataclass(frozen=True)
class Interval:
    """A confidence interval: two bounds in the unit of the figure, and its level, 0 to 1."""

    low: float
    high: float
    level: float

    def __contains__(self, value: float) -> bool:
        return self.low <= value <= self.high

    @property
    def width(self) -> float:
        return self.high - self.low


def checked_level(level: float) -> float:
    """Return a confidence level; raises Refusal unless it lies between 0.5 and 1."""
    if not 0.5 <= level < 1:
        raise Refusal(f"A confidence level of {level:g} is not possible; enter 0.5 to below 1.")
    return level


def normal_quantile(level: float) -> float:
    """Return z such that a normal value lies within ±z with probability ``level``."""
    return NormalDist().inv_cdf((1 + checked_level(level)) / 2)


def wilson(events: int, trials: int, level: float = 0.95) -> Interval:
    """Return the Wilson score interval of a share, bounds 0 to 1.

    (p + z²/2n ± z √(p(1−p)/n + z²/4n²)) / (1 + z²/n), without continuity correction. Raises
    Refusal when there are no trials, or more events than trials. Wilson 1927, J. Am. Stat.
    Assoc. 22:209-212.
    """
    low, high = wilson_many([events], [trials], level)
    return Interval(float(low[0]), float(high[0]), level)


def wilson_many(events: ArrayLike, trials: ArrayLike, level: float = 0.95) -> tuple[Floats, Floats]:
    """Return the lower and upper Wilson bounds of many shares, arrays shaped like the input.

    As ``wilson``, which see for formula, errors and source.
    """
    k, n = np.asarray(events, dtype=np.float64), np.asarray(trials, dtype=np.float64)
    if np.any(n < 1) or np.any(k < 0) or np.any(k > n):
        raise Refusal("A share needs at least one trial, and 0 up to as many events as trials.")
    z2 = normal_quantile(level) ** 2
    middle = (k + z2 / 2) / (n + z2)
    half = np.sqrt(z2 * (k * (n - k) / n + z2 / 4)) / (n + z2)
    low = np.where(k == 0, 0.0, middle - half)
    high = np.where(k == n, 1.0, middle + half)
    return np.clip(low, 0.0, 1.0), np.clip(high, 0.0, 1.0)


def student_quantile(level: float, freedom: float) -> float:
    """Return t such that Student's t with ``freedom`` degrees lies within ±t with ``level``."""
    from scipy.special import stdtrit

    return float(stdtrit(freedom, (1 + checked_level(level)) / 2))


def mean_interval(values: ArrayLike, level: float = 0.95) -> Interval | None:
    """Return Student's interval of a mean, in the unit of the values; None below two values.

    mean ± t s/√n with n − 1 degrees of freedom. Student 1908, Biometrika 6:1-25.
    """
    x = np.asarray(values, dtype=np.float64)
    if x.size < 2:
        return None
    half = student_quantile(level, x.size - 1) * float(x.std(ddof=1)) / float(np.sqrt(x.size))
    mean = float(x.mean())
    return Interval(mean - half, mean + half, level)
