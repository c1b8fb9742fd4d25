"""One task of the worklist as a card: its box, its line, and a chip to tick for every row."""

from collections.abc import Iterable

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from changeover.planter.places import Place
from changeover.window.marks import Mark, paint_mark, paint_sign, pen
from changeover.window.outlook import Outlook
from changeover.window.theme import font
from changeover.window.work.task_layout import DESK, WRAP, Sizes, TaskLayout
from changeover.window.work.task_words import TaskWords

MIDDLE = Qt.AlignmentFlag.AlignVCenter


class TaskCard(QWidget):
    """A task with its places to tick; emits ``ticked(key, places, done)``.

    Left and right move between places, the space bar ticks one, Enter all that are left;
    Plus opens steps, tools and cautions.
    """

    ticked = Signal(str, object, bool)

    def __init__(self, words: TaskWords, outlook: Outlook, sizes: Sizes = DESK) -> None:
        super().__init__()
        self._outlook, self._sizes = outlook, sizes
        self._kept: TaskLayout | None = None
        self.words, self.done, self.here, self.open = words, frozenset[Place](), 0, False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def show_task(self, words: TaskWords, done: Iterable[Place]) -> None:
        """Show a task and the places at which it is done."""
        was = self.words, self.whole
        self.words, self.done = words, frozenset(done)
        self.setAccessibleName(f"{words.title}; {len(self.done)} of {len(words.places)} done")
        if was != (self.words, self.whole):
            self.here = min(self.here, len(words.places) - 1)
            self.updateGeometry()
        self.update()

    def set_sizes(self, sizes: Sizes) -> None:
        self._sizes = sizes
        self.updateGeometry()
        self.update()

    @property
    def whole(self) -> bool:
        """Whether the task is done at every place."""
        return len(self.done) == len(self.words.places)

    def tick_all(self) -> None:
        """Ask for every open place to be ticked off, or all to be taken back when none is open."""
        left = tuple(place for place in self.words.places if place not in self.done)
        self.ticked.emit(self.words.key, left or self.words.places, bool(left))

    def tick(self, number: int) -> None:
        """Ask for one place to be ticked off, or taken back."""
        place = self.words.places[number]
        self.ticked.emit(self.words.key, (place,), place not in self.done)

    def turn_open(self) -> None:
        """Show or hide steps, tools and cautions."""
        self.open = not self.open
        self.updateGeometry()
        self.update()

    def laid_out(self, width: float) -> TaskLayout:
        """Return where everything stands at a width."""
        wanted = TaskLayout(self.words, self._sizes, width, self.open, bold=not self.whole)
        if self._kept is None or self._kept != wanted:
            self._kept = wanted
        return self._kept

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return int(self.laid_out(width).height)

    def sizeHint(self) -> QSize:
        return QSize(560, self.heightForWidth(560))

    def minimumSizeHint(self) -> QSize:
        return QSize(360, 40)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        point, layout = event.position(), self.laid_out(self.width())
        if layout.box.adjusted(-9, -9, 9, 9).contains(point):
            self.tick_all()
            return
        for number, chip in enumerate(layout.chips):
            if chip.contains(point):
                self.here = number
                self.tick(number)
                return
        self.turn_open()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key, last = event.key(), len(self.words.places) - 1
        if key in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            step = 1 if key == Qt.Key.Key_Right else -1
            self.here = max(0, min(last, self.here + step))
            self.update()
        elif key == Qt.Key.Key_Space:
            self.tick(self.here)
            self.here = min(last, self.here + 1)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.tick_all()
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Minus):
            self.turn_open()
        elif key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self.focusNextPrevChild(key == Qt.Key.Key_Down)
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        self.update()
        super().focusInEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        self.update()
        super().focusOutEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter, tokens = QPainter(self), self._outlook.tokens
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(pen(tokens.colour("accent" if self.hasFocus() else "hair"), 1.0))
        painter.setBrush(tokens.colour("ground"))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), 6, 6)
        layout = self.laid_out(self.width())
        self._paint_box(painter, layout.box)
        self._paint_words(painter, layout)
        for number, chip in enumerate(layout.chips):
            self._paint_chip(painter, chip, number)
        self._paint_details(painter, layout)

    def _paint_box(self, painter: QPainter, box: QRectF) -> None:
        tokens = self._outlook.tokens
        colour = tokens.colour("accent")
        painter.setPen(pen(colour if self.done else tokens.colour("soft"), 1.4))
        painter.setBrush(colour if self.whole else tokens.colour("surface"))
        painter.drawRoundedRect(box, 4, 4)
        inset = box.width() * 0.22
        if self.whole:
            within = box.adjusted(inset, inset, -inset, -inset)
            paint_sign(painter, within, Mark.READY, tokens.colour("on_accent"))
        elif self.done:
            painter.setPen(pen(colour, 2.0))
            middle, half = box.center(), box.width() * 0.26
            painter.drawLine(middle - QPointF(half, 0), middle + QPointF(half, 0))

    def _paint_words(self, painter: QPainter, layout: TaskLayout) -> None:
        tokens, words = self._outlook.tokens, self.words
        painter.setPen(tokens.colour("soft" if self.whole else "ink"))
        painter.setFont(font(self._sizes.text, bold=not self.whole))
        painter.drawText(layout.title.adjusted(0, 0, 1, 1), WRAP, words.title)
        painter.setPen(tokens.colour("soft"))
        painter.setFont(font(self._sizes.small))
        painter.drawText(layout.aside, int(MIDDLE | Qt.AlignmentFlag.AlignLeft), words.where)
        painter.drawText(layout.aside, int(MIDDLE | Qt.AlignmentFlag.AlignRight), words.minutes)
        if words.details:
            x, y = self.width() - 22.0, layout.box.center().y()
            way = -3 if self.open else 3
            painter.setPen(pen(tokens.colour("soft")))
            ends = [(-4, -way / 2), (0, way / 2), (4, -way / 2)]
            painter.drawPolyline(QPolygonF([QPointF(x + dx, y + dy) for dx, dy in ends]))

    def _paint_chip(self, painter: QPainter, chip: QRectF, number: int) -> None:
        tokens = self._outlook.tokens
        done = self.words.places[number] in self.done
        here = self.hasFocus() and number == self.here
        painter.setPen(pen(tokens.colour("ink" if here else "accent" if done else "hair"), 1.0))
        painter.setBrush(tokens.colour("accent" if done else "surface"))
        painter.drawRoundedRect(chip.adjusted(0.5, 0.5, -0.5, -0.5), 4, 4)
        colour, side = tokens.colour("on_accent" if done else "ink"), self._sizes.sign
        painter.setPen(colour)
        painter.setFont(font(self._sizes.small, bold=done))
        text = chip.adjusted(side + 3, 0, -1, 0) if done else chip
        painter.drawText(text, int(Qt.AlignmentFlag.AlignCenter), self.words.chips[number])
        if done:
            mark = QRectF(chip.left() + 5, chip.center().y() - side * 0.35, side * 0.7, side * 0.7)
            paint_sign(painter, mark, Mark.READY, colour)

    def _paint_details(self, painter: QPainter, layout: TaskLayout) -> None:
        tokens = self._outlook.tokens
        painter.setFont(font(self._sizes.small + 1))
        for line, where in zip(self.words.details, layout.details, strict=False):
            painter.setFont(font(self._sizes.small + 1))
            painter.setPen(tokens.colour("work" if line.caution else "ink"))
            painter.drawText(where.adjusted(0, 0, 1, 1), WRAP, line.text)
            if line.caution:
                box = QRectF(layout.left, where.top(), 14, 14)
                paint_mark(painter, box, Mark.ATTENTION, tokens)
