"""Appraisal of a planter: parts and labour to recondition it, as found against reconditioned."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import ROUND_HALF_UP, Decimal

from changeover.proof.wear import WearState
from changeover.quantities import Refusal

CENT = Decimal("0.01")
HOUR = Decimal(60)


@dataclass(frozen=True)
class Price:
    """What one part costs: an amount in a currency, before tax."""

    part: str
    amount: Decimal
    currency: str

    def __post_init__(self) -> None:
        if not self.amount.is_finite() or self.amount < 0:
            raise Refusal(f"The price of {self.part} must be 0 or more.")
        _check_currency(self.currency)


@dataclass(frozen=True)
class PriceList:
    """Prices as the user imported them; nothing is built in.

    ``labour`` is the rate for an hour in ``currency``, None when it is not stated; ``tax`` the
    rate on parts and labour, 0.07 for 7 %.
    """

    name: str
    on: date
    currency: str
    prices: Mapping[str, Price]
    labour: Decimal | None = None
    tax: Decimal = Decimal(0)

    def __post_init__(self) -> None:
        _check_currency(self.currency)
        if self.labour is not None and not (self.labour.is_finite() and self.labour >= 0):
            raise Refusal("The labour rate must be 0 or more for an hour.")
        if not (self.tax.is_finite() and 0 <= self.tax < 1):
            raise Refusal("The tax rate must be from 0 to below 100 %.")


@dataclass(frozen=True)
class Repair:
    """Work on one row (0 for the planter as a whole): parts needed, and minutes of labour.

    ``minutes`` is None where nobody says how long it takes.
    """

    row: int
    part: str
    count: int
    minutes: Decimal | None = Decimal(0)
    why: str = ""

    def __post_init__(self) -> None:
        minutes = self.minutes or Decimal(0)
        if self.row < 0 or self.count < 0 or not (minutes.is_finite() and minutes >= 0):
            raise Refusal(f"Row {self.row}, {self.part}: row, count and minutes must be 0 or more.")


@dataclass(frozen=True)
class Amounts:
    """Sums in one currency, each rounded to cents."""

    currency: str
    parts: Decimal
    labour: Decimal
    tax: Decimal

    @property
    def net(self) -> Decimal:
        return self.parts + self.labour

    @property
    def total(self) -> Decimal:
        return self.net + self.tax


@dataclass(frozen=True)
class Gain:
    """What reconditioning would bring in a currency; below zero it costs more than it brings."""

    amount: Decimal
    currency: str


@dataclass(frozen=True)
class RowAppraisal:
    """One row: its condition, its repairs, and what they cost by currency."""

    row: int
    condition: WearState
    repairs: tuple[Repair, ...]
    amounts: tuple[Amounts, ...]


@dataclass(frozen=True)
class Appraisal:
    """A planter appraised.

    ``totals`` has one entry for each currency; nothing is converted. ``unpriced`` names the parts
    and labour for which no price was given: while it is not empty the totals are incomplete.
    ``as_found`` and ``reconditioned`` are the user's own values of the machine, or None.
    """

    planter: str
    on: date
    price_list: str
    rows: tuple[RowAppraisal, ...]
    totals: tuple[Amounts, ...]
    unpriced: tuple[str, ...]
    as_found: Price | None = None
    reconditioned: Price | None = None

    @property
    def complete(self) -> bool:
        return not self.unpriced

    @property
    def margin(self) -> Gain | None:
        """Value reconditioned, less value as found, less the work; None where one is not known.

        Before tax, and only when all is in one currency and every part has a price.
        """
        if self.as_found is None or self.reconditioned is None or not self.complete:
            return None
        currencies = {self.as_found.currency, self.reconditioned.currency}
        if len(currencies | {one.currency for one in self.totals}) > 1:
            return None
        work = sum((one.net for one in self.totals), Decimal(0))
        gain = self.reconditioned.amount - self.as_found.amount - work
        return Gain(gain, self.as_found.currency)


def appraise(
    planter: str,
    on: date,
    conditions: Mapping[int, WearState],
    repairs: Sequence[Repair],
    prices: PriceList,
    *,
    as_found: Price | None = None,
    reconditioned: Price | None = None,
) -> Appraisal:
    """Return the appraisal of a planter from the conditions of its rows and the repairs needed.

    A part without a price is named in ``unpriced`` and adds nothing. Tax is reckoned on each
    total, not line by line. Raises Refusal when a repair is on a row without a condition.
    """
    stray = [one.row for one in repairs if one.row not in conditions and one.row != 0]
    if stray:
        raise Refusal(f"Row {stray[0]} has repairs but no condition; inspect it first.")
    numbers = sorted(conditions) + ([0] if any(one.row == 0 for one in repairs) else [])
    rows = []
    for row in numbers:
        own = tuple(one for one in repairs if one.row == row)
        condition = conditions.get(row, WearState.NO_LIMIT)
        rows.append(RowAppraisal(row, condition, own, _amounts(own, prices)))
    return Appraisal(
        planter,
        on,
        f"{prices.name}, {prices.on.isoformat()}",
        tuple(rows),
        _amounts(repairs, prices),
        _unpriced(repairs, prices),
        as_found,
        reconditioned,
    )


def _amounts(repairs: Iterable[Repair], prices: PriceList) -> tuple[Amounts, ...]:
    parts: dict[str, Decimal] = {}
    minutes = Decimal(0)
    for one in repairs:
        minutes += one.minutes or 0
        price = prices.prices.get(one.part)
        if price is not None and one.count:
            parts[price.currency] = parts.get(price.currency, Decimal(0)) + price.amount * one.count
    labour = _cents((prices.labour or Decimal(0)) * minutes / HOUR)
    if labour:
        parts.setdefault(prices.currency, Decimal(0))
    return tuple(
        _with_tax(
            code, _cents(parts[code]), labour if code == prices.currency else Decimal(0), prices
        )
        for code in sorted(parts)
    )


def _with_tax(code: str, parts: Decimal, labour: Decimal, prices: PriceList) -> Amounts:
    return Amounts(code, parts, labour, _cents((parts + labour) * prices.tax))


def _unpriced(repairs: Iterable[Repair], prices: PriceList) -> tuple[str, ...]:
    names = {one.part for one in repairs if one.count and one.part not in prices.prices}
    names |= {f"labour for {one.part}" for one in repairs if one.minutes is None}
    if prices.labour is None and any(one.minutes for one in repairs):
        names.add("labour")
    return tuple(sorted(names))


def _cents(amount: Decimal) -> Decimal:
    return amount.quantize(CENT, rounding=ROUND_HALF_UP)


def _check_currency(code: str) -> None:
    if len(code) != 3 or not code.isalpha() or not code.isupper():
        raise Refusal(f"“{code}” is not a currency; write its three letters, such as USD.")
