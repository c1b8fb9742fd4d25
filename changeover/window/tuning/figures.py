"""What the tuning plot draws, as plain figures: points counted, curves fitted, band and level."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt

import numpy as np

from changeover.desk.tune import Tuned
from changeover.quantities import MEASURES, Q, Quantity, Units, unit_sign
from changeover.seed.bench_counts import Reading
from changeover.seed.tuning_advice import Advice
from changeover.seed.tuning_curve import Curve

STEPS = 81
Line = tuple[tuple[float, float], ...]


@dataclass(frozen=True)
class Point:
    """The counts of one level: percent of the cells, with its 95 % interval (Wilson's)."""

    vacuum: float
    percent: float
    low: float
    high: float


@dataclass(frozen=True)
class Response:
    """Skips or doubles: the points counted, the curve fitted, and the edges of its 95 % band."""

    points: tuple[Point, ...]
    curve: Line = ()
    low: Line = ()
    high: Line = ()


@dataclass(frozen=True)
class TuningFigures:
    """All that one plot shows, levels in the unit shown, shares in percent of the cells."""

    unit: str
    skips: Response
    doubles: Response
    total: Line = ()
    best: float | None = None
    best_low: float | None = None
    best_high: float | None = None
    present: float | None = None
    following: float | None = None


def tuning_figures(
    runs: Sequence[Reading], advice: Advice, present: Quantity | None, units: Units
) -> TuningFigures:
    """Return the figures for some runs and the advice that was fitted to them."""
    unit = MEASURES["pressure"].unit(units)
    counts = _counts(runs, unit)
    levels = [level for level, *_ in counts]
    skips = _response(counts, 2, advice.skips, levels, unit)
    doubles = _response(counts, 3, advice.doubles, levels, unit)
    pairs = zip(skips.curve, doubles.curve, strict=True)
    return TuningFigures(
        unit=unit_sign(unit),
        skips=skips,
        doubles=doubles,
        total=tuple((x, y + other) for (x, y), (_, other) in pairs),
        best=_level(advice.best, unit),
        best_low=_level(advice.low, unit),
        best_high=_level(advice.high, unit),
        present=_level(present, unit),
        following=_level(advice.next_level, unit),
    )


def runs_of(runs: Sequence[Reading], name: str | None, tuned: Tuned) -> tuple[Reading, ...]:
    """Return the runs behind an advice: of the meter of that name, or (None) of all together."""
    if name is None:
        named = sorted({run.position for run in runs})[:1]
        position = tuned.position.position if tuned.position is not None else "".join(named)
        return tuple(run for run in runs if run.position == position)
    return tuple(run for run in runs if _name(run) == name)


def _name(run: Reading) -> str:
    return f"{run.meter}, {run.position}" if run.position else run.meter


def _counts(runs: Sequence[Reading], unit: str) -> list[tuple[float, int, int, int]]:
    """Return level, cells, skips and doubles, runs at one level added up, levels rising."""
    sums: dict[float, tuple[int, int, int]] = {}
    for run in runs:
        level = round(float(run.vacuum.to(unit).magnitude), 6)
        cells, skips, doubles = sums.get(level, (0, 0, 0))
        sums[level] = (cells + run.cells, skips + run.skips, doubles + run.doubles)
    return [(level, *sums[level]) for level in sorted(sums)]


def _response(
    counts: list[tuple[float, int, int, int]],
    place: int,
    curve: Curve | None,
    levels: list[float],
    unit: str,
) -> Response:
    points = tuple(_point(level[0], level[1], int(level[place])) for level in counts)
    if curve is None or levels[0] == levels[-1]:
        return Response(points)
    x = np.linspace(levels[0], levels[-1], STEPS)
    vacuum = Q(x, unit)
    low, high = curve.band(vacuum)
    return Response(points, *(_line(x, share) for share in (curve.share(vacuum), low, high)))


def _line(x: "np.ndarray[tuple[int], np.dtype[np.float64]]", share: object) -> Line:
    percent = 100.0 * np.asarray(share, dtype=np.float64)
    return tuple((float(a), float(b)) for a, b in zip(x, percent, strict=True))


def _point(level: float, cells: int, hits: int) -> Point:
    """Return a share with Wilson's 95 % interval (Wilson 1927, JASA 22:209-212)."""
    z = 1.959964
    share, spread = hits / cells, z * z / cells
    middle = (share + spread / 2) / (1 + spread)
    half = z / (1 + spread) * sqrt(share * (1 - share) / cells + spread / (4 * cells))
    return Point(level, 100 * share, 100 * max(0.0, middle - half), 100 * min(1.0, middle + half))


def _level(pressure: Quantity | None, unit: str) -> float | None:
    return None if pressure is None else float(pressure.to(unit).magnitude)
