"""Lots, fields, parts and the rest are kept as they were entered, by key, with history."""

from dataclasses import replace
from datetime import date

import pytest

from changeover.planter.parts import Condition, Meter, Part, ShelfCount
from changeover.planter.places import Place, Scope
from changeover.quantities import Q, Refusal
from changeover.seed.fields import Field, Texture
from changeover.seed.lots import Purity, SeedLot, Treatment
from changeover.seed.manual import ManualValue
from changeover.store.refusals import Conflict
from changeover.store.stock_tables import LotRow
from changeover.store.values import PlannedJob
from changeover.switch.crew import CrewMember, SharedTool
from changeover.switch.tasks import StandardTime

LOT = SeedLot(
    "K-1",
    "corn",
    thousand_seed_mass=Q(11.2, "oz"),
    sieve=(16.0, 17.0),
    germination=0.95,
    treatment=Treatment.TREATED,
    purity=Purity.CERTIFIED,
    package_seeds=80_000,
    bulk_density=Q(54.0, "lb/bu"),
    lubricant=Q(2.0, "oz"),
)
KEPT = {
    "lots": LOT,
    "fields": Field("Back Forty", Q(40.0, "acre"), Texture.CLAY, altitude=Q(950.0, "m")),
    "parts": Part("C30", "corn disc", "disc", frozenset({"corn", "popcorn"}), 30, Q(4.5, "mm")),
    "shelf": ShelfCount("C30", Condition.GOOD, 12, "A1"),
    "meters": Meter("M-1", "Small Bar", 3, Q(0.4, "mm"), 12.5),
    "times": StandardTime("open_meter", Q(1.0, "min"), Q(90.0, "s")),
    "manual": ManualValue("corn", "vacuum", Q(18.0, "inH2O"), "page 3"),
    "jobs": PlannedJob(
        lot="K-1",
        name="first",
        last_day=date(2026, 5, 4),
        lateness_cost=12.0,
        overlap=0.03,
        seed_at_both_ends=True,
        meter_error=0.02,
        other_lots=((Place(Scope.TANK, "tank 2"), "K-2"),),
    ),
}


@pytest.mark.parametrize("sort", KEPT)
def test_a_value_comes_back_as_it_was_entered(store, sort) -> None:
    with store.work("Ada") as work:
        getattr(work, sort).put(KEPT[sort], None)
    with store.read() as work:
        assert getattr(work, sort).all() == (KEPT[sort],)


@pytest.mark.parametrize("sort", KEPT)
def test_a_value_can_be_taken_out_again(store, sort) -> None:
    with store.work("Ada") as work:
        getattr(work, sort).put(KEPT[sort], None)
    with store.work("Ada") as work:
        getattr(work, sort).put(None, KEPT[sort])
    with store.read() as work:
        assert getattr(work, sort).all() == ()


def test_a_quantity_keeps_the_unit_it_was_entered_in(store) -> None:
    with store.work("Ada") as work:
        work.lots.put(LOT, None)
    with store.read() as work:
        mass = work.lots.get("K-1").thousand_seed_mass
    assert (mass.magnitude, str(mass.units)) == (11.2, "ounce")


def test_a_second_lot_of_the_same_number_is_refused(store) -> None:
    with store.work("Ada") as work:
        work.lots.put(LOT, None)
    with pytest.raises(Refusal, match="“K-1” is there already"), store.work("Ada") as work:
        work.lots.put(SeedLot("K-1", "soybean"), None)


def test_a_lot_cannot_take_the_number_of_another(store) -> None:
    other = SeedLot("K-2", "corn")
    with store.work("Ada") as work:
        work.lots.put(LOT, None)
        work.lots.put(other, None)
    with pytest.raises(Refusal, match="there already"), store.work("Ada") as work:
        work.lots.put(SeedLot("K-1", "corn"), other)


