"""Parts and labour to recondition a planter, to the cent."""

from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.proof.appraisal import Appraisal, Price, PriceList, Repair, appraise
from changeover.proof.appraisal_pair import side_by_side
from changeover.proof.wear import WearState
from changeover.quantities import Refusal

DAY = date(2025, 1, 15)
PRICES = PriceList(
    "shop list",
    date(2025, 1, 1),
    "USD",
    {
        "opener disc": Price("opener disc", Decimal("61.35"), "USD"),
        "seal": Price("seal", Decimal("12.10"), "EUR"),
    },
    labour=Decimal(90),
    tax=Decimal("0.07"),
)
ROWS = {1: WearState.GOOD, 2: WearState.REPLACE}
DISCS = Repair(2, "opener disc", 2, Decimal(25), "worn")


def appraised(*repairs: Repair, prices: PriceList = PRICES, **values) -> Appraisal:
    return appraise("12-row", DAY, ROWS, repairs, prices, **values)


def test_parts_labour_and_tax() -> None:
    (total,) = appraised(DISCS).totals
    assert (total.parts, total.labour) == (Decimal("122.70"), Decimal("37.50"))
    assert total.tax == Decimal("11.21")
    assert total.total == Decimal("171.41")


def test_each_row_has_its_own_sum() -> None:
    first, second = appraised(DISCS).rows
    assert (first.amounts, first.condition) == ((), WearState.GOOD)
    assert second.amounts[0].net == Decimal("160.20")


def test_currencies_are_kept_apart() -> None:
    totals = {one.currency: one.parts for one in appraised(DISCS, Repair(1, "seal", 3)).totals}
    assert totals == {"EUR": Decimal("36.30"), "USD": Decimal("122.70")}


def test_a_part_without_a_price_is_named_and_adds_nothing() -> None:
    found = appraised(Repair(1, "wiper", 4))
    assert found.unpriced == ("wiper",)
    assert not found.complete
    assert found.totals == ()


def test_labour_without_a_rate_is_named() -> None:
    unpriced = PriceList("list", DAY, "USD", PRICES.prices)
    assert appraised(DISCS, prices=unpriced).unpriced == ("labour",)


def test_as_found_against_reconditioned() -> None:
    values = {
        "as_found": Price("planter", Decimal(40_000), "USD"),
        "reconditioned": Price("planter", Decimal(42_000), "USD"),
    }
    assert appraised(DISCS, **values).margin.amount == Decimal("1839.80")
    assert appraised(Repair(1, "wiper", 1), **values).margin is None
    assert appraised(Repair(1, "seal", 1), **values).margin is None
    assert appraised(DISCS).margin is None


def test_work_on_the_planter_as_a_whole_is_row_nought() -> None:
    found = appraised(Repair(0, "opener disc", 1))
    assert [one.row for one in found.rows] == [1, 2, 0]


def test_two_planters_side_by_side() -> None:
    first, second = appraised(DISCS), appraise("8-row", DAY, ROWS, [], PRICES)
    found = side_by_side(first, second)
    assert found.rows[WearState.REPLACE] == (1, 1)
    assert found.totals["USD"] == (Decimal("171.41"), Decimal(0))
    assert found.dearer == {"USD": "12-row"}
    assert found.fair


@given(st.lists(st.tuples(st.integers(1, 2), st.integers(0, 9), st.integers(0, 120)), max_size=9))
def test_parts_of_the_rows_make_up_the_total(work) -> None:
    found = appraised(*(Repair(row, "opener disc", n, Decimal(m)) for row, n, m in work))
    rows = sum((a.parts for row in found.rows for a in row.amounts), Decimal(0))
    assert rows == sum((one.parts for one in found.totals), Decimal(0))


@pytest.mark.parametrize(
    "make",
    [
        lambda: Price("disc", Decimal(-1), "USD"),
        lambda: Price("disc", Decimal("NaN"), "USD"),
        lambda: Price("disc", Decimal(1), "dollars"),
        lambda: PriceList("list", DAY, "USD", {}, tax=Decimal(7)),
        lambda: PriceList("list", DAY, "USD", {}, labour=Decimal(-9)),
        lambda: Repair(1, "disc", -1),
        lambda: appraised(Repair(9, "opener disc", 1)),
    ],
)
def test_impossible_figures_are_refused(make) -> None:
    with pytest.raises(Refusal):
        make()
