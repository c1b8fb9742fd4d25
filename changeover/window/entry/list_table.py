"""A plain table of frozen rows: columns say what is shown, and edits go through the door."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Generic, TypeVar

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView

from changeover.quantities import Refusal
from changeover.window.door import Door
from changeover.window.outlook import Outlook
from changeover.window.theme import font

Row = TypeVar("Row")
Index = QModelIndex | QPersistentModelIndex
NOWHERE = QModelIndex()
ROLE = Qt.ItemDataRole


@dataclass(frozen=True)
class Column(Generic[Row]):
    """One column: its title and text, and how a typed text becomes an edit.

    ``loud`` says which rows stand out in the work colour; their text must say why. ``tip`` says
    more of a row when the pointer rests on it.
    """

    title: str
    text: Callable[[Row], str]
    edit: Callable[[Row, str], Any] | None = None
    number: bool = False
    wide: bool = False
    loud: Callable[[Row], bool] | None = None
    tip: Callable[[Row], str] | None = None


class ListModel(QAbstractTableModel, Generic[Row]):
    """Rows under columns; setData pushes an edit and changes nothing itself."""

    def __init__(self, columns: Sequence[Column[Row]], door: Door, outlook: Outlook) -> None:
        super().__init__()
        self.columns, self.rows = tuple(columns), tuple[Row, ...]()
        self._door, self._outlook = door, outlook

    def show_rows(self, rows: Sequence[Row]) -> None:
        """Show other rows; the selection is the view's to keep."""
        same = len(rows) == len(self.rows)
        if same:
            self.rows = tuple(rows)
            if rows:
                last = self.index(len(rows) - 1, len(self.columns) - 1)
                self.dataChanged.emit(self.index(0, 0), last)
            return
        self.beginResetModel()
        self.rows = tuple(rows)
        self.endResetModel()

    def rowCount(self, parent: Index = NOWHERE) -> int:
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = NOWHERE) -> int:
        return 0 if parent.isValid() else len(self.columns)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = ROLE.DisplayRole
    ) -> Any:
        if orientation is Qt.Orientation.Horizontal:
            if role == ROLE.DisplayRole:
                return self.columns[section].title
            if role == ROLE.TextAlignmentRole:
                return self._alignment(self.columns[section])
        return None

    def data(self, index: Index, role: int = ROLE.DisplayRole) -> Any:
        if not index.isValid():
            return None
        row, column = self.rows[index.row()], self.columns[index.column()]
        if role in (ROLE.DisplayRole, ROLE.EditRole):
            return column.text(row)
        if role == ROLE.ToolTipRole and column.tip is not None:
            return column.tip(row) or None
        if role == ROLE.ToolTipRole and column.wide:
            return column.text(row)
        if role == ROLE.TextAlignmentRole:
            return self._alignment(column)
        loud = column.loud is not None and column.loud(row)
        if role == ROLE.ForegroundRole and loud:
            return QColor(self._outlook.tokens.work)
        return font(bold=True) if role == ROLE.FontRole and loud else None

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = super().flags(index)
        if index.isValid() and self.columns[index.column()].edit is not None:
            flags |= Qt.ItemFlag.ItemIsEditable
        return flags

    def setData(self, index: Index, value: Any, role: int = ROLE.EditRole) -> bool:
        column = self.columns[index.column()]
        row = self.rows[index.row()]
        if role != ROLE.EditRole or column.edit is None or str(value) == column.text(row):
            return False
        try:
            edit = column.edit(row, str(value))
        except Refusal as refusal:
            self._door.refused.emit(str(refusal))
            return False
        return bool(self._door.push(edit))

    def _alignment(self, column: Column[Row]) -> Qt.AlignmentFlag:
        side = Qt.AlignmentFlag.AlignRight if column.number else Qt.AlignmentFlag.AlignLeft
        return side | Qt.AlignmentFlag.AlignVCenter


class ListView(QTableView):
    """Shows a list model; whole rows are chosen, Enter opens one, typing edits."""

    opened = Signal(int)

    def __init__(self, model: ListModel[Any], name: str) -> None:
        super().__init__()
        self.setModel(model)
        self.setAccessibleName(name)
        self.setObjectName("list")
        self.setShowGrid(False)
        self.setAlternatingRowColors(False)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(34)
        self.setTabKeyNavigation(False)
        header = self.horizontalHeader()
        header.setHighlightSections(False)
        for number, column in enumerate(model.columns):
            mode = QHeaderView.ResizeMode
            header.setSectionResizeMode(
                number, mode.Stretch if column.wide else mode.ResizeToContents
            )
        self.doubleClicked.connect(self._open)

    @property
    def chosen(self) -> int | None:
        """The number of the chosen row, None when none is."""
        index = self.currentIndex()
        return index.row() if index.isValid() else None

    def keyPressEvent(self, event: QKeyEvent) -> None:
        enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if enter and self.state() is not QAbstractItemView.State.EditingState:
            self._open(self.currentIndex())
            return
        super().keyPressEvent(event)

    def _open(self, index: QModelIndex) -> None:
        if index.isValid() and not self.model().flags(index) & Qt.ItemFlag.ItemIsEditable:
            self.opened.emit(index.row())
