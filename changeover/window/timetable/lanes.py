"""Bars in lanes over time: the crew's timetable and the season's calendar are both drawn so."""

from collections.abc import Callable
from dataclasses import dataclass, field
from enum import StrEnum

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFontMetricsF,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from changeover.window.marks import Mark, paint_sign, pen
from changeover.window.outlook import Outlook
from changeover.window.theme import SMALL_PX, TEXT_PX, font

AXIS, FOOT, LANE, BAR = 22.0, 20.0, 40.0, 26.0
MOVES = {
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}
LEAST_TICK, TICK_FROM, BELOW_PX = 46.0, 16.0, 9


class Look(StrEnum):
    """How a bar looks; the words in it say the same."""

    WARN = "warn"
    MAIN = "main"
    PLAIN = "plain"
    THIN = "thin"


FILLS = {Look.WARN: "work_wash", Look.MAIN: "accent_wash", Look.PLAIN: "band", Look.THIN: "ground"}
EDGES = {Look.WARN: "work", Look.MAIN: "accent", Look.PLAIN: "soft", Look.THIN: "hair"}


@dataclass(frozen=True)
class Bar:
    """One bar: where it begins and ends, its words, its tip, and its key when it is chosen.

    ``done`` puts a tick before the words, ``held`` a pin; a ``movable`` one may be dragged.
    ``number`` stands for the words where there is no room; None to count along the lane.
    """

    key: str
    start: float
    end: float
    text: str
    tip: str = ""
    look: Look = Look.PLAIN
    done: bool = False
    held: bool = False
    movable: bool = False
    number: int | None = None


@dataclass(frozen=True)
class Lane:
    """One line of bars under a name."""

    name: str
    bars: tuple[Bar, ...] = ()


@dataclass(frozen=True)
class Lanes:
    """All that is drawn: lanes from ``begin`` to ``end``, the steps of the axis, and now.

    With ``spill`` words that do not fit in a bar stand behind it, where there is room for all.
    """

    lanes: tuple[Lane, ...] = ()
    begin: float = 0.0
    end: float = 1.0
    steps: tuple[float, ...] = (1.0,)
    tell: Callable[[float], str] = field(default=str)
    now: float | None = None
    spill: bool = False


