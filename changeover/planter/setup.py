"""A setup: the settings of one whole planter as a value, a matrix of places and settings."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import NamedTuple

from changeover.planter.machine import Planter
from changeover.planter.places import Place
from changeover.planter.settings import LOCKED_UP, Setting
from changeover.quantities import Quantity

Value = int | str | Quantity


class Cell(NamedTuple):
    """One cell of the matrix: a setting's key at a place."""

    setting: str
    place: Place


@dataclass(frozen=True)
class Setup:
    """What every place of a planter is set to; a cell that is missing is not known."""

    values: Mapping[Cell, Value] = field(default_factory=lambda: MappingProxyType({}))

    def get(self, cell: Cell) -> Value | None:
        return self.values.get(cell)

    def at_row(self, planter: Planter, setting: Setting, row: int) -> Value | None:
        """Return what a row is set to, through its group where the setting belongs to one."""
        return self.values.get(Cell(setting.key, planter.place(setting.scope, row)))

    def with_values(self, changes: Mapping[Cell, Value | None]) -> "Setup":
        """Return this setup with some cells changed; None takes a cell out."""
        merged: dict[Cell, Value | None] = {**self.values, **changes}
        kept = {cell: value for cell, value in merged.items() if value is not None}
        return Setup(MappingProxyType(kept))

    def cells(self) -> Iterator[Cell]:
        return iter(self.values)


def cells_of(planter: Planter, setting: Setting) -> tuple[Cell, ...]:
    """Return every cell that a setting has on a planter, from the left."""
    return tuple(Cell(setting.key, place) for place in planter.places(setting.scope))


def applies(planter: Planter, setting: Setting) -> bool:
    """Say whether a planter has a setting at all.

    Rows are locked up only on a split-row planter, sprockets changed only on a ground drive.
    """
    if setting.key == "row_lock":
        return bool(planter.split_rows)
    return setting.key != "sprockets" or planter.ground_driven


def working_rows(planter: Planter, setup: Setup) -> tuple[int, ...]:
    """Return the rows that are not locked up in a setup."""
    locked = {
        cell.place.row
        for cell, value in setup.values.items()
        if cell.setting == "row_lock" and value == LOCKED_UP
    }
    return tuple(row for row in planter.row_numbers if row not in locked)


def working_spacing(planter: Planter, setup: Setup) -> Quantity:
    """Return the row spacing at work: narrow unless every row between the main rows is up.

    Of twin rows it is the mean, half that of the pairs: what one meter has to sow.
    """
    if planter.twin_rows:
        return planter.narrow_spacing
    down = set(working_rows(planter, setup)) & planter.split_rows
    return planter.narrow_spacing if down else planter.row_spacing
