"""Parts are conserved: what ticking takes from the shelf or brings back, taking back returns."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from datetime import date

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from changeover.desk.board import read_board
from changeover.desk.changed import Changed
from changeover.desk.do_work import tick_rows
from changeover.desk.door import Outcome, apply
from changeover.desk.edits import (
    ChooseNext,
    NextJob,
    PutLot,
    PutPart,
    SetCells,
    SetShelf,
    Several,
    Side,
)
from changeover.desk.opening import Store, open_store
from changeover.desk.plan_switch import work_view
from changeover.desk.records import history
from changeover.desk.starting import ShortForm, new_store, put_planter
from changeover.desk.stock import stock
from changeover.planter.parts import Condition, Part, ShelfCount
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Q
from changeover.seed.lots import SeedLot
from changeover.switch.supply import PlannedSwitch, supply, to_order

BAR, ROWS = "Bar", (1, 2, 3, 4)
CELLS = {row: Cell("disc", Place.of_row(row)) for row in ROWS}


@pytest.fixture
def shop(small: Store) -> Store:
    """Give a shop whose planter goes from disc C to S: two good, one new, four needed."""
    return _begin(small)


def _begin(store: Store) -> Store:
    edits = [PutPart(Part(code, code, "disc")) for code in "CSX"]
    edits += [PutLot(SeedLot("L", "corn"))]
    edits += [SetShelf(ShelfCount("S", Condition.GOOD, 2, "A"))]
    edits += [SetShelf(ShelfCount("S", Condition.NEW, 1))]
    edits += [_cells(Side.AS_FOUND, dict.fromkeys(ROWS, "C")), ChooseNext(BAR, NextJob("L"))]
    apply(store, Several((*edits, _cells(Side.TARGET, dict.fromkeys(ROWS, "S")))), "Ada")
    return store


def _cells(side, discs, before=None) -> SetCells:
    old = {} if before is None else {CELLS[row]: before for row in discs}
    return SetCells(BAR, side, {CELLS[row]: code for row, code in discs.items()}, old)


def _tick(store: Store, *rows: int, done: bool = True) -> Outcome:
    view = work_view(store, BAR)
    task = next(t for t in view.worklist.tasks if any(t.changes.values()))
    return apply(store, tick_rows(view, task, rows, done=done), "Ada")


def _shelf(store: Store) -> tuple[ShelfCount, ...]:
    with store.read() as work:
        return work.shelf.all()


def _count(store) -> dict:
    return {(one.part, str(one.condition)): one.count for one in _shelf(store)}


def _all_of(store, planter) -> Counter:
    """Count every part, on the shelf but not worn and mounted on the planter's rows."""
    with store.read() as work:
        kept = {part.code for part in work.parts.all()}
        found = Counter(
            value for value in work.cells.read(planter, Side.AS_FOUND).values.values()
            if isinstance(value, str) and value in kept
        )  # fmt: skip
        for one in work.shelf.all():
            found[one.part] += one.count * (one.condition is not Condition.WORN)
    return +found


def test_the_new_part_leaves_the_shelf_and_the_old_one_comes_to_be_inspected(shop) -> None:
    done = _tick(shop, 1, 2, 3)
    assert Changed.SHELF in done.changed
    assert _count(shop) == {("S", "good"): 0, ("S", "new"): 0, ("C", "inspect"): 3}
    assert {line.entry for line in history(shop, BAR, 9)} == {done.entry}


def test_a_shelf_that_has_none_stays_at_none_and_the_history_says_so(shop) -> None:
    before = _shelf(shop)
    done = _tick(shop, *ROWS)
    lines = [one for one in history(shop, BAR, 20) if one.old == "shelf had none"]
    assert [(one.what, one.place, one.new) for one in lines] == [("shelf to planter", "row:4", "S")]
    assert min(one.count for one in _shelf(shop)) == 0
    again = apply(shop, done.inverse, "Ada")
    assert _shelf(shop) == before
    apply(shop, again.inverse, "Ada")
    assert _count(shop) == {("S", "good"): 0, ("S", "new"): 0, ("C", "inspect"): 4}


@pytest.mark.parametrize("order", [(1, 2, 3, 4), (4, 3, 2, 1), (3, 1, 4, 2)])
def test_unticking_row_by_row_puts_each_back_where_it_came_from(shop, order) -> None:
    before = _shelf(shop)
    _tick(shop, *ROWS)
    for row in order:
        _tick(shop, row, done=False)
    assert _shelf(shop) == before


def test_ticked_and_taken_back_in_one_transaction_leaves_the_shelf(shop) -> None:
    view, before = work_view(shop, BAR), _shelf(shop)
    task = next(t for t in view.worklist.tasks if any(t.changes.values()))
    ticks = [tick_rows(view, task, ROWS, done=done) for done in (True, False)]
    apply(shop, Several(tuple(ticks)), "Ada")
    assert _shelf(shop) == before


def test_a_part_inspected_meanwhile_goes_back_on_from_among_the_good_ones(shop) -> None:
    _tick(shop, 1)
    waiting = ShelfCount("C", Condition.INSPECT, 1)
    good = SetShelf(ShelfCount("C", Condition.GOOD, 1))
    apply(shop, Several((SetShelf(None, before=waiting), good)), "Bo")
    _tick(shop, 1, done=False)
    assert _count(shop) == {("S", "good"): 2, ("S", "new"): 1, ("C", "good"): 0}


