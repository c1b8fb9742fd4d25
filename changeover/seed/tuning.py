"""The level of vacuum with the least total error, fitted from bench counts of skips and doubles."""

from dataclasses import dataclass

import numpy as np

from changeover.quantities import Quantity, Refusal
from changeover.seed import bounds
from changeover.seed.bench_counts import BenchCounts
from changeover.seed.bounds import Floats
from changeover.seed.logistic_fit import LogisticFit, fit_logistic, logistic

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
    tested = counts.cells > 0
    lowest, highest = _tested_range(counts)
    if np.any(lowest == highest):
        name = counts.names[int(np.argmax(lowest == highest))]
        raise Refusal(f"{name}: runs at two or more levels of vacuum are needed to fit a curve.")
    x = np.where(tested, np.log(counts.levels), 0.0)
    skips = fit_logistic(x, counts.cells, counts.skips)
    doubles = fit_logistic(x, counts.cells, counts.doubles)
    grid = _grid(lowest, highest)
    normal = np.random.default_rng(_SEED).standard_normal((4, _DRAWS))
    drawn_skips = _drawn(skips, normal[:2], falls=True)
    drawn_doubles = _drawn(doubles, normal[2:], falls=False)
    best = _best(grid, held(skips, falls=True), held(doubles, falls=False))[:, 0]
    spread = _best(grid, drawn_skips, drawn_doubles)
    low, high = np.percentile(spread, [_TAIL, 100.0 - _TAIL], axis=1)
    at_best = _total(best[:, None], drawn_skips, drawn_doubles)
    error = total_error(skips, doubles, best)
    error_low, error_high = np.percentile(at_best, [_TAIL, 100.0 - _TAIL], axis=1)
    now = _present(present, lowest, highest)
    gains = _total(now[:, None], drawn_skips, drawn_doubles) - at_best
    gain_low, gain_high = np.percentile(gains, [_TAIL, 100.0 - _TAIL], axis=1)
    return Estimates(
        names=counts.names,
        skips=skips,
        doubles=doubles,
        lowest=lowest,
        highest=highest,
        best=np.exp(best),
        best_low=np.exp(np.minimum(low, best)),
        best_high=np.exp(np.maximum(high, best)),
        error=error,
        error_low=error_low,
        error_high=error_high,
        gain=total_error(skips, doubles, now) - error,
        gain_low=gain_low,
        gain_high=gain_high,
    )


def held(fit: LogisticFit, *, falls: bool) -> tuple[Floats, Floats]:
    """Return intercept at x = 0 and slope, a column each, the slope held to its direction.

    A slope that runs the other way becomes level at the fit's own middle.
    """
    slope = np.minimum(fit.slope, 0.0) if falls else np.maximum(fit.slope, 0.0)
    return (fit.intercept - slope * fit.middle)[:, None], slope[:, None]


def total_error(skips: LogisticFit, doubles: LogisticFit, x: Floats) -> Floats:
    """Return the fitted share of skips plus doubles at one log vacuum (ln kPa) a meter."""
    at = _total(x[:, None], held(skips, falls=True), held(doubles, falls=False))
    return at[:, 0]


def _tested_range(counts: BenchCounts) -> tuple[Floats, Floats]:
    tested = counts.cells > 0
    if not tested.any(axis=1).all():
        raise Refusal("Bench counts: a meter without any run cannot be tuned; leave it out.")
    lowest = np.where(tested, counts.levels, np.inf).min(axis=1)
    highest = np.where(tested, counts.levels, -np.inf).max(axis=1)
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


def _total(x: Floats, skips: tuple[Floats, Floats], doubles: tuple[Floats, Floats]) -> Floats:
    total: Floats = logistic(skips[0] + skips[1] * x) + logistic(doubles[0] + doubles[1] * x)
    return total


def _best(grid: Floats, skips: tuple[Floats, Floats], doubles: tuple[Floats, Floats]) -> Floats:
    """Return the log vacuum of least total error within each meter's grid, meters by curves.

    The least of the grid's totals, then the bottom of the parabola through its neighbours.
    """
    on_grid = np.moveaxis(grid[:, None, :], 2, 0)
    totals = _total(on_grid, skips, doubles)
    least = totals.argmin(axis=0)
    inner = np.clip(least, 1, _GRID - 2)[None]
    before, at, after = (np.take_along_axis(totals, inner + step, axis=0)[0] for step in (-1, 0, 1))
    bend = before - 2.0 * at + after
    shift = np.where(bend > 0, 0.5 * (before - after) / np.maximum(bend, 1e-300), 0.0)
    shift = np.where(least == inner[0], np.clip(shift, -1.0, 1.0), least - inner[0])
    stride = (grid[:, 1] - grid[:, 0])[:, None]
    best: Floats = grid[:, :1] + stride * (inner[0] + shift)
    return best


def _present(present: Quantity | None, lowest: Floats, highest: Floats) -> Floats:
    """Return the log of the present level a meter, not a number where it was not tested."""
    if present is None:
        return np.full_like(lowest, np.nan)
    levels = np.broadcast_to(bounds.PRESSURE.of(present), lowest.shape)
    within = (levels >= lowest * (1 - 1e-9)) & (levels <= highest * (1 + 1e-9))
    return np.where(within, np.log(levels), np.nan)
