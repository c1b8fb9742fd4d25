"""A straight line through measured points by least squares, with the interval it deserves."""

from dataclasses import dataclass
from math import inf, sqrt

import numpy as np
from numpy.typing import ArrayLike

from changeover.quantities import Refusal


@dataclass(frozen=True)
class CalibrationLine:
    """y = level + slope · (x − middle), with what is needed for its intervals.

    ``spread`` is the standard deviation of a single reading about the line, ``freedom`` its
    degrees of freedom, ``squares`` the sum of squares of x about ``middle``. No units: the
    caller holds them.
    """

    level: float
    slope: float
    middle: float
    readings: int
    squares: float
    spread: float
    freedom: int

    def at(self, x: float) -> float:
        """Return y on the line."""
        return self.level + self.slope * (x - self.middle)

    def solve(self, y: float) -> float:
        """Return the x at which the line reaches y. Raises Refusal on a level line."""
        if self.slope == 0:
            raise Refusal("Calibration: the readings do not change with the setting; check them.")
        return self.middle + (y - self.level) / self.slope

    def half_width(self, x: float, confidence: float = 0.95) -> float:
        """Return half the width of the confidence interval of the line at x.

        Infinite when the readings leave no freedom to tell. Draper & Smith, Applied Regression
        Analysis: t · s · √(1/n + (x − x̄)² / Sxx).
        """
        if self.freedom < 1:
            return inf
        reach = 1.0 / self.readings + (x - self.middle) ** 2 / self.squares
        return t_quantile(self.freedom, confidence) * self.spread * sqrt(reach)

    def reading_half_width(self, x: float, confidence: float = 0.95) -> float:
        """Return half the width of the prediction interval of one further reading at x.

        Infinite when the readings leave no freedom to tell. Draper & Smith, Applied Regression
        Analysis: t · s · √(1 + 1/n + (x − x̄)² / Sxx).
        """
        if self.freedom < 1:
            return inf
        reach = 1.0 + 1.0 / self.readings + (x - self.middle) ** 2 / self.squares
        return t_quantile(self.freedom, confidence) * self.spread * sqrt(reach)

    def reached_at(
        self, y: float, confidence: float = 0.95, *, mean: bool = False
    ) -> tuple[float, float] | None:
        """Return the x between which one further reading of y may have been taken.

        With ``mean`` it is the line itself that reaches y between them. None when the readings
        leave no freedom, or scatter so widely that the slope could be none, for then no x can be
        excluded. The interval of y turned about (Fieller 1954; Draper & Smith, inverse
        regression): with g = (t s)² / (b² Sxx) and d = (y − ȳ) / b, the ends lie at
        x̄ + (d ∓ t s / b · √((1 − g)(k + 1/n) + d² / Sxx)) / (1 − g), k = 1 for a reading, 0 for
        the line.
        """
        if self.freedom < 1 or self.slope == 0:
            return None
        scale = t_quantile(self.freedom, confidence) * self.spread / abs(self.slope)
        left = 1.0 - scale**2 / self.squares
        if left <= 0:
            return None
        way = (y - self.level) / self.slope
        one = (0.0 if mean else 1.0) + 1.0 / self.readings
        half = scale * sqrt(left * one + way**2 / self.squares)
        return self.middle + (way - half) / left, self.middle + (way + half) / left

    def slope_half_width(self, confidence: float = 0.95) -> float:
        """Return half the width of the confidence interval of the slope; infinite if untold."""
        if self.freedom < 1:
            return inf
        return t_quantile(self.freedom, confidence) * self.spread / sqrt(self.squares)


def fit_line(x: ArrayLike, y: ArrayLike, what: str) -> CalibrationLine:
    """Fit a line through at least two different x by least squares.

    ``what`` names the calibration in messages. Raises Refusal for unequal counts, figures that
    are not finite, or readings that all stand at one x. Method: ordinary least squares.
    """
    settings, readings = np.asarray(x, dtype=np.float64), np.asarray(y, dtype=np.float64)
    if settings.shape != readings.shape or settings.ndim != 1:
        raise Refusal(f"{what}: each reading needs its setting; the counts differ.")
    if not (np.isfinite(settings).all() and np.isfinite(readings).all()):
        raise Refusal(f"{what}: a reading is not a number; take it out or enter it again.")
    if np.unique(settings).size < 2:
        raise Refusal(f"{what}: readings at two different settings are needed at least.")
    middle = float(settings.mean())
    squares = float(((settings - middle) ** 2).sum())
    level = float(readings.mean())
    slope = float(((settings - middle) * (readings - level)).sum() / squares)
    residuals = readings - level - slope * (settings - middle)
    freedom = settings.size - 2
    spread = sqrt(float((residuals**2).sum()) / freedom) if freedom else 0.0
    return CalibrationLine(level, slope, middle, settings.size, squares, spread, freedom)


def t_quantile(freedom: int, confidence: float) -> float:
    """Return Student's t for a two-sided interval, 2.228 for 10 degrees of freedom and 0.95."""
    from scipy.special import stdtrit

    return float(stdtrit(freedom, 0.5 + confidence / 2.0))