def test_a_record_set_by_hand_moves_nothing_and_neither_does_taking_it_back(shop) -> None:
    before = _shelf(shop)
    apply(shop, _cells(Side.AS_FOUND, {1: "S"}, "C"), "Ada")
    assert Changed.SHELF not in _tick(shop, 1, done=False).changed
    assert read_board(shop, BAR).as_found.get(CELLS[1]) == "C"
    assert _shelf(shop) == before


def test_what_hangs_there_now_comes_back_not_what_hung_there_before(shop) -> None:
    apply(shop, _cells(Side.AS_FOUND, {1: "X"}, "C"), "Ada")
    _tick(shop, 1)
    assert _count(shop)["X", "inspect"] == 1
    assert ("C", "inspect") not in _count(shop)


def test_codes_that_are_no_kind_of_part_change_nothing(shop) -> None:
    with shop.work("Ada") as work:  # as an older program let it be typed
        work.cells.set(BAR, Side.TARGET, {CELLS[row]: "odd" for row in ROWS})
    _tick(shop, 1)
    assert _count(shop) == {("S", "good"): 2, ("S", "new"): 1, ("C", "inspect"): 1}
    _tick(shop, 1, done=False)
    assert _count(shop) == {("S", "good"): 2, ("S", "new"): 1}


def test_half_way_kit_shelf_and_rows_left_agree(shop) -> None:
    _tick(shop, 1, 2)
    line = next(one for one in work_view(shop, BAR).kit.lines if one.part == "S")
    assert (line.needed, line.on_shelf, line.short, line.released) == (2, 1, 1, 0)
    listed = next(one for one in stock(shop) if one.part.code == "S")
    assert (listed.needed, listed.short) == (2, 1)
    assert sum(one.count for one in listed.counts.values()) == line.on_shelf
    planned = PlannedSwitch(BAR, date(2026, 5, 4), work_view(shop, BAR).kit)
    assert to_order(supply((planned,), _shelf(shop), {})) == {"S": 1}


STEPS = st.lists(
    st.tuples(st.sampled_from(("tick", "untick", "undo")), st.sets(st.sampled_from(ROWS))),
    min_size=1,
    max_size=8,
)


@pytest.fixture(scope="module")
def plenty(tmp_path_factory) -> Iterator[Store]:
    """Give a shop with more on the shelf than the planter needs."""
    store = new_store(tmp_path_factory.mktemp("plenty") / "shop.sqlite")
    apply(store, put_planter(ShortForm(BAR, 4, Q(30.0, "in"), fans=1)), "Ada")
    _begin(store)
    new = next(one for one in _shelf(store) if one.condition is Condition.NEW)
    apply(store, SetShelf(replace(new, count=9), before=new), "Ada")
    yield store
    store.close()


@settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(steps=STEPS)
def test_no_part_is_made_or_lost_by_ticks_unticks_and_undos(plenty, steps) -> None:
    whole, undo = _all_of(plenty, BAR), []
    for what, rows in steps:
        if what == "undo" and undo:
            apply(plenty, undo.pop().inverse, "Ada")
        elif what != "undo":
            undo.append(_tick(plenty, *sorted(rows), done=what == "tick"))
        assert _all_of(plenty, BAR) == whole


@settings(max_examples=25, deadline=None)
@given(steps=STEPS)
def test_undoing_everything_leaves_no_trace_on_the_shelf(plenty, steps) -> None:
    before = _shelf(plenty)
    done = [_tick(plenty, *sorted(rows), done=what == "tick") for what, rows in steps]
    for one in reversed(done):
        apply(plenty, one.inverse, "Ada")
    assert _shelf(plenty) == before


def test_the_store_is_the_same_shop_after_opening_again(shop, tmp_path) -> None:
    _tick(shop, 1)
    again = open_store(tmp_path / "small.sqlite")
    _tick(again, 1, done=False)
    assert _count(again) == {("S", "good"): 2, ("S", "new"): 1}
    again.close()


@pytest.mark.parametrize(
    ("wanted", "needed", "back"),
    [("X", {"X": 4}, {"S": 2, "C": 2}), ("C", {"C": 2}, {"S": 2}), ("S", {"S": 2}, {"C": 2})],
)
def test_after_a_new_plan_midway_what_was_put_on_is_what_comes_off(
    shop, wanted, needed, back
) -> None:
    _tick(shop, 1, 2)
    apply(shop, _cells(Side.TARGET, dict.fromkeys(ROWS, wanted), "S"), "Ada")
    made = work_view(shop, BAR).kit
    assert {line.part: line.needed for line in made.lines} == needed
    assert {one.part: one.count for one in made.back} == back


def test_going_back_to_the_first_plan_takes_off_what_was_put_on(shop) -> None:
    _tick(shop, 1, 2)
    apply(shop, _cells(Side.TARGET, dict.fromkeys(ROWS, "C"), "S"), "Ada")
    apply(shop, SetShelf(ShelfCount("C", Condition.GOOD, 2)), "Ada")
    _tick(shop, 1, 2)
    with shop.read() as work:
        mounted = work.cells.read(BAR, Side.AS_FOUND)
    assert [mounted.get(CELLS[row]) for row in ROWS] == ["C"] * 4
    assert _count(shop)["S", "inspect"] == 2
    assert _count(shop)["C", "good"] == 0
    assert work_view(shop, BAR).kit.lines == ()
