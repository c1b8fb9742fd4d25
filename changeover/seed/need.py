"""Seed needed for a job: seeds, mass, whole packages with what is left over, dry lubricant."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

import numpy as np
from numpy.typing import NDArray

from changeover.quantities import Q, Quantity, Refusal
from changeover.seed import bounds
from changeover.seed.rate import Share

NO_OVERLAP = Q(0.0, "percent")
_ROUNDING = 1e-9  # relative; sums of binary fractions may miss a whole number by this much


@dataclass(frozen=True)
class Packages:
    """Whole packages for a job, the seeds needed, and the seeds left in the last one."""

    whole: int
    seeds_per_package: int
    seeds_needed: int

    @property
    def left_over(self) -> int:
        """Seeds left over once the job is done."""
        return self.whole * self.seeds_per_package - self.seeds_needed


def seeds_needed(area: Quantity, rate: Quantity, overlap: Share = NO_OVERLAP) -> Quantity:
    """Return the seeds that an area takes at a seed rate, sown twice where passes overlap.

    area · (1 + overlap) · rate, ``overlap`` a share of the area. Scalars or arrays. Raises
    Refusal for input out of bounds. By definition.
    """
    sown = bounds.AREA.of(area) * (1.0 + bounds.OVERLAP.of(overlap) / 100.0)
    return Q(sown * 1e4 * bounds.RATE.of(rate), "seed")


def mass_needed(seeds: Quantity, seeds_per_mass: Quantity) -> Quantity:
    """Return the mass of a number of seeds.

    Raises Refusal for input out of bounds. By definition.
    """
    return Q(bounds.COUNT.of(seeds) / bounds.SEEDS_PER_MASS.of(seeds_per_mass), "kg")


def seeds_in_mass(mass: Quantity, seeds_per_mass: Quantity) -> Quantity:
    """Return the number of seeds in a mass of seed.

    Raises Refusal for input out of bounds. By definition.
    """
    return Q(bounds.MASS.of(mass) / 1000.0 * bounds.SEEDS_PER_MASS.of(seeds_per_mass), "seed")


def packages_needed(seeds: Quantity, seeds_per_package: float | Quantity) -> Packages:
    """Return the whole packages that hold at least ``seeds``, and what is left over.

    Rounds up in whole numbers, so that no seed is lost and no package is added by a rounding
    error. Raises Refusal for input out of bounds.
    """
    return packages_holding(seeds, int(bounds.PACKAGE_SEEDS.of(seeds_per_package)))


def seeds_in_package(seeds_per_mass: Quantity, package_mass: Quantity) -> int:
    """Return the whole seeds in a package of a mass.

    Raises Refusal for input out of bounds, or a package of less than one seed.
    """
    held = bounds.PACKAGE_MASS.of(package_mass) / 1000.0 * bounds.SEEDS_PER_MASS.of(seeds_per_mass)
    size = int(held * (1.0 + _ROUNDING))
    if size < 1:
        raise Refusal("Package: its mass holds less than one seed; check mass and seed size.")
    return size


def packages_by_mass(seeds: Quantity, seeds_per_mass: Quantity, package_mass: Quantity) -> Packages:
    """Return the whole packages, each of a mass, that hold at least ``seeds``.

    A package counts as the whole seeds in its mass. Raises Refusal for input out of bounds.
    """
    return packages_holding(seeds, seeds_in_package(seeds_per_mass, package_mass))


def packages_holding(seeds: Quantity, size: int) -> Packages:
    """Return the whole packages of ``size`` seeds, known to be a size that can be.

    Raises Refusal for a count of seeds out of bounds.
    """
    wanted = _whole_up(bounds.COUNT.of(seeds))
    return Packages(-(-wanted // size), size, wanted)


def whole_packages(seeds: NDArray[np.float64], size: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return the whole packages of ``size`` seeds that hold at least ``seeds``, as bare arrays.

    For inner loops: rounds as ``packages_needed`` does, checks no bounds, and keeps NaN.
    """
    wanted = np.ceil(seeds * (1.0 - _ROUNDING))
    return np.ceil(wanted / size)


def share_packages(packages: int, shares: Sequence[float]) -> tuple[int, ...]:
    """Return whole packages for each group, in proportion to its share; the sum is kept.

    ``shares`` are any weights above zero in sum, such as rows per tank. Each group gets its
    whole part, the rest goes to the largest remainders, first come first on a tie. Raises
    Refusal for negative weights or none. Method: largest remainder (Hamilton).
    """
    weights = np.asarray(shares, dtype=np.float64)
    if packages < 0 or not weights.size or not weights.min() >= 0 or not 0 < weights.sum() < np.inf:
        raise Refusal("Sharing out packages: every group needs a share of zero or more.")
    exact = packages * weights / weights.sum()
    given = np.floor(exact * (1.0 + _ROUNDING)).astype(int)
    order = np.argsort(-(exact - given), kind="stable")
    given[order[: packages - int(given.sum())]] += 1
    return tuple(int(count) for count in given)


def shared_area(area: Quantity, rows_of_groups: Sequence[int]) -> Quantity:
    """Return the part of the area that each group of rows sows, as an array.

    ``rows_of_groups`` counts the rows that plant, without those locked up. Raises Refusal when
    no row plants. By definition, for rows that are evenly spaced.
    """
    rows = np.asarray(rows_of_groups, dtype=np.float64)
    if not rows.size or rows.min() < 0 or rows.sum() <= 0:
        raise Refusal("Groups: at least one row must plant; unlock a row.")
    return Q(bounds.AREA.of(area) * rows / rows.sum(), "hectare")


def dry_lubricant(packages: float, dose: Quantity) -> Quantity:
    """Return the dry lubricant for a number of packages, at the user's own dose per package.

    ``dose`` is a mass or a volume per package; the result has its unit. No dose is proposed:
    it is the meter maker's. Raises Refusal for a dose or count below zero or without a unit.
    """
    amount = dose if dose.dimensionality else None
    if amount is None or not 0 <= dose.magnitude < float("inf"):
        raise Refusal("Dry lubricant: enter the dose of one package, such as 1 oz or 20 g.")
    if not 0 <= packages < float("inf"):
        raise Refusal("Dry lubricant: the count of packages cannot be below zero.")
    return Q(dose.magnitude * packages, dose.units)


def _whole_up(seeds: float) -> int:
    return ceil(seeds * (1.0 - _ROUNDING))
