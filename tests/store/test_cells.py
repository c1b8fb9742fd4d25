"""Cells keep what is set, exactly, and refuse to overwrite what somebody else set."""

import pytest

from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell
from changeover.quantities import Q
from changeover.store.refusals import Conflict
from changeover.store.values import Side

DEPTH = Cell("depth", Place.of_row(2))
DISC = Cell("disc", Place.of_row(1))
VACUUM = Cell("vacuum", Place(Scope.FAN, "fan 1"))


@pytest.mark.parametrize(
    ("cell", "value"), [(DEPTH, 5), (DISC, "C30"), (DISC, "30"), (VACUUM, Q(4.25, "kPa"))]
)
def test_a_value_comes_back_with_its_kind(stocked, cell, value) -> None:
    with stocked.work("Ada") as work:
        work.cells.set("Small Bar", Side.AS_FOUND, {cell: value})
    with stocked.read() as work:
        found = work.cells.read("Small Bar", Side.AS_FOUND).get(cell)
    assert (found, type(found)) == (value, type(value))


def test_none_empties_a_cell_and_the_old_value_is_returned(stocked) -> None:
    with stocked.work("Ada") as work:
        work.cells.set("Small Bar", Side.AS_FOUND, {DISC: "C30", DEPTH: 5})
    with stocked.work("Ada") as work:
        old = work.cells.set("Small Bar", Side.AS_FOUND, {DISC: None, DEPTH: 5})
    assert old == {DISC: "C30"}
    with stocked.read() as work:
        assert dict(work.cells.read("Small Bar", Side.AS_FOUND).values) == {DEPTH: 5}


def test_as_found_and_target_are_apart(stocked) -> None:
    with stocked.work("Ada") as work:
        work.cells.set("Small Bar", Side.TARGET, {DISC: "S56"})
    with stocked.read() as work:
        assert work.cells.read("Small Bar", Side.AS_FOUND).get(DISC) is None


def test_the_later_writer_of_a_cell_sees_both_values(stocked) -> None:
    with stocked.work("Bo") as work:
        work.cells.set("Small Bar", Side.AS_FOUND, {DISC: "S56"}, before={DISC: None})
    with pytest.raises(Conflict) as refusal, stocked.work("Ada") as work:
        work.cells.set("Small Bar", Side.AS_FOUND, {DISC: "C30", DEPTH: 3}, before={DISC: None})
    assert (refusal.value.mine, refusal.value.theirs) == ("C30", "S56")
    with stocked.read() as work:
        assert work.cells.read("Small Bar", Side.AS_FOUND).get(DEPTH) is None


def test_two_who_set_the_same_value_do_not_quarrel(stocked) -> None:
    for who in ("Ada", "Bo"):
        with stocked.work(who) as work:
            work.cells.set("Small Bar", Side.AS_FOUND, {DISC: "S56"}, before={DISC: None})
    with stocked.read() as work:
        assert len([h for h in work.history.latest("Small Bar", 50) if h.setting == "disc"]) == 1


def test_replace_leaves_just_the_given_cells(stocked) -> None:
    with stocked.work("Ada") as work:
        work.cells.set("Small Bar", Side.TARGET, {DISC: "S56", DEPTH: 3})
        work.cells.replace("Small Bar", Side.TARGET, {DEPTH: 4})
    with stocked.read() as work:
        assert dict(work.cells.read("Small Bar", Side.TARGET).values) == {DEPTH: 4}
