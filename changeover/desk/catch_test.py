"""A catch test: what the seed caught over a distance or wheel turns shows of the rate."""

from dataclasses import dataclass

from changeover.quantities import Quantity, Refusal, Units, show
from changeover.seed import catch, rate


@dataclass(frozen=True)
class CatchTest:
    """Seed caught below some rows, by count or by mass, over a distance or over wheel turns.

    ``round`` is the ground covered in one wheel turn and ``slip`` the share lost in the field;
    ``seeds_per_mass`` turns a mass into seeds, ``wanted`` is the rate that is meant.
    """

    rows: Quantity
    row_spacing: Quantity
    seeds: Quantity | None = None
    mass: Quantity | None = None
    distance: Quantity | None = None
    turns: Quantity | None = None
    round: Quantity | None = None
    slip: Quantity = catch.NO_SLIP
    seeds_per_mass: Quantity | None = None
    wanted: Quantity | None = None


@dataclass(frozen=True)
class CatchShown:
    """What a catch test shows; ``rate`` is None for a mass of seed whose size is not known.

    ``correction`` is the factor on the turns of the disc that brings the rate wanted.
    """

    distance: Quantity
    rate: Quantity | None
    mass_rate: Quantity | None
    correction: float | None


def catch_shown(test: CatchTest) -> CatchShown:
    """Return what a catch test shows.

    Raises Refusal for inputs that lack their partners or figures out of bounds.
    """
    if (test.seeds is None) == (test.mass is None):
        raise Refusal("Catch test: enter the seeds that you counted or their mass, one of them.")
    distance = _distance(test)
    job = distance, test.rows, test.row_spacing
    by_mass = None if test.mass is None else catch.mass_rate_from_mass(test.mass, *job)
    found = None if test.seeds is None else catch.rate_from_seeds(test.seeds, *job)
    if by_mass is not None and test.seeds_per_mass is not None:
        found = rate.rate_from_mass(by_mass, test.seeds_per_mass)
    known = found is not None and test.wanted is not None
    correction = catch.correction(test.wanted, found) if known and test.wanted and found else None
    return CatchShown(distance, found, by_mass, correction)


def catch_words(test: CatchTest, units: Units) -> tuple[str, ...]:
    """Return what a catch test shows in a few sentences. Raises Refusal."""
    shown = catch_shown(test)
    over = f"Over {show(shown.distance, 'row_length', units)}"
    said = []
    if shown.mass_rate is not None:
        said.append(f"{over} that is {show(shown.mass_rate, 'mass_rate', units)}.")
    if shown.rate is None:
        return (*said, "Enter the seeds per mass to see the seed rate.")
    said.append(f"{over} the planter drops {show(shown.rate, 'seed_rate', units)}.")
    if shown.correction is None or test.wanted is None:
        return tuple(said)
    off = 1.0 / shown.correction - 1.0
    wanted = show(test.wanted, "seed_rate", units)
    way = "above" if off > 0 else "below"
    said.append(f"That is {abs(off):.1%} {way} the {wanted} wanted.")
    faster = f"{shown.correction:.3f} times as fast"
    said.append(
        f"The discs have to turn {faster}: change the sprockets or the drive, and catch again."
    )
    return tuple(said)


def _distance(test: CatchTest) -> Quantity:
    if (test.distance is None) == (test.turns is None):
        raise Refusal("Catch test: enter the distance driven or the wheel turns, one of them.")
    if test.distance is not None:
        return test.distance
    if test.round is None or test.turns is None:
        raise Refusal("Wheel turns: enter the ground covered in one turn of the wheel.")
    return catch.distance_of_turns(test.turns, test.round, test.slip)
