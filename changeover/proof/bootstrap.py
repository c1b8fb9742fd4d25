"""Bootstrap intervals of the spacing measures: rows drawn again and again from themselves."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np

from changeover.proof.divisions import tenth_class
from changeover.proof.intervals import Floats, Interval, checked_level
from changeover.proof.spacing import all_spacings
from changeover.quantities import Quantity, Refusal
from changeover.seed import bounds

_BLOCK = 200  # draws at a time, so that the work stays in the processor's cache
SEED = 20_250_401  # fixed, so that the same readings give the same interval


@dataclass(frozen=True)
class SpacingIntervals:
    """Percentile intervals of one row's measures.

    Shares and precision 0 to 1, ``mean`` and ``sd`` as shares of the target spacing; the
    suffixes say which convention. An interval is None when too few draws have a value.
    """

    multiples_by_spacings: Interval | None
    quality_of_feed_by_spacings: Interval | None
    misses_by_spacings: Interval | None
    multiples_by_positions: Interval | None
    quality_of_feed_by_positions: Interval | None
    misses_by_positions: Interval | None
    precision_ref: Interval | None
    precision_mean: Interval | None
    mean: Interval | None
    sd: Interval | None


def bootstrap_spacings(
    spacings: Quantity,
    target: Quantity,
    draws: int = 2000,
    level: float = 0.95,
    rng: np.random.Generator | None = None,
) -> SpacingIntervals:
    """Return percentile intervals from ``draws`` resamples of an array of spacings.

    Efron & Tibshirani 1993, An Introduction to the Bootstrap, chapter 13. Raises Refusal for
    fewer than two spacings or 100 draws.
    """
    bounds.SPACING.of(target)
    size = float(target.to(spacings.units).magnitude)
    ratios = np.atleast_1d(np.asarray(spacings.magnitude, dtype=np.float64)) / size
    if ratios.size < 2 or draws < 100:
        raise Refusal("A bootstrap needs at least two spacings and 100 draws.")
    drawn = resampled_sums(ratios, draws, rng or np.random.default_rng(SEED))
    return SpacingIntervals(*(_interval(one, level) for one in _measures(drawn, ratios.size)))


def bootstrap_rows(
    rows: Mapping[int, Quantity],
    target: Quantity,
    draws: int = 2000,
    level: float = 0.95,
    go_on: Callable[[float], bool] | None = None,
) -> tuple[dict[int, SpacingIntervals], SpacingIntervals]:
    """Return the intervals of each row, and those of all rows pooled.

    The pooled draws resample each row within itself, which keeps the rows' shares of the whole.
    ``go_on`` is told the share done before each row; raises Refusal when it says no.
    """
    bounds.SPACING.of(target)
    unit = all_spacings(rows).units
    size = float(target.to(unit).magnitude)
    rng = np.random.default_rng(SEED)
    each: dict[int, SpacingIntervals] = {}
    total, n = np.zeros((draws, 9)), 0
    for number, (row, spacings) in enumerate(rows.items()):
        if go_on is not None and not go_on(number / len(rows)):
            raise Refusal("The intervals were stopped before they were all reckoned.")
        ratios = np.atleast_1d(np.asarray(spacings.to(unit).magnitude, dtype=np.float64)) / size
        drawn = resampled_sums(ratios, draws, rng)
        each[row] = SpacingIntervals(*(_interval(m, level) for m in _measures(drawn, ratios.size)))
        total += drawn
        n += ratios.size
    return each, SpacingIntervals(*(_interval(m, level) for m in _measures(total, n)))


def resampled_sums(ratios: Floats, draws: int, rng: np.random.Generator) -> Floats:
    """Return, for each draw, n'1 … n'5, Σd and Σd² over all, then over division II alone.

    d is the spacing over the target, less 1. Shape (draws, 9).
    """
    n = ratios.size
    features = _features(ratios)
    sums = np.empty((draws, features.shape[1]))
    for start in range(0, draws, _BLOCK):
        block = sums[start : start + _BLOCK]
        picks = rng.integers(0, n, size=(len(block), n), dtype=np.uint32).astype(np.intp)
        picks += np.arange(len(block))[:, None] * n
        times = np.bincount(picks.ravel(), minlength=picks.size)
        block[:] = times.reshape(picks.shape).astype(np.float64) @ features
    return sums


def _features(ratios: Floats) -> Floats:
    classes = tenth_class(ratios)
    division = np.searchsorted((5, 15, 25, 35), classes, side="right")
    d = ratios - 1
    single = (division == 1).astype(np.float64)
    columns = [(division == k).astype(np.float64) for k in range(5)]
    return np.column_stack([*columns, d, d * d, single * d, single * d * d])


def _measures(sums: Floats, n: int) -> tuple[Floats, ...]:
    """The ten measures in the order of SpacingIntervals, one value a draw, NaN where undefined."""
    first, second, third, fourth, fifth, d, dd, sd, sdd = sums.T
    positions = second + 2 * third + 3 * fourth + 4 * fifth
    with np.errstate(divide="ignore", invalid="ignore"):
        precision = np.sqrt(np.maximum(sdd - sd * sd / second, 0) / (second - 1))
        precision[second < 2] = np.nan
        return (
            first / n,
            second / n,
            (third + fourth + fifth) / n,
            first / positions,
            (n - 2 * first) / positions,
            (third + 2 * fourth + 3 * fifth) / positions,
            precision,
            precision / (1 + sd / second),
            1 + d / n,
            np.sqrt(np.maximum(dd - d * d / n, 0) / (n - 1)),
        )


def _interval(values: Floats, level: float) -> Interval | None:
    sound = values[np.isfinite(values)]
    if sound.size < 0.9 * values.size:
        return None
    tail = (1 - checked_level(level)) / 2
    low, high = np.quantile(sound, (tail, 1 - tail))
    return Interval(float(low), float(high), level)
