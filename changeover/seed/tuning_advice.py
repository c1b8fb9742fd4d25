"""What to do after bench runs: the level to set or to try next, or why the counts cannot tell."""

from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from changeover.quantities import Q, Quantity, Units, show
from changeover.seed import bounds
from changeover.seed.bench_counts import BenchCounts, pooled
from changeover.seed.bounds import Floats
from changeover.seed.tuning import Estimates, estimate
from changeover.seed.tuning_curve import Curve, curve_of
from changeover.seed.tuning_together import estimate_together

STEP = 1.25  # beyond the tested range; common practice, no source
_SETTLED_WIDTH = 1.15  # interval end over end below which another level is not worth a run
_ONE_SIDED = 1.645  # 5 % one-sided of the normal curve
_Z = 1.959964  # 95 % two-sided of the normal curve


class Verdict(StrEnum):
    """Whether the counts decide, and if not, why."""

    FOUND = "found"
    ABOVE = "best lies above the tested levels"
    BELOW = "best lies below the tested levels"
    FLAT = "no response to vacuum seen"
    WIDE = "interval as wide as the tested range"
    ONE_LEVEL = "one level only"
    NO_ERRORS = "no skips and no doubles"


@dataclass(frozen=True)
class Advice:
    """Advice for one meter or one fan group.

    ``best`` with ``low`` and ``high`` are pressures, None where the counts cannot tell; errors
    and gains are shares of cells; ``next_level`` is the level to run next, None when settled.
    """

    name: str
    verdict: Verdict
    says: str
    best: Quantity | None = None
    low: Quantity | None = None
    high: Quantity | None = None
    error: float | None = None
    error_low: float | None = None
    error_high: float | None = None
    gain: float | None = None
    gain_low: float | None = None
    gain_high: float | None = None
    next_level: Quantity | None = None
    skips: Curve | None = None
    doubles: Curve | None = None


def advise(
    counts: BenchCounts,
    present: Quantity | None = None,
    most: Quantity | None = None,
    units: Units = Units.US,
) -> tuple[Advice, ...]:
    """Return advice for every meter of the counts, in their order.

    ``present`` is the present level, one for all or an array over meters; ``most`` the most that
    the fan reaches. Raises Refusal for a meter without runs or pressures out of bounds.
    """
    several = _levels_run(counts) > 1
    fitted: dict[int, tuple[Estimates, int]] = {}
    if several.any():
        chosen = np.flatnonzero(several)
        estimates = estimate(_rows(counts, chosen), _chosen(present, chosen, len(counts.names)))
        fitted = {int(row): (estimates, place) for place, row in enumerate(chosen)}
    limit = None if most is None else float(bounds.PRESSURE.of(most))
    return tuple(
        _advice(counts, row, fitted.get(row), limit, units) for row in range(len(counts.names))
    )


def advise_together(
    counts: BenchCounts,
    present: Quantity | None = None,
    most: Quantity | None = None,
    units: Units = Units.US,
    name: str = "All meters",
) -> Advice:
    """Return advice on one level for all meters of the counts, as one fan gives them.

    Raises Refusal for a meter without runs or pressures out of bounds.
    """
    as_one = pooled(counts, name)
    several = bool(_levels_run(as_one)[0] > 1)
    fitted = (estimate_together(counts, present, name), 0) if several else None
    limit = None if most is None else float(bounds.PRESSURE.of(most))
    return _advice(as_one, 0, fitted, limit, units)


def _advice(
    counts: BenchCounts,
    row: int,
    fitted: tuple[Estimates, int] | None,
    limit: float | None,
    units: Units,
) -> Advice:
    name, cells = counts.names[row], float(counts.cells[row].sum())
    skips, doubles = float(counts.skips[row].sum()), float(counts.doubles[row].sum())
    tested = counts.levels[row][counts.cells[row] > 0]
    if skips + doubles == 0:
        return _no_errors(name, cells)
    if fitted is None:
        return _one_level(name, float(tested[0]), skips, doubles, limit, units)
    estimates, place = fitted
    return _fitted(estimates, place, skips, doubles, limit, units)


def _no_errors(name: str, cells: float) -> Advice:
    """Wilson's upper limit for no errors in n cells: z² / (n + z²)."""
    upper = _Z**2 / (cells + _Z**2)
    says = (
        f"{name}: no skip and no double in {cells:.0f} cells; leave it as it is. The error may "
        f"still be up to {upper:.1%}, as no more can be told from so many cells."
    )
    return Advice(name, Verdict.NO_ERRORS, says)


def _one_level(
    name: str, level: float, skips: float, doubles: float, limit: float | None, units: Units
) -> Advice:
    following = _beyond(level, limit, up=skips > doubles)
    more = f"try {_text(following, units)} next" if following else "the fan is at its limit"
    says = (
        f"{name}: one level of vacuum cannot decide; it had {skips:.0f} skips and {doubles:.0f} "
        f"doubles, so {more}."
    )
    return Advice(name, Verdict.ONE_LEVEL, says, next_level=_pressure(following))


