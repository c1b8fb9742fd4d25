"""Where a spacing falls: classes of a tenth of the target, and the five divisions over them."""

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from changeover.proof.intervals import Floats

Counts: TypeAlias = NDArray[np.int64]

EDGE = 1e-9  # a spacing within this share of the target of an edge counts as on the edge
CLASSES_PER_TARGET = 10
CLASSES = 36  # 35 classes of a tenth of the target up to 3.5 targets, and one beyond
DIVISION_ENDS = (5, 15, 25, 35)  # the last class of divisions I to IV


def tenth_class(ratio: Floats) -> NDArray[np.intp]:
    """Return the class of each spacing/target ratio, 0 to 35; the upper edge belongs to a class.

    Class 0 holds (0, 0.1] targets; class 35 all above 3.5. A ratio that floating point left a
    hair above an edge, as 0.45/0.3, counts as on it. ISO 7256-1:1984 asks for such classes.
    """
    place = np.ceil(ratio * CLASSES_PER_TARGET - CLASSES_PER_TARGET * EDGE)
    return np.asarray(np.clip(place - 1, 0, CLASSES - 1), dtype=np.intp)


def division_counts(histogram: Counts) -> tuple[int, int, int, int, int]:
    """Return n'1 … n'5 from the counts of the tenth classes.

    I up to 0.5 targets, II to 1.5, III to 2.5, IV to 3.5, V above: Kachman & Smith 1995,
    Trans. ASAE 38(2):379-387, as Iowa State University quotes them.
    """
    one, two, three, four, five = (int(p.sum()) for p in np.split(histogram, DIVISION_ENDS))
    return one, two, three, four, five


def steps_apart(ratio: Floats) -> NDArray[np.int64]:
    """Return how many cells apart two seeds left the disc: the ratio rounded, halves down."""
    return np.asarray(np.ceil(ratio - 0.5 - EDGE), dtype=np.int64)
