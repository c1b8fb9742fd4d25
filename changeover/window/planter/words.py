"""The words on the planter drawing: what is in each tank or hopper, and what a row is up to."""

from dataclasses import dataclass

from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell
from changeover.quantities import is_quantity, show
from changeover.window.marks import Mark
from changeover.window.matrix.sheet import Sheet


@dataclass(frozen=True)
class Holding:
    """What is in one tank or hopper; ``differs`` when other seed is wanted there."""

    words: str
    differs: bool


def holding(sheet: Sheet, place: Place) -> Holding:
    """Return what a tank or hopper holds as found, and what is wanted where that differs."""
    seed = Cell("seed", place)
    lot = sheet.board.as_found.get(seed)
    left = sheet.board.as_found.get(Cell("seed_left", place))
    words = f"lot {lot}" if lot else ""
    if lot and is_quantity(left):
        words += f", {show(left, 'mass', sheet.units)} left"
    differs = seed in sheet.standing.differing
    if differs:
        words = f"{words or 'empty'} → {sheet.board.target.get(seed)}"
    return Holding(words, differs)


def hopper_runs(sheet: Sheet) -> tuple[tuple[int, int, Holding], ...]:
    """Return (first row, last row, holding) of hoppers that hold the same, raised rows left out."""
    runs: list[tuple[int, int, Holding]] = []
    for row in sheet.rows:
        if row in sheet.standing.locked_now:
            continue
        here = holding(sheet, Place.of_row(row))
        if runs and runs[-1][2] == here:
            runs[-1] = (runs[-1][0], row, here)
        else:
            runs.append((row, row, here))
    return tuple(runs)


def row_words(sheet: Sheet, row: int) -> str:
    """Return what there is to say of a row: its groups, its mark, and what it differs in."""
    planter, standing = sheet.board.planter, sheet.standing
    groups = [
        planter.place(sort, row).label
        for sort in (Scope.FAN, Scope.TANK, Scope.DRIVE)
        if planter.groups_of(sort)
    ]
    changes = [
        f"{sheet.setting(cell).name} {sheet.text(cell, change.before) or '?'} → "
        f"{sheet.text(cell, change.after)}"
        for cell, change in standing.difference.changes.items()
        if cell.place.row == row
    ]
    where = f" ({', '.join(groups)})" if groups else ""
    return "\n".join([f"Row {row}{where}: {standing.marks[row].value}", *changes])


def mark_counts(sheet: Sheet) -> tuple[tuple[Mark, int], ...]:
    """Return how many rows have each mark, for those that any row has."""
    marks = list(sheet.standing.marks.values())
    order = (Mark.READY, Mark.WORK, Mark.UNKNOWN, Mark.LOCKED)
    return tuple((mark, marks.count(mark)) for mark in order if mark in marks)
