"""Reading what is typed, pasted or imported for a bench run, line by line."""

import re
from collections.abc import Sequence
from pathlib import Path

from changeover.desk.bench_runs import BenchLine
from changeover.desk.board import Board
from changeover.files.proof_readings import BenchFile, read_bench
from changeover.proof.bench_events import CellEvent, EventKind
from changeover.quantities import Refusal

_EVENT = re.compile(r"(?P<cell>\d+)\s*(?P<kind>[sSdD]?)[a-zA-Z]*")


def read_line(board: Board, typed: Sequence[str], place: str = "") -> BenchLine:
    """Return a line of a run from texts: row or meter, cells, skips, doubles, and the events.

    Events are cell numbers with s for a skip (also without a letter) or d for a double, such as
    ``12s 68s 101d``; then skips and doubles are counted from them. Raises Refusal, which begins
    with ``place``.
    """
    row_text, cells, skips, doubles, events = (*(one.strip() for one in typed), *[""] * 5)[:5]
    at = f"{place}: " if place else ""
    row = row_of(board, row_text, at)
    listed = read_events(events, f"{at}row {row}")
    if listed:
        kinds = [one.kind for one in listed]
        counts = kinds.count(EventKind.SKIP), kinds.count(EventKind.DOUBLE)
    else:
        counts = _whole(skips, "skips", at), _whole(doubles, "doubles", at)
    passed = _whole(cells, "cells passed", at)
    try:
        return BenchLine(row, passed, *counts, meter_on(board, row), listed)
    except Refusal as refusal:
        raise Refusal(f"{at}{refusal}") from refusal


def row_of(board: Board, text: str, at: str = "") -> int:
    """Return the row that a row number or the serial of its meter names. Raises Refusal."""
    by_serial = {m.serial.casefold(): m.row for m in board.meters if m.row is not None}
    found = by_serial.get(text.casefold())
    if found is not None:
        return found
    if text.isdecimal() and int(text) in board.planter.row_numbers:
        return int(text)
    raise Refusal(
        f"{at}“{text}” is neither a row from 1 to {board.planter.rows} nor a meter on "
        f"{board.planter.name}; check it."
    )


def meter_on(board: Board, row: int) -> str:
    """Return the serial of the meter on a row, empty when it is not known."""
    return next((one.serial for one in board.meters if one.row == row), "")


def read_events(text: str, what: str = "events") -> tuple[CellEvent, ...]:
    """Return the events in a text such as ``12s 68s 101d``. Raises Refusal."""
    found = []
    for word in text.replace(",", " ").replace(";", " ").split():
        match = _EVENT.fullmatch(word)
        if match is None:
            raise Refusal(f"{what}: “{word}” is no cell with s or d; write 12s for a skip.")
        kind = EventKind.DOUBLE if match["kind"].casefold() == "d" else EventKind.SKIP
        found.append(CellEvent(int(match["cell"]), kind))
    return tuple(found)


def events_text(events: Sequence[CellEvent]) -> str:
    """Return events as ``read_events`` reads them."""
    return " ".join(f"{one.cell}{one.kind.value[0]}" for one in events)


def pasted_lines(board: Board, text: str) -> tuple[BenchLine, ...]:
    """Return the lines of a block pasted from a spreadsheet, columns as they are typed.

    Raises Refusal that names the line; then nothing is taken.
    """
    lines = [line for line in text.splitlines() if line.strip()]
    if not lines:
        raise Refusal("There is nothing to paste; copy rows with cells, skips and doubles.")
    return tuple(
        read_line(board, re.split(r"\t|;|,", line, maxsplit=4), f"line {number}")
        for number, line in enumerate(lines, start=1)
    )


def imported_lines(board: Board, path: Path, passed: int | None = None) -> tuple[BenchLine, ...]:
    """Return the lines of a CSV of counts, events or times. Raises Refusal by line and column."""
    found: BenchFile = read_bench(path, passed)
    for one in found.counts:
        row_of(board, str(one.row), f"{path.name}: ")
    return tuple(
        BenchLine(
            one.row,
            one.cells,
            one.skips,
            one.doubles,
            one.meter or meter_on(board, one.row),
            tuple(found.events.get(one.row, ())),
        )
        for one in found.counts
    )


def _whole(text: str, what: str, at: str) -> int:
    plain = text.replace("\u202f", "").replace(" ", "")
    if not plain:
        if what == "cells passed":
            raise Refusal(f"{at}enter the cells passed, such as 250.")
        return 0
    if not plain.isdecimal():
        raise Refusal(f"{at}{what} “{text}” is no whole number; write it such as 250.")
    return int(plain)
