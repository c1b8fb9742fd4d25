"""Price lists from CSV or a workbook: code, text, price, currency, tax, and what a line mends."""

import csv
import io
from collections.abc import Callable, Sequence
from datetime import date
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import TypeVar

from changeover.files.reading_table import Column, Line, ReadingTable, read_table, table_of
from changeover.files.wear_limits import bundled_wear_limits
from changeover.proof.price_book import MOST_EACH, MOST_PRICE, PriceBook, PriceLine
from changeover.quantities import Refusal

CODE, TEXT, PRICE = ("code", "part number"), ("text", "name", "description"), ("price", "amount")
EACH, MINUTES = ("each row", "each"), ("minutes", "minutes a row")
MOST_MINUTES = Decimal(6000)
_Read = TypeVar("_Read")


def read_price_list(path: Path, on: date) -> PriceBook:
    """Read a price list; ``on`` is the day from which it counts.

    Columns ``code``, ``text``, ``price``, ``currency``; if wanted ``tax`` (percent, the same on
    every line), ``part`` (the part of the wear inspection that the line mends), ``each row`` and
    ``minutes``. The line with the code ``labour`` is the price of an hour. Raises Refusal with
    file, line and column; then nothing is read.
    """
    try:
        table = _workbook(path) if path.suffix.casefold() == ".xlsx" else read_table(path)
        lines = tuple(_line(table, line) for line in table.lines)
        _refuse_twice(table, lines)
        return PriceBook(path.stem, on, _tax(table), lines)
    except csv.Error as error:
        raise Refusal(f"{path.name}: not a table that can be read ({error}).") from error
    except Refusal as refusal:
        text = str(refusal)
        named = text if text.startswith(path.name) else f"{path.name}: {text}"
        raise Refusal(named) from refusal


def _line(table: ReadingTable, line: Line) -> PriceLine:
    code = _text(line, table.need(*CODE), "code", 60)
    each, minutes = table.find(*EACH), table.find(*MINUTES)
    named = table.find(*TEXT)
    return PriceLine(
        code,
        line.text(named) if named else "",
        _amount(line, table.need(*PRICE), "price", MOST_PRICE),
        _currency(line, table.need("currency")),
        _part(line, table.find("part")),
        _if_any(line, each, lambda column: _whole(line, column), 1),
        _if_any(line, minutes, lambda column: _amount(line, column, "minutes", MOST_MINUTES), None),
    )


def _if_any(
    line: Line, column: Column | None, read: Callable[[Column], _Read], otherwise: _Read
) -> _Read:
    if column is None or not line.text(column):
        return otherwise
    return read(column)


def _text(line: Line, column: Column, what: str, most: int) -> str:
    text = " ".join(line.text(column).split())
    where = column.where(line.number)
    if not text:
        raise Refusal(f"{where}: the {what} is missing; enter it.")
    if len(text) > most:
        raise Refusal(f"{where}: the {what} is longer than {most} signs; shorten it.")
    return text


def _amount(line: Line, column: Column, what: str, below: Decimal) -> Decimal:
    text, where = line.text(column), column.where(line.number)
    if not text:
        raise Refusal(f"{where}: the {what} is missing; enter it.")
    try:
        value = Decimal(text)
    except InvalidOperation:
        raise Refusal(
            f"{where}: “{text[:40]}” is not a plain number; write it like 61.35, without a sign "
            "of the currency."
        ) from None
    if not value.is_finite() or not 0 <= value < below:
        raise Refusal(f"{where}: a {what} of {text[:40]} is not possible; correct it.")
    exponent = value.as_tuple().exponent
    if isinstance(exponent, int) and exponent < -4:
        raise Refusal(f"{where}: {text[:40]} has more than four decimals; round it.")
    return value


def _whole(line: Line, column: Column) -> int:
    count = line.whole(column, "count")
    if count > MOST_EACH:
        where = column.where(line.number)
        raise Refusal(f"{where}: {count} on one row is not possible; enter 0 to {MOST_EACH}.")
    return count


def _currency(line: Line, column: Column) -> str:
    code, where = line.text(column), column.where(line.number)
    if len(code) != 3 or not code.isascii() or not code.isalpha() or not code.isupper():
        raise Refusal(f"{where}: “{code}” is not a currency; write its three letters, as in USD.")
    return code


def _part(line: Line, column: Column | None) -> str:
    part = line.text(column).casefold() if column else ""
    known = {one.part for one in bundled_wear_limits()}
    if part and part not in known and column is not None:
        where = column.where(line.number)
        listed = ", ".join(sorted(known))
        raise Refusal(f"{where}: “{part}” is no part of the inspection; write one of {listed}.")
    return part


def _tax(table: ReadingTable) -> Decimal:
    column = table.find("tax", "tax rate")
    if column is None:
        return Decimal(0)
    rates = [(line.number, _rate(line, column)) for line in table.lines]
    first = rates[0][1]
    for number, rate in rates:
        if rate != first:
            raise Refusal(
                f"{column.where(number)}: tax {rate:g} % differs from {first:g} % above; a price "
                "list has one rate of tax."
            )
    return first / 100


def _rate(line: Line, column: Column) -> Decimal:
    text = line.text(column).removesuffix("%").strip()
    plain = Line(line.number, (*("" for _ in range(column.place - 1)), text))
    return _amount(plain, column, "tax", Decimal(100))


def _refuse_twice(table: ReadingTable, lines: tuple[PriceLine, ...]) -> None:
    column, seen = table.need(*CODE), dict[str, int]()
    for line, one in zip(table.lines, lines, strict=True):
        first = seen.setdefault(one.code.casefold(), line.number)
        if first != line.number:
            where = column.where(line.number)
            raise Refusal(f"{where}: the code {one.code} stands on line {first} too; keep one.")


def _workbook(path: Path) -> ReadingTable:
    """Return the first sheet of a workbook as a table whose lines are the sheet's rows."""
    from openpyxl import load_workbook

    if not path.is_file():
        raise Refusal(f"{path.name} cannot be read: there is no such file.")
    try:
        book = load_workbook(path, read_only=True, data_only=True)
        rows = [list(row) for row in book.worksheets[0].iter_rows(values_only=True)]
        book.close()
    except Exception as error:  # a broken workbook raises many kinds
        raise Refusal(f"{path.name} is not a workbook that can be read.") from error
    return table_of([_as_line(row) for row in rows])


def _as_line(row: Sequence[object]) -> str:
    cells = ["" if cell is None else " ".join(str(cell).split()) for cell in row]
    while cells and not cells[-1]:
        cells.pop()
    text = io.StringIO()
    csv.writer(text, lineterminator="").writerow(cells)
    return text.getvalue() if cells else ""
