"""One fitted curve of skips or doubles against vacuum, with its band, for drawing."""

from dataclasses import dataclass

import numpy as np

from changeover.quantities import Quantity
from changeover.seed import bounds
from changeover.seed.bounds import Floats
from changeover.seed.logistic_fit import logistic
from changeover.seed.tuning import Estimates, held

_Z = 1.959964  # 95 % two-sided of the normal curve


@dataclass(frozen=True)
class Curve:
    """The fitted share of skips or doubles against vacuum, with its 95 % band, for drawing."""

    intercept: float
    slope: float
    middle: float
    covariance: tuple[float, float, float]

    def share(self, vacuum: Quantity) -> Floats:
        """Return the share of cells at each vacuum. Raises Refusal for a vacuum out of bounds."""
        x = np.log(np.atleast_1d(bounds.PRESSURE.of(vacuum)))
        return logistic(np.asarray(self.intercept + self.slope * x))

    def band(self, vacuum: Quantity) -> tuple[Floats, Floats]:
        """Return the ends of the 95 % band of the share at each vacuum."""
        x = np.log(np.atleast_1d(bounds.PRESSURE.of(vacuum)))
        a, b, c = self.covariance
        away = x - self.middle
        half = _Z * np.sqrt(np.maximum(a + 2.0 * b * away + c * away**2, 0.0))
        logit = np.asarray(self.intercept + self.slope * x)
        return logistic(logit - half), logistic(logit + half)


def curve_of(found: Estimates, place: int, *, falls: bool) -> Curve:
    """Return the fitted curve of skips (``falls``) or doubles of the meter at a place."""
    fit = found.skips if falls else found.doubles
    intercept, slope = held(fit, falls=falls)
    (a, b), (_, c) = fit.covariance[place]
    spread = (float(a), float(b), float(c))
    return Curve(
        float(intercept[place, 0]), float(slope[place, 0]), float(fit.middle[place]), spread
    )
