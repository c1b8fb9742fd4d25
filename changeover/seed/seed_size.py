"""Seed size and shape: mean diameter, sphericity, porosity, and sieve sizes as lengths."""

from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache

import numpy as np

from changeover.quantities import Q, Quantity, Refusal
from changeover.seed.bounds import Bound
from changeover.seed.crops import Crop
from changeover.seed.lots import SeedLot

SIZE = Bound("seed dimension", "mm", 0.2, 40.0)
SIEVE = Bound("sieve size", "count", 1.0, 64.0)
DENSITY = Bound("density", "kg/m^3", 50.0, 3000.0)


class Shape(StrEnum):
    """How round a seed is, by its sphericity; the limits are from memory."""

    ROUND = "round"
    OVAL = "oval"
    FLAT = "flat"


ROUND_FROM, FLAT_BELOW = 0.85, 0.72


@dataclass(frozen=True)
class SeedSize:
    """The mean diameter of a lot's seed, its width, its shape, and whence.

    ``width`` is the middle one of its three sides: it decides whether the seed passes a round
    hole, and is what a sieve with round holes grades by.
    ``measured`` is False when the figures are the crop's published ones and not the lot's.
    """

    diameter: Quantity
    width: Quantity | None
    shape: Shape | None
    says: str
    measured: bool


def geometric_mean_diameter(length: Quantity, width: Quantity, thickness: Quantity) -> Quantity:
    """Return the geometric mean diameter of a seed from its three dimensions, all lengths.

    (length · width · thickness) to the power 1/3. Scalars or arrays. Raises Refusal for input out
    of bounds. As in Karababa 2006, J. Food Eng. 72:100-107.
    """
    product = SIZE.of(length) * SIZE.of(width) * SIZE.of(thickness)
    return Q(np.cbrt(product), "mm")


def sphericity(length: Quantity, width: Quantity, thickness: Quantity) -> Quantity:
    """Return the sphericity of a seed, 1 for a ball: geometric mean diameter over length.

    Raises Refusal for input out of bounds. As in Karababa 2006, J. Food Eng. 72:100-107.
    """
    mean = geometric_mean_diameter(length, width, thickness).to("mm").magnitude
    return Q(mean / SIZE.of(length), "count")


def porosity(bulk_density: Quantity, true_density: Quantity) -> Quantity:
    """Return the share of air between the seeds of a heap: 1 − bulk density / true density.

    Raises Refusal for input out of bounds, or a heap denser than its seed. By definition.
    """
    share = 1.0 - DENSITY.of(bulk_density) / DENSITY.of(true_density)
    if np.any(np.asarray(share) < 0):
        raise Refusal("Porosity: a heap cannot be denser than its seed; swap the two densities.")
    return Q(share * 100.0, "percent")


def sieve_size(sixty_fourths: float) -> Quantity:
    """Return the opening of a sieve that is named in sixty-fourths of an inch, a length.

    Raises Refusal outside 1 to 64. By definition.
    """
    return Q(SIEVE.of(sixty_fourths) * 25.4 / 64.0, "mm")


def shape_of(roundness: float) -> Shape:
    """Return the shape that a sphericity stands for."""
    if roundness >= ROUND_FROM:
        return Shape.ROUND
    return Shape.FLAT if roundness < FLAT_BELOW else Shape.OVAL


def seed_size(lot: SeedLot, crop: Crop) -> SeedSize | None:
    """Return the size of a lot's seed: from its dimensions, its sieve grade, or the crop's print.

    None when nothing is known. Raises Refusal for dimensions out of bounds.
    """
    if lot.length is not None and lot.width is not None and lot.thickness is not None:
        return _of_dimensions(
            lot.length, lot.width, lot.thickness, "the lot’s own size", measured=True
        )
    if lot.sieve is not None:
        low, high = lot.sieve
        middle = sieve_size((low + high) / 2.0)
        says = f"sieve grade {low:g}-{high:g} sixty-fourths of an inch"
        return SeedSize(middle, sieve_size(low), None, says, measured=True)
    return _printed(crop)


@lru_cache(maxsize=64)
def _printed(crop: Crop) -> SeedSize | None:
    sides = [crop.best(what) for what in ("length", "width", "thickness")]
    if all(side is not None for side in sides):
        length, width, thickness = (side.middle for side in sides if side is not None)
        source = sides[0].source if sides[0] is not None else ""
        says = f"the crop’s figures in print ({source})"
        return _of_dimensions(length, width, thickness, says, measured=False)
    return None


def _of_dimensions(
    length: Quantity, width: Quantity, thickness: Quantity, says: str, *, measured: bool
) -> SeedSize:
    middle = sorted((length, width, thickness))[1]
    shape = shape_of(float(sphericity(length, width, thickness).magnitude))
    mean = geometric_mean_diameter(length, width, thickness)
    return SeedSize(mean, middle, shape, says, measured)
