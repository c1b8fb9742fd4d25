"""Vacuum by row, drawn over the row numbers: readings, set value, limit and the fans' branches."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from changeover.desk.gauge import FanJudged, Gauges
from changeover.proof.fan import MOST_FAR_LOSS, Manifold, Place
from changeover.quantities import MEASURES, unit_sign
from changeover.window.marks import pen
from changeover.window.outlook import Outlook
from changeover.window.theme import SMALL_PX, font

LEFT_ROOM, TOP_ROOM, FOOT_ROOM = 56, 26, 8
STEPS = (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0)
MIDDLE = int(Qt.AlignmentFlag.AlignCenter)
RIGHT = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)


class VacuumPlot(QWidget):
    """Plots readings above the columns that stand below it; ``row_chosen`` follows a click."""

    row_chosen = Signal(int)

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook = outlook
        self._gauges: Gauges | None = None
        self._fans: tuple[FanJudged, ...] = ()
        self._edges: tuple[tuple[int, float, float], ...] = ()
        self.setMinimumHeight(150)
        self.setAccessibleName("Vacuum by row against the set value")

    def show_gauges(self, gauges: Gauges, fans: Sequence[FanJudged]) -> None:
        """Show readings, and what they are judged to be."""
        self._gauges, self._fans = gauges, tuple(fans)
        self.update()

    def show_columns(self, edges: Sequence[tuple[int, float, float]]) -> None:
        """Draw each row (number, left, right) over its column, in this widget's pixels."""
        self._edges = tuple(edges)
        self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        x = event.position().x()
        for row, left, right in self._edges:
            if left <= x < right:
                self.row_chosen.emit(row)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._gauges is None or not self._edges:
            return
        self._paint_scale(painter)
        for fan in self._fans:
            self._paint_set_value(painter, fan)
            for branch in fan.branches:
                self._paint_branch(painter, branch)
        self._paint_readings(painter)

    def _unit(self) -> str:
        return MEASURES["pressure"].unit(self._outlook.units)

    def _size(self, quantity: object) -> float:
        return float(quantity.to(self._unit()).magnitude)  # type: ignore[attr-defined]

    def _top(self) -> float:
        gauges = self._gauges
        assert gauges is not None
        every = [*gauges.cells.values(), *gauges.set_values.values()]
        return max([self._size(one) for one in every], default=1.0) * 1.12 or 1.0

    def _y(self, size: float) -> float:
        room = self.height() - TOP_ROOM - FOOT_ROOM
        return self.height() - FOOT_ROOM - room * size / self._top()

    def _paint_scale(self, painter: QPainter) -> None:
        tokens = self._outlook.tokens
        top = self._top()
        step = next((one for one in STEPS if top / one <= 5), STEPS[-1])
        right = self._edges[-1][2]
        painter.setFont(font(SMALL_PX))
        painter.setPen(tokens.colour("soft"))
        sign = unit_sign(self._unit())
        painter.drawText(QRectF(0, 0, LEFT_ROOM + 40, 18), int(Qt.AlignmentFlag.AlignLeft), sign)
        for number in range(int(top / step) + 1):
            y = self._y(number * step)
            painter.setPen(pen(tokens.colour("hair"), 1.0))
            painter.drawLine(QPointF(self._edges[0][1], y), QPointF(right, y))
            painter.setPen(tokens.colour("soft"))
            box = QRectF(0, y - 8, self._edges[0][1] - 8, 16)
            painter.drawText(box, RIGHT, f"{number * step:g}")

    def _span(self, rows: Sequence[int]) -> tuple[float, float] | None:
        found = [(left, right) for row, left, right in self._edges if row in rows]
        return (found[0][0], found[-1][1]) if found else None

    def _paint_set_value(self, painter: QPainter, fan: FanJudged) -> None:
        gauges, tokens, span = self._gauges, self._outlook.tokens, self._span(fan.rows)
        wanted = gauges.set_values.get(fan.fan) if gauges is not None else None
        if wanted is None or span is None or gauges is None:
            return
        left, right = span
        size = self._size(wanted)
        high, low = self._y(size), self._y(size * (1 - MOST_FAR_LOSS))
        painter.fillRect(
            QRectF(left + 2, high, right - left - 4, low - high), tokens.colour("accent_wash")
        )
        line = QPen(tokens.colour("accent"), 1.4, Qt.PenStyle.DashLine)
        painter.setPen(line)
        painter.drawLine(QPointF(left + 2, high), QPointF(right - 2, high))
        painter.setFont(font(SMALL_PX, bold=True))
        words = f"{fan.fan}, set {size:.{MEASURES['pressure'].digits(self._outlook.units)}f}"
        box = QRectF(left + 6, low - 17, right - left - 12, 15)
        painter.drawText(box, int(Qt.AlignmentFlag.AlignLeft), words)
        self._paint_feed(painter, gauges.near.get(fan.fan))

    def _paint_feed(self, painter: QPainter, near: int | None) -> None:
        """Draw where a fan feeds its manifold: a small triangle on the ground line."""
        at = next(((a + b) / 2 for row, a, b in self._edges if row == near), None)
        if at is None:
            return
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self._outlook.tokens.colour("accent"))
        foot = self.height() - FOOT_ROOM
        painter.drawPolygon(
            [QPointF(at - 5, foot + 7), QPointF(at + 5, foot + 7), QPointF(at, foot)]
        )

    def _paint_branch(self, painter: QPainter, branch: Manifold) -> None:
        at = {row: (left + right) / 2 for row, left, right in self._edges}
        points = [
            QPointF(at[one.row], self._y(self._size(one.vacuum)))
            for one in branch.rows
            if one.row in at
        ]
        painter.setPen(pen(self._outlook.tokens.colour("soft"), 1.2))
        painter.drawPolyline(points)

    def _paint_readings(self, painter: QPainter) -> None:
        gauges, tokens = self._gauges, self._outlook.tokens
        assert gauges is not None
        odd = {
            one.row: one.place
            for fan in self._fans
            for branch in fan.branches
            for one in branch.rows
            if one.place is not Place.FINE
        }
        for row, left, right in self._edges:
            reading = gauges.cells.get(row)
            if reading is None:
                continue
            middle = QPointF((left + right) / 2, self._y(self._size(reading)))
            loud = row in odd
            colour = tokens.colour("work" if loud else "accent")
            painter.setPen(pen(colour, 1.6))
            painter.setBrush(tokens.colour("work" if loud else "surface"))
            if loud:
                painter.drawRect(QRectF(middle.x() - 4, middle.y() - 4, 8, 8))
                painter.setFont(font(SMALL_PX, bold=True))
                word = WORDS[odd[row]]
                painter.drawText(QRectF(middle.x() - 40, middle.y() + 6, 80, 15), MIDDLE, word)
            else:
                painter.drawEllipse(middle, 4, 4)


WORDS = {Place.LEAK: "leak?", Place.STEP: "step", Place.NONE: "none", Place.FINE: ""}
