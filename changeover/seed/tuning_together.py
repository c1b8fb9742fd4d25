"""The one level of vacuum for the meters of a fan: least mean error over these very meters."""

import numpy as np

from changeover.quantities import Quantity
from changeover.seed.bench_counts import BenchCounts, pooled
from changeover.seed.bounds import Floats
from changeover.seed.tuning import (
    Curves,
    Estimates,
    drawn_curves,
    estimate,
    fit_both,
    held,
    present_log,
    summary,
    tested_range,
)


def estimate_together(
    counts: BenchCounts, present: Quantity | None = None, name: str = "all"
) -> Estimates:
    """Return estimates, of one row, for a level that all meters of the counts share.

    Each meter has its own pair of curves; the level sought is that of least mean error over
    these meters, within the levels that all of them were run at. So meters that differ do not
    pass for chance. Where some meter was run at one level only, or their ranges do not overlap,
    all runs are fitted as one and the interval is widened by the dispersion instead. The fits
    returned, for drawing, are those of all runs as one. Raises Refusal when all runs were at one
    level.
    """
    as_one = pooled(counts, name)
    shared = _shared_range(counts)
    if shared is None:
        return estimate(as_one, present)
    skips, doubles = fit_both(counts)
    fitted = Curves(held(skips, falls=True), held(doubles, falls=False))
    drawn = drawn_curves(skips, doubles, alike=False)
    now = present_log(present, *shared)
    return summary((name,), fit_both(as_one), shared, now, fitted.mean_total, drawn.mean_total)


def _shared_range(counts: BenchCounts) -> tuple[Floats, Floats] | None:
    """Return the levels that lie within every meter's range, or None when there are none."""
    tested = counts.cells > 0
    several = [np.unique(row[run]).size > 1 for row, run in zip(counts.levels, tested, strict=True)]
    if not all(several):
        return None
    lowest, highest = tested_range(counts)
    low, high = lowest.max(), highest.min()
    return (np.array([low]), np.array([high])) if low < high else None
