"""A price list with what its lines mend, and the repairs that a worn planter needs."""

from datetime import date
from decimal import Decimal

import pytest

from changeover.files.wear_limits import bundled_wear_limits
from changeover.proof.appraisal import appraise
from changeover.proof.price_book import PriceBook, PriceLine, repairs_needed
from changeover.proof.wear import WearReading, WearState, WearVerdict, judge_all
from changeover.quantities import Q, Refusal

DAY = date(2026, 1, 15)
DISC = "opener disc diameter"
LINES = (
    PriceLine("labour", "an hour", Decimal(90), "USD"),
    PriceLine("D-15", "opener disc", Decimal("61.35"), "USD", DISC, 2, Decimal(25)),
    PriceLine("B-6", "disc bearing", Decimal("8.10"), "USD", DISC, 2, Decimal(0)),
    PriceLine("S-1", "seal", Decimal("12.10"), "EUR", "vacuum seal", 1, None),
)
BOOK = PriceBook("shop", DAY, Decimal("0.07"), LINES)


def read(row: int, part: str, value: object) -> WearReading:
    return WearReading(row, part, value, DAY, None, "15 in new" if part == DISC else "")


def verdicts(*readings: WearReading) -> tuple[WearVerdict, ...]:
    return judge_all(readings, bundled_wear_limits())


def test_the_labour_line_is_the_rate_and_no_part() -> None:
    prices = BOOK.prices()
    assert (prices.labour, prices.currency, prices.tax) == (Decimal(90), "USD", Decimal("0.07"))
    assert set(prices.prices) == {"D-15", "B-6", "S-1"}
    assert BOOK.currencies == ("EUR", "USD")


def test_every_line_that_mends_a_worn_part_is_a_repair() -> None:
    found = repairs_needed(verdicts(read(2, DISC, Q(14.2, "in"))), BOOK)
    assert [(one.row, one.part, one.count) for one in found] == [(2, "D-15", 2), (2, "B-6", 2)]
    assert "14.2" in found[0].why


def test_what_is_good_or_to_watch_needs_no_repair() -> None:
    good = verdicts(read(1, DISC, Q(15, "in")), read(2, DISC, Q(14.55, "in")))
    assert [one.condition for one in good] == [WearState.GOOD, WearState.WATCH]
    assert repairs_needed(good, BOOK) == ()


def test_a_worn_part_without_a_line_is_named_with_its_labour() -> None:
    found = repairs_needed(verdicts(read(3, "wiper", value=False)), BOOK)
    appraised = appraise("bar", DAY, {3: WearState.REPLACE}, found, BOOK.prices())
    assert appraised.unpriced == ("labour for wiper", "wiper")
    assert appraised.totals == ()


def test_labour_that_nobody_states_is_named() -> None:
    found = repairs_needed(verdicts(read(3, "vacuum seal", value=False)), BOOK)
    appraised = appraise("bar", DAY, {3: WearState.REPLACE}, found, BOOK.prices())
    assert appraised.unpriced == ("labour for S-1",)
    assert [one.currency for one in appraised.totals] == ["EUR"]


@pytest.mark.parametrize(
    "make",
    [
        lambda: PriceLine(" ", "", Decimal(1), "USD"),
        lambda: PriceLine("a", "", Decimal(1), "usd"),
        lambda: PriceLine("a", "", Decimal(10_000_000), "USD"),
        lambda: PriceLine("a", "", Decimal(1), "USD", each=100),
        lambda: PriceLine("a", "", Decimal(1), "USD", minutes=Decimal(-1)),
        lambda: PriceBook("", DAY, Decimal(0), LINES),
        lambda: PriceBook("shop", DAY, Decimal(0), ()),
        lambda: PriceBook("shop", DAY, Decimal(1), LINES),
        lambda: PriceBook("shop", DAY, Decimal(0), (*LINES, LINES[1])),
    ],
)
def test_impossible_price_lists_are_refused(make) -> None:
    with pytest.raises(Refusal):
        make()
