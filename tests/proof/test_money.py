"""Money, tax and labour in words."""

from decimal import Decimal

import pytest

from changeover.proof.money import minutes_text, money, rate_text


@pytest.mark.parametrize(
    ("amount", "text"),
    [
        ("0", "0.00 USD"),
        ("1234.5", "1\u202f234.50 USD"),
        ("0.005", "0.01 USD"),
        ("1000000", "1\u202f000\u202f000.00 USD"),
    ],
)
def test_amounts_are_to_the_cent(amount, text) -> None:
    assert money(Decimal(amount), "USD") == text


def test_an_amount_without_a_currency() -> None:
    assert money(Decimal(7)) == "7.00"


@pytest.mark.parametrize(
    ("rate", "text"), [("0", "0 %"), ("0.07", "7 %"), ("0.0775", "7.75 %"), ("0.2", "20 %")]
)
def test_rates_without_needless_noughts(rate, text) -> None:
    assert rate_text(Decimal(rate)) == text


@pytest.mark.parametrize(
    ("minutes", "text"),
    [(None, "not stated"), ("0", "0 min"), ("59.4", "59 min"), ("100", "1 h 40 min")],
)
def test_labour(minutes, text) -> None:
    assert minutes_text(None if minutes is None else Decimal(minutes)) == text
