"""History says who, when and why, old and new; it only grows, and nothing half done enters it."""

from datetime import UTC, datetime

import pytest

from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Refusal
from changeover.store.opening import Store, open_store
from changeover.store.values import Side

DISC = Cell("disc", Place.of_row(1))


def _set_then_fail(store: Store) -> None:
    with store.work("Ada") as work:
        work.cells.set("Small Bar", Side.AS_FOUND, {DISC: "C30"})
        work.lots.get("none such")


def test_a_change_says_who_when_why_old_and_new(tmp_path, planter) -> None:
    moment = datetime(2026, 5, 4, 7, 30, tzinfo=UTC)
    store = open_store(tmp_path / "s.sqlite", create=True, clock=lambda: moment)
    with store.work("Ada", "seen on the planter") as work:
        work.planters.put(planter, None)
        work.cells.set(planter.name, Side.AS_FOUND, {DISC: "C30"})
    with store.read() as work:
        line = work.history.latest(planter.name, 1)[0]
    store.close()
    assert (line.who, line.when, line.why) == (
        "Ada",
        "2026-05-04T07:30:00+00:00",
        "seen on the planter",
    )
    assert (line.setting, line.place, line.old, line.new) == ("disc", "row:1", "", "C30")


def test_one_unit_of_work_is_one_entry(stocked) -> None:
    with stocked.work("Ada") as work:
        work.cells.set(
            "Small Bar", Side.AS_FOUND, {Cell("depth", Place.of_row(n)): 5 for n in (1, 2, 3)}
        )
    with stocked.read() as work:
        lines = work.history.latest("Small Bar", 3)
    assert len({line.entry for line in lines}) == 1
    assert work.entry == 0


def test_undoing_adds_to_the_history(stocked) -> None:
    for value in ("C30", "S56", "C30"):
        with stocked.work("Ada") as work:
            work.cells.set("Small Bar", Side.AS_FOUND, {DISC: value})
    with stocked.read() as work:
        lines = work.history.latest("Small Bar", 3)
    assert [(line.old, line.new) for line in lines] == [("S56", "C30"), ("C30", "S56"), ("", "C30")]


def test_a_unit_of_work_that_fails_leaves_nothing(stocked) -> None:
    with pytest.raises(Refusal, match="none such"):
        _set_then_fail(stocked)
    with stocked.read() as work:
        assert work.cells.read("Small Bar", Side.AS_FOUND).get(DISC) is None
        assert work.history.latest("Small Bar", 1)[0].setting != "disc"


def test_a_unit_of_work_without_change_leaves_no_entry(stocked) -> None:
    with stocked.read() as work:
        before = work.history.latest(None, 1)[0].entry
    with stocked.work("Ada") as work:
        work.cells.set("Small Bar", Side.AS_FOUND, {DISC: None})
    with stocked.read() as work:
        assert work.history.latest(None, 1)[0].entry == before
