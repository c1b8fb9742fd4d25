"""What one task can take at most, so that a slip of the pen is refused and not planned."""

from math import isfinite

from changeover.quantities import Quantity, Refusal, figure_in

MOST_MINUTES = 24 * 60.0  # a day on end for one task or place: common practice, no source
MOST_PERSONS = 20  # hands at one task of one planter: common practice, no source


def check_minutes(time: Quantity, what: str) -> float:
    """Return the minutes of a time from none to a day. Raises Refusal beyond, or for no time."""
    minutes = figure_in("min", time, "time", what)
    if not isfinite(minutes) or not 0 <= minutes <= MOST_MINUTES:
        raise Refusal(f"{what}: enter 0 to {MOST_MINUTES:.0f} min, a day at most.")
    return minutes


def check_persons(persons: int, what: str) -> None:
    """Refuse a number of persons that no task takes. Raises Refusal."""
    if not 1 <= persons <= MOST_PERSONS:
        raise Refusal(f"{what}: enter 1 to {MOST_PERSONS} persons.")
