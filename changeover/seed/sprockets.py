"""Ground drives: each pair of the planter's own sprockets with its rate, nearest first."""

from dataclasses import dataclass

import numpy as np

from changeover.planter.drive import GroundDrive
from changeover.quantities import Q, Quantity, Refusal
from changeover.seed import bounds, rate
from changeover.seed.rate import Count


@dataclass(frozen=True)
class SprocketPair:
    """One driver and driven sprocket, the seed rate they give, and how far that is off, a share."""

    driver: int
    driven: int
    rate: Quantity
    off: float

    @property
    def name(self) -> str:
        """The pair as it is written on the setting, driver first."""
        return f"{self.driver}/{self.driven}"


def disc_turns_per_length(drive: GroundDrive, driver: Count, driven: Count) -> Quantity:
    """Return the disc's turns per length of travel with one pair of sprockets.

    ratio · driver / driven · (1 − slip) / rolling circumference. Raises Refusal for teeth out of
    bounds. By definition of a chain drive: output turns = input turns · driver / driven.
    """
    chain = bounds.TEETH.of(driver) / bounds.TEETH.of(driven)
    wheel = (1.0 - drive.slip) / bounds.CIRCUMFERENCE.of(drive.rolling_circumference)
    return Q(drive.ratio * chain * wheel, "turn/m")


def pair_rate(
    drive: GroundDrive, driver: Count, driven: Count, cells: Count, row_spacing: Quantity
) -> Quantity:
    """Return the seeds per area that one pair of sprockets drops, whatever the ground speed.

    Raises Refusal for input out of bounds. By definition.
    """
    turns = disc_turns_per_length(drive, driver, driven).to("turn/m").magnitude
    per_metre = turns * rate.whole_cells(cells)
    return Q(per_metre / bounds.ROW_SPACING.of(row_spacing), "seed/m^2")


def rate_table(drive: GroundDrive, cells: Count, row_spacing: Quantity) -> Quantity:
    """Return the rates of all pairs: a table of drivers (rows) by drivens (columns), both rising.

    Raises Refusal for input out of bounds.
    """
    drivers = np.array(sorted(drive.driver), dtype=np.float64)[:, None]
    drivens = np.array(sorted(drive.driven), dtype=np.float64)[None, :]
    return pair_rate(drive, drivers, drivens, cells, row_spacing)


def nearest_pairs(
    drive: GroundDrive, wanted: Quantity, cells: float, row_spacing: Quantity
) -> tuple[SprocketPair, ...]:
    """Return every pair of the planter's sprockets, the nearest to the wanted rate first.

    Of two pairs as near, the one that drops more comes first. Raises Refusal for input out of
    bounds.
    """
    target = bounds.RATE.of(wanted)
    table = rate_table(drive, cells, row_spacing).to("seed/m^2").magnitude
    pairs = [
        SprocketPair(a, b, Q(float(table[i, j]), "seed/m^2"), float(table[i, j] / target - 1.0))
        for i, a in enumerate(sorted(drive.driver))
        for j, b in enumerate(sorted(drive.driven))
    ]
    return tuple(sorted(pairs, key=lambda pair: (round(abs(pair.off), 9), -pair.off)))


def ratio_for_rate(
    drive: GroundDrive, wanted: Quantity, cells: Count, row_spacing: Quantity
) -> float:
    """Return driver teeth / driven teeth that would meet the wanted rate exactly.

    Raises Refusal for input out of bounds.
    """
    even = pair_rate(drive, 10, 10, cells, row_spacing).to("seed/m^2").magnitude
    return float(bounds.RATE.of(wanted) / even)


def slip_from_run(distance: Quantity, turns: Count, rolling_circumference: Quantity) -> float:
    """Return the slip of the drive wheel from a measured run, a share.

    1 − turns · rolling circumference / distance: positive when the wheel turned too few times.
    ``turns`` are those of the wheel over the measured distance, tank filled as in work. Raises
    Refusal for input out of bounds, or a run whose slip is beyond −20 to 50 %. By definition.
    """
    rolled = bounds.TURNS.of(turns) * bounds.CIRCUMFERENCE.of(rolling_circumference)
    slip = float(1.0 - rolled / bounds.DISTANCE.of(distance))
    if not -0.2 <= slip < 0.5:
        raise Refusal(
            f"Calibration run: a slip of {slip:.0%} cannot be; check the distance, the turns and "
            "the rolling circumference."
        )
    return slip


def rolling_circumference(distance: Quantity, turns: Count) -> Quantity:
    """Return the ground covered in one wheel turn, measured over a run under load.

    A circumference from such a run holds the slip already: enter slip 0 with it. Raises Refusal
    for input out of bounds. By definition.
    """
    return Q(bounds.DISTANCE.of(distance) / bounds.TURNS.of(turns), "m")
