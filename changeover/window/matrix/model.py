"""The table model of the matrix; it shows a sheet, and setData pushes an edit."""

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
    Signal,
)

from changeover.planter.settings import Kind, Setting
from changeover.planter.setup import Cell
from changeover.quantities import Refusal
from changeover.window.door import Door
from changeover.window.matrix.cell_edits import Spot, typed
from changeover.window.matrix.sheet import Look, Sheet, Shown, unit_words

Index = QModelIndex | QPersistentModelIndex
NOWHERE = QModelIndex()
OPEN_TO_EDITS = (
    Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable | Qt.ItemFlag.ItemIsEditable
)
CHANGED_ROLES = [Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole]


class MatrixModel(QAbstractTableModel):
    """Settings down and rows across, or turned; the sheet is replaced, never altered."""

    refused = Signal(str)

    def __init__(self, sheet: Sheet, door: Door, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.sheet, self._door, self.across = sheet, door, True

    def show_sheet(self, sheet: Sheet, *, across: bool | None = None) -> bool:
        """Show another sheet; say whether its shape is another, so that views lay out again."""
        turned = across is not None and across is not self.across
        same = sheet.cells == self.sheet.cells and not turned
        if same and sheet.lines == self.sheet.lines:
            self.sheet = sheet
            self._tell_altered()
            return False
        self.beginResetModel()
        self.sheet = sheet
        self.across = self.across if across is None else across
        self.endResetModel()
        return True

    def _tell_altered(self) -> None:
        """Say which lines are other than before; neighbouring ones together."""
        sheet = self.sheet
        columns = len(sheet.rows) - 1
        for first, last in runs_of(
            [sheet.altered is None or line.key in sheet.altered for line in sheet.lines]
        ):
            corners = self.index_of((first, 0)), self.index_of((last, columns))
            self.dataChanged.emit(*corners, CHANGED_ROLES)

    def last(self) -> QModelIndex:
        return self.index(self.rowCount() - 1, self.columnCount() - 1)

    def spot(self, index: Index) -> Spot:
        """Return the line and column of the sheet at an index."""
        there = (index.row(), index.column())
        return there if self.across else (there[1], there[0])

    def index_of(self, spot: Spot) -> QModelIndex:
        return self.index(*(spot if self.across else (spot[1], spot[0])))

    def cell(self, index: Index) -> Cell:
        line, column = self.spot(index)
        return self.sheet.cells[line][column]

    def look(self, index: Index) -> Look:
        return self.sheet.look(*self.spot(index))

    def rowCount(self, parent: Index = NOWHERE) -> int:
        sheet = self.sheet
        return 0 if parent.isValid() else len(sheet.lines if self.across else sheet.rows)

    def columnCount(self, parent: Index = NOWHERE) -> int:
        sheet = self.sheet
        return 0 if parent.isValid() else len(sheet.rows if self.across else sheet.lines)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        if not index.isValid():
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return shown_text(self.look(index), self.sheet.shown)
        if role == Qt.ItemDataRole.EditRole:
            cell = self.cell(index)
            return self.sheet.text(cell, self.sheet.value(cell))
        if role in (Qt.ItemDataRole.ToolTipRole, Qt.ItemDataRole.AccessibleTextRole):
            return self._says(index)
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return Qt.AlignmentFlag.AlignCenter
        return None

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        names = (orientation == Qt.Orientation.Vertical) is self.across
        entries = self.sheet.lines if names else self.sheet.rows
        if role != Qt.ItemDataRole.DisplayRole or not 0 <= section < len(entries):
            return None
        return self.sheet.lines[section].name if names else str(self.sheet.rows[section])

    def flags(self, index: Index) -> Qt.ItemFlag:
        if not index.isValid():
            return Qt.ItemFlag.NoItemFlags
        return Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable | Qt.ItemFlag.ItemIsEditable

    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        if not index.isValid() or role != Qt.ItemDataRole.EditRole:
            return False
        if str(value).strip() == str(self.data(index, Qt.ItemDataRole.EditRole)):
            return False
        try:
            edit = typed(self.sheet, [self.spot(index)], str(value))
        except Refusal as refusal:
            self.refused.emit(str(refusal))
            return False
        return self._door.push(edit)

    def _says(self, index: Index) -> str:
        look, cell = self.look(index), self.cell(index)
        setting = self.sheet.setting(cell)
        unit = unit_words(setting, self.sheet.units) if setting.measure else ""
        words = f"{setting.name}, {cell.place.label}: {shown_text(look, Shown.BOTH) or 'not known'}"
        odd = "; unlike the other rows" if look.odd else ""
        up = "; the row is locked up" if look.up else ""
        return f"{words} {unit}".rstrip() + odd + up + self._unknown(cell, setting)

    def _unknown(self, cell: Cell, setting: Setting) -> str:
        """Say which code of an older store belongs to no part that is entered."""
        if setting.kind is not Kind.PART:
            return ""
        board, sort = self.sheet.board, setting.part_sort
        known = {part.code for part in board.parts if part.sort == sort} | {None}
        there = dict.fromkeys((board.as_found.get(cell), board.target.get(cell)))
        unknown = [f"“{code}”" for code in there if code not in known]
        return f"; no {sort} {' or '.join(unknown)} is on the Shelf page" if unknown else ""


def runs_of(flags: Sequence[bool]) -> list[tuple[int, int]]:
    """Return the first and last place of each unbroken run of True."""
    runs: list[tuple[int, int]] = []
    for place, flag in enumerate(flags):
        if flag and runs and runs[-1][1] == place - 1:
            runs[-1] = (runs[-1][0], place)
        elif flag:
            runs.append((place, place))
    return runs


def shown_text(look: Look, shown: Shown) -> str:
    """Return the text of a cell for one side, with an arrow where both sides differ."""
    if shown is Shown.FOUND:
        return look.found
    if shown is Shown.TARGET:
        return look.target
    if look.differs:
        return f"{look.found or '?'} → {look.target}"
    return look.target or look.found