def _fitted(
    found: Estimates,
    place: int,
    skips: float,
    doubles: float,
    limit: float | None,
    units: Units,
) -> Advice:
    name = found.names[place]
    low, high = float(found.lowest[place]), float(found.highest[place])
    best = float(found.best[place])
    verdict = _verdict(found, place, low, high, best)
    following = _next_level(verdict, found, place, limit, more_skips=skips > doubles)
    told = verdict in (Verdict.FOUND, Verdict.ABOVE, Verdict.BELOW)
    says = f"{name}: {_SAYS[verdict]}".format(
        best=_text(best, units),
        low=_text(float(found.best_low[place]), units),
        high=_text(float(found.best_high[place]), units),
        error=f"{float(found.error[place]):.1%}",
    )
    return Advice(
        name,
        verdict,
        says + _gain_says(found, place) * told + _next_says(following, verdict, units),
        best=_pressure(best) if told else None,
        low=_pressure(float(found.best_low[place])) if told else None,
        high=_pressure(float(found.best_high[place])) if told else None,
        error=float(found.error[place]),
        error_low=float(found.error_low[place]),
        error_high=float(found.error_high[place]),
        gain=_number(found.gain[place]) if told else None,
        gain_low=_number(found.gain_low[place]) if told else None,
        gain_high=_number(found.gain_high[place]) if told else None,
        next_level=_pressure(following),
        skips=curve_of(found, place, falls=True),
        doubles=curve_of(found, place, falls=False),
    )


_SAYS = {
    Verdict.FOUND: "set {best} ({low} to {high}), where {error} of the cells skip or double.",
    Verdict.ABOVE: "errors still fall at {best}, the highest level run ({error} of the cells).",
    Verdict.BELOW: "errors still fall at {best}, the lowest level run ({error} of the cells).",
    Verdict.FLAT: (
        "neither skips nor doubles answer to vacuum over the levels run, so the counts cannot "
        "decide; look for wear, a leak or the wrong disc, or run levels further apart."
    ),
    Verdict.WIDE: (
        "the best level may lie anywhere in the range run, so the counts cannot decide; run more "
        "cells or levels further apart."
    ),
}


def _verdict(found: Estimates, place: int, low: float, high: float, best: float) -> Verdict:
    falls = -float(found.skips.slope_z()[place]) > _ONE_SIDED
    rises = float(found.doubles.slope_z()[place]) > _ONE_SIDED
    if not falls and not rises:
        return Verdict.FLAT
    open_low = found.best_low[place] <= low * 1.001
    open_high = found.best_high[place] >= high * 0.999
    if open_low and open_high:
        return Verdict.WIDE
    if best >= high * 0.999:
        return Verdict.ABOVE
    return Verdict.BELOW if best <= low * 1.001 else Verdict.FOUND


def _next_level(
    verdict: Verdict, found: Estimates, place: int, limit: float | None, *, more_skips: bool
) -> float | None:
    low, high = float(found.lowest[place]), float(found.highest[place])
    if verdict is Verdict.FOUND:
        wide = found.best_high[place] / found.best_low[place] > _SETTLED_WIDTH
        return float(found.best[place]) if wide else None
    up = verdict is Verdict.ABOVE or (verdict is not Verdict.BELOW and more_skips)
    return _beyond(high if up else low, limit, up=up)


def _beyond(level: float, limit: float | None, *, up: bool) -> float | None:
    """Return a level one step beyond, within the fan's limit; None when that leaves no step."""
    if not up:
        return max(level / STEP, bounds.PRESSURE.low)
    highest = bounds.PRESSURE.high if limit is None else limit
    following = min(level * STEP, highest)
    return following if following > level * 1.001 else None


def _gain_says(found: Estimates, place: int) -> str:
    gain, least = float(found.gain[place]), float(found.gain_low[place])
    if np.isnan(gain):
        return ""
    if least > 0:
        return f" That saves errors in {gain:.1%} of the cells against the present level."
    return " The present level is as good as the counts can tell."


def _next_says(following: float | None, verdict: Verdict, units: Units) -> str:
    if following is None:
        return " The fan reaches no more." if verdict is Verdict.ABOVE else ""
    return f" Next, run {_text(following, units)}."


def _levels_run(counts: BenchCounts) -> Floats:
    levels = np.where(counts.cells > 0, counts.levels, np.nan)
    return np.array([np.unique(row[~np.isnan(row)]).size for row in levels], dtype=np.float64)


def _rows(
    counts: BenchCounts, rows: np.ndarray[tuple[int, ...], np.dtype[np.int64]]
) -> BenchCounts:
    return BenchCounts(
        tuple(counts.names[int(row)] for row in rows),
        counts.levels[rows],
        counts.cells[rows],
        counts.skips[rows],
        counts.doubles[rows],
    )


def _chosen(
    present: Quantity | None, rows: np.ndarray[tuple[int, ...], np.dtype[np.int64]], meters: int
) -> Quantity | None:
    if present is None:
        return None
    levels = np.broadcast_to(present.magnitude, (meters,))[rows]
    return Q(levels, present.units)


def _pressure(kilopascals: float | None) -> Quantity | None:
    return None if kilopascals is None else Q(kilopascals, "kPa")


def _text(kilopascals: float, units: Units) -> str:
    return show(Q(kilopascals, "kPa"), "pressure", units)


def _number(value: float) -> float | None:
    return None if np.isnan(value) else float(value)
