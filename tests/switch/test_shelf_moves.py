"""Parts off the shelf and on it: good ones first, none below zero, taken back without a trace."""

import pytest

from changeover.planter.parts import Condition, ShelfCount
from changeover.switch.shelf_moves import LAID_OUT, TAKEN_BACK, ShelfInHand, Swap, make_swap

NEW, GOOD, INSPECT = Condition.NEW, Condition.GOOD, Condition.INSPECT
SHELF = (ShelfCount("S", NEW, 1, "A"), ShelfCount("S", GOOD, 1, "B"))


@pytest.mark.parametrize(("taken", "last"), [(1, GOOD), (2, NEW), (3, None)])
def test_good_ones_go_out_first_then_new_ones_then_none(taken, last) -> None:
    shelf = ShelfInHand(SHELF, {"S"})
    assert [shelf.take("S", LAID_OUT) for _ in range(taken)][-1] is last
    assert all(new.count == 0 for new, _ in shelf.changes())


def test_what_comes_off_begins_a_count_to_inspect_and_taking_back_ends_it() -> None:
    shelf = ShelfInHand(SHELF, {"S", "C"})
    done = make_swap(shelf, Swap("C", INSPECT, "S"), LAID_OUT)
    assert done == Swap("C", INSPECT, "S", GOOD)
    assert (ShelfCount("C", INSPECT, 1), None) in shelf.changes()
    assert make_swap(shelf, done.back(), TAKEN_BACK) == done.back()
    assert shelf.changes() == ()


def test_a_count_to_inspect_that_falls_to_none_stays_only_with_its_bin() -> None:
    held = (ShelfCount("C", INSPECT, 1), ShelfCount("D", INSPECT, 1, "Q"))
    shelf = ShelfInHand(held, {"C", "D"})
    for part in "CD":
        shelf.take(part, TAKEN_BACK)
    assert [new for new, _ in shelf.changes()] == [None, ShelfCount("D", INSPECT, 0, "Q")]


def test_a_code_that_is_no_kind_of_part_is_not_counted() -> None:
    shelf = ShelfInHand(SHELF, {"C"})
    assert make_swap(shelf, Swap("x", INSPECT, "S"), LAID_OUT) == Swap("x", None, "S", None)
    assert shelf.changes() == ()


def test_one_that_waited_to_be_inspected_goes_on_when_no_usable_one_is_left() -> None:
    shelf = ShelfInHand((ShelfCount("C", INSPECT, 5),), {"C", "S"})
    assert make_swap(shelf, Swap("S", INSPECT, "C"), LAID_OUT).on_from is INSPECT
    assert (ShelfCount("C", INSPECT, 4), ShelfCount("C", INSPECT, 5)) in shelf.changes()
