"""Price lists, own wear limits, appraisals and photos come back as they were put."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from changeover.proof.own_limits import OwnLimit
from changeover.proof.price_book import PriceBook, PriceLine
from changeover.quantities import Q, Refusal
from changeover.store.appraisal_values import KeptAppraisal, Photo, PhotoNote
from changeover.store.opening import Store

DAY = date(2026, 1, 15)
BOOK = PriceBook(
    "shop",
    DAY,
    Decimal("0.0775"),
    (
        PriceLine("labour", "an hour", Decimal(95), "USD"),
        PriceLine("D-15", "disc", Decimal("61.350"), "USD", "opener disc diameter", 2, Decimal(25)),
    ),
)
LIMIT = OwnLimit("wiper", "", None, Q(2, "mm"), Q(0, "mm"), "page 40")
KEPT = KeptAppraisal("Small Bar", "for Ada", DAY, 3, "shop", "USD", Decimal("41000.50"), None)
PHOTO = Photo("Small Bar", "for Ada", "aa", "row 3", b"\xff\xd8\xff" + b"x" * 40)


def test_what_is_put_comes_back_to_the_digit(stocked: Store) -> None:
    with stocked.work("Ada") as work:
        work.prices.put(BOOK, None)
        work.wear_limits.put(LIMIT, None)
        work.appraisals.put(KEPT, None)
    with stocked.read() as work:
        assert work.prices.get("shop") == BOOK
        assert str(work.prices.get("shop").lines[1].amount) == "61.350"
        assert work.wear_limits.all() == (LIMIT,)
        assert work.appraisals.get("Small Bar", "for Ada") == KEPT


def test_photos_are_listed_without_their_content(stocked: Store) -> None:
    with stocked.work("Ada") as work:
        work.photos.put(PHOTO, None)
    with stocked.read() as work:
        assert work.photos.notes("Small Bar", "for Ada") == (PhotoNote("aa", "row 3", 43),)
        assert work.photos.notes("Small Bar", "for Bea") == ()
        assert work.photos.get("Small Bar", "for Ada", "aa") == PHOTO


def test_the_history_says_how_large_a_photo_is_and_not_what_is_in_it(stocked: Store) -> None:
    with stocked.work("Ada") as work:
        work.photos.put(PHOTO, None)
    with stocked.read() as work:
        lines = {one.setting: one.new for one in work.history.latest("Small Bar", 9)}
    assert lines["content"] == "43 bytes"


@pytest.mark.parametrize("content", [b"GIF89a", b"", b"\xff\xd8\xff" + b"x" * 4_000_000])
def test_photos_of_another_kind_or_too_large_are_refused(content: bytes) -> None:
    with pytest.raises(Refusal, match="Photo row 3"):
        replace(PHOTO, content=content)


@pytest.mark.parametrize(
    "wrong",
    [{"name": " "}, {"currency": "dollars"}, {"as_found": Decimal(-1)}],
)
def test_impossible_appraisals_are_refused(wrong: dict[str, object]) -> None:
    with pytest.raises(Refusal):
        replace(KEPT, **wrong)


def test_the_history_lists_a_short_price_list_and_counts_a_long_one(stocked: Store) -> None:
    long = tuple(PriceLine(f"C{n}", "part", Decimal(n), "USD") for n in range(500))
    with stocked.work("Ada") as work:
        work.prices.put(BOOK, None)
        work.prices.put(replace(BOOK, lines=long), BOOK)
    with stocked.read() as work:
        old, new = next(
            (one.old, one.new) for one in work.history.latest(None, 3) if one.setting == "lines"
        )
    assert old == "labour 95 USD, D-15 61.350 USD"
    assert new == "500 entries"
