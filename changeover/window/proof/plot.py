"""Draws a plot by row: intervals, marks that differ by shape, limits, and the row numbers."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from changeover.window.marks import Mark, paint_mark, pen
from changeover.window.outlook import Outlook
from changeover.window.proof.plot_layout import (
    Level,
    RowPlot,
    Scale,
    Series,
    Shape,
    Spot,
    columns,
    scale_of,
)
from changeover.window.theme import SMALL_PX, font

LEFT, RIGHT, TOP, FOOT = 52, 84, 10, 62
OFFSETS = {1: (0.0,), 2: (-0.17, 0.17)}
MARK = 4.0


class RowPlotView(QWidget):
    """A plot by row as a widget; what it shows is also said for those who cannot see it."""

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook = outlook
        self.plot = RowPlot((), ())
        self.setMinimumHeight(220)
        self.setMaximumHeight(340)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def show_plot(self, plot: RowPlot) -> None:
        self.plot = plot
        self.setAccessibleName(plot.says)
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(640, 300)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        _Painting(painter, self.plot, self._outlook, self.width(), self.height()).paint()


class _Painting:
    """One painting of a plot."""

    def __init__(
        self, painter: QPainter, plot: RowPlot, outlook: Outlook, width: int, height: int
    ) -> None:
        self.painter, self.plot, self.tokens = painter, plot, outlook.tokens
        self.scale: Scale = scale_of(plot)
        self.right, self.foot = width - RIGHT, height - FOOT
        self.middles = columns(plot.rows, LEFT, self.right)
        self.width = (self.right - LEFT) / max(1, len(plot.rows))

    def paint(self) -> None:
        self._band()
        self._grid()
        for level in self.plot.levels:
            self._level(level)
        offsets = OFFSETS.get(len(self.plot.series), OFFSETS[1])
        for one, offset in zip(self.plot.series, offsets, strict=False):
            for row, spot in one.spots.items():
                self._spot(row, spot, one.shape, offset)
        self._rows()
        self._legend()

    def _y(self, value: float) -> float:
        return self.scale.place(value, TOP, self.foot)

    def _text(self, box: QRectF, text: str, side: Qt.AlignmentFlag, token: str) -> None:
        self.painter.setPen(self.tokens.colour(token))
        self.painter.drawText(box, side | Qt.AlignmentFlag.AlignVCenter, text)

    def _band(self) -> None:
        if self.plot.band is not None:
            top, foot = (self._y(value) for value in reversed(self.plot.band))
            box = QRectF(LEFT, top, self.right - LEFT, foot - top)
            self.painter.fillRect(box, self.tokens.colour("accent_wash"))

    def _grid(self) -> None:
        self.painter.setFont(font(SMALL_PX))
        ticks = self.scale.ticks
        step = (ticks[1] - ticks[0]) * self.plot.factor
        digits = next(n for n in (0, 1, 2, 3) if n == 3 or abs(step - round(step, n)) < 1e-9)
        for tick in ticks:
            y = self._y(tick)
            self.painter.setPen(pen(self.tokens.colour("hair"), 1.0))
            self.painter.drawLine(QPointF(LEFT, y), QPointF(self.right, y))
            words = f"{tick * self.plot.factor:.{digits}f} {self.plot.unit}".rstrip()
            box = QRectF(0, y - 8, LEFT - 6, 16)
            self._text(box, words, Qt.AlignmentFlag.AlignRight, "soft")

    def _level(self, level: Level) -> None:
        token = "work" if level.limit else "accent"
        y = self._y(level.value)
        made = QPen(self.tokens.colour(token), 1.2)
        if level.limit:
            made.setDashPattern([5, 4])
        self.painter.setPen(made)
        self.painter.drawLine(QPointF(LEFT, y), QPointF(self.right + 4, y))
        box = QRectF(self.right + 8, y - 8, RIGHT - 8, 16)
        self._text(box, level.name, Qt.AlignmentFlag.AlignLeft, token)

    def _spot(self, row: int, spot: Spot, shape: Shape, offset: float) -> None:
        colour = self.tokens.colour("work" if spot.loud else "accent")
        x = self.middles[row] + offset * min(self.width, 60)
        self.painter.setPen(pen(colour, 1.4))
        self.painter.drawLine(QPointF(x, self._y(spot.high)), QPointF(x, self._y(spot.low)))
        self._mark(QPointF(x, self._y(spot.value)), shape, colour)

    def _mark(self, at: QPointF, shape: Shape, colour: QColor) -> None:
        self.painter.setPen(pen(colour, 1.5))
        if shape is Shape.RING:
            self.painter.setBrush(self.tokens.colour("surface"))
            self.painter.drawEllipse(at, MARK, MARK)
        else:
            self.painter.setBrush(colour)
            size = MARK - 0.5
            self.painter.drawRect(QRectF(at.x() - size, at.y() - size, 2 * size, 2 * size))

    def _rows(self) -> None:
        for row, x in self.middles.items():
            look = row in self.plot.attention
            self.painter.setFont(font(SMALL_PX, bold=look))
            box = QRectF(x - 16, self.foot + 4, 32, 16)
            self._text(box, str(row), Qt.AlignmentFlag.AlignHCenter, "work" if look else "ink")
            if look:
                box = QRectF(x - 6.5, self.foot + 20, 13, 13)
                paint_mark(self.painter, box, Mark.ATTENTION, self.tokens)

    def _legend(self) -> None:
        self.painter.setFont(font(SMALL_PX))
        x, y = float(LEFT), self.foot + 48.0
        for one in self.plot.series:
            x = self._legend_entry(one, x, y)

    def _legend_entry(self, one: Series, x: float, y: float) -> float:
        self._mark(QPointF(x + MARK, y), one.shape, self.tokens.colour("accent"))
        width = self.painter.fontMetrics().horizontalAdvance(one.name)
        box = QRectF(x + 14, y - 8, width + 4, 16)
        self._text(box, one.name, Qt.AlignmentFlag.AlignLeft, "soft")
        return x + width + 36
