"""Catch test: seed caught over a distance or wheel turns, the rate it shows, the correction."""

from changeover.quantities import Q, Quantity
from changeover.seed import bounds, rate
from changeover.seed.rate import Count, Share

NO_SLIP = Q(0.0, "percent")


def distance_of_turns(
    turns: Count, rolling_circumference: Quantity, slip: Share = NO_SLIP
) -> Quantity:
    """Return the distance that wheel turns stand for: turns · circumference / (1 − slip).

    With the wheel turned by hand in the yard, give the slip of the field. Raises Refusal for
    input out of bounds. By definition.
    """
    rolled = bounds.TURNS.of(turns) * bounds.CIRCUMFERENCE.of(rolling_circumference)
    return Q(rolled / (1.0 - bounds.SLIP.of(slip) / 100.0), "m")


def sown_area(distance: Quantity, rows: Count, row_spacing: Quantity) -> Quantity:
    """Return the area that the caught rows would have sown over the distance.

    Raises Refusal for input out of bounds. By definition.
    """
    width = bounds.ROWS.of(rows) * bounds.ROW_SPACING.of(row_spacing)
    return Q(bounds.DISTANCE.of(distance) * width, "m^2")


def rate_from_seeds(
    seeds: Count, distance: Quantity, rows: Count, row_spacing: Quantity
) -> Quantity:
    """Return seeds per area from the seeds caught below ``rows`` over ``distance``.

    Raises Refusal for input out of bounds. By definition.
    """
    caught = bounds.COUNT.of(seeds)
    return Q(caught / sown_area(distance, rows, row_spacing).magnitude, "seed/m^2")


def mass_rate_from_mass(
    mass: Quantity, distance: Quantity, rows: Count, row_spacing: Quantity
) -> Quantity:
    """Return mass per area from the mass of seed caught below ``rows`` over ``distance``.

    Raises Refusal for input out of bounds. By definition; University of Wyoming Extension 2012
    works the same steps.
    """
    caught = bounds.MASS.of(mass) / sown_area(distance, rows, row_spacing).magnitude
    return Q(caught, "g/m^2").to("kg/hectare")


def seeds_to_catch(
    seed_rate: Quantity, distance: Quantity, rows: Count, row_spacing: Quantity
) -> Quantity:
    """Return the seeds that should be caught when the rate is right.

    Raises Refusal for input out of bounds. By definition.
    """
    area = sown_area(distance, rows, row_spacing).magnitude
    return Q(bounds.RATE.of(seed_rate) * area, "seed")


def mass_to_catch(
    seed_rate: Quantity,
    seeds_per_mass: Quantity,
    distance: Quantity,
    rows: Count,
    row_spacing: Quantity,
) -> Quantity:
    """Return the mass of seed that should be caught when the rate is right.

    Raises Refusal for input out of bounds. By definition.
    """
    per_area = rate.mass_rate(seed_rate, seeds_per_mass).to("g/m^2").magnitude
    return Q(per_area * sown_area(distance, rows, row_spacing).magnitude, "g")


def correction(wanted: Quantity, caught: Quantity) -> float:
    """Return the factor on the drive ratio that brings the caught rate to the wanted one.

    Both in seeds per area. A factor of 1.05 asks for 5 % more disc turns per distance. Raises
    Refusal for input out of bounds. By definition.
    """
    return float(bounds.RATE.of(wanted) / bounds.RATE.of(caught))
