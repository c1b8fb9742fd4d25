"""The matrix of a wear inspection: painted with mark and word, typed row after row."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, Qt, Signal
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

from changeover.desk.inspect_wear import Spot, Value
from changeover.proof.wear import WearState
from changeover.quantities import Refusal
from changeover.window.door import Door
from changeover.window.fitting import fitted
from changeover.window.marks import pen
from changeover.window.outlook import Outlook
from changeover.window.theme import SMALL_PX, TEXT_PX, font
from changeover.window.wear.model import Values, WearModel

LEAST_PITCH, MOST_PITCH = 29, 84
LEAST_LINE, MOST_LINE = 25, 46
MIDDLE = int(Qt.AlignmentFlag.AlignCenter)
TOKENS = {
    WearState.GOOD: "done",
    WearState.WATCH: "work",
    WearState.REPLACE: "work",
    WearState.NO_LIMIT: "soft",
}


class WearDelegate(QStyledItemDelegate):
    """Paints a reading with the mark of its condition, and the word where there is room."""

    def __init__(self, model: WearModel, outlook: Outlook, view: QTableView) -> None:
        super().__init__(view)
        self._model, self._outlook, self._view = model, outlook, view

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        tokens, state = self._outlook.tokens, self._model.state(index)
        box = QRectF(option.rect)
        chosen = bool(option.state & QStyle.StateFlag.State_Selected)
        if chosen:
            painter.fillRect(box, tokens.colour("accent_wash"))
        elif state is WearState.REPLACE:
            painter.fillRect(box, tokens.colour("work_wash"))
        painter.setPen(pen(tokens.colour("hair"), 1.0))
        painter.drawRect(box.adjusted(0, 0, -0.5, -0.5))
        if state is not None:
            self._paint_reading(painter, box, str(index.data()), state)
        if self._view.currentIndex() == index:
            painter.setPen(pen(tokens.colour("accent"), 2.0))
            painter.drawRect(box.adjusted(1, 1, -1.5, -1.5))
        painter.restore()

    def _paint_reading(self, painter: QPainter, box: QRectF, text: str, state: WearState) -> None:
        tokens = self._outlook.tokens
        looked = text in ("good", "replace")
        bold = state is WearState.REPLACE
        painter.setPen(tokens.colour(TOKENS[state]))
        if looked:
            words = f"{state.mark} {state}" if box.width() >= 72 else state.mark
            painter.setFont(font(SMALL_PX + 1, bold=bold))
            painter.drawText(box, MIDDLE, words)
            return
        painter.setFont(font(SMALL_PX - 1, bold=True))
        corner = QRectF(box.right() - 11, box.top() + 1, 10, 11)
        painter.drawText(corner, MIDDLE, state.mark)
        plain = text.rstrip("0").rstrip(".") if "." in text else text
        room = int(box.width()) - (4 if box.width() < 48 else 20)
        made, shown = fitted(plain, room, TEXT_PX - 1, bold=bold)
        painter.setFont(made)
        painter.setPen(tokens.colour("work" if bold else "ink"))
        painter.drawText(box.adjusted(0, 4, 0, 0) if box.width() < 48 else box, MIDDLE, shown)


class WearMatrix(QTableView):
    """The view; Enter goes down the parts of a row and on to the next row."""

    moved = Signal()

    def __init__(self, model: WearModel, door: Door, outlook: Outlook) -> None:
        super().__init__()
        self.setObjectName("matrix")
        self.setAccessibleName("Wear by part and row")
        self._wear, self._door = model, door
        self.setModel(model)
        self.setItemDelegate(WearDelegate(model, outlook, self))
        self.setShowGrid(False)
        self.setCornerButtonEnabled(False)
        self.setTabKeyNavigation(False)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        triggers = QAbstractItemView.EditTrigger
        self.setEditTriggers(
            triggers.AnyKeyPressed | triggers.EditKeyPressed | triggers.DoubleClicked
        )
        for header in (self.horizontalHeader(), self.verticalHeader()):
            header.setHighlightSections(False)
            header.setSectionsClickable(False)
        self.verticalHeader().setFixedWidth(178)
        self.horizontalHeader().setMinimumSectionSize(24)
        self.verticalHeader().setMinimumSectionSize(20)
        self.verticalHeader().setDefaultAlignment(
            Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        )
        model.modelReset.connect(self._fit)
        self.selectionModel().currentChanged.connect(lambda _now, _then: self.moved.emit())

    def here(self) -> Spot | None:
        """Return the row and part of the current cell."""
        index = self.currentIndex()
        return self._wear.spot(index) if index.isValid() else None

    def go_on(self) -> None:
        """Go to the next part of the row, or to the first part of the next row."""
        index = self.currentIndex()
        parts, rows = self._wear.rowCount(), self._wear.columnCount()
        if not index.isValid() or not parts:
            return
        step = index.column() * parts + index.row() + 1
        if step < parts * rows:
            self.setCurrentIndex(self._wear.index(step % parts, step // parts))

    def closeEditor(self, editor: QWidget, hint: QAbstractItemDelegate.EndEditHint) -> None:
        submitted = hint is QAbstractItemDelegate.EndEditHint.SubmitModelCache
        super().closeEditor(editor, QAbstractItemDelegate.EndEditHint.NoHint)
        if submitted:
            self.go_on()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        standard = QKeySequence.StandardKey
        control = event.modifiers() == Qt.KeyboardModifier.ControlModifier
        if self.state() is QAbstractItemView.State.EditingState or not self._wear.editable:
            super().keyPressEvent(event)
        elif event.matches(standard.Copy):
            self.copy()
        elif event.matches(standard.Paste):
            self.paste()
        elif event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self._wear.put({self._wear.spot(i): None for i in self.selectedIndexes()})
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.go_on()
        elif control and event.key() == Qt.Key.Key_D:
            self.fill()
        else:
            super().keyPressEvent(event)

    def fill(self) -> None:
        """Give the current cell's reading to the selected cells of the same part."""
        spot = self.here()
        value = self._wear.inspection.cells.get(spot) if spot is not None else None
        if spot is None or value is None:
            return
        spots = [self._wear.spot(index) for index in self.selectedIndexes()]
        same = [one for one in spots if one[1] == spot[1]]
        self._wear.put(dict.fromkeys(same, value))

    def copy(self) -> None:
        """Put the selected block on the clipboard for a spreadsheet."""
        chosen = self.selectedIndexes()
        if not chosen:
            return
        lines = sorted({index.row() for index in chosen})
        columns = sorted({index.column() for index in chosen})
        index = self._wear.index
        text = "\n".join("\t".join(str(index(y, x).data()) for x in columns) for y in lines)
        QGuiApplication.clipboard().setText(text)

    def paste(self) -> None:
        """Put the clipboard's block at the current cell, all or nothing."""
        block = [line.split("\t") for line in QGuiApplication.clipboard().text().splitlines()]
        if not self.currentIndex().isValid() or not block:
            return
        try:
            self._wear.put(self._read_block(block))
        except Refusal as refusal:
            self._door.refused.emit(str(refusal))

    def _read_block(self, block: list[list[str]]) -> Values:
        corner, values = self.currentIndex(), dict[Spot, Value | None]()
        for down, line in enumerate(block):
            for right, text in enumerate(line):
                there = self._wear.index(corner.row() + down, corner.column() + right)
                if not there.isValid():
                    raise Refusal("The block reaches beyond the matrix; nothing is pasted.")
                values |= self._wear.read(self._wear.spot(there), text)
        return values

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        room = self.viewport().size()
        parts, rows = self._wear.rowCount(), self._wear.columnCount()
        if parts and rows:
            width = min(max(room.width() // rows, LEAST_PITCH), MOST_PITCH)
            height = min(max(room.height() // parts, LEAST_LINE), MOST_LINE)
            self.horizontalHeader().setDefaultSectionSize(width)
            self.verticalHeader().setDefaultSectionSize(height)
