"""Vacuum: a force balance as lower bound, a start value with an honest band, one level for many."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import prod

import numpy as np

from changeover.quantities import Q, Quantity, Refusal, Units, show
from changeover.seed import bounds
from changeover.seed.rate import Count

GRAVITY = 9.80665  # m/s², by definition (NIST SP 811)
# Static friction of seed on galvanized steel: soybean 0.164 to 0.286 (Kibar 2008, Int.
# Agrophysics 22:239-244), canola 0.301 to 0.419 (Razavi et al. 2009, J. Agric. Sci. Technol.
# 11(3):309-322), bean 0.32 to 0.35 (J. Food Agric. Environ. 11(1):215-220, 2013), sugar beet
# 0.392 to 0.434 (Dursun et al. 2007, J. Stored Products Research 43:149-155). Near the upper
# end, so that the bound stays a lower one.
SEED_FRICTION = 0.4
FRICTION_SOURCE = "friction of seed on steel 0.16 to 0.43 (Kibar 2008; Dursun et al. 2007)"
# The published optima bear a band of half to double (Karayel, Barut & Özmerzi 2004, Biosystems
# Engineering 87(4):437-444, against Lauriano et al., Bioscience J.: soybean 3 and 6 kPa).
BAND = 2.0
# Derived: geometric mean of holding force over weight at ten published optima, which run 13 to
# 106 (Karayel et al. 2004; Yan, Gao & Zhang 2020).
HOLDING_RATIO = 29.0

ASSUMPTIONS = (
    "The disc stands upright and the seed is worst placed where weight and centripetal force add.",
    "Friction alone keeps the seed from sliding off; the whole vacuum acts on the whole hole.",
    "No shaking, no seed rubbing past, no leak: a lower bound, not a setting.",
    "The optima in print are about ten times this bound.",
)


@dataclass(frozen=True)
class VacuumBand:
    """A start value of vacuum and the band within which the best level may lie, all pressures."""

    low: Quantity
    start: Quantity
    high: Quantity

    def __post_init__(self) -> None:
        low, start, high = (bounds.PRESSURE.of(one) for one in (self.low, self.start, self.high))
        if not low <= start <= high:
            raise Refusal("Vacuum band: the start value must lie between the two ends.")


@dataclass(frozen=True)
class SharedVacuum:
    """One level for rows with several bands: the overlap, or None, and a sentence that says so."""

    band: VacuumBand | None
    says: str


def hole_area(hole_diameter: Quantity) -> Quantity:
    """Return the area of a round hole.

    Raises Refusal for input out of bounds. By definition: π d² / 4.
    """
    return Q(np.pi / 4.0 * bounds.HOLE.of(hole_diameter) ** 2, "mm^2")


def least_holding_vacuum(
    seed_mass: Quantity,
    hole_diameter: Quantity,
    peripheral_speed: Quantity,
    circle_diameter: Quantity,
    friction: Count = SEED_FRICTION,
) -> Quantity:
    """Return the lower bound of the vacuum that holds a seed: see ``ASSUMPTIONS``.

    m · (g + v² / r) / (friction · hole area), with the cells on a circle of
    ``circle_diameter`` moving at ``peripheral_speed``. Scalars or arrays. Raises Refusal for
    input out of bounds. Derived from the balance of forces (statics).
    """
    radius = bounds.DIAMETER.of(circle_diameter) / 2.0
    pull = GRAVITY + bounds.PERIPHERAL_SPEED.of(peripheral_speed) ** 2 / radius
    force = bounds.SEED_MASS.of(seed_mass) * 1e-3 * pull
    area = hole_area(hole_diameter).magnitude * 1e-6
    return Q(force / (bounds.FRICTION.of(friction) * area), "Pa").to("kPa")


def holding_ratio(vacuum: Quantity, seed_mass: Quantity, hole_diameter: Quantity) -> Quantity:
    """Return the holding force over the seed's weight, a bare number.

    Raises Refusal for input out of bounds. Derived: vacuum · hole area / (m · g).
    """
    force = bounds.PRESSURE.of(vacuum) * 1e3 * hole_area(hole_diameter).magnitude * 1e-6
    return Q(force / (bounds.SEED_MASS.of(seed_mass) * 1e-3 * GRAVITY), "count")


def band_about(start: Quantity) -> VacuumBand:
    """Return the band of half to double about a start value, which is what the optima bear out.

    Raises Refusal for input out of bounds.
    """
    kilopascals = bounds.PRESSURE.of(start)
    low, high = Q(kilopascals / BAND, "kPa"), Q(kilopascals * BAND, "kPa")
    return VacuumBand(low.to(start.units), start, high.to(start.units))


def start_from_optima(optima: Sequence[Quantity]) -> VacuumBand:
    """Return a start value and band from published optima: geometric mean, band stretched to all.

    Where sources disagree by more than half to double, the band holds them all. Raises Refusal
    when there is none, or for input out of bounds.
    """
    if not optima:
        raise Refusal("Vacuum: no optimum is published for this crop; enter one of your manual.")
    levels = [float(bounds.PRESSURE.of(one)) for one in optima]
    start = prod(levels) ** (1.0 / len(levels))
    low, high = min(start / BAND, *levels), max(start * BAND, *levels)
    return VacuumBand(Q(low, "kPa"), Q(start, "kPa"), Q(high, "kPa"))


def start_from_seed(seed_mass: Quantity, hole_diameter: Quantity) -> VacuumBand:
    """Return a start value and band from seed mass and hole, for a crop without published optima.

    The vacuum at which the holding force is 29 times the weight. Raises Refusal for input out
    of bounds, or when that is above 60 kPa. Derived from ten published optima.
    """
    weight = bounds.SEED_MASS.of(seed_mass) * 1e-3 * GRAVITY
    kilopascals = HOLDING_RATIO * weight / (hole_area(hole_diameter).magnitude * 1e-6) / 1e3
    if kilopascals * BAND > bounds.PRESSURE.high:
        raise Refusal(
            f"Vacuum: a hole of {hole_diameter:.3g~P} would take {kilopascals:.3g} kPa to hold a "
            f"seed of {seed_mass.to('mg'):.3g~P}, more than a fan gives; take a larger hole."
        )
    return band_about(Q(kilopascals, "kPa"))


def air_density_share(altitude: Quantity) -> Quantity:
    """Return the air density at an altitude over that at sea level, a share.

    (1 − 0.0065 h / 288.15) to the power 4.2559 (standard atmosphere, ISO 2533:1975). Raises
    Refusal below −450 m or above 5 500 m.
    """
    share = (1.0 - 0.0065 * bounds.ALTITUDE.of(altitude) / 288.15) ** 4.2559
    return Q(share * 100.0, "percent")


def fan_speed_for(now: Quantity, wanted: Quantity, speed_now: Quantity) -> Quantity:
    """Return the fan speed for a wanted vacuum: pressure goes with the square of fan speed.

    Raises Refusal for input out of bounds. Fan law, as in Process Heating, “Fan laws and
    formulas”: speed goes with the square root of pressure; holds while nothing else moves.
    """
    ratio = np.sqrt(bounds.PRESSURE.of(wanted) / bounds.PRESSURE.of(now))
    return Q(bounds.MOTOR_SPEED.of(speed_now) * ratio, "rpm")


def altitude_note(altitude: Quantity, units: Units = Units.US) -> str:
    """Return a sentence on what altitude does to the vacuum; scalars only.

    Raises Refusal for input out of bounds. A gauge shows the true difference of pressure, so the
    level to set stays; the fan must turn faster for it, by the inverse root of the air's density.
    """
    share = float(air_density_share(altitude).to("count").magnitude)
    height = altitude.to("ft" if units is Units.US else "m")
    return (
        f"At {height.magnitude:.0f} {height.units:~P} the air is {1 - share:.0%} thinner than at "
        f"sea level: keep the level on the gauge, and expect the fan to turn "
        f"{share**-0.5 - 1:.0%} faster for it."
    )


def shared_level(
    bands: Sequence[VacuumBand],
    names: Sequence[str],
    fan_limit: Quantity | None = None,
    units: Units = Units.US,
) -> SharedVacuum:
    """Return the level that serves every band of one fan group, with a sentence.

    ``names`` says which rows or lots a band belongs to. The start value is the geometric mean of
    the bands' own, kept within the overlap. Raises Refusal for no band or names that do not
    match; a group without overlap is not refused but has no level.
    """
    if not bands or len(bands) != len(names):
        raise Refusal("Fan group: each band needs the name of its rows; give at least one.")
    lows = [float(band.low.to("kPa").magnitude) for band in bands]
    highs = [float(band.high.to("kPa").magnitude) for band in bands]
    low, high = max(lows), min(highs)
    if low > high:
        above, below = names[lows.index(low)], names[highs.index(high)]
        says = (
            f"No one vacuum serves this fan: {above} needs at least {_shown(low, units)}, {below} "
            f"at most {_shown(high, units)}; change a disc or a lot, or split the rows by fan."
        )
        return SharedVacuum(None, says)
    if fan_limit is not None and bounds.PRESSURE.of(fan_limit) < low:
        limit = show(fan_limit, "pressure", units)
        says = f"The fan reaches {limit}; {names[lows.index(low)]} needs {_shown(low, units)}."
        return SharedVacuum(None, says)
    ceiling = high if fan_limit is None else min(high, float(bounds.PRESSURE.of(fan_limit)))
    logs = [np.log(float(band.start.to("kPa").magnitude)) for band in bands]
    start = min(max(float(np.exp(np.mean(logs))), low), ceiling)
    band = VacuumBand(Q(low, "kPa"), Q(start, "kPa"), Q(ceiling, "kPa"))
    says = f"One vacuum serves this fan, from {_shown(low, units)} to {_shown(ceiling, units)}."
    return SharedVacuum(band, says)


def _shown(kilopascals: float, units: Units) -> str:
    return show(Q(kilopascals, "kPa"), "pressure", units)
