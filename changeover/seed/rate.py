"""Seed rate, spacing in the row, seeds per second, disc speed and mass: one arithmetic, exact."""

from typing import Literal

import numpy as np

from changeover.quantities import Q, Quantity, Refusal
from changeover.seed import bounds
from changeover.seed.bounds import Floats

Count = int | float | Floats | Quantity
Share = float | Floats | Quantity

NO_ERROR = Q(0.0, "percent")
ALL = Q(100.0, "percent")


def spacing_in_row(rate: Quantity, row_spacing: Quantity) -> Quantity:
    """Return the mean spacing of seeds in the row, a length.

    spacing = 1 / (rate · row spacing), ``rate`` in seeds per area. Scalars or arrays that
    broadcast. Raises Refusal for input out of bounds. By definition: 6 272 640 / (in · seeds/ac).
    """
    return Q(1.0 / (bounds.RATE.of(rate) * bounds.ROW_SPACING.of(row_spacing)), "m")


def seed_rate(spacing: Quantity, row_spacing: Quantity) -> Quantity:
    """Return seeds per area from the spacing in the row and the row spacing, both lengths.

    The inverse of ``spacing_in_row``. Raises Refusal for input out of bounds. By definition.
    """
    across = bounds.ROW_SPACING.of(row_spacing)
    return Q(1.0 / (bounds.SPACING.of(spacing) * across), "seed/m^2")


def seeds_per_length(rate: Quantity, row_spacing: Quantity) -> Quantity:
    """Return seeds per length of row from seeds per area and the row spacing.

    Raises Refusal for input out of bounds. By definition: seeds/ac · in / 522 720 per foot.
    """
    return Q(bounds.RATE.of(rate) * bounds.ROW_SPACING.of(row_spacing), "seed/m")


def row_length_thousandth(
    row_spacing: Quantity, area: Literal["acre", "hectare"] = "acre"
) -> Quantity:
    """Return the length of row that covers a thousandth of an acre or of a hectare.

    Raises Refusal for a row spacing out of bounds or another area. By definition:
    522.72 / in feet, 1000 / cm metres.
    """
    if area not in ("acre", "hectare"):
        raise Refusal(f"Area: “{area}” is not known; choose acre or hectare.")
    square_metres = Q(0.001, area).to("m^2").magnitude
    return Q(square_metres / bounds.ROW_SPACING.of(row_spacing), "m")


def seeds_per_second(rate: Quantity, row_spacing: Quantity, speed: Quantity) -> Quantity:
    """Return the seeds that one row drops in a second.

    seeds per area · row spacing · ground speed. Raises Refusal for input out of bounds. By
    definition: seeds/ac · in · mph / 356 400; the divisor 360 000 in circulation is 1 % off.
    """
    per_metre = bounds.RATE.of(rate) * bounds.ROW_SPACING.of(row_spacing)
    return Q(per_metre * bounds.SPEED.of(speed), "seed/s")


def disc_speed(per_second: Quantity, cells: Count) -> Quantity:
    """Return the disc's turns per minute from seeds per second and cells on the disc.

    One seed in each cell. ``cells`` are whole numbers. Raises Refusal for input out of bounds.
    By definition: 60 · v / (cells · spacing).
    """
    turns = bounds.SEEDS_PER_SECOND.of(per_second) / whole_cells(cells)
    return Q(turns * 60.0, "rpm")


def disc_speed_at(rate: Quantity, row_spacing: Quantity, speed: Quantity, cells: Count) -> Quantity:
    """Return the disc's turns per minute from rate, row spacing, ground speed and cells.

    Raises Refusal for input out of bounds. By definition, as ``disc_speed``.
    """
    return disc_speed(seeds_per_second(rate, row_spacing, speed), cells)


def peripheral_speed(per_second: Quantity, cells: Count, diameter: Quantity) -> Quantity:
    """Return the speed of the cells on their circle, whose diameter is a length.

    π · diameter · seeds per second / cells. Raises Refusal for input out of bounds. By
    definition; Banaj et al. 2022, J. Central European Agriculture 23(3):642-654 use it.
    """
    turns = bounds.SEEDS_PER_SECOND.of(per_second) / whole_cells(cells)
    return Q(np.pi * bounds.DIAMETER.of(diameter) * turns, "m/s")


