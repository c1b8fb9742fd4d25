"""The view of the matrix: lays columns under the drawing, and edits like a spreadsheet."""

from collections.abc import Callable, Collection

from PySide6.QtCore import QEvent, QItemSelection, QItemSelectionModel, QModelIndex, Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QTableView

from changeover.desk.edits import SetCells
from changeover.planter.setup import Cell
from changeover.quantities import Refusal
from changeover.window.door import Door
from changeover.window.matrix import cell_edits
from changeover.window.matrix.cell_edits import Spot
from changeover.window.matrix.delegate import MatrixDelegate
from changeover.window.matrix.model import MatrixModel
from changeover.window.matrix.sheet import Sheet, Shown
from changeover.window.matrix.sheet_header import SheetHeader
from changeover.window.outlook import Outlook

LEAST_PITCH, MOST_PITCH = 30, 80
LEAST_LINE, MOST_LINE = 34, 54
ROW_DOWN_HEIGHT, LEAST_DOWN_WIDTH = 42, 66
NO_EVENT = QEvent(QEvent.Type.None_)
_SELECT = QItemSelectionModel.SelectionFlag


class MatrixView(QTableView):
    """A table of the sheet; ``spots_changed`` follows the selection, ``laid_out`` the columns."""

    spots_changed = Signal()
    laid_out = Signal()

    def __init__(self, model: MatrixModel, door: Door, outlook: Outlook) -> None:
        super().__init__()
        self.setObjectName("matrix")
        self.setAccessibleName("Settings by row")
        self._door, self.matrix = door, model
        self.setModel(model)
        self.cells = MatrixDelegate(model, outlook, self)
        self.setItemDelegate(self.cells)
        self.viewport().setObjectName("matrix_cells")
        self.setVerticalHeader(SheetHeader(Qt.Orientation.Vertical, model, outlook, self))
        self.setHorizontalHeader(SheetHeader(Qt.Orientation.Horizontal, model, outlook, self))
        self.setShowGrid(False)
        self.setCornerButtonEnabled(False)
        self.setTabKeyNavigation(False)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        triggers = QAbstractItemView.EditTrigger
        self.setEditTriggers(
            triggers.AnyKeyPressed | triggers.EditKeyPressed | triggers.DoubleClicked
        )
        self.cells.set_all.connect(self.set_all)
        self.cells.left_by.connect(self._go_on)
        model.refused.connect(door.refused)
        for bar in (self.horizontalScrollBar(), self.verticalScrollBar()):
            bar.valueChanged.connect(self.viewport().update)
        self.lay_out()

    def show_sheet(self, sheet: Sheet, *, across: bool | None = None) -> None:
        """Show another sheet; selection and current cell stay where the shape is the same."""
        chosen = {self.matrix.cell(index) for index in self.selectedIndexes()}
        current = self.currentIndex()
        here = self.matrix.cell(current) if current.isValid() else None
        if self.matrix.show_sheet(sheet, across=across):
            self.lay_out()
            self.select(spots_of(sheet, chosen, here))

    def lay_out(self) -> None:
        """Set spans, column widths and line heights anew."""
        self.clearSpans()
        across = self.matrix.across
        self.horizontalHeader().setVisible(not across)
        for line in range(len(self.matrix.sheet.lines)):
            for first, count in self.matrix.sheet.runs(line):
                if count > 1:
                    at = self.matrix.index_of((line, first))
                    size = (1, count) if across else (count, 1)
                    self.setSpan(at.row(), at.column(), *size)
        self._fit()

    def _fit(self) -> None:
        room = self.viewport().size()
        columns, rows = self.matrix.columnCount(), self.matrix.rowCount()
        if not columns or not rows:
            return
        if self.matrix.across:
            width = min(max(room.width() // columns, LEAST_PITCH), MOST_PITCH)
            height = min(max(room.height() // rows, LEAST_LINE), MOST_LINE)
        else:
            width = max(room.width() // columns, LEAST_DOWN_WIDTH)
            height = ROW_DOWN_HEIGHT
        self.horizontalHeader().setDefaultSectionSize(width)
        self.verticalHeader().setDefaultSectionSize(height)
        self.laid_out.emit()

    def spots(self) -> list[Spot]:
        """Return the selected spots, lines first."""
        return sorted(self.matrix.spot(index) for index in self.selectedIndexes())

    def select(self, spots: list[Spot]) -> None:
        """Select exactly these spots, the first one current."""
        chosen = QItemSelection()
        for spot in spots:
            index = self.matrix.index_of(spot)
            chosen.select(index, index)
        if spots:
            current = self.matrix.index_of(spots[0])
            self.selectionModel().setCurrentIndex(current, _SELECT.NoUpdate)
            self.scrollTo(current)
        self.selectionModel().select(chosen, _SELECT.ClearAndSelect)

    def select_row(self, row: int, *, extend: bool = False) -> None:
        """Select all settings of a row, or of all rows from the current one to it."""
        sheet = self.matrix.sheet
        if row not in sheet.rows:
            return
        column, line = sheet.rows.index(row), 0
        first = column
        if self.currentIndex().isValid():
            line, here = self.matrix.spot(self.currentIndex())
            first = here if extend else column
        step = 1 if column >= first else -1
        lines = [line, *(n for n in range(len(sheet.lines)) if n != line)]
        self.select([(n, c) for n in lines for c in range(first, column + step, step)])

    def set_all(self, text: str) -> None:
        """Set every selected cell to one typed text."""
        self._push(lambda: cell_edits.typed(self.matrix.sheet, self.spots(), text))

    def clear_selected(self) -> None:
        """Empty every selected cell."""
        self._push(lambda: cell_edits.cleared(self.matrix.sheet, self.spots()))

    def fill(self) -> None:
        """Give the first selected cell of each setting to the others selected."""
        self._push(lambda: cell_edits.filled(self.matrix.sheet, self.spots()))

    def every_other(self) -> None:
        """Keep every other row of the selection."""
        self.select(cell_edits.every_other(self.spots()))

    def copy(self) -> None:
        """Put the selected block on the clipboard for a spreadsheet."""
        text = cell_edits.copied(self.matrix.sheet, self.spots(), across=self.matrix.across)
        QGuiApplication.clipboard().setText(text)

    def paste(self) -> None:
        """Put the clipboard's block at the selection, all or nothing."""
        block = cell_edits.block_of(QGuiApplication.clipboard().text())
        sheet, across = self.matrix.sheet, self.matrix.across
        self._push(lambda: cell_edits.pasted(sheet, self.spots(), block, across=across))

    def _push(self, make: Callable[[], SetCells]) -> None:
        if not self.selectedIndexes():
            return
        try:
            edit = make()
        except Refusal as refusal:
            self._door.refused.emit(str(refusal))
            return
        if edit.values != edit.before:
            self._door.push(edit)
        elif edit.note:
            self._door.told.emit(edit.note)

    def edit(  # type: ignore[override]
        self,
        index: QModelIndex,
        trigger: QAbstractItemView.EditTrigger = QAbstractItemView.EditTrigger.AllEditTriggers,
        event: QEvent = NO_EVENT,
    ) -> bool:
        triggers = QAbstractItemView.EditTrigger
        self.cells.open_choices = trigger in (triggers.DoubleClicked, triggers.EditKeyPressed)
        return super().edit(index, trigger, event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        job = self._job(event)
        if job is None:
            super().keyPressEvent(event)
        else:
            job()

    def _job(self, event: QKeyEvent) -> Callable[[], object] | None:
        if self.state() == QAbstractItemView.State.EditingState:
            return None
        standard = QKeySequence.StandardKey
        if event.matches(standard.Copy):
            return self.copy
        if event.matches(standard.Paste):
            return self.paste
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            return self.clear_selected
        control = event.modifiers() == Qt.KeyboardModifier.ControlModifier
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            return self._edit_here
        keyed = {Qt.Key.Key_D: self.fill, Qt.Key.Key_E: self.every_other}
        return keyed.get(Qt.Key(event.key())) if control else None

    def _go_on(self, way: QAbstractItemView.CursorAction) -> None:
        """Choose the cell next to the one that was edited, without editing it."""
        there = self.moveCursor(way, Qt.KeyboardModifier.NoModifier)
        if there.isValid():
            self.setCurrentIndex(there)

    def _edit_here(self) -> None:
        self.edit(self.currentIndex(), QAbstractItemView.EditTrigger.EditKeyPressed)

    def selectionChanged(self, selected: QItemSelection, deselected: QItemSelection) -> None:
        super().selectionChanged(selected, deselected)
        self.spots_changed.emit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    @property
    def shown(self) -> Shown:
        return self.matrix.sheet.shown


def spots_of(sheet: Sheet, cells: Collection[Cell], first: Cell | None) -> list[Spot]:
    """Return where cells stand on a sheet, the one named first at the head."""
    spots = [
        (line, column)
        for line, row in enumerate(sheet.cells)
        for column, cell in enumerate(row)
        if cell in cells
    ]
    return sorted(spots, key=lambda spot: (sheet.cells[spot[0]][spot[1]] != first, spot))
