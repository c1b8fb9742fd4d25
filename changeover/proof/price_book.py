"""A price list as its owner keeps it: lines with code, text and price, and what each one mends."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from changeover.proof.appraisal import Price, PriceList, Repair
from changeover.proof.wear import WearState, WearVerdict
from changeover.quantities import Refusal

LABOUR = "labour"
MOST_PRICE = Decimal(10_000_000)  # a bound against slips of the pen, from memory
MOST_EACH = 99


@dataclass(frozen=True)
class PriceLine:
    """One line: what ``code`` costs, before tax.

    ``part`` names the part of the wear inspection that the line mends, empty when it is for none;
    ``each`` how many a row takes, ``minutes`` the labour to fit them on one row, None when the
    list does not say.
    """

    code: str
    text: str
    amount: Decimal
    currency: str
    part: str = ""
    each: int = 1
    minutes: Decimal | None = None

    def __post_init__(self) -> None:
        if not self.code.strip():
            raise Refusal("A line of the price list has no code; give it one.")
        Price(self.code, self.amount, self.currency)
        if self.amount >= MOST_PRICE:
            raise Refusal(f"The price of {self.code} is {self.amount}; check it.")
        if not 0 <= self.each <= MOST_EACH:
            raise Refusal(f"{self.code}: {self.each} on a row is not possible; enter 0 to 99.")
        if self.minutes is not None and not (self.minutes.is_finite() and self.minutes >= 0):
            raise Refusal(f"{self.code}: minutes must be 0 or more.")

    @property
    def in_brief(self) -> str:
        """What the history says of a line: its code and price."""
        return f"{self.code} {self.amount} {self.currency}"


@dataclass(frozen=True)
class PriceBook:
    """A price list with its name and day; ``tax`` is a share, 0.07 for 7 %.

    The line with the code ``labour`` is the price of an hour.
    """

    name: str
    on: date
    tax: Decimal
    lines: tuple[PriceLine, ...]

    def __post_init__(self) -> None:
        if not self.name.strip():
            raise Refusal("The price list has no name; give it one.")
        if not self.lines:
            raise Refusal(f"The price list {self.name} has no lines; it needs at least one.")
        codes = Counter(one.code.casefold() for one in self.lines)
        twice = next((code for code, times in codes.items() if times > 1), None)
        if twice is not None:
            raise Refusal(f"The price list {self.name} has the code {twice} twice; keep one.")
        self.prices()

    @property
    def labour(self) -> PriceLine | None:
        """The line that says what an hour costs, None when there is none."""
        return next((one for one in self.lines if one.code.casefold() == LABOUR), None)

    @property
    def currencies(self) -> tuple[str, ...]:
        """Every currency in the list, in the order of the alphabet."""
        return tuple(sorted({one.currency for one in self.lines}))

    def prices(self) -> PriceList:
        """Return the prices to reckon with; nothing is added to what the list says."""
        hour = self.labour
        return PriceList(
            self.name,
            self.on,
            hour.currency if hour else self.lines[0].currency,
            {
                one.code: Price(one.code, one.amount, one.currency)
                for one in self.lines
                if one is not hour
            },
            hour.amount if hour else None,
            self.tax,
        )

    def of_part(self, part: str) -> tuple[PriceLine, ...]:
        """Return the lines that mend a part of the wear inspection."""
        return tuple(one for one in self.lines if one.part == part)


def repairs_needed(verdicts: Iterable[WearVerdict], book: PriceBook) -> tuple[Repair, ...]:
    """Return what brings every worn part to standard, row by row.

    One repair for each line that mends the part; a part that no line mends is a repair under its
    own name, so that it is named as unpriced and not passed over.
    """
    found: list[Repair] = []
    for one in verdicts:
        if one.condition is not WearState.REPLACE:
            continue
        row, part = one.reading.row, one.reading.part
        lines = book.of_part(part)
        found.extend(Repair(row, line.code, line.each, line.minutes, one.says) for line in lines)
        if not lines:
            found.append(Repair(row, part, 1, None, one.says))
    return tuple(found)
