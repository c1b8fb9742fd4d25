"""A wear inspection is read, judged, saved with its findings, and closed by the next one alone."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from changeover.desk.door import apply
from changeover.desk.edits import PutPart
from changeover.desk.inspect_wear import (
    Inspection,
    judge,
    parts_of,
    rates,
    read_cell,
    readings_of,
    save,
    show_cell,
    wear_view,
)
from changeover.desk.prove.proofs import Proof, findings, proofs
from changeover.desk.shop_edits import PutPrices, PutWearLimit
from changeover.planter.parts import Part
from changeover.proof.own_limits import OwnLimit
from changeover.proof.price_book import PriceBook, PriceLine
from changeover.proof.wear import WearState
from changeover.quantities import Q, Refusal, Units
from changeover.store.opening import Store

DISC, TUBE, WIPER = "opener disc diameter", "seed tube", "wiper"
DAY = date(2026, 3, 1)
NEW = {DISC: "15 in new"}
BAR = "Bar"
FIRST = Inspection(
    DAY,
    {(1, DISC): Q(14.9, "in"), (2, DISC): Q(14.2, "in"), (2, TUBE): False, (3, WIPER): True},
    NEW,
    Q(1000.0, "acre"),
    "before planting",
)


def keep(store: Store, inspection: Inspection) -> None:
    apply(store, save(store, BAR, inspection, wear_view(store, BAR).limits), "Ada")


def titles(store: Store) -> list[tuple[int | None, str]]:
    return [(one.finding.row, one.finding.part) for one in findings(store, BAR, Proof.WEAR)]


def test_an_inspection_comes_back_as_it_was_read(small: Store) -> None:
    keep(small, FIRST)
    (found,) = wear_view(small, BAR).inspections
    assert replace(found, number=0) == FIRST
    assert found.number > 0


def test_what_is_worn_becomes_a_finding_and_only_a_new_reading_closes_it(small: Store) -> None:
    keep(small, FIRST)
    assert titles(small) == [(2, DISC), (2, TUBE)]
    keep(small, Inspection(date(2026, 3, 5), {(2, TUBE): True}))
    assert titles(small) == [(2, DISC)]
    keep(small, Inspection(date(2026, 3, 6), {(2, DISC): Q(15.0, "in")}, NEW))
    assert titles(small) == []


def test_an_older_inspection_entered_later_raises_and_closes_nothing(small: Store) -> None:
    keep(small, FIRST)
    keep(small, Inspection(date(2025, 3, 1), {(2, DISC): Q(15, "in"), (4, TUBE): False}, NEW))
    assert titles(small) == [(2, DISC), (2, TUBE)]
    assert [one.day.year for one in wear_view(small, BAR).inspections] == [2026, 2025]


def test_two_dates_tell_the_acres_left(small: Store) -> None:
    later = Inspection(date(2027, 3, 1), {(1, DISC): Q(14.7, "in")}, NEW, Q(2000.0, "acre"))
    found = rates(later, [FIRST], wear_view(small, BAR).limits)
    assert found[1, DISC].area_left.to("acre").magnitude == pytest.approx(1000)
    assert set(found) == {(1, DISC)}


def test_acres_that_went_backwards_leave_the_rate_by_time(small: Store) -> None:
    later = Inspection(date(2027, 3, 1), {(1, DISC): Q(14.7, "in")}, NEW, Q(500.0, "acre"))
    found = rates(later, [FIRST], wear_view(small, BAR).limits)
    assert found[1, DISC].area_left is None
    assert found[1, DISC].reaches_limit == date(2028, 2, 29)


def test_your_manual_comes_before_the_published_limit(small: Store) -> None:
    own = OwnLimit(DISC, "", Q(14.0, "in"), None, None, "page 40")
    apply(small, PutWearLimit(own), "Ada")
    found = judge(FIRST, wear_view(small, BAR).limits)
    assert found[2, DISC].condition is WearState.GOOD
    assert found[2, DISC].limit.source.text == "your manual: page 40"


def test_an_own_limit_makes_a_looked_at_part_a_measured_one(small: Store) -> None:
    apply(small, PutWearLimit(OwnLimit(WIPER, "", None, Q(2, "mm"), None, "page 3")), "Ada")
    limits = wear_view(small, BAR).limits
    value = read_cell(Inspection(DAY), (1, WIPER), "2.5 mm", limits, Units.US)
    assert judge(Inspection(DAY, {(1, WIPER): value}), limits)[1, WIPER].condition is (
        WearState.REPLACE
    )
    assert parts_of(limits).count(WIPER) == 1


def test_a_look_taken_before_a_part_was_measured_still_stands(small: Store) -> None:
    keep(small, FIRST)
    apply(small, PutWearLimit(OwnLimit(WIPER, "", None, Q(2, "mm"), None, "page 3")), "Ada")
    view = wear_view(small, BAR)
    assert judge(view.inspections[0], view.limits)[3, WIPER].condition is WearState.GOOD


@pytest.mark.parametrize(
    ("part", "text", "value"),
    [
        (DISC, "14 3/4", Q(14.75, "in")),
        (DISC, "375 mm", Q(375.0, "mm")),
        (TUBE, "g", True),
        (TUBE, "Replace", False),
        (TUBE, " ", None),
    ],
)
def test_cells_as_people_type_them(small: Store, part, text, value) -> None:
    limits = wear_view(small, BAR).limits
    assert read_cell(Inspection(DAY, applies=NEW), (1, part), text, limits, Units.US) == value


@pytest.mark.parametrize(
    ("part", "text", "message"),
    [
        (DISC, "3", "Row 1, Opener disc diameter: 3.00 in is not possible"),
        (DISC, "good", "“good” is not a number with a unit"),
        (TUBE, "14", "type g for good or r for replace"),
    ],
)
def test_cells_that_cannot_be(small: Store, part, text, message) -> None:
    limits = wear_view(small, BAR).limits
    with pytest.raises(Refusal, match=message):
        read_cell(Inspection(DAY, applies=NEW), (1, part), text, limits, Units.US)


def test_what_is_shown_reads_back(small: Store) -> None:
    assert [show_cell(one, Units.US) for one in (Q(14.75, "in"), True, False, None)] == [
        "14.75",
        "good",
        "replace",
        "",
    ]


@pytest.mark.parametrize("cells", [{}, {(9, TUBE): True}, {(1, DISC): Q(99, "in")}])
def test_nothing_is_saved_until_it_is_right(small: Store, cells) -> None:
    with pytest.raises(Refusal):
        keep(small, Inspection(DAY, cells, NEW))
    assert proofs(small, BAR) == ()


def test_the_parts_of_the_price_list_go_with_the_finding(small: Store) -> None:
    line = PriceLine("D-15", "disc", Decimal(60), "USD", DISC, 2)
    apply(small, PutPart(Part("D-15", "opener disc", "opener disc")), "Ada")
    apply(small, PutPrices(PriceBook("shop", DAY, Decimal(0), (line,))), "Ada")
    keep(small, FIRST)
    needs = {one.finding.part: one.parts for one in findings(small, BAR)}
    assert [(one.part, one.count) for one in needs[DISC]] == [("D-15", 2)]
    assert needs[TUBE] == ()


def test_readings_survive_the_store_form() -> None:
    kept = readings_of(FIRST)
    assert kept["day"] == "2026-03-01"
    assert set(kept["rows"]) == {"1", "2", "3"}
