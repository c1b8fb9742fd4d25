"""One walk over many spacings that gathers every sum the spacing measures need."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from changeover.proof.divisions import CLASSES, EDGE, Counts, steps_apart, tenth_class
from changeover.proof.intervals import Floats

_BLOCK = 1 << 13  # spacings at a time, so that the work stays in the processor's cache
_MODE_CLASSES = 4001  # classes of 1 cm about the target; spacings beyond 20 m share the last
_MIDDLE = _MODE_CLASSES // 2


@dataclass(frozen=True)
class SpacingSums:
    """Sums over spacing/target ratios, all plain numbers.

    ``deviation`` and ``square`` are Σ(r − 1) and Σ(r − 1)², over all and over division II alone;
    ``steps_beyond`` is the sum of whole steps in division V; ``near_target`` and ``near_mode``
    count the spacings within half the band of the target and of the mode, and ``mode`` is the
    middle of the fullest class of 1 cm, in targets away from the target.
    """

    n: int
    histogram: Counts
    deviation: float
    square: float
    single_deviation: float
    single_square: float
    steps_beyond: int
    near_target: int
    near_mode: int
    mode: float


def gather(spacings: Floats, target: float, third: float) -> SpacingSums:
    """Return the sums over ``spacings``, all three arguments in one unit of length.

    ``third`` is a third of the band of CP3, that is 1 cm.
    """
    third /= target
    histogram = np.zeros(CLASSES, dtype=np.int64)
    about = np.zeros(_MODE_CLASSES, dtype=np.int64)
    totals = np.zeros(4)
    beyond = near = 0
    for start in range(0, spacings.size, _BLOCK):
        r = spacings[start : start + _BLOCK] / target
        classes = tenth_class(r)
        counts = np.bincount(classes, minlength=CLASSES)
        histogram += counts
        d = r - 1.0
        about += np.bincount(_mode_class(d, third), minlength=_MODE_CLASSES)
        near += int(np.count_nonzero(np.abs(d) <= third * 1.5 + EDGE))
        totals[:2] += d.sum(), d @ d
        d *= (classes >= 5) & (classes < 15)
        totals[2:] += d.sum(), d @ d
        if counts[-1]:
            beyond += int(steps_apart(r[classes == CLASSES - 1]).sum())
    mode = (_fullest(about) - _MIDDLE) * third
    by_mode = _near(spacings, target * (1 + mode), target * (third * 1.5 + EDGE))
    a, b, c, e = (float(total) for total in totals)
    return SpacingSums(spacings.size, histogram, a, b, c, e, beyond, near, by_mode, mode)


def _mode_class(deviations: Floats, third: float) -> NDArray[np.intp]:
    place = np.rint(deviations / third)
    return np.asarray(np.clip(place + _MIDDLE, 0, _MODE_CLASSES - 1), dtype=np.intp)


def _fullest(about: Counts) -> int:
    """The fullest class; of several, the one nearest to the target."""
    full = np.flatnonzero(about == about.max())
    return int(full[np.argmin(np.abs(full - _MIDDLE))])


def _near(spacings: Floats, middle: float, half: float) -> int:
    return sum(
        int(np.count_nonzero(np.abs(spacings[s : s + _BLOCK] - middle) <= half))
        for s in range(0, spacings.size, _BLOCK)
    )
