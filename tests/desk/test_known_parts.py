"""A part that nobody entered is refused wherever a cell is set, and put back by undo alone."""

import pytest

from changeover.desk.door import apply
from changeover.desk.edits import PutPart, SetCells, Several, Side
from changeover.desk.opening import Store
from changeover.planter.parts import Part
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Refusal

BAR = "Bar"
DISC, BRUSH = (Cell(key, Place.of_row(2)) for key in ("disc", "brush"))


@pytest.fixture
def shop(small: Store) -> Store:
    parts = (Part("S60", "Disc", "disc"), Part("B1", "Brush", "brush"))
    apply(small, Several(tuple(PutPart(part) for part in parts)), "Ada")
    return small


def _set(store: Store, cell: Cell, code: str, before: str | None = None) -> SetCells:
    done = apply(store, SetCells(BAR, Side.AS_FOUND, {cell: code}, {cell: before}), "Ada")
    assert isinstance(done.inverse, SetCells)
    return done.inverse


def test_a_code_that_nobody_entered_is_refused_and_nothing_changes(shop: Store) -> None:
    with pytest.raises(Refusal, match="Disc, row 2: there is no disc “S65”; choose S60, or add"):
        _set(shop, DISC, "S65")
    with shop.read() as work:
        assert work.cells.read(BAR, Side.AS_FOUND).get(DISC) is None


def test_a_brush_is_no_disc_and_a_disc_no_brush(shop: Store) -> None:
    with pytest.raises(Refusal, match="“B1” is a brush and no disc"):
        _set(shop, DISC, "B1")
    with pytest.raises(Refusal, match="“S60” is a disc and no brush"):
        _set(shop, BRUSH, "S60")


def test_capitals_are_set_right_before_they_are_saved(shop: Store) -> None:
    with pytest.raises(Refusal, match="write “S60” for “s60”"):
        _set(shop, DISC, "s60")


def test_once_it_is_added_it_is_taken(shop: Store) -> None:
    apply(shop, PutPart(Part("S65", "Disc", "disc")), "Ada")
    _set(shop, DISC, "S65")
    with shop.read() as work:
        assert work.cells.read(BAR, Side.AS_FOUND).get(DISC) == "S65"


def test_undo_puts_back_a_code_of_an_older_store(shop: Store) -> None:
    with shop.work("Ada") as work:
        work.cells.set(BAR, Side.AS_FOUND, {DISC: "S65"})
    apply(shop, _set(shop, DISC, "S60", "S65"), "Ada")
    with shop.read() as work:
        assert work.cells.read(BAR, Side.AS_FOUND).get(DISC) == "S65"
