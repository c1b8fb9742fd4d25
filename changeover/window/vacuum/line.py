"""One line of gauge readings, a column for each row of the planter, typed from row to row."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence, QPainter, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemDelegate,
    QAbstractItemView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from changeover.quantities import Quantity, Refusal
from changeover.window.door import Door
from changeover.window.fitting import fitted
from changeover.window.marks import pen
from changeover.window.outlook import Outlook
from changeover.window.theme import TEXT_PX
from changeover.window.vacuum.model import Index, VacuumModel

LEAST_PITCH, MOST_PITCH, LINE_HIGH = 29, 84, 34


class _Figures(QStyledItemDelegate):
    """Paints figures small enough for a narrow column, never cut while they can be read."""

    def __init__(self, outlook: Outlook, view: QTableView) -> None:
        super().__init__(view)
        self._outlook, self._view = outlook, view

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        tokens = self._outlook.tokens
        painter.save()
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(option.rect, tokens.colour("accent_wash"))
        made, text = fitted(str(index.data()), option.rect.width() - 3, TEXT_PX)
        painter.setFont(made)
        painter.setPen(tokens.colour("ink"))
        painter.drawText(option.rect, int(Qt.AlignmentFlag.AlignCenter), text)
        if self._view.currentIndex() == index:
            painter.setPen(pen(tokens.colour("accent"), 2.0))
            painter.drawRect(option.rect.adjusted(1, 1, -2, -2))
        painter.restore()


class VacuumLine(QTableView):
    """The view; Enter goes from row to row, a pasted line fills from the current row on."""

    laid_out = Signal()

    def __init__(self, model: VacuumModel, door: Door, outlook: Outlook) -> None:
        super().__init__()
        self.setItemDelegate(_Figures(outlook, self))
        self.setObjectName("matrix")
        self.setAccessibleName("Gauge readings by row")
        self._gauges, self._door = model, door
        self.setModel(model)
        self.setShowGrid(True)
        self.setCornerButtonEnabled(False)
        self.setTabKeyNavigation(False)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        triggers = QAbstractItemView.EditTrigger
        self.setEditTriggers(
            triggers.AnyKeyPressed | triggers.EditKeyPressed | triggers.DoubleClicked
        )
        for header in (self.horizontalHeader(), self.verticalHeader()):
            header.setHighlightSections(False)
            header.setSectionsClickable(False)
        self.horizontalHeader().setMinimumSectionSize(24)
        self.verticalHeader().setDefaultSectionSize(LINE_HIGH)
        self.verticalHeader().setFixedWidth(64)
        self.setFixedHeight(LINE_HIGH + 42)
        self.horizontalScrollBar().valueChanged.connect(lambda _x: self.laid_out.emit())
        model.modelReset.connect(self._fit)

    def edges(self) -> tuple[tuple[int, float, float], ...]:
        """Return each row with the left and right of its column, in this widget's pixels."""
        start = self.verticalHeader().width() + self.frameWidth()
        found = []
        for column, row in enumerate(self._gauges.rows):
            left = start + self.columnViewportPosition(column)
            found.append((row, float(left), float(left + self.columnWidth(column))))
        return tuple(found)

    def choose(self, row: int) -> None:
        """Put the cursor on a row of the planter."""
        if row in self._gauges.rows:
            self.setCurrentIndex(self._gauges.index(0, self._gauges.rows.index(row)))
            self.setFocus()

    def closeEditor(self, editor: QWidget, hint: QAbstractItemDelegate.EndEditHint) -> None:
        submitted = hint is QAbstractItemDelegate.EndEditHint.SubmitModelCache
        super().closeEditor(editor, QAbstractItemDelegate.EndEditHint.NoHint)
        if submitted:
            self._go_on()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self.state() is QAbstractItemView.State.EditingState:
            super().keyPressEvent(event)
        elif event.matches(QKeySequence.StandardKey.Paste):
            self.paste()
        elif event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            rows = [self._gauges.rows[index.column()] for index in self.selectedIndexes()]
            self._gauges.put(dict.fromkeys(rows))
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._go_on()
        else:
            super().keyPressEvent(event)

    def paste(self) -> None:
        """Put the clipboard's figures from the current row on, all or nothing."""
        texts = QGuiApplication.clipboard().text().split()
        index = self.currentIndex()
        if not index.isValid() or not texts:
            return
        values: dict[int, Quantity | None] = {}
        try:
            for right, text in enumerate(texts):
                values |= self._gauges.read(self._column(index.column() + right), text)
        except Refusal as refusal:
            self._door.refused.emit(str(refusal))
            return
        self._gauges.put(values)

    def _column(self, column: int) -> int:
        if column >= len(self._gauges.rows):
            raise Refusal("The figures reach beyond the last row; nothing is pasted.")
        return column

    def _go_on(self) -> None:
        index = self.currentIndex()
        if index.isValid() and index.column() + 1 < self._gauges.columnCount():
            self.setCurrentIndex(self._gauges.index(0, index.column() + 1))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        if self._gauges.columnCount():
            room = self.viewport().width() // self._gauges.columnCount()
            self.horizontalHeader().setDefaultSectionSize(min(max(room, LEAST_PITCH), MOST_PITCH))
            self.laid_out.emit()
