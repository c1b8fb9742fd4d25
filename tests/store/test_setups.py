"""Saved setups are never overwritten; proved ones are read as records."""

from dataclasses import replace

import pytest

from changeover.planter.places import Place
from changeover.planter.setup import Cell, Setup
from changeover.quantities import Q, Refusal
from changeover.store.opening import Store
from changeover.store.values import SavedSetup

CELLS = {Cell("disc", Place.of_row(n)): "C30" for n in (1, 2, 3)}
CELLS |= {Cell("depth", Place.of_row(n)): depth for n, depth in ((1, 6), (2, 6), (3, 7))}
CORN = SavedSetup(
    "Corn 26",
    "Small Bar",
    Setup(CELLS),
    "2026-05-04T17:00:00+00:00",
    who="Ada",
    lot="K-1",
    crop="corn",
    proved="99 % singles",
    seed_diameter=Q(7.6, "mm"),
    signed=True,
)


@pytest.fixture
def saved(stocked) -> Store:
    with stocked.work("Ada") as work:
        work.setups.add(CORN)
    return stocked


def test_a_setup_comes_back_as_it_was_saved(saved) -> None:
    with saved.read() as work:
        assert work.setups.get("Small Bar", "Corn 26") == CORN


def test_a_setup_is_never_overwritten(saved) -> None:
    with pytest.raises(Refusal, match="never overwritten"), saved.work("Ada") as work:
        work.setups.add(replace(CORN, note="other"))


@pytest.mark.parametrize("name", ["corn 26", " Corn  26"])
def test_a_setup_s_name_in_other_capitals_or_blanks_is_the_same(saved, name) -> None:
    with pytest.raises(Refusal, match="has a setup “Corn 26” already"), saved.work("Ada") as work:
        work.setups.add(replace(CORN, name=name))


def test_a_setup_needs_a_name(stocked) -> None:
    with pytest.raises(Refusal, match="has no name"), stocked.work("Ada") as work:
        work.setups.add(replace(CORN, name="  "))


def test_a_withdrawn_setup_leaves_list_and_records_and_frees_its_name(saved) -> None:
    with saved.work("Ada") as work:
        work.setups.withdraw("Small Bar", "Corn 26", withdrawn=True)
        assert work.setups.of("Small Bar") == ()
        assert work.setups.records() == ()
        work.setups.add(replace(CORN, note="second"))
        assert [one.note for one in work.setups.of("Small Bar")] == ["second"]


def test_a_proved_setup_is_a_record_with_what_most_rows_have(saved) -> None:
    with saved.read() as work:
        (record,) = work.setups.records()
    assert (record.crop, record.disc, record.values["depth"]) == ("corn", "C30", 6)
    assert record.seed_diameter == Q(7.6, "mm")


def test_an_unproved_setup_is_no_record(stocked) -> None:
    with stocked.work("Ada") as work:
        work.setups.add(replace(CORN, proved=""))
        assert work.setups.records() == ()


def test_the_last_signed_setup_is_found_by_its_moment(saved) -> None:
    later = replace(CORN, name="Later", saved="2026-06-01T08:00:00+00:00", signed=False)
    with saved.work("Ada") as work:
        work.setups.add(later)
        found = work.setups.last_signed("Small Bar")
    assert found is not None
    assert found.name == "Corn 26"