def whole_cells(cells: Count) -> Floats | float:
    """Return the number of cells as floats; raises Refusal unless each is a whole number from 1."""
    number = bounds.CELLS.of(cells)
    if np.any(number != np.rint(number)):
        raise Refusal("Cells of the disc: a disc has whole cells only; enter a whole number.")
    return number  # type: ignore[no-any-return]


def mass_rate(rate: Quantity, seeds_per_mass: Quantity) -> Quantity:
    """Return mass of seed per area from seeds per area and seeds per mass.

    Raises Refusal for input out of bounds. By definition.
    """
    kilograms = bounds.RATE.of(rate) / bounds.SEEDS_PER_MASS.of(seeds_per_mass)
    return Q(kilograms, "kg/m^2").to("kg/hectare")


def rate_from_mass(mass_per_area: Quantity, seeds_per_mass: Quantity) -> Quantity:
    """Return seeds per area from mass of seed per area, the inverse of ``mass_rate``.

    Raises Refusal for input out of bounds. By definition.
    """
    per_hectare = bounds.MASS_RATE.of(mass_per_area) * bounds.SEEDS_PER_MASS.of(seeds_per_mass)
    return Q(per_hectare / 1e4, "seed/m^2")


def seeds_per_mass_from_thousand(thousand_seed_mass: Quantity) -> Quantity:
    """Return seeds per mass from the mass of a thousand seeds.

    Raises Refusal for input out of bounds. By definition: 453 592.37 / g seeds per pound.
    """
    return Q(1e6 / bounds.THOUSAND_SEED_MASS.of(thousand_seed_mass), "seed/kg")


def thousand_seed_mass(seeds_per_mass: Quantity) -> Quantity:
    """Return the mass of a thousand seeds from seeds per mass.

    Raises Refusal for input out of bounds. By definition.
    """
    return Q(1e6 / bounds.SEEDS_PER_MASS.of(seeds_per_mass), "g")


def seeds_per_mass_from_sample(seeds: Count, mass: Quantity) -> Quantity:
    """Return seeds per mass from the seeds counted in a weighed sample.

    Raises Refusal for input out of bounds. By definition; the University of Kentucky gives
    count · 22.68 seeds per pound for a 20 g sample.
    """
    per_gram = bounds.COUNT.of(seeds) / bounds.MASS.of(mass)
    return Q(per_gram * 1000.0, "seed/kg")


def rate_for_stand(
    stand: Quantity, germination: Share, emergence: Share = ALL, meter_error: Share = NO_ERROR
) -> Quantity:
    """Return the seed rate to enter for a stand of plants per area.

    rate = stand / (germination · emergence · (1 − meter error)). ``emergence`` is the share of
    live seeds that come up; ``meter_error`` the share by which the meter drops too few, negative
    when it drops too many. Raises Refusal for input out of bounds. By definition; the factors as
    University of Arizona az1203 and NDSU Extension A1961 multiply them.
    """
    plants = bounds.STAND.of(stand)
    return Q(plants / plants_per_seed(germination, emergence, meter_error), "seed/m^2")


def stand_from_rate(
    rate: Quantity, germination: Share, emergence: Share = ALL, meter_error: Share = NO_ERROR
) -> Quantity:
    """Return the stand, plants per area, that a seed rate gives: ``rate_for_stand`` turned round.

    Raises Refusal for input out of bounds.
    """
    share = plants_per_seed(germination, emergence, meter_error)
    return Q(bounds.RATE.of(rate) * share, "plant/m^2")


def plants_per_seed(germination: Share, emergence: Share, meter_error: Share) -> Floats | float:
    """Return the plants that stand for each seed of the entered rate, a share above 0.

    Shares as quantities (95 percent) or bare fractions (0.95). Raises Refusal out of bounds.
    """
    dropped = 1.0 - bounds.METER_ERROR.of(meter_error) / 100.0
    live = bounds.GERMINATION.of(germination) / 100.0
    return live * bounds.EMERGENCE.of(emergence) / 100.0 * dropped  # type: ignore[no-any-return]
