"""Control of false alarms when many rows are tested at once: Holm, or Benjamini and Hochberg."""

from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike

from changeover.proof.intervals import Floats


class Control(StrEnum):
    """What is kept below the level: any false alarm at all, or the share of false ones."""

    HOLM = "Holm"
    BENJAMINI_HOCHBERG = "Benjamini-Hochberg"


def adjusted(p_values: ArrayLike, control: Control = Control.HOLM) -> Floats:
    """Return adjusted p-values in the order given; those at or below the level are alarms.

    Holm 1979, Scand. J. Statistics 6:65-70; Benjamini & Hochberg 1995, J. R. Stat. Soc. B
    57:289-300.
    """
    p = np.asarray(p_values, dtype=np.float64)
    if p.size == 0:
        return p
    order = np.argsort(p, kind="stable")
    ranked = _holm(p[order]) if control is Control.HOLM else _benjamini_hochberg(p[order])
    result = np.empty_like(p)
    result[order] = np.minimum(ranked, 1.0)
    return result


def _holm(rising: Floats) -> Floats:
    return np.maximum.accumulate(rising * np.arange(rising.size, 0, -1))


def _benjamini_hochberg(rising: Floats) -> Floats:
    scaled = rising * rising.size / np.arange(1, rising.size + 1)
    return np.minimum.accumulate(scaled[::-1])[::-1]
