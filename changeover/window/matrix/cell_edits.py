"""From typed, pasted and filled texts to one edit of many cells; nothing here changes anything."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from changeover.desk.edits import SetCells, Side
from changeover.planter.entry import read_value, rounding
from changeover.planter.known_parts import known_code
from changeover.planter.settings import Kind
from changeover.planter.setup import Cell, Value
from changeover.quantities import Refusal
from changeover.switch.wording import places_text
from changeover.window.matrix.sheet import Sheet

Spot = tuple[int, int]
"""A line and a column of the sheet."""


def set_cells(sheet: Sheet, values: Mapping[Cell, Value | None], why: str) -> SetCells:
    """Return the edit that sets cells on the side of the sheet that is edited."""
    setup = sheet.setup(sheet.side)
    before = {cell: setup.get(cell) for cell in values}
    return SetCells(sheet.board.planter.name, sheet.side, dict(values), before, why)


def set_target(sheet: Sheet, values: Mapping[Cell, Value | None], why: str) -> SetCells:
    """Return the edit that sets cells of the target, whichever side is shown."""
    before = {cell: sheet.board.target.get(cell) for cell in values}
    return SetCells(sheet.board.planter.name, Side.TARGET, dict(values), before, why)


def typed(sheet: Sheet, spots: Iterable[Spot], text: str) -> SetCells:
    """Return the edit that sets every spot to one typed text. Raises Refusal at the first bad."""
    reader = Reader(sheet)
    values = {cell: reader.read(cell, text) for cell in _cells(sheet, spots)}
    return replace(set_cells(sheet, values, "typed"), note=reader.note)


def cleared(sheet: Sheet, spots: Iterable[Spot]) -> SetCells:
    """Return the edit that empties every spot."""
    return set_cells(sheet, dict.fromkeys(_cells(sheet, spots)), "emptied")


def filled(sheet: Sheet, spots: Iterable[Spot]) -> SetCells:
    """Return the edit that gives the first spot's value of each line to the line's others.

    A depth goes over as a notch, so rows with an offset of their own stay at that notch.
    """
    values: dict[Cell, Value | None] = {}
    firsts: dict[int, Value | None] = {}
    for line, column in sorted(spots):
        cell = sheet.cells[line][column]
        values[cell] = firsts.setdefault(line, sheet.value(cell))
    return set_cells(sheet, values, "filled")


def every_other(spots: Iterable[Spot]) -> list[Spot]:
    """Return the spots in every other column, the first one kept."""
    listed = sorted(spots)
    columns = sorted({column for _, column in listed})
    kept = set(columns[::2])
    return [spot for spot in listed if spot[1] in kept]


def copied(sheet: Sheet, spots: Iterable[Spot], *, across: bool = True) -> str:
    """Return the texts of a block for a spreadsheet: tabs between cells, one line a row."""
    chosen = set(spots)
    lines, columns = sorted({s[0] for s in chosen}), sorted({s[1] for s in chosen})
    grid = [[_copy(sheet, chosen, (line, column)) for column in columns] for line in lines]
    turned = grid if across else [list(row) for row in zip(*grid, strict=True)]
    return "\n".join("\t".join(row) for row in turned)


def block_of(text: str) -> list[list[str]]:
    """Split what a spreadsheet put on the clipboard into rows of texts."""
    lines = text.replace("\r\n", "\n").replace("\r", "\n").removesuffix("\n").split("\n")
    return [line.split("\t") for line in lines]


def pasted(
    sheet: Sheet, spots: Sequence[Spot], block: Sequence[Sequence[str]], *, across: bool = True
) -> SetCells:
    """Return the edit that puts a block at the first spot, or one text at every spot.

    All or nothing: raises Refusal for a block that does not fit, for the first text that cannot
    be read, and for a group that would get two values.
    """
    if len(block) == 1 and len(block[0]) == 1:
        return typed(sheet, spots, block[0][0])
    longest = max(len(row) for row in block)
    grid = [[*row, *[""] * (longest - len(row))] for row in block]
    turned = grid if across else [list(row) for row in zip(*grid, strict=True)]
    top, left = min(spots)[0], min(column for _, column in spots)
    _check_fit(sheet, top + len(turned), left + len(turned[0]))
    texts: dict[Cell, str] = {}
    for down, row in enumerate(turned):
        for right, text in enumerate(row):
            _take(sheet, texts, sheet.cells[top + down][left + right], text.strip())
    reader = Reader(sheet)
    values = {cell: reader.read(cell, text) for cell, text in texts.items()}
    return replace(set_cells(sheet, values, "pasted"), note=reader.note)


def _cells(sheet: Sheet, spots: Iterable[Spot]) -> dict[Cell, None]:
    return {sheet.cells[line][column]: None for line, column in sorted(spots)}


class Reader:
    """Reads typed texts, each only once for all places where it means the same."""

    def __init__(self, sheet: Sheet) -> None:
        self._sheet = sheet
        self._read: dict[tuple[str, str, str], Value | None] = {}
        self._rounded: dict[Cell, tuple[str, str]] = {}

    @property
    def note(self) -> str:
        """Say which depths were taken to the nearest notch, as no notch gives them."""
        if not self._rounded:
            return ""
        cells = list(self._rounded)
        typed, taken = self._rounded[cells[0]]
        rows = places_text(cell.place for cell in cells)
        such = f"such as {typed} to" if len(set(self._rounded.values())) > 1 else f"{typed} to"
        return f"Depth, {rows}: no notch gives this; taken to the nearest, {such} {taken}."

    def read(self, cell: Cell, text: str) -> Value | None:
        """Return the value of a text at a cell; the text that it shows leaves its value alone.

        What is shown is rounded, so reading it back would change a value nobody meant to change.
        Raises Refusal.
        """
        sheet, planter = self._sheet, self._sheet.board.planter
        if text.strip() == sheet.text(cell, sheet.value(cell)):
            return sheet.setup(sheet.side).get(cell)
        own = cell.setting == "sprockets" or (cell.place.row or 0) in planter.depth.offsets
        key = (cell.setting, text, cell.place.name if own else "")
        if key not in self._read:
            setting = sheet.setting(cell)
            value = read_value(setting, planter, cell.place, text, sheet.units)
            if setting.kind is Kind.PART and value is not None:
                where = f"{setting.name}, {cell.place.label}"
                value = known_code(sheet.board.parts, setting.part_sort or "", str(value), where)
            self._read[key] = value
        off = rounding(sheet.setting(cell), planter, cell.place, text, sheet.units)
        if off is not None:
            self._rounded[cell] = off
        return self._read[key]


def _copy(sheet: Sheet, chosen: set[Spot], spot: Spot) -> str:
    cell = sheet.cells[spot[0]][spot[1]]
    return sheet.text(cell, sheet.value(cell)) if spot in chosen else ""


def _check_fit(sheet: Sheet, bottom: int, right: int) -> None:
    if bottom > len(sheet.lines):
        last = sheet.lines[-1].name
        raise Refusal(f"The block reaches below the last setting, {last}; paste it higher up.")
    if right > len(sheet.rows):
        raise Refusal(
            f"The block reaches past the last row, {sheet.rows[-1]}; paste it further left."
        )


def _take(sheet: Sheet, texts: dict[Cell, str], cell: Cell, text: str) -> None:
    earlier = texts.get(cell, "")
    if earlier and text and earlier != text:
        raise Refusal(
            f"{sheet.setting(cell).name}, {cell.place.label}: its rows share one value, but the "
            f"block holds “{earlier}” and “{text}”; make them equal."
        )
    texts[cell] = earlier or text
