"""Depth against notch for one row: fitted to digs, moved to them, or the common one."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite

import numpy as np

from changeover.quantities import Q, Quantity, Refusal
from changeover.seed import bounds
from changeover.seed.calibration_line import CalibrationLine, fit_line

# Common practice, no source: a quarter inch a notch until a row has been measured.
COMMON_NOTCH = Q(0.25, "in")


@dataclass(frozen=True)
class DepthLine:
    """Depth against notch for one row, in millimetres; ``measured`` is False for the fall-back."""

    line: CalibrationLine
    measured: bool

    def depth(self, notch: float) -> Quantity:
        """Return the depth that the line expects at a notch."""
        return Q(self.line.at(notch), "mm")

    def half_width(self, notch: float) -> Quantity | None:
        """Return half the 95 % interval of the depth at a notch, None when it cannot be told."""
        width = self.line.half_width(notch)
        return Q(width, "mm") if isfinite(width) else None


def fit_depth_line(notches: Sequence[float], depths: Quantity) -> DepthLine:
    """Fit one row's depth against notch from digs at two or more notches.

    ``depths`` are lengths, one a dig. Raises Refusal for depths out of bounds, digs at a single
    notch, or a line on which depth does not grow with the notch. Method: least squares.
    """
    line = fit_line(notches, np.atleast_1d(bounds.DEPTH.of(depths)), "Depth calibration")
    if line.slope <= 0:
        raise Refusal(
            "Depth calibration: depth does not grow with the notch; check which dig belongs to "
            "which notch."
        )
    return DepthLine(line, measured=True)


def common_depth_line(first_depth: Quantity, step: Quantity = COMMON_NOTCH) -> DepthLine:
    """Return the fall-back line: the first notch at ``first_depth``, then ``step`` a notch.

    Raises Refusal for a step that is not above zero or depths out of bounds. The quarter inch is
    common practice, no source; the planter's own steps win.
    """
    per_notch = bounds.DEPTH.of(step)
    if per_notch <= 0:
        raise Refusal("Depth notches: the step must be above zero; enter it, such as 1/4 in.")
    line = CalibrationLine(bounds.DEPTH.of(first_depth), per_notch, 1.0, 0, 0.0, 0.0, 0)
    return DepthLine(line, measured=False)


def shifted_depth_line(common: DepthLine, notch: float, depths: Quantity) -> DepthLine:
    """Return the fall-back line moved to the mean of digs at one notch, its step kept.

    One notch tells the row's offset but not its step. Raises Refusal for depths out of bounds.
    """
    dug = np.atleast_1d(bounds.DEPTH.of(depths))
    spread = float(dug.std(ddof=1)) if dug.size > 1 else 0.0
    line = CalibrationLine(
        float(dug.mean()), common.line.slope, notch, dug.size, float("inf"), spread, dug.size - 1
    )
    return DepthLine(line, measured=True)
