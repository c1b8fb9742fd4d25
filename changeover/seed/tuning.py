"""The level of vacuum with the least total error, fitted from bench counts of skips and doubles."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np

from changeover.quantities import Quantity, Refusal
from changeover.seed import bounds
from changeover.seed.bench_counts import BenchCounts
from changeover.seed.bounds import Floats
from changeover.seed.logistic_fit import LogisticFit, fit_logistic, logistic

Total: TypeAlias = Callable[[Floats], Floats]

_GRID = 41  # steps of log vacuum over the tested range
_DRAWS = 600
_SEED = 19950309  # fixed, so that the same counts give the same interval
_TAIL = 2.5  # percent cut off at each end: a 95 % interval


@dataclass(frozen=True)
class Estimates:
    """What the counts say, arrays over meters: levels in kPa, errors as shares of cells.

    ``lowest`` and ``highest`` bound the tested levels; ``best`` lies within them, with the 95 %
    interval ``best_low`` to ``best_high``. ``gain`` is the error at the present level less the
    error at the best one, not a number where the present level is unknown or was not in the
    tested range.
    """

    names: tuple[str, ...]
    skips: LogisticFit
    doubles: LogisticFit
    lowest: Floats
    highest: Floats
    best: Floats
    best_low: Floats
    best_high: Floats
    error: Floats
    error_low: Floats
    error_high: Floats
    gain: Floats
    gain_low: Floats
    gain_high: Floats


def estimate(counts: BenchCounts, present: Quantity | None = None) -> Estimates:
    """Fit skips and doubles of every meter against the log of vacuum, and find the best level.

    Both are binomial with logistic curves; skips are held to fall and doubles to rise with
    vacuum (Karayel, Barut & Özmerzi 2004 and others give the direction). The interval is that of
    600 draws from the fits' normal approximation, each held to the same direction. ``present``
    is the present level, one for all or an array over meters. Raises Refusal when a meter was
    run at fewer than two levels.
    """
    lowest, highest = tested_range(counts)
    skips, doubles = fit_both(counts)
    fitted = Curves(held(skips, falls=True), held(doubles, falls=False))
    drawn = drawn_curves(skips, doubles)
    now = present_log(present, lowest, highest)
    return summary(
        counts.names, (skips, doubles), (lowest, highest), now, fitted.total, drawn.total
    )


@dataclass(frozen=True)
class Curves:
    """Intercepts at x = 0 and slopes of skips and of doubles, arrays of meters by curves."""

    skips: tuple[Floats, Floats]
    doubles: tuple[Floats, Floats]

    def total(self, x: Floats) -> Floats:
        """Return the share of skips plus doubles at log vacuum x, which broadcasts."""
        skips = logistic(self.skips[0] + self.skips[1] * x)
        total: Floats = skips + logistic(self.doubles[0] + self.doubles[1] * x)
        return total

    def mean_total(self, x: Floats) -> Floats:
        """Return the mean of ``total`` over the meters, kept as one row."""
        mean: Floats = self.total(x).mean(axis=-2, keepdims=True)
        return mean


def fit_both(counts: BenchCounts) -> tuple[LogisticFit, LogisticFit]:
    """Return the fits of skips and of doubles against ln kPa, one of each a meter."""
    x = np.where(counts.cells > 0, np.log(counts.levels), 0.0)
    return fit_logistic(x, counts.cells, counts.skips), fit_logistic(
        x, counts.cells, counts.doubles
    )


def drawn_curves(skips: LogisticFit, doubles: LogisticFit, *, alike: bool = True) -> Curves:
    """Return curves drawn from the fits' normal approximation, meters by draws.

    The draws are ``alike`` for every meter, or each meter's own, as a mean over meters needs.
    """
    meters = 1 if alike else skips.slope.size
    normal = np.random.default_rng(_SEED).standard_normal((4, meters, _DRAWS))
    return Curves(_drawn(skips, normal[:2], falls=True), _drawn(doubles, normal[2:], falls=False))


def summary(
    names: tuple[str, ...],
    fits: tuple[LogisticFit, LogisticFit],
    tested: tuple[Floats, Floats],
    now: Floats,
    fitted: Total,
    drawn: Total,
) -> Estimates:
    """Return the estimates from the total error as fitted and as drawn, functions of log vacuum.

    ``now`` is the log of the present level, not a number where there is none.
    """
    grid = _grid(*tested)
    best = _best(grid, fitted)
    ends = [_TAIL, 100.0 - _TAIL]
    low, high = np.percentile(_best(grid, drawn), ends, axis=1)
    error, at_best = fitted(best), drawn(best)
    error_low, error_high = np.percentile(at_best, ends, axis=1)
    gain_low, gain_high = np.percentile(drawn(now[:, None]) - at_best, ends, axis=1)
    return Estimates(
        names=names,
        skips=fits[0],
        doubles=fits[1],
        lowest=tested[0],
        highest=tested[1],
        best=np.exp(best[:, 0]),
        best_low=np.exp(np.minimum(low, best[:, 0])),
        best_high=np.exp(np.maximum(high, best[:, 0])),
        error=error[:, 0],
        error_low=error_low,
        error_high=error_high,
        gain=(fitted(now[:, None]) - error)[:, 0],
        gain_low=gain_low,
        gain_high=gain_high,
    )


def held(fit: LogisticFit, *, falls: bool) -> tuple[Floats, Floats]:
    """Return intercept at x = 0 and slope, a column each, the slope held to its direction.

    A slope that runs the other way becomes level at the fit's own middle.
    """
    slope = np.minimum(fit.slope, 0.0) if falls else np.maximum(fit.slope, 0.0)
    return (fit.intercept - slope * fit.middle)[:, None], slope[:, None]


def tested_range(counts: BenchCounts) -> tuple[Floats, Floats]:
    """Return the lowest and highest level run with each meter, in kPa.

    Raises Refusal for a meter that was run at fewer than two levels.
    """
    tested = counts.cells > 0
    if not tested.any(axis=1).all():
        raise Refusal("Bench counts: a meter without any run cannot be tuned; leave it out.")
    lowest = np.where(tested, counts.levels, np.inf).min(axis=1)
    highest = np.where(tested, counts.levels, -np.inf).max(axis=1)
    if np.any(lowest == highest):
        name = counts.names[int(np.argmax(lowest == highest))]
        raise Refusal(f"{name}: runs at two or more levels of vacuum are needed to fit a curve.")
    return lowest, highest


def _grid(lowest: Floats, highest: Floats) -> Floats:
    part = np.linspace(0.0, 1.0, _GRID)
    start, end = np.log(lowest), np.log(highest)
    return start[:, None] + (end - start)[:, None] * part


def _drawn(fit: LogisticFit, normal: Floats, *, falls: bool) -> tuple[Floats, Floats]:
    """Return drawn intercepts at x = 0 and slopes, meters by draws, slopes held."""
    variance, shared = fit.covariance[:, 0, 0], fit.covariance[:, 0, 1]
    first = np.sqrt(variance)
    cross = shared / first
    second = np.sqrt(np.maximum(fit.covariance[:, 1, 1] - cross**2, 0.0))
    intercept = fit.intercept[:, None] + first[:, None] * normal[0]
    slope = fit.slope[:, None] + cross[:, None] * normal[0] + second[:, None] * normal[1]
    slope = np.minimum(slope, 0.0) if falls else np.maximum(slope, 0.0)
    return intercept - slope * fit.middle[:, None], slope


def _best(grid: Floats, total: Total) -> Floats:
    """Return the log vacuum of least total error within each meter's grid, meters by curves.

    The least of the grid's totals, then the bottom of the parabola through its neighbours.
    """
    on_grid = np.moveaxis(grid[:, None, :], 2, 0)
    totals = total(on_grid)
    least = totals.argmin(axis=0)
    inner = np.clip(least, 1, _GRID - 2)[None]
    before, at, after = (np.take_along_axis(totals, inner + step, axis=0)[0] for step in (-1, 0, 1))
    bend = before - 2.0 * at + after
    shift = np.where(bend > 0, 0.5 * (before - after) / np.maximum(bend, 1e-300), 0.0)
    shift = np.where(least == inner[0], np.clip(shift, -1.0, 1.0), least - inner[0])
    stride = (grid[:, 1] - grid[:, 0])[:, None]
    best: Floats = grid[:, :1] + stride * (inner[0] + shift)
    return best


def present_log(present: Quantity | None, lowest: Floats, highest: Floats) -> Floats:
    """Return the log of the present level a meter, not a number where it was not tested.

    Raises Refusal for a level out of bounds.
    """
    if present is None:
        return np.full_like(lowest, np.nan)
    levels = np.broadcast_to(bounds.PRESSURE.of(present), lowest.shape)
    within = (levels >= lowest * (1 - 1e-9)) & (levels <= highest * (1 + 1e-9))
    return np.where(within, np.log(levels), np.nan)
