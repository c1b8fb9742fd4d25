"""The table of bench runs: typed, pasted from a spreadsheet, with always one empty line more."""

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QColor, QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView

from changeover.quantities import MEASURES, Refusal, Units, unit_sign
from changeover.window.outlook import Outlook
from changeover.window.tuning.rows import (
    COLUMNS,
    Texts,
    copied,
    headings,
    is_empty,
    pasted,
    read_run,
)

Index = QModelIndex | QPersistentModelIndex
NOWHERE = QModelIndex()
ROLE = Qt.ItemDataRole
EMPTY: Texts = ("",) * len(COLUMNS)
VACUUM = COLUMNS.index("Vacuum")


class TuningModel(QAbstractTableModel):
    """Rows of texts; a row that cannot be read stands out and says why in its tip."""

    edited = Signal()

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook, self._units = outlook, outlook.units
        self.rows: list[Texts] = [EMPTY]

    def show_rows(self, rows: tuple[Texts, ...]) -> None:
        """Show other rows."""
        self.beginResetModel()
        self.rows = [_wide(row) for row in rows] + [EMPTY]
        self.endResetModel()
        self.edited.emit()

    def show_units(self, units: Units) -> None:
        """Take on other units; typed levels keep their meaning."""
        if units is self._units:
            return
        sign = unit_sign(MEASURES["pressure"].unit(self._units))
        self.beginResetModel()
        self.rows = [_with_unit(row, sign) for row in self.rows]
        self._units = units
        self.endResetModel()

    def put(self, top: int, left: int, block: tuple[Texts, ...]) -> None:
        """Put a block of texts in, with its first cell at a place."""
        self.beginResetModel()
        for down, cells in enumerate(block):
            while len(self.rows) <= top + down:
                self.rows.append(EMPTY)
            row = list(self.rows[top + down])
            for across, cell in enumerate(cells[: len(COLUMNS) - left]):
                row[left + across] = cell
            self.rows[top + down] = tuple(row)
        self._keep_one_empty()
        self.endResetModel()
        self.edited.emit()

    def take_out(self, rows: set[int]) -> None:
        """Take whole rows out."""
        self.beginResetModel()
        self.rows = [row for number, row in enumerate(self.rows) if number not in rows]
        self._keep_one_empty()
        self.endResetModel()
        self.edited.emit()

    def rowCount(self, parent: Index = NOWHERE) -> int:
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = NOWHERE) -> int:
        return 0 if parent.isValid() else len(COLUMNS)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = ROLE.DisplayRole
    ) -> Any:
        if role != ROLE.DisplayRole:
            return None
        across = orientation is Qt.Orientation.Horizontal
        return headings(self._units)[section] if across else str(section + 1)

    def data(self, index: Index, role: int = ROLE.DisplayRole) -> Any:
        if not index.isValid():
            return None
        if role in (ROLE.DisplayRole, ROLE.EditRole):
            return self.rows[index.row()][index.column()]
        if role == ROLE.TextAlignmentRole:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        if role in (ROLE.ToolTipRole, ROLE.ForegroundRole):
            wrong = self.wrong(index.row())
            if wrong:
                return wrong if role == ROLE.ToolTipRole else QColor(self._outlook.tokens.work)
        return None

    def wrong(self, number: int) -> str:
        """Return what is wrong with a row in a sentence, empty when nothing is."""
        row = self.rows[number]
        if is_empty(row):
            return ""
        try:
            read_run(row, number + 1, self._units)
        except Refusal as refusal:
            return str(refusal)
        return ""

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = super().flags(index)
        return flags | Qt.ItemFlag.ItemIsEditable if index.isValid() else flags

    def setData(self, index: Index, value: Any, role: int = ROLE.EditRole) -> bool:
        if role != ROLE.EditRole or str(value) == self.rows[index.row()][index.column()]:
            return False
        row = list(self.rows[index.row()])
        row[index.column()] = str(value).strip()
        self.rows[index.row()] = tuple(row)
        left, right = self.index(index.row(), 0), self.index(index.row(), len(COLUMNS) - 1)
        self.dataChanged.emit(left, right)
        if not is_empty(self.rows[-1]):
            last = len(self.rows)
            self.beginInsertRows(NOWHERE, last, last)
            self.rows.append(EMPTY)
            self.endInsertRows()
        self.edited.emit()
        return True

    def _keep_one_empty(self) -> None:
        if not self.rows or not is_empty(self.rows[-1]):
            self.rows.append(EMPTY)


class TuningTable(QTableView):
    """Shows the runs; cells are typed in place, blocks copied and pasted."""

    def __init__(self, model: TuningModel) -> None:
        super().__init__()
        self.runs = model
        self.setModel(model)
        self.setAccessibleName("Bench runs")
        self.setSelectionMode(QAbstractItemView.SelectionMode.ContiguousSelection)
        trigger = QAbstractItemView.EditTrigger
        self.setEditTriggers(trigger.DoubleClicked | trigger.EditKeyPressed | trigger.AnyKeyPressed)
        self.setTabKeyNavigation(False)
        self.setCornerButtonEnabled(False)
        header = self.horizontalHeader()
        header.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        header.setSectionResizeMode(VACUUM, QHeaderView.ResizeMode.ResizeToContents)
        header.setHighlightSections(False)
        header.setObjectName("small")
        self.verticalHeader().setDefaultSectionSize(26)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.matches(QKeySequence.StandardKey.Paste):
            self.paste()
        elif event.matches(QKeySequence.StandardKey.Copy):
            self.copy()
        elif event.matches(QKeySequence.StandardKey.Delete):
            self.clear()
        else:
            super().keyPressEvent(event)

    def paste(self) -> None:
        """Put the clipboard's block in at the selected cell."""
        block = pasted(QGuiApplication.clipboard().text())
        if block:
            here = self.currentIndex()
            self.runs.put(max(here.row(), 0), max(here.column(), 0), block)

    def copy(self) -> None:
        """Put the selected block on the clipboard."""
        chosen = self._chosen()
        if chosen:
            rows = sorted({row for row, _ in chosen})
            columns = sorted({column for _, column in chosen})
            block = [tuple(self.runs.rows[row][column] for column in columns) for row in rows]
            QGuiApplication.clipboard().setText(copied(block))

    def clear(self) -> None:
        """Empty the selected cells; rows selected whole go."""
        chosen = self._chosen()
        whole = {row for row, _ in chosen if all((row, n) in chosen for n in range(len(COLUMNS)))}
        if whole:
            self.runs.take_out(whole)
            return
        for row, column in chosen:
            self.runs.setData(self.runs.index(row, column), "")

    def _chosen(self) -> set[tuple[int, int]]:
        return {(index.row(), index.column()) for index in self.selectedIndexes()}


def _wide(row: Texts) -> Texts:
    return (*row, *EMPTY)[: len(COLUMNS)]


def _with_unit(row: Texts, sign: str) -> Texts:
    level = row[VACUUM].strip()
    bare = bool(level) and not any(letter.isalpha() for letter in level)
    return (*row[:VACUUM], f"{level} {sign}", *row[VACUUM + 1 :]) if bare else row