def test_the_later_writer_sees_both_values(store) -> None:
    mine, theirs = Field("F", Q(2.0, "acre")), Field("F", Q(3.0, "acre"))
    first = Field("F", Q(1.0, "acre"))
    with store.work("Ada") as work:
        work.fields.put(first, None)
    with store.work("Bo") as work:
        work.fields.put(theirs, first)
    with pytest.raises(Conflict) as refusal, store.work("Ada") as work:
        work.fields.put(mine, first)
    assert (refusal.value.mine, refusal.value.theirs) == ("area 2 ac", "area 3 ac")
    assert refusal.value.stored == theirs


def test_who_removes_what_was_changed_meanwhile_is_told_the_change(store) -> None:
    first = Field("F", Q(1.0, "acre"))
    with store.work("Ada") as work:
        work.fields.put(first, None)
        work.fields.put(replace(first, where="Home"), first)
    with pytest.raises(Conflict) as refusal, store.work("Bo") as work:
        work.fields.put(None, first)
    assert (refusal.value.mine, refusal.value.theirs) == ("removed", "where Home")


def test_what_is_missing_is_named(store) -> None:
    with pytest.raises(Refusal, match="no field “Nowhere”"), store.read() as work:
        work.fields.get("Nowhere")


def test_a_manual_value_for_all_and_one_for_a_disc_stand_side_by_side(store) -> None:
    narrow = ManualValue("corn", "vacuum", Q(16.0, "inH2O"), part="C30")
    with store.work("Ada") as work:
        work.manual.put(KEPT["manual"], None)
        work.manual.put(narrow, None)
    with store.read() as work:
        assert work.manual.get("corn", "vacuum", None, "C30") == narrow


NAMED = {
    "lots": (SeedLot("K-1", "corn"), SeedLot(" k-1", "soybean")),
    "fields": (Field("Back Forty", Q(40, "acre")), Field("back  forty ", Q(9, "acre"))),
    "parts": (Part("C30", "disc", "disc"), Part("c30", "other", "disc")),
    "crew": (CrewMember("Ada"), CrewMember("ADA ")),
    "tools": (SharedTool("wash rack"), SharedTool("Wash Rack")),
    "meters": (Meter("M-1"), Meter("m-1")),
    "jobs": (PlannedJob(lot="K-1", name="first"), PlannedJob(lot="K-1", name="First")),
}


@pytest.mark.parametrize("sort", NAMED)
def test_names_that_differ_in_capitals_or_blanks_alone_are_refused(store, sort) -> None:
    first, second = NAMED[sort]
    with store.work("Ada") as work:
        getattr(work, sort).put(first, None)
    says = "is there already, and .* differs in capitals or blanks alone; use that one"
    with pytest.raises(Refusal, match=says), store.work("Ada") as work:
        getattr(work, sort).put(second, None)
    with store.read() as work:
        assert getattr(work, sort).all() == (first,)


def test_renaming_into_an_alike_name_is_refused_but_its_own_may_be_respelt(store) -> None:
    other = replace(LOT, number="K-2")
    with store.work("Ada") as work:
        work.lots.put(LOT, None)
        work.lots.put(other, None)
    with pytest.raises(Refusal, match="Lot “K-1” is there already"), store.work("Ada") as work:
        work.lots.put(replace(other, number="k-1"), other)
    with store.work("Ada") as work:
        work.lots.put(replace(other, number="k-2"), other)
        assert [lot.number for lot in work.lots.all()] == ["K-1", "k-2"]


def test_a_pair_that_an_older_store_holds_can_be_read_and_changed(store) -> None:
    one, other = SeedLot("K-1", "corn"), SeedLot("k-1", "corn")
    with store.work("Ada") as work:
        work.lots.put(one, None)
        work._session.add(LotRow(**vars(other)))
    with store.work("Ada") as work:
        assert work.lots.all() == (one, other)
        work.lots.put(replace(other, name="new"), other)
        work.lots.put(replace(one, number="K-3"), one)
    with store.read() as work:
        assert [lot.number for lot in work.lots.all()] == ["K-3", "k-1"]


def test_a_name_in_other_capitals_is_not_found_but_told(store) -> None:
    with store.work("Ada") as work:
        work.lots.put(LOT, None)
    says = "no lot “k-1” in this store; it is written “K-1”"
    with pytest.raises(Refusal, match=says), store.read() as work:
        work.lots.get("k-1")
