"""What the matrix shows, as plain values: settings as lines, rows as columns, one look a cell."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property

from changeover.desk.board import Board
from changeover.desk.edits import Side
from changeover.planter.entry import show_value
from changeover.planter.places import Scope
from changeover.planter.settings import LOCKED_UP, Kind, Setting, WorkPlace
from changeover.planter.setup import Cell, Setup, Value, applies
from changeover.quantities import MEASURES, Units, is_quantity, unit_sign
from changeover.window.standing import Standing

ODD_SHARE = 0.2
STAYS_UP = (WorkPlace.METER, WorkPlace.ROW_UNIT)


class Shown(StrEnum):
    """Which side of the setup the matrix shows."""

    FOUND = "as found"
    TARGET = "target"
    BOTH = "both"

    @property
    def edits(self) -> Side:
        """The side that an edit goes to."""
        return Side.AS_FOUND if self is Shown.FOUND else Side.TARGET


@dataclass(frozen=True, slots=True)
class Look:
    """One cell as it is shown: its texts, and what sets it apart."""

    found: str
    target: str
    differs: bool = False
    odd: bool = False
    up: bool = False


class Sheet:
    """The visible settings and rows of one board, seen from one side; read-only."""

    def __init__(
        self,
        board: Board,
        standing: Standing,
        units: Units,
        shown: Shown,
        *,
        only_differing: bool = False,
        earlier: "Sheet | None" = None,
    ) -> None:
        self.board, self.standing, self.units, self.shown = board, standing, units, shown
        self.lines = tuple(
            setting
            for setting in board.settings
            if not setting.hidden and applies(board.planter, setting)
        )
        rows = set(standing.difference.rows_that_differ) if only_differing else None
        self.rows = tuple(row for row in board.planter.row_numbers if rows is None or row in rows)
        self.kept_looks: dict[Cell, Look] = {}
        self.kept_texts: dict[tuple[object, ...], str] = {}
        self._odd: dict[tuple[str, Side], frozenset[Cell]] = {}
        self.altered: frozenset[str] | None = None
        if earlier is not None:
            self._take_over(earlier)

    def _take_over(self, earlier: "Sheet") -> None:
        """Keep from an earlier sheet what still holds, so that few cells are looked at again.

        ``altered`` then names the settings of which a value is another; None means any may be.
        """
        same_machine = earlier.board.planter is self.board.planter
        if not same_machine or earlier.lines != self.lines or earlier.rows != self.rows:
            return
        self.cells = earlier.cells
        if earlier.units is not self.units:
            return
        self.kept_texts = earlier.kept_texts
        if earlier.shown is self.shown and not self._other_rows_up(earlier):
            self.altered = _altered(earlier, self)
            kept = earlier.kept_looks.items()
            self.kept_looks = {c: look for c, look in kept if c.setting not in self.altered}

    def _other_rows_up(self, earlier: "Sheet") -> bool:
        one, other = earlier.standing, self.standing
        return one.locked_now != other.locked_now or (
            one.difference.locked != other.difference.locked
        )

    @cached_property
    def cells(self) -> tuple[tuple[Cell, ...], ...]:
        """The cell at each line and column."""
        planter = self.board.planter
        return tuple(
            tuple(Cell(setting.key, planter.place(setting.scope, row)) for row in self.rows)
            for setting in self.lines
        )

    def runs(self, line: int) -> tuple[tuple[int, int], ...]:
        """Return (first column, count) of each run of neighbouring columns that share a cell."""
        cells = self.cells[line]
        firsts = [n for n, cell in enumerate(cells) if n == 0 or cells[n - 1] != cell]
        return tuple(
            (first, after - first)
            for first, after in zip(firsts, [*firsts[1:], len(cells)], strict=True)
        )

    @property
    def side(self) -> Side:
        return self.shown.edits

    def setup(self, side: Side) -> Setup:
        return self.board.as_found if side is Side.AS_FOUND else self.board.target

    def value(self, cell: Cell) -> Value | None:
        """Return the value on the side that edits go to; a target left open is as found."""
        value = self.setup(self.side).get(cell)
        if value is None and self.shown is Shown.BOTH:
            return self.board.as_found.get(cell)
        return value

    @cached_property
    def _settings(self) -> Mapping[str, Setting]:
        return {setting.key: setting for setting in self.board.settings}

    def setting(self, cell: Cell) -> Setting:
        return self._settings[cell.setting]

    def text(self, cell: Cell, value: Value | None) -> str:
        """Return a value as it stands in the matrix, without its unit."""
        if value is None or isinstance(value, str):
            return value or ""
        size = (value.magnitude, value.units) if is_quantity(value) else (value,)
        key = (cell.setting, cell.place.name if cell.setting == "depth" else "", *size)
        if key not in self.kept_texts:
            setting, planter = self.setting(cell), self.board.planter
            self.kept_texts[key] = show_value(setting, planter, cell.place, value, self.units)
        return self.kept_texts[key]

    def look(self, line: int, column: int) -> Look:
        """Return how the cell at a line and column looks."""
        cell = self.cells[line][column]
        if cell not in self.kept_looks:
            self.kept_looks[cell] = self._look(cell)
        return self.kept_looks[cell]

    def _look(self, cell: Cell) -> Look:
        row = cell.place.row
        setting = self.setting(cell)
        up = row in self.standing.difference.locked or row in self.standing.locked_now
        found, target = self.board.as_found.get(cell), self.board.target.get(cell)
        return Look(
            _short(self.text(cell, found)),
            _short(self.text(cell, target)),
            cell in self.standing.differing,
            self._is_odd(setting, cell),
            row is not None and up and setting.work_place in STAYS_UP,
        )

    def _is_odd(self, setting: Setting, cell: Cell) -> bool:
        if setting.scope is not Scope.ROW or setting.key == "row_lock":
            return False
        sides = {
            Shown.FOUND: (Side.AS_FOUND,),
            Shown.TARGET: (Side.TARGET,),
            Shown.BOTH: (Side.AS_FOUND, Side.TARGET),
        }[self.shown]
        return any(cell in self._odd_ones(setting, side) for side in sides)

    def _odd_ones(self, setting: Setting, side: Side) -> frozenset[Cell]:
        key = (setting.key, side)
        if key not in self._odd:
            self._odd[key] = odd_ones(self._values_of(setting, side))
        return self._odd[key]

    def _values_of(self, setting: Setting, side: Side) -> dict[Cell, str]:
        setup, planter = self.setup(side), self.board.planter
        named = {}
        for place in planter.places(setting.scope):
            cell = Cell(setting.key, place)
            value = setup.get(cell)
            done = (
                self.shown is Shown.BOTH
                and side is Side.AS_FOUND
                and (cell not in self.standing.differing)
            )
            if value is not None and not done and place.row not in self.standing.locked_now:
                depth = setting.key == "depth"
                named[cell] = str(value) if depth else self.text(cell, value)
        return named


def _altered(one: Sheet, other: Sheet) -> frozenset[str]:
    """Return the settings of which two sheets hold other values, or none and some."""
    altered: set[str] = set()
    pairs = ((one.board.as_found, other.board.as_found), (one.board.target, other.board.target))
    for old, new in pairs:
        if old is not new:
            cells = {*old.values, *new.values}
            altered |= {c.setting for c in cells if not _same(old.get(c), new.get(c))}
    return frozenset(altered)


def _same(one: Value | None, other: Value | None) -> bool:
    """Say whether two values are shown alike; quantities are told quickly by figure and unit."""
    if one is other:
        return True
    if is_quantity(one) and is_quantity(other):
        return bool(one.magnitude == other.magnitude) and one.units == other.units
    return not is_quantity(one) and not is_quantity(other) and one == other


def _short(text: str) -> str:
    """Return the word for a narrow cell, where there is a shorter one."""
    return "up" if text == LOCKED_UP else text


def odd_ones(values: Mapping[Cell, str]) -> frozenset[Cell]:
    """Return the cells whose value few others share.

    A value is odd when at most one row in five has it while more than half share another.
    """
    counts = Counter(values.values())
    if len(counts) < 2 or counts.most_common(1)[0][1] * 2 <= len(values):
        return frozenset()
    few = {value for value, count in counts.items() if count <= ODD_SHARE * len(values)}
    return frozenset(cell for cell, value in values.items() if value in few)


def unit_words(setting: Setting, units: Units) -> str:
    """Return what stands below a setting's name: its unit, else its hint."""
    if setting.measure and (setting.kind is Kind.QUANTITY or setting.key == "depth"):
        return unit_sign(MEASURES[setting.measure].unit(units))
    return setting.hint
