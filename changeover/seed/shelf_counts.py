"""How many of a part are to hand: usable or to be inspected on the shelf, and mounted already."""

from collections.abc import Iterable

from changeover.planter.parts import USABLE, Condition, ShelfCount
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import how_many
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


def shortage(what: str, rows: int, ready: int, waiting: int) -> str | None:
    """Say what is missing of a part for so many rows and what to do, None when there are enough.

    ``what`` names it, such as ``disc S60``; ``ready`` are to hand and ``waiting`` to be inspected.
    """
    short = rows - ready
    if short <= 0:
        return None
    inspect = min(short, waiting)
    left = f", {short - inspect} short" if short > inspect else ""
    if inspect:
        todo = f"inspect {inspect} of the {waiting} that wait on the shelf{left}"
    else:
        todo = f"{short} short"
    return f"Only {ready} usable {what} for {how_many(rows, 'row')}: {todo}."


def mounted_rows(case: Case, setting: str, code: str) -> int:
    """Return on how many rows of the planter a part is mounted now."""
    return sum(
        case.as_found.get(Cell(setting, Place.of_row(row))) == code
        for row in case.planter.row_numbers
    )


def to_hand(case: Case, setting: str, code: str) -> int:
    """Return how many of a part are to hand for a switch of this planter."""
    return usable(case.shelf, code) + mounted_rows(case, setting, code)
