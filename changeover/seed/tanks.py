"""Tanks and hoppers: what a fill holds, how far it goes, how many fills, where to stop for seed."""

from dataclasses import dataclass
from math import ceil

from changeover.quantities import Q, Quantity, Refusal
from changeover.seed import bounds
from changeover.seed.rate import Share

NO_RESERVE = Q(0.0, "percent")


@dataclass(frozen=True)
class RefillStop:
    """Where to stop and fill: after how many runs, the area done, the seeds used since the fill."""

    after_runs: int
    area_done: Quantity
    seeds_used: Quantity


def bulk_density(test_weight: Quantity) -> Quantity:
    """Return bulk density, mass per volume, from a test weight such as 56 lb/bu.

    Raises Refusal for input out of bounds. By definition: a bushel is 2 150.42 in³.
    """
    return Q(bounds.BULK_DENSITY.of(test_weight), "kg/m^3")


def mass_in_volume(volume: Quantity, density: Quantity) -> Quantity:
    """Return the mass of seed that fills a volume.

    Raises Refusal for input out of bounds. By definition; treatment and heaping change it by
    several percent (from memory).
    """
    return Q(bounds.VOLUME.of(volume) / 1000.0 * bounds.BULK_DENSITY.of(density), "kg")


def seeds_in_volume(volume: Quantity, density: Quantity, seeds_per_mass: Quantity) -> Quantity:
    """Return the seeds that fill a volume.

    Raises Refusal for input out of bounds. By definition.
    """
    mass = mass_in_volume(volume, density).magnitude
    return Q(mass * bounds.SEEDS_PER_MASS.of(seeds_per_mass), "seed")


def run_out_area(
    seeds: Quantity, rate: Quantity, share_of_rows: Share = 1.0, reserve: Share = NO_RESERVE
) -> Quantity:
    """Return the field area after which a tank is down to its reserve.

    seeds · (1 − reserve) / (rate · share of rows): a tank that feeds a third of the rows lasts
    three times the area. Raises Refusal for input out of bounds. By definition.
    """
    used = bounds.COUNT.of(seeds) * (1.0 - bounds.RESERVE.of(reserve) / 100.0)
    per_area = bounds.RATE.of(rate) * bounds.ROW_SHARE.of(share_of_rows) / 100.0
    return Q(used / per_area, "m^2").to("hectare")


def run_out_time(area: Quantity, field_capacity: Quantity) -> Quantity:
    """Return the time that an area takes at a field capacity, area per time.

    Raises Refusal for input out of bounds. By definition.
    """
    return Q(bounds.AREA.of(area) / bounds.FIELD_CAPACITY.of(field_capacity) * 60.0, "min")


def fills_needed(seeds: Quantity, seeds_per_fill: Quantity) -> int:
    """Return the fills of a tank for a job, the first one counted.

    Raises Refusal for input out of bounds.
    """
    fills = bounds.COUNT.of(seeds) / bounds.COUNT.of(seeds_per_fill)
    return ceil(float(fills) * (1.0 - 1e-9))


def refill_stops(
    area: Quantity,
    run_length: Quantity,
    working_width: Quantity,
    seeds_per_fill: Quantity,
    rate: Quantity,
    *,
    reserve: Share = NO_RESERVE,
    runs_between_stops: int = 2,
) -> tuple[RefillStop, ...]:
    """Return the stops for seed in a field of even runs, all at the end where filling is done.

    ``runs_between_stops`` is 2 when seed waits at one end, 1 when at both. ``seeds_per_fill``
    and ``rate`` cover all rows that plant. Raises Refusal when one fill does not last to the
    next place to stop, or for input out of bounds.
    """
    run_area = bounds.RUN_LENGTH.of(run_length) * bounds.WIDTH.of(working_width)
    runs = ceil(bounds.AREA.of(area) * 1e4 / run_area * (1.0 - 1e-9))
    per_run = run_area * bounds.RATE.of(rate)
    lasting = bounds.COUNT.of(seeds_per_fill) * (1.0 - bounds.RESERVE.of(reserve) / 100.0)
    if runs_between_stops not in (1, 2):
        raise Refusal("Refills: seed waits at one end (2 runs between stops) or at both (1 run).")
    step = int(lasting / per_run * (1.0 + 1e-9)) // runs_between_stops * runs_between_stops
    if step == 0 and runs > lasting / per_run:
        raise Refusal(
            "Refills: one fill does not last to the next place to stop; fill more, or place seed "
            "at both ends."
        )
    return tuple(
        RefillStop(done, Q(done * run_area, "m^2").to("hectare"), Q(step * per_run, "seed"))
        for done in range(step, runs, step or runs)
        if done
    )
