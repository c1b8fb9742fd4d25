"""How many of a part are to hand: usable or to be inspected on the shelf, and mounted already."""

from collections.abc import Iterable

from changeover.planter.parts import USABLE, Condition, ShelfCount
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.seed.case import Case


def usable(shelf: Iterable[ShelfCount], code: str) -> int:
    """Return how many of a part lie on the shelf new or good."""
    return sum(one.count for one in shelf if one.part == code and one.condition in USABLE)


def to_inspect(shelf: Iterable[ShelfCount], code: str) -> int:
    """Return how many of a part came off and wait on the shelf to be inspected."""
    waiting = (
        one.count for one in shelf if one.part == code and one.condition is Condition.INSPECT
    )
    return sum(waiting)


def mounted_rows(case: Case, setting: str, code: str) -> int:
    """Return on how many rows of the planter a part is mounted now."""
    return sum(
        case.as_found.get(Cell(setting, Place.of_row(row))) == code
        for row in case.planter.row_numbers
    )


def to_hand(case: Case, setting: str, code: str) -> int:
    """Return how many of a part are to hand for a switch of this planter."""
    return usable(case.shelf, code) + mounted_rows(case, setting, code)
