"""The fastest ground speed that disc speed and seeds per second allow, as a warning with source."""

from dataclasses import dataclass

from changeover.quantities import Q, Quantity, Units, show
from changeover.seed import bounds, rate
from changeover.seed.rate import Count

# Önal, Degirmencioglu & Yazgi 2012, Turk. J. Agric. For. 36:133-144: about 16 seeds a second for
# cotton and maize, on one machine.
RELEASE_LIMIT = Q(16.0, "seed/s")
RELEASE_SOURCE = "Önal, Degirmencioglu & Yazgi 2012, Turk. J. Agric. For. 36:133-144"


@dataclass(frozen=True)
class TopSpeed:
    """The fastest ground speed advised, what bounds it, and where the bound comes from."""

    speed: Quantity
    bound_by: str
    source: str


def speed_for_seeds_per_second(
    per_second: Quantity, seed_rate: Quantity, row_spacing: Quantity
) -> Quantity:
    """Return the ground speed at which one row drops ``per_second`` seeds.

    Scalars or arrays. Raises Refusal for input out of bounds. By definition.
    """
    per_metre = rate.seeds_per_length(seed_rate, row_spacing).to("seed/m").magnitude
    return Q(bounds.SEEDS_PER_SECOND.of(per_second) / per_metre, "m/s")


def speed_for_disc_speed(
    disc_speed: Quantity, cells: Count, seed_rate: Quantity, row_spacing: Quantity
) -> Quantity:
    """Return the ground speed at which the disc turns at ``disc_speed``.

    Scalars or arrays. Raises Refusal for input out of bounds. By definition.
    """
    turns = bounds.DISC_SPEED.of(disc_speed) * rate.whole_cells(cells)
    return speed_for_seeds_per_second(Q(turns / 60.0, "seed/s"), seed_rate, row_spacing)


def top_ground_speed(
    seed_rate: Quantity,
    row_spacing: Quantity,
    cells: int,
    most_disc_speed: Quantity | None = None,
    release_limit: Quantity = RELEASE_LIMIT,
    release_source: str = RELEASE_SOURCE,
) -> TopSpeed:
    """Return the fastest ground speed advised: the lower of the disc's and the release limit.

    ``most_disc_speed`` comes from the user's manual; without it the release limit alone counts.
    It is advice from one machine, not a bar. Raises Refusal for input out of bounds.
    """
    release = speed_for_seeds_per_second(release_limit, seed_rate, row_spacing)
    if most_disc_speed is not None:
        disc = speed_for_disc_speed(most_disc_speed, cells, seed_rate, row_spacing)
        if disc < release:
            return TopSpeed(disc, "disc speed", "your manual")
    return TopSpeed(release, "seeds per second", release_source)


def speed_warnings(
    speed: Quantity,
    seed_rate: Quantity,
    row_spacing: Quantity,
    cells: int,
    most_disc_speed: Quantity | None = None,
    units: Units = Units.US,
) -> tuple[str, ...]:
    """Return one sentence when the planned speed is above the advised top speed, else none.

    Raises Refusal for input out of bounds.
    """
    top = top_ground_speed(seed_rate, row_spacing, cells, most_disc_speed)
    bounds.SPEED.of(speed)
    if speed <= top.speed:
        return ()
    per_second = rate.seeds_per_second(seed_rate, row_spacing, speed)
    says = (
        f"At {show(speed, 'speed', units)} each row drops "
        f"{show(per_second, 'seeds_per_second', units)}; expect more skips above "
        f"{show(top.speed, 'speed', units)}, bound by {top.bound_by} ({top.source})."
    )
    return (says,)
