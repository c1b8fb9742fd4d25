"""Amounts of money and spans of labour as they stand in a sentence or a table."""

from decimal import ROUND_HALF_UP, Decimal

from changeover.quantities import NARROW_SPACE

_CENT = Decimal("0.01")


def money(amount: Decimal, currency: str = "") -> str:
    """Return an amount to the cent, with its currency if wanted: ``1 234.50 USD``."""
    cents = amount.quantize(_CENT, rounding=ROUND_HALF_UP)
    return f"{cents:,.2f} {currency}".replace(",", NARROW_SPACE).rstrip()


def rate_text(share: Decimal) -> str:
    """Return a rate of tax in percent without needless noughts: ``7 %``, ``7.75 %``."""
    return f"{(100 * share).normalize():f} %"


def minutes_text(minutes: Decimal | None) -> str:
    """Return a span of labour: ``25 min``, ``1 h 40 min``; says so where nobody states it."""
    if minutes is None:
        return "not stated"
    whole = int(minutes.to_integral_value(rounding=ROUND_HALF_UP))
    return f"{whole // 60} h {whole % 60:02d} min" if whole >= 60 else f"{whole} min"
