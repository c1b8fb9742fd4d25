"""The one delegate of the matrix: paints cells from a store of painted ones, and edits them."""

from typing import Any

from PySide6.QtCore import (
    QEvent,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QRect,
    Qt,
    QTimer,
    Signal,
)
from PySide6.QtGui import QKeyEvent, QPainter, QPixmap
from PySide6.QtWidgets import (
    QAbstractItemDelegate,
    QAbstractItemView,
    QComboBox,
    QLineEdit,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from changeover.planter.entry import options_of
from changeover.planter.places import Place, Scope
from changeover.planter.settings import Kind, Setting
from changeover.window.marks import pen
from changeover.window.matrix.cell_painting import CellPaint
from changeover.window.matrix.model import MatrixModel
from changeover.window.outlook import Outlook

Index = QModelIndex | QPersistentModelIndex
MOST_PAINTED = 3000
EDITOR_WIDTH = 104


class MatrixDelegate(QStyledItemDelegate):
    """Paints and edits the cells of a MatrixModel; emits ``set_all`` for Ctrl+Enter.

    ``left_by`` follows each key that took what was typed, with the way that the key points.
    """

    set_all = Signal(str)
    left_by = Signal(QAbstractItemView.CursorAction)

    def __init__(self, model: MatrixModel, outlook: Outlook, parent: QObject) -> None:
        super().__init__(parent)
        self._model, self._outlook = model, outlook
        self._painted: dict[CellPaint, QPixmap] = {}
        self.open_choices = self._taken = False

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        rect: QRect = option.rect
        state: QStyle.StateFlag = option.state
        look = self._look(rect, index)
        if look.seen is None:
            ratio = painter.device().devicePixelRatioF()
            painter.drawPixmap(rect.topLeft(), self._pixmap(look, ratio))
        else:
            painter.save()
            painter.translate(rect.topLeft())
            look.paint(painter)
            painter.restore()
        if state & QStyle.StateFlag.State_Selected:
            self._paint_selected(
                painter, rect, current=bool(state & QStyle.StateFlag.State_HasFocus)
            )

    def _look(self, rect: QRect, index: Index) -> CellPaint:
        model = self._model
        line, column = model.spot(index)
        sheet = model.sheet
        place = sheet.cells[line][column].place
        return CellPaint(
            look=sheet.look(line, column),
            shown=sheet.shown,
            width=rect.width(),
            height=rect.height(),
            tinted=line % 2 == 0 and model.across,
            band=place.row is None,
            words="" if place.row is not None else self._band_words(place),
            tokens=self._outlook.tokens,
            seen=self._seen(rect) if place.row is None else None,
        )

    def _seen(self, rect: QRect) -> tuple[int, int, int, int] | None:
        """Return the part of a band in view, from its own corner; None when it is all in view."""
        view = self.parent()
        assert isinstance(view, QAbstractItemView)
        part = rect & view.viewport().rect()
        if part == rect or part.isEmpty():
            return None
        part.translate(-rect.topLeft())
        return part.x(), part.y(), part.width(), part.height()

    def _band_words(self, place: Place) -> str:
        count = len(self._model.sheet.board.planter.rows_of(place))
        whole = place.scope is Scope.PLANTER
        return f"{'whole planter' if whole else f'one {place.scope.value}'}, {count} rows"

    def _pixmap(self, look: CellPaint, ratio: float) -> QPixmap:
        made = self._painted.get(look)
        if made is None or made.devicePixelRatioF() != ratio:
            if len(self._painted) >= MOST_PAINTED:
                self._painted.clear()
            made = QPixmap(round(look.width * ratio), round(look.height * ratio))
            made.setDevicePixelRatio(ratio)
            painter = QPainter(made)
            look.paint(painter)
            painter.end()
            self._painted[look] = made
        return made

    def _paint_selected(self, painter: QPainter, rect: QRect, *, current: bool) -> None:
        accent = self._outlook.tokens.colour("accent")
        wash = self._outlook.tokens.colour("accent", 24)
        painter.save()
        painter.fillRect(rect, wash)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(pen(accent, 2.0 if current else 0.8))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(rect.adjusted(1, 1, -2, -2), 4, 4)
        painter.restore()

    def createEditor(self, parent: QWidget, _option: QStyleOptionViewItem, index: Index) -> QWidget:
        cell = self._model.cell(index)
        choices = self._choices(self._model.sheet.setting(cell), cell.place)
        return self._choice_box(parent, choices) if choices else QLineEdit(parent)

    def _choices(self, setting: Setting, place: Place) -> tuple[str, ...]:
        board = self._model.sheet.board
        if setting.kind is Kind.PART:
            return tuple(part.code for part in board.parts if part.sort == setting.part_sort)
        return options_of(setting, board.planter, place)

    def _choice_box(self, parent: QWidget, choices: tuple[str, ...]) -> QComboBox:
        box = QComboBox(parent)
        box.setEditable(True)
        box.addItems(list(choices))
        box.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        box.view().setMinimumWidth(EDITOR_WIDTH)
        box.activated.connect(lambda _number: self._take(box))
        if self.open_choices:
            QTimer.singleShot(0, box, box.showPopup)
        return box

    def _take(self, editor: QWidget) -> None:
        self.commitData.emit(editor)
        self.closeEditor.emit(editor, QAbstractItemDelegate.EndEditHint.NoHint)

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        text = str(index.data(Qt.ItemDataRole.EditRole) or "")
        if isinstance(editor, QComboBox):
            editor.setCurrentIndex(editor.findText(text))
            editor.setEditText(text)
            line = editor.lineEdit()
            if line is not None:
                line.selectAll()
        elif isinstance(editor, QLineEdit):
            editor.setText(text)
            editor.selectAll()

    def setModelData(self, editor: QWidget, model: Any, index: Index) -> None:
        typed = _text(editor)
        as_it_was = typed.strip() == str(index.data(Qt.ItemDataRole.EditRole))
        self._taken = bool(as_it_was or model.setData(index, typed))

    def updateEditorGeometry(
        self, editor: QWidget, option: QStyleOptionViewItem, _index: Index
    ) -> None:
        rect: QRect = option.rect
        parent = editor.parentWidget()
        room = parent.width() if parent is not None else rect.right()
        width = min(max(rect.width(), EDITOR_WIDTH), max(room, EDITOR_WIDTH))
        left = min(max(0, rect.center().x() - width // 2), max(0, room - width))
        height = min(rect.height(), 32)
        editor.setGeometry(left, rect.center().y() - height // 2, width, height)

    def eventFilter(self, editor: QObject, event: QEvent) -> bool:
        if not isinstance(event, QKeyEvent) or event.type() != QEvent.Type.KeyPress:
            return super().eventFilter(editor, event)
        outer = editor.parent()
        box = outer if isinstance(outer, QComboBox) else editor
        if not isinstance(box, QWidget):
            return False
        if _is_enter(event) and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.set_all.emit(_text(box))
            self.closeEditor.emit(box, QAbstractItemDelegate.EndEditHint.NoHint)
            return True
        way = _way(event)
        if way is None:
            return super().eventFilter(editor, event)
        self._take(box)
        if self._taken:
            self.left_by.emit(way)
        return True


def _is_enter(event: QKeyEvent) -> bool:
    return event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)


def _way(event: QKeyEvent) -> QAbstractItemView.CursorAction | None:
    """Return the way to go on after a key that ends an edit as in a spreadsheet, else None."""
    ways = QAbstractItemView.CursorAction
    if _is_enter(event):
        back = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        return ways.MoveUp if back else ways.MoveDown
    return {
        Qt.Key.Key_Tab: ways.MoveRight,
        Qt.Key.Key_Backtab: ways.MoveLeft,
        Qt.Key.Key_Down: ways.MoveDown,
        Qt.Key.Key_Up: ways.MoveUp,
    }.get(Qt.Key(event.key()))


def _text(editor: QWidget) -> str:
    if isinstance(editor, QComboBox):
        return editor.currentText()
    return editor.text() if isinstance(editor, QLineEdit) else ""
