"""Tables of readings as comma-separated text: columns with units in the header, errors by place."""

import csv
import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from changeover.quantities import Q, Refusal

MOST_COUNT = 10_000_000
MOST_BYTES = 512 * 1024 * 1024
_HEADER = re.compile(r"(?P<name>[a-z][a-z _-]*?)\s*(?:[(\[](?P<unit>[^)\]]+)[)\]])?")
_DELIMITERS = (",", ";", "\t")


@dataclass(frozen=True)
class Column:
    """One column: its place from 1, its name in lower case, and the unit in its header, if any."""

    place: int
    name: str
    unit: str

    def where(self, line: int) -> str:
        return f"line {line}, column {self.place} ({self.name})"


@dataclass(frozen=True)
class Line:
    """One line of the table: its number in the file, and its cells."""

    number: int
    cells: tuple[str, ...]

    def text(self, column: Column) -> str:
        """The cell of a column without blanks around it; empty when the line ends before it."""
        at = column.place - 1
        return self.cells[at].strip() if at < len(self.cells) else ""

    def number_in(self, column: Column, what: str) -> float:
        """Return the figure in a column; raises Refusal when the cell is empty or no figure."""
        text = self.text(column)
        where = column.where(self.number)
        if not text:
            raise Refusal(f"{where}: the {what} is missing; enter it.")
        try:
            value = float(text.replace("\u2212", "-"))
        except ValueError:
            raise Refusal(f"{where}: “{text}” is not a plain number; {_hint(column)}.") from None
        if not math.isfinite(value):
            raise Refusal(f"{where}: “{text}” is not a figure to reckon with; correct it.")
        return value

    def whole(self, column: Column, what: str, least: int = 0) -> int:
        """Return the whole number in a column; raises Refusal for a part or below ``least``."""
        value = self.number_in(column, what)
        if value != int(value) or not least <= value <= MOST_COUNT:
            where = column.where(self.number)
            raise Refusal(f"{where}: {what} {value:g} is not possible; enter {least} or more.")
        return int(value)


@dataclass(frozen=True)
class ReadingTable:
    """The columns of a table, and its lines."""

    columns: tuple[Column, ...]
    lines: tuple[Line, ...]

    def find(self, *names: str) -> Column | None:
        """Return the first column with one of the names, None when there is none."""
        return next((one for one in self.columns if one.name in names), None)

    def need(self, *names: str) -> Column:
        """Return the first column with one of the names; raises Refusal when there is none."""
        column = self.find(*names)
        if column is None:
            have = ", ".join(one.name for one in self.columns)
            raise Refusal(f"line 1: no column “{names[0]}” among {have}; add it to the header.")
        return column

    def need_unit(self, column: Column, like: str) -> str:
        """Return the unit of a column; raises Refusal when it is missing or of another kind."""
        example = f"for example “{column.name} ({like})”"
        if not column.unit:
            raise Refusal(f"{column.where(1)}: the header has no unit; write it {example}.")
        try:
            Q(1.0, column.unit).to(like)
        except Exception:  # pint raises many kinds for a unit it cannot read
            where = column.where(1)
            raise Refusal(
                f"{where}: “{column.unit}” is no such unit; write it {example}."
            ) from None
        return column.unit


def read_table(path: Path) -> ReadingTable:
    """Read a table of readings from comma-separated text (or semicolons, or tabs).

    Empty lines and lines that begin with # are passed over. Raises Refusal when the file is
    missing or not text, when it has no lines, or when two columns share a name.
    """
    return table_of(_text(path).splitlines())


def table_of(text: Sequence[str]) -> ReadingTable:
    """Return the table in lines of text; raises Refusal as ``read_table``."""
    lines = _lines(text)
    first = next(lines, None)
    if first is None:
        raise Refusal("line 1: the file is empty; it needs a header and one line for each reading.")
    columns = tuple(_column(i + 1, cell, first.number) for i, cell in enumerate(first.cells))
    names = [one.name for one in columns]
    for one in columns:
        if names.index(one.name) != one.place - 1:
            raise Refusal(f"{one.where(first.number)}: this column stands twice; keep one.")
    rest = tuple(lines)
    if not rest:
        raise Refusal(f"line {first.number + 1}: there are no readings below the header.")
    long = next((one for one in rest if any(c.strip() for c in one.cells[len(columns) :])), None)
    if long is not None:
        at = len(columns) + 1
        raise Refusal(f"line {long.number}, column {at}: a cell without a header; see the line.")
    return ReadingTable(columns, rest)


def _text(path: Path) -> str:
    try:
        if path.stat().st_size > MOST_BYTES:
            raise Refusal(f"{path.name} is larger than 512 MB; split it.")
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise Refusal(f"{path.name} is not text in UTF-8; save it as CSV (UTF-8).") from None
    except OSError as error:
        raise Refusal(f"{path.name} cannot be read: {error.strerror or error}.") from None


def _lines(text: Sequence[str]) -> Iterator[Line]:
    header = next((line for line in text if line.strip() and not line.startswith("#")), "")
    delimiter = max(_DELIMITERS, key=header.count)
    for number, line in enumerate(text, start=1):
        if line.strip(" \t\r,;") and not line.startswith("#"):
            yield Line(number, tuple(next(csv.reader([line], delimiter=delimiter))))


def _column(place: int, cell: str, line: int) -> Column:
    plain = cell.strip().casefold()
    match = _HEADER.fullmatch(plain)
    if match is None:
        raise Refusal(f"line {line}, column {place}: “{cell.strip()}” is no name of a column.")
    unit = re.search(r"[(\[]([^)\]]+)[)\]]", cell)
    name, given = match["name"].strip(), unit[1].strip() if unit else ""
    return Column(place, *_split(name, given))


def _split(name: str, unit: str) -> tuple[str, str]:
    """Take a unit at the end of a name apart: ``spacing_in`` and ``spacing in``."""
    head, mark, tail = name.replace("_", " ").rpartition(" ")
    if not unit and mark and tail in ("in", "inch", "inches", "mm", "cm", "m", "ft", "s", "ms"):
        return head.strip(), tail
    return name.replace("_", " "), unit


def _hint(column: Column) -> str:
    if column.unit:
        return f"this column is in {column.unit}, write the figure alone, with a point for decimals"
    return "write the figure alone, with a point for decimals"
