"""Spacing of seeds in the furrow: indices in both conventions, precision, CP3, rate achieved.

Two conventions are in use and differ. Kachman & Smith 1995 (Trans. ASAE 38(2):379-387), as Iowa
State University quotes them, count shares of *spacings*; ISO 7256-1:1984 reckons shares of *drop
positions* (from memory, the algebra closes). Both are given; each says which it is.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import sqrt

import numpy as np

from changeover.proof.divisions import division_counts
from changeover.proof.intervals import Floats
from changeover.proof.spacing_sums import SpacingSums, gather
from changeover.quantities import Q, Quantity, Refusal
from changeover.seed import bounds

EVENLY_SPREAD = 1 / sqrt(12)  # precision if division II were filled evenly: its upper limit, 28.9 %
MOST_TARGETS = 10_000  # a spacing of more targets is a slip of the pen (from memory)
Divisions = tuple[int, int, int, int, int]


@dataclass(frozen=True)
class Indices:
    """Multiples, quality of feed and misses, shares 0 to 1 of ``of`` items, which sum to 1.

    ``meaningful`` is False where a row is so clustered that the shares say nothing.
    """

    of: int
    multiples: float
    quality_of_feed: float
    misses: float
    meaningful: bool = True


@dataclass(frozen=True)
class Shortage:
    """Seeds missing against the target over the length measured, as shares of the target.

    ``total`` = ``skips`` + ``doubles`` + ``spread``: skips take seeds away, doubles give some
    back (negative), spread is the drift of single spacings off the target.
    """

    total: float
    skips: float
    doubles: float
    spread: float


@dataclass(frozen=True)
class SpacingMeasures:
    """All measures of one row, or of several rows pooled.

    ``counts`` are n'1 … n'5, ``histogram`` the counts in 36 classes of a tenth of the target (the
    last one open), ``precision_ref`` and ``precision_mean`` the standard deviation of division II
    over the target and over its own mean (None below two), ``cp3_target`` and ``cp3_mode`` the
    shares in a 3 cm band about the target and about the ``mode``, the fullest class of 1 cm.
    Lengths are quantities; ``sd`` is None for a single spacing.
    """

    target: Quantity
    n: int
    counts: Divisions
    histogram: tuple[int, ...]
    by_spacings: Indices
    by_positions: Indices
    precision_ref: float | None
    precision_mean: float | None
    mean: Quantity
    sd: Quantity | None
    mode: Quantity
    cp3_mode: float
    cp3_target: float
    shortage: Shortage

    @property
    def length(self) -> Quantity:
        return Q(float(self.mean.magnitude) * self.n, self.mean.units)

    @property
    def seeds_per_length(self) -> Quantity:
        return Q(1.0 / float(self.mean.to("m").magnitude), "seed/m")

    @property
    def rate_share(self) -> float:
        """The rate achieved, as a share of the rate that the target spacing stands for."""
        return float((self.target / self.mean).to("count").magnitude)


def by_spacings(counts: Divisions) -> Indices:
    """Return the indices as shares of spacings: n'1/N, n'2/N, (n'3 + n'4 + n'5)/N.

    Raises Refusal when there are no spacings.
    """
    n = sum(counts)
    if n < 1:
        raise Refusal("There are no spacings to judge; measure at least one.")
    return Indices(n, counts[0] / n, counts[1] / n, sum(counts[2:]) / n)


def by_positions(counts: Divisions) -> Indices:
    """Return the indices as shares of drop positions.

    n2 = n'1, n1 = N − 2 n2, n0 = n'3 + 2 n'4 + 3 n'5, over N' = n'2 + 2 n'3 + 3 n'4 + 4 n'5 (from
    memory). Not meaningful when n1 < 0, as in clustered rows, or without a position. Raises
    Refusal when there are no spacings.
    """
    if sum(counts) < 1:
        raise Refusal("There are no spacings to judge; measure at least one.")
    first, second, third, fourth, fifth = counts
    positions = second + 2 * third + 3 * fourth + 4 * fifth
    singles = sum(counts) - 2 * first
    empty = third + 2 * fourth + 3 * fifth
    over = max(positions, 1)
    sound = singles >= 0 and positions > 0
    return Indices(positions, first / over, singles / over, empty / over, sound)


def measure_spacings(spacings: Quantity, target: Quantity) -> SpacingMeasures:
    """Return all measures of an array of spacings against the target spacing, both lengths.

    Spacings of 0 (two seeds in one place) count; raises Refusal for a target out of bounds, no
    spacings, or a spacing below zero or beyond 10 000 targets.
    """
    bounds.SPACING.of(target)
    unit = spacings.units
    size = float(target.to(unit).magnitude)
    x = _checked(np.atleast_1d(np.asarray(spacings.magnitude, dtype=np.float64)), size)
    return _measures(gather(x, size, float(Q(1.0, "cm").to(unit).magnitude)), target)


def measure_rows(rows: Mapping[int, Quantity], target: Quantity) -> dict[int, SpacingMeasures]:
    """Return the measures of each row; keys are row numbers, values arrays of spacings.

    Raises Refusal as ``measure_spacings``, naming the row.
    """
    measured: dict[int, SpacingMeasures] = {}
    for row, spacings in rows.items():
        try:
            measured[row] = measure_spacings(spacings, target)
        except Refusal as refusal:
            raise Refusal(f"Row {row}: {refusal}") from refusal
    return measured


def all_spacings(rows: Mapping[int, Quantity]) -> Quantity:
    """Return the spacings of all rows as one array. Raises Refusal when there are no rows."""
    if not rows:
        raise Refusal("There are no rows of spacings; enter at least one.")
    unit = next(iter(rows.values())).units
    return Q(np.concatenate([np.atleast_1d(x.to(unit).magnitude) for x in rows.values()]), unit)


def spacings_between(positions: Quantity) -> Quantity:
    """Return the spacings between positions along a tape, an array of lengths.

    Raises Refusal below two positions, or when one lies behind the one before it.
    """
    x = np.atleast_1d(np.asarray(positions.magnitude, dtype=np.float64))
    if x.size < 2:
        raise Refusal("Positions along a tape: at least two are needed for a spacing.")
    between = np.diff(x)
    back = np.flatnonzero(~(between >= 0))
    if back.size:
        at = int(back[0]) + 1
        raise Refusal(
            f"Position {at + 1} ({x[at]:g}) lies behind position {at} ({x[at - 1]:g}); "
            "check the tape readings."
        )
    return Q(between, positions.units)


def _checked(x: Floats, target: float) -> Floats:
    if x.size == 0:
        raise Refusal("There are no spacings to judge; measure at least one.")
    most = MOST_TARGETS * target
    if not (x.min() >= 0 and x.max() <= most):
        at = int(np.argmax(~((x >= 0) & (x <= most))))
        raise Refusal(f"Spacing {at + 1} ({x[at]:g}) is not possible; enter 0 to {most:g}.")
    if not x.any():
        raise Refusal("All spacings are zero; check the readings.")
    return x


def _measures(sums: SpacingSums, target: Quantity) -> SpacingMeasures:
    counts = division_counts(sums.histogram)
    sd = _sd(sums.n, sums.deviation, sums.square)
    single_sd = _sd(counts[1], sums.single_deviation, sums.single_square)
    single_mean = 1 + sums.single_deviation / counts[1] if counts[1] else 1.0
    return SpacingMeasures(
        target=target,
        n=sums.n,
        counts=counts,
        histogram=tuple(int(n) for n in sums.histogram),
        by_spacings=by_spacings(counts),
        by_positions=by_positions(counts),
        precision_ref=single_sd,
        precision_mean=None if single_sd is None else single_sd / single_mean,
        mean=target * (1 + sums.deviation / sums.n),
        sd=None if sd is None else target * sd,
        mode=target * (1 + sums.mode),
        cp3_mode=sums.near_mode / sums.n,
        cp3_target=sums.near_target / sums.n,
        shortage=_shortage(sums, counts),
    )


def _sd(n: int, deviation: float, square: float) -> float | None:
    """Standard deviation with n − 1, of ratios given as sums about 1."""
    return sqrt(max(square - deviation**2 / n, 0.0) / (n - 1)) if n > 1 else None


def _shortage(sums: SpacingSums, counts: Divisions) -> Shortage:
    wanted = sums.n + sums.deviation
    first, second, third, fourth, fifth = counts
    empty = third + 2 * fourth + sums.steps_beyond - fifth
    placed = second + 2 * third + 3 * fourth + sums.steps_beyond
    return Shortage(
        total=sums.deviation / wanted,
        skips=empty / wanted,
        doubles=-first / wanted,
        spread=(wanted - placed) / wanted,
    )
