"""The planter to begin with: with an open switch and worked on last, else the one seen last."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from changeover.desk.do_work import tick_whole
from changeover.desk.door import apply
from changeover.desk.edits import AbandonSwitch, ChooseNext, NextJob, PutLot, PutPlanter
from changeover.desk.fleet import first_planter
from changeover.desk.opening import Store, open_store
from changeover.desk.plan_switch import work_view
from changeover.desk.starting import ShortForm, planter_from
from changeover.quantities import Q
from changeover.seed.lots import SeedLot


class Hours:
    """A clock that goes on by an hour whenever it is read."""

    now = datetime(2026, 5, 4, tzinfo=UTC)

    def __call__(self) -> datetime:
        self.now += timedelta(hours=1)
        return self.now


@pytest.fixture
def yard(tmp_path: Path) -> Store:
    """Give a store with planters A, B and C and a lot."""
    store = open_store(tmp_path / "yard.sqlite", create=True, clock=Hours())
    for name in "ABC":
        apply(store, PutPlanter(planter_from(ShortForm(name, 4, Q(30, "in")))), "Ada")
    apply(store, PutLot(SeedLot("L", "corn")), "Ada")
    return store


def begin(store: Store, *planters: str) -> None:
    for planter in planters:
        apply(store, ChooseNext(planter, NextJob("L")), "Ada")


def test_without_an_open_switch_the_one_seen_last_then_the_first(yard: Store) -> None:
    assert first_planter(yard) == "A"
    assert first_planter(yard, "C") == "C"
    assert first_planter(yard, "gone", "B") == "B"


def test_the_one_with_an_open_switch_comes_first(yard: Store) -> None:
    begin(yard, "B")
    assert first_planter(yard, "C") == "B"
    apply(yard, AbandonSwitch("B"), "Ada")
    assert first_planter(yard, "C") == "C"


def test_of_several_open_switches_the_one_worked_on_last(yard: Store) -> None:
    begin(yard, "C", "B")
    assert first_planter(yard) == "B"
    view = work_view(yard, "C")
    apply(yard, tick_whole(view, view.worklist.tasks[0]), "Ada")
    assert first_planter(yard, "A") == "C"


def test_a_retired_planter_and_an_empty_store_give_none(yard: Store, tmp_path: Path) -> None:
    begin(yard, "C")
    with yard.read() as work:
        gone = work.planters.get("C")
    apply(yard, PutPlanter(None, before=gone), "Ada")
    assert first_planter(yard, "C") == "A"
    assert first_planter(open_store(tmp_path / "new.sqlite", create=True), "C") == ""
