"""The difference of two setups, cell by cell and row by row."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.planter.settings import LOCKED_UP, STANDARD
from changeover.planter.setup import Cell, Setup
from changeover.quantities import Q
from changeover.switch.difference import RowState, apply_difference, difference
from tests.switch.switch_case import (
    LONG_ACRE,
    SETTINGS,
    SPLIT,
    bean,
    corn,
    planters,
    row_setup,
    setups,
    switches,
)


@given(planters().flatmap(lambda planter: st.tuples(st.just(planter), setups(planter))))
def test_a_setup_does_not_differ_from_itself(case: tuple[Planter, Setup]) -> None:
    planter, setup = case
    found = difference(planter, SETTINGS, setup, setup)
    assert not found.changes
    for row, state in found.states.items():
        has_disc = setup.get(Cell("disc", Place.of_row(row))) is not None
        known = has_disc or not setup.values
        assert state in ({RowState.READY, RowState.LOCKED} if known else set(RowState))
        assert state is not RowState.WORK


def test_a_row_whose_disc_nobody_knows_is_not_ready() -> None:
    target = Setup(row_setup(LONG_ACRE, depth=5))
    found = difference(LONG_ACRE, SETTINGS, target, target)
    assert set(found.states.values()) == {RowState.UNKNOWN}


@given(switches())
def test_applying_a_difference_reaches_the_target(case: tuple[Planter, Setup, Setup]) -> None:
    planter, before, target = case
    found = difference(planter, SETTINGS, before, target)
    there = apply_difference(before, found)
    assert not difference(planter, SETTINGS, there, target).changes
    assert {cell: there.get(cell) for cell in found.changes} == {
        cell: target.get(cell) for cell in found.changes
    }


@given(switches())
def test_applying_touches_nothing_that_does_not_differ(
    case: tuple[Planter, Setup, Setup],
) -> None:
    planter, before, target = case
    found = difference(planter, SETTINGS, before, target)
    there = apply_difference(before, found)
    kept = [cell for cell in before.cells() if cell not in found.changes]
    assert all(there.get(cell) is before.get(cell) for cell in kept)


def test_a_setting_of_a_group_differs_once_for_all_its_rows() -> None:
    found = difference(LONG_ACRE, SETTINGS, corn(LONG_ACRE), bean(LONG_ACRE))
    vacuum = [cell.place.name for cell in found.changes if cell.setting == "vacuum"]
    assert vacuum == ["fan 1", "fan 2"]
    assert len([cell for cell in found.changes if cell.setting == "disc"]) == 24


def test_what_is_not_known_as_found_is_work_and_marked_as_such() -> None:
    target = Setup(row_setup(LONG_ACRE, disc="S56"))
    found = difference(LONG_ACRE, SETTINGS, Setup(), target)
    change = found.changes[Cell("disc", Place.of_row(3))]
    assert (change.before, change.after, change.part) == (None, "S56", True)
    assert found.row_state(3) is RowState.UNKNOWN


def test_a_target_left_open_makes_no_work() -> None:
    found = difference(LONG_ACRE, SETTINGS, corn(LONG_ACRE), Setup())
    assert not found.changes
    assert found.rows_ready == tuple(range(1, 25))


def test_the_same_depth_of_vacuum_in_other_units_does_not_differ() -> None:
    before = Setup(row_setup(LONG_ACRE, vacuum=Q(12, "inH2O")))
    target = Setup(row_setup(LONG_ACRE, vacuum=Q(12, "inH2O").to("kPa")))
    assert not difference(LONG_ACRE, SETTINGS, before, target).changes


def test_a_setting_counts_as_reached_within_its_own_tolerance() -> None:
    loose = tuple(
        replace(s, tolerance=Q(0.5, "inH2O")) if s.key == "vacuum" else s for s in STANDARD
    )
    before = Setup(row_setup(LONG_ACRE, vacuum=Q(12.4, "inH2O")))
    target = Setup(row_setup(LONG_ACRE, vacuum=Q(12, "inH2O")))
    assert not difference(LONG_ACRE, loose, before, target).changes
    assert len(difference(LONG_ACRE, STANDARD, before, target).changes) == 2


def test_rows_to_be_locked_up_change_their_lock_and_nothing_else() -> None:
    up = {Cell("row_lock", Place.of_row(row)): LOCKED_UP for row in (2, 4)}
    target = bean(SPLIT).with_values(up)
    found = difference(SPLIT, SETTINGS, corn(SPLIT), target)
    of_row_2 = [cell.setting for cell in found.changes if cell.place == Place.of_row(2)]
    assert of_row_2 == ["row_lock"]
    assert found.locked == {2, 4}


def test_a_locked_row_is_locked_and_one_still_to_be_locked_has_work() -> None:
    up = {Cell("row_lock", Place.of_row(2)): LOCKED_UP}
    down = {Cell("row_lock", Place.of_row(2)): "down"}
    target = Setup(up)
    assert difference(SPLIT, SETTINGS, Setup(up), target).row_state(2) is RowState.LOCKED
    assert difference(SPLIT, SETTINGS, Setup(down), target).row_state(2) is RowState.WORK


def test_a_fan_still_to_be_set_does_not_hold_its_rows_back() -> None:
    target = Setup({Cell("vacuum", Place(Scope.FAN, "fan 1")): Q(12, "inH2O")})
    found = difference(LONG_ACRE, SETTINGS, corn(LONG_ACRE), target)
    assert found.changes
    assert found.row_state(1) is RowState.READY


def test_hidden_and_record_only_settings_make_no_work() -> None:
    hidden = tuple(replace(s, hidden=True) if s.key == "closing" else s for s in STANDARD)
    target = Setup(row_setup(LONG_ACRE, closing=2, seed_left=Q(50, "lb")))
    assert not difference(LONG_ACRE, hidden, corn(LONG_ACRE), target).changes
