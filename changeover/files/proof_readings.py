"""Readings of a proof from files: spacings, bench counts and events, depth digs."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path

import numpy as np

from changeover.files.reading_table import Column, Line, ReadingTable, read_table
from changeover.proof.bench import BenchCount
from changeover.proof.bench_events import CellEvent, EventKind, count_events, events_from_times
from changeover.quantities import Q, Quantity, Refusal

MOST_ROWS = 64
MOST_NOTCHES = 60


@dataclass(frozen=True)
class BenchFile:
    """A bench run read from a file: counts by row, and the events where they were listed."""

    counts: tuple[BenchCount, ...]
    events: Mapping[int, tuple[CellEvent, ...]] = field(default_factory=dict)


def read_spacings(path: Path) -> dict[int, Quantity]:
    """Read spacings by row from a table with columns ``row`` and ``spacing (in)``.

    A column ``position (in)`` instead holds places along a tape, in order for each row. Raises
    Refusal with line and column: no unit, positions that go backwards, a spacing below zero.
    """
    table = read_table(path)
    position, spacing = table.find("position"), table.find("spacing")
    if position is not None and spacing is not None:
        where = spacing.where(1)
        raise Refusal(f"{where}: the table has position and spacing; keep one of them.")
    column = position or spacing or table.need("spacing", "position")
    unit = table.need_unit(column, "in")
    what = "position along the tape" if position else "spacing"
    per_row = _by_row(table, column, what)
    if position is not None:
        per_row = {row: _between(readings, column) for row, readings in per_row.items()}
    return {row: Q(np.array([v for _, v in readings]), unit) for row, readings in per_row.items()}


def read_depths(path: Path) -> dict[int, dict[int | None, Quantity]]:
    """Read depth digs by row and notch from a table with columns ``row`` and ``depth (in)``.

    A column ``notch`` says at which notch each was dug, and the notch of a row's last line, which
    comes last, where it stands; without it, or empty, the notch is None. Raises Refusal with line
    and column, as ``read_spacings``.
    """
    table = read_table(path)
    column, notched = table.need("depth"), table.find("notch")
    unit = table.need_unit(column, "in")
    per_row = _by_row(table, column, "depth", most=float(Q(12.0, "in").to(unit).magnitude))
    notches = {line.number: _notch(line, notched) for line in table.lines}
    found: dict[int, dict[int | None, Quantity]] = {}
    for row, readings in per_row.items():
        dug: dict[int | None, list[float]] = {}
        for number, depth in readings:
            notch = notches[number]
            dug[notch] = [*dug.pop(notch, []), depth]
        found[row] = {notch: Q(np.array(depths), unit) for notch, depths in dug.items()}
    return found


def _notch(line: Line, column: Column | None) -> int | None:
    if column is None or not line.text(column):
        return None
    notch = line.whole(column, "notch", 1)
    if notch > MOST_NOTCHES:
        where = column.where(line.number)
        raise Refusal(f"{where}: notch {notch} is not possible; enter 1 to {MOST_NOTCHES}.")
    return notch


def read_bench(path: Path, passed: int | None = None) -> BenchFile:
    """Read a bench run; the header says which of three shapes it has.

    ``row, cells, skips, doubles`` with ``meter`` if wanted; several lines of a row are its
    replicates. ``row, cell, event``: one line for each skip or double with the number of the
    cell that passed, and ``passed`` cells in all. ``row, time (s)``: times between seeds. Raises
    Refusal with line and column.
    """
    table = read_table(path)
    if table.find("time") is not None:
        return _timed(table, table.need("time"))
    if table.find("event") is not None:
        return _listed(table, passed)
    return BenchFile(tuple(_count(table, line) for line in table.lines))


def only_rows(found: Mapping[int, object], wanted: str, path: Path) -> None:
    """Raise Refusal unless the file has readings of exactly the rows wanted, such as ``1-12``."""
    rows = rows_in(wanted)
    missing = [row for row in rows if row not in found]
    stray = [row for row in found if row not in rows]
    if missing:
        raise Refusal(f"{path.name}: no readings of row {_listed_rows(missing)}; add them.")
    if stray:
        raise Refusal(f"{path.name}: row {_listed_rows(stray)} is not among the rows {wanted}.")


def rows_in(text: str) -> tuple[int, ...]:
    """Return the rows of ``1-12`` or ``1,3,5-8``; raises Refusal for anything else."""
    rows: list[int] = []
    for part in text.split(","):
        low, dash, high = part.strip().partition("-")
        if not low.isdecimal() or (dash and not high.isdecimal()):
            raise Refusal(f"Rows “{text}” cannot be read; write them like 1-12 or 1,3,5.")
        first, last = int(low), int(high if dash else low)
        if not 1 <= first <= last <= MOST_ROWS:
            raise Refusal(f"Rows “{text}” are not possible; a planter has rows 1 to {MOST_ROWS}.")
        rows.extend(range(first, last + 1))
    return tuple(dict.fromkeys(rows))


_Placed = list[tuple[int, float]]


def _row(table: ReadingTable, line: Line) -> int:
    column = table.need("row")
    row = line.whole(column, "row number", 1)
    if row > MOST_ROWS:
        where = column.where(line.number)
        raise Refusal(f"{where}: row {row} is not possible; enter 1 to {MOST_ROWS}.")
    return row


def _by_row(
    table: ReadingTable, column: Column, what: str, most: float = float("inf")
) -> dict[int, _Placed]:
    found: dict[int, _Placed] = {}
    for line in table.lines:
        row, value = _row(table, line), line.number_in(column, what)
        if not 0 <= value <= most:
            where = column.where(line.number)
            raise Refusal(f"{where}: a {what} of {value:g} is not possible; correct it.")
        found.setdefault(row, []).append((line.number, value))
    return found


def _between(readings: _Placed, column: Column) -> _Placed:
    if len(readings) < 2:
        where = column.where(readings[0][0])
        raise Refusal(f"{where}: one position makes no spacing; each row needs two or more.")
    spacings = []
    for (_, before), (line, here) in pairwise(readings):
        if here < before:
            raise Refusal(
                f"{column.where(line)}: the position goes backwards, {here:g} after {before:g}; "
                "correct it or enter the rows apart."
            )
        spacings.append((line, here - before))
    return spacings


def _count(table: ReadingTable, line: Line) -> BenchCount:
    cells = line.whole(table.need("cells"), "cells passed", 1)
    skips, doubles = (line.whole(table.need(name), name) for name in ("skips", "doubles"))
    meter = table.find("meter", "serial")
    row = _row(table, line)
    if skips + doubles > cells:
        where = table.need("skips").where(line.number)
        raise Refusal(
            f"{where}: {skips} skips and {doubles} doubles are more than the {cells} cells passed; "
            "check the counts."
        )
    return BenchCount(row, cells, skips, doubles, line.text(meter) if meter else "")


def _listed(table: ReadingTable, passed: int | None) -> BenchFile:
    if passed is None:
        raise Refusal(
            "A list of events does not say how many cells passed; state it: --passed 500."
        )
    cell, event = table.need("cell"), table.need("event")
    events: dict[int, list[CellEvent]] = {}
    for line in table.lines:
        own = events.setdefault(_row(table, line), [])
        kind = line.text(event).casefold().removesuffix("s")
        if not kind and not line.text(cell):
            continue  # a row named without any event ran clean
        number = line.whole(cell, "cell number", 1)
        if number > passed:
            where = cell.where(line.number)
            raise Refusal(f"{where}: cell {number} lies beyond the {passed} cells passed.")
        if kind not in tuple(EventKind):
            raise Refusal(f"{event.where(line.number)}: write skip or double, not “{kind}”.")
        if any(one.cell == number for one in own):
            raise Refusal(f"{cell.where(line.number)}: cell {number} has two events of this row.")
        own.append(CellEvent(number, EventKind(kind)))
    counts = tuple(count_events(row, own, passed) for row, own in events.items())
    return BenchFile(counts, {row: tuple(own) for row, own in events.items()})


def _timed(table: ReadingTable, column: Column) -> BenchFile:
    unit = table.need_unit(column, "s")
    counts: list[BenchCount] = []
    events: dict[int, tuple[CellEvent, ...]] = {}
    for row, readings in _by_row(table, column, "time between seeds").items():
        run = events_from_times(Q(np.array([v for _, v in readings]), unit))
        counts.append(count_events(row, run.events, run.cells))
        events[row] = run.events
    return BenchFile(tuple(counts), events)


def _listed_rows(rows: list[int]) -> str:
    return ", ".join(str(row) for row in rows)