class LanesChart(QWidget):
    """Paints lanes; a bar can be chosen by mouse or arrow keys, and movable ones dragged.

    Shift with an arrow key moves the chosen bar one step along, or to the next lane. A bar too
    short for its words bears a number instead; ``worded`` is emitted when other bars may do so, or
    another bar is chosen, for whoever writes the numbers out.
    """

    chosen = Signal(str)
    dropped = Signal(str, str, float)
    worded = Signal()

    def __init__(self, outlook: Outlook, name: str, name_width: float = 62.0) -> None:
        super().__init__()
        self._outlook, self.name_width = outlook, name_width
        self.shown = Lanes()
        self.key = ""
        self._drag: tuple[Bar, QPointF, QPointF] | None = None
        self.setAccessibleName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_lanes(self, lanes: Lanes) -> None:
        """Draw other lanes; the bar chosen stays so if it is still there."""
        self.shown = lanes
        if self.key not in {bar.key for _, bar in self._bars()}:
            self.key = ""
        self.updateGeometry()
        self.update()
        self.worded.emit()

    def sizeHint(self) -> QSize:
        return QSize(240, int(AXIS + FOOT + LANE * max(1, len(self.shown.lanes))))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def x_of(self, value: float) -> float:
        """Return where a value stands across."""
        whole = max(1e-9, self.shown.end - self.shown.begin)
        return self.name_width + (value - self.shown.begin) / whole * self._room

    def value_at(self, x: float) -> float:
        """Return the value at a place across."""
        whole = self.shown.end - self.shown.begin
        return self.shown.begin + (x - self.name_width) / self._room * whole

    def rect_of(self, lane: int, bar: Bar) -> QRectF:
        """Return where a bar is drawn."""
        left, right = self.x_of(bar.start), self.x_of(bar.end)
        high = BAR * 0.55 if bar.look is Look.THIN else BAR
        top = AXIS + LANE * lane + (LANE - high) / 2
        return QRectF(left, top, max(3.0, right - left), high)

    @property
    def _room(self) -> float:
        return max(1.0, self.width() - self.name_width - 8)

    def _bars(self) -> list[tuple[int, Bar]]:
        return [(n, bar) for n, lane in enumerate(self.shown.lanes) for bar in lane.bars]

    def _at(self, point: QPointF) -> Bar | None:
        hits = [bar for n, bar in self._bars() if self.rect_of(n, bar).contains(point)]
        return hits[-1] if hits else None

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        bottom = AXIS + LANE * max(1, len(self.shown.lanes))
        self._paint_axis(painter, bottom)
        for number, lane in enumerate(self.shown.lanes):
            self._paint_name(painter, number, lane.name)
        taken: list[QRectF] = []
        told = {bar: number for _, number, bar in self.numbered()}
        for line, bar in self._bars():
            rect = self._moved(self.rect_of(line, bar), bar)
            self._paint_bar(painter, rect, bar)
            painter.setPen(self._outlook.tokens.colour("ink"))
            if bar in told:
                _paint_number(painter, rect, self._room_in(rect, bar), str(told[bar]), taken)
            else:
                self._paint_words(painter, rect, bar)
        self._paint_now(painter, bottom)

    def _moved(self, rect: QRectF, bar: Bar) -> QRectF:
        if self._drag is None or self._drag[0] != bar:
            return rect
        _, begin, here = self._drag
        return rect.translated(here.x() - begin.x(), here.y() - begin.y())

    def _paint_axis(self, painter: QPainter, bottom: float) -> None:
        tokens, shown = self._outlook.tokens, self.shown
        step = self._step()
        value = -(-shown.begin // step) * step
        painter.setFont(font(SMALL_PX))
        while value <= shown.end + 1e-9:
            x = self.x_of(value)
            painter.setPen(pen(tokens.colour("hair"), 1.0))
            painter.drawLine(QPointF(x, AXIS - 2), QPointF(x, bottom))
            painter.setPen(tokens.colour("soft"))
            painter.drawText(
                QRectF(min(x, self.width() - 20) - 40, 0, 80, AXIS - 4),
                Qt.AlignmentFlag.AlignCenter,
                shown.tell(value),
            )
            value += step

    def _step(self) -> float:
        whole = max(1e-9, self.shown.end - self.shown.begin)
        fits = (step for step in self.shown.steps if step / whole * self._room >= LEAST_TICK)
        return next(fits, self.shown.steps[-1])

    def _paint_name(self, painter: QPainter, number: int, name: str) -> None:
        painter.setFont(font(TEXT_PX))
        painter.setPen(self._outlook.tokens.colour("ink"))
        text = painter.fontMetrics().elidedText(
            name, Qt.TextElideMode.ElideRight, int(self.name_width - 8)
        )
        box = QRectF(0, AXIS + LANE * number, self.name_width - 6, LANE)
        painter.drawText(box, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), text)

    def _paint_bar(self, painter: QPainter, rect: QRectF, bar: Bar) -> None:
        tokens = self._outlook.tokens
        chosen = bar.key == self.key and self.key != ""
        painter.setPen(
            pen(tokens.colour("ink" if chosen else EDGES[bar.look]), 2.0 if chosen else 1.2)
        )
        painter.setBrush(tokens.colour(FILLS[bar.look]))
        painter.drawRoundedRect(rect.adjusted(0.6, 0.6, -0.6, -0.6), 4, 4)
        if bar.done and rect.width() > TICK_FROM:
            box = QRectF(rect.left() + 4, rect.center().y() - 5, 10, 10)
            paint_sign(painter, box, Mark.READY, tokens.colour("done"))
        if bar.held and rect.width() > TICK_FROM:
            _paint_pin(painter, QRectF(rect.right() - 12, rect.top() + 4, 8, 8), self._outlook)

    def _paint_words(self, painter: QPainter, rect: QRectF, bar: Bar) -> None:
        room = self._room_in(rect, bar)
        painter.setFont(font(SMALL_PX))
        if not _fits(bar.text, room):
            painter.setPen(self._outlook.tokens.colour("soft"))
            room = self._behind(rect, bar)
        painter.drawText(room, int(Qt.AlignmentFlag.AlignVCenter), bar.text)

    def _room_in(self, rect: QRectF, bar: Bar) -> QRectF:
        """Return the room for words within a bar, beside its tick and its pin."""
        wide = rect.width() > TICK_FROM
        left, right = 13.0 * (bar.done and wide), 10.0 * (bar.held and wide)
        return rect.adjusted(5 + left, 0, -3 - right, 0)

    def _behind(self, rect: QRectF, bar: Bar) -> QRectF:
        """Return the room behind a bar up to the next one, empty where words may not spill."""
        if not self.shown.spill or bar.look is Look.THIN:
            return QRectF()
        lane = next(lane for lane in self.shown.lanes if bar in lane.bars)
        after = [self.x_of(one.start) for one in lane.bars if one.start >= bar.end]
        right = min([*after, float(self.width())]) - 4
        return QRectF(rect.right() + 5, rect.top(), right - rect.right() - 5, rect.height())

    def numbered(self) -> tuple[tuple[str, int, Bar], ...]:
        """Return the bars that bear a number for want of room: the lane's name, number, bar."""
        found = []
        for line, lane in enumerate(self.shown.lanes):
            bars = (bar for bar in lane.bars if bar.text)
            for number, bar in enumerate(sorted(bars, key=lambda one: one.start), start=1):
                rect = self.rect_of(line, bar)
                rooms = self._room_in(rect, bar), self._behind(rect, bar)
                if not any(_fits(bar.text, room) for room in rooms):
                    told = number if bar.number is None else bar.number
                    found.append((lane.name, told, bar))
        return tuple(found)

    def bar_chosen(self) -> Bar | None:
        """Return the bar that is chosen, None when none is."""
        return next((bar for _, bar in self._bars() if self.key and bar.key == self.key), None)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.worded.emit()

    def _paint_now(self, painter: QPainter, bottom: float) -> None:
        now = self.shown.now
        if now is None or not self.shown.begin <= now <= self.shown.end:
            return
        x, accent = self.x_of(now), self._outlook.tokens.colour("accent")
        painter.setPen(pen(accent, 2.0))
        painter.drawLine(QPointF(x, AXIS - 2), QPointF(x, bottom + 2))
        painter.setFont(font(SMALL_PX, bold=True))
        painter.drawText(QRectF(x - 30, bottom + 3, 60, 15), Qt.AlignmentFlag.AlignCenter, "now")

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            bar = self._at(QPointF(event.pos()))
            QToolTip.showText(event.globalPos(), bar.tip if bar else "", self)
            return True
        return super().event(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        bar = self._at(event.position())
        self.choose(bar.key if bar else "")
        if bar is not None and bar.movable:
            self._drag = (bar, event.position(), event.position())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._drag is not None:
            self._drag = (self._drag[0], self._drag[1], event.position())
            self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._drag is None:
            return
        (bar, begin, _), self._drag = self._drag, None
        here = event.position()
        if (here - begin).manhattanLength() > 6:
            lane = int((here.y() - AXIS) // LANE)
            if 0 <= lane < len(self.shown.lanes):
                start = self.value_at(self.x_of(bar.start) + here.x() - begin.x())
                self.dropped.emit(bar.key, self.shown.lanes[lane].name, start)
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key, shift = Qt.Key(event.key()), event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        if shift and key in MOVES:
            self._move(*MOVES[key])
            return
        step = {Qt.Key.Key_Right: 1, Qt.Key.Key_Left: -1}.get(key)
        if step is None:
            super().keyPressEvent(event)
            return
        keys = list(dict.fromkeys(bar.key for _, bar in self._bars() if bar.key))
        if keys:
            at = keys.index(self.key) + step if self.key in keys else 0
            self.choose(keys[at % len(keys)])

    def _move(self, along: int, across: int) -> None:
        """Drop the chosen bar one step along or one lane across, as dragging it would."""
        found = ((n, bar) for n, bar in self._bars() if bar.key == self.key and bar.movable)
        lane, bar = next(found, (0, None))
        if bar is not None and 0 <= lane + across < len(self.shown.lanes):
            start = bar.start + along * self.shown.steps[0]
            self.dropped.emit(bar.key, self.shown.lanes[lane + across].name, start)

    def choose(self, key: str) -> None:
        """Choose a bar by its key, or none."""
        if key != self.key:
            self.key = key
            bar = self.bar_chosen()
            self.setAccessibleDescription(bar.tip if bar is not None else "")
            self.update()
            self.chosen.emit(key)
            self.worded.emit()


def _fits(text: str, room: QRectF) -> bool:
    return QFontMetricsF(font(SMALL_PX)).horizontalAdvance(text) <= room.width()


def _paint_number(
    painter: QPainter, rect: QRectF, room: QRectF, number: str, taken: list[QRectF]
) -> None:
    """Paint the number of a bar in it, or close to it where it is too short even for that.

    ``taken`` holds where numbers stand beside their bars; none is painted over another.
    """
    middle = Qt.AlignmentFlag.AlignCenter
    for pixels, box in ((SMALL_PX, room), (SMALL_PX, rect), (BELOW_PX, rect)):
        made = font(pixels)
        if QFontMetricsF(made).horizontalAdvance(number) <= box.width() - 1:
            painter.setFont(made)
            painter.drawText(box, middle, number)
            return
    painter.setFont(font(BELOW_PX))
    wide = painter.fontMetrics().horizontalAdvance(number) + 2.0
    left = rect.center().x() - wide / 2
    for top in (rect.bottom() - 1, rect.top() - 9):
        box = QRectF(left, top, wide, 10)
        if not any(box.intersects(other) for other in taken):
            taken.append(box)
            painter.drawText(box, middle, number)
            return


def _paint_pin(painter: QPainter, box: QRectF, outlook: Outlook) -> None:
    painter.setPen(pen(outlook.tokens.colour("ink"), 1.3))
    painter.setBrush(outlook.tokens.colour("ink"))
    painter.drawEllipse(QRectF(box.left() + 2, box.top(), 5, 5))
    painter.drawLine(
        QPointF(box.left() + 4.5, box.top() + 5), QPointF(box.left() + 4.5, box.bottom() + 3)
    )
