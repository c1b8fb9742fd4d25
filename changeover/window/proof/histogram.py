"""Draws spacings in classes of a tenth of the target: the target line, and the divisions."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from changeover.proof.spacing import SpacingMeasures
from changeover.quantities import MEASURES, unit_sign
from changeover.window.marks import pen
from changeover.window.outlook import Outlook
from changeover.window.proof.plot_layout import Scale, scale_for
from changeover.window.theme import SMALL_PX, font

LEFT, RIGHT, TOP, FOOT = 44.0, 12.0, 34.0, 34.0
ZONES = ((0.0, 0.5, "multiple"), (0.5, 1.5, "single"), (1.5, 2.5, "miss"), (2.5, 3.5, "2 missed"))
SHOWN = 3.6  # targets across: 35 classes and the open one


class Histogram(QWidget):
    """The distribution of one row's spacings, or of all; zones are named and shaded by turns."""

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook = outlook
        self.measures: SpacingMeasures | None = None
        self.setMinimumHeight(190)
        self.setMaximumHeight(300)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def show_measures(self, measures: SpacingMeasures | None) -> None:
        self.measures = measures
        if measures is not None:
            first, second, *gaps = measures.counts
            self.setAccessibleName(
                f"{measures.n} spacings: {first} multiples, {second} singles, {sum(gaps)} misses"
            )
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(560, 260)

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self.measures is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(font(SMALL_PX))
        counts = self.measures.histogram
        scale = scale_for([float(max(counts)), 1.0], 4)
        self._zones(painter)
        self._grid(painter, scale)
        self._bars(painter, counts, scale)
        self._target(painter)

    def _x(self, targets: float) -> float:
        return LEFT + (self.width() - LEFT - RIGHT) * targets / SHOWN

    @property
    def _foot(self) -> float:
        return self.height() - FOOT

    def _text(self, painter: QPainter, box: QRectF, words: str, token: str) -> None:
        painter.setPen(self._outlook.tokens.colour(token))
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, words)

    def _zones(self, painter: QPainter) -> None:
        for number, (low, high, name) in enumerate((*ZONES, (3.5, SHOWN, ""))):
            left, right = self._x(low), self._x(high)
            if number == 1:
                box = QRectF(left, TOP, right - left, self._foot - TOP)
                painter.fillRect(box, self._outlook.tokens.colour("accent_wash"))
            made = QPen(self._outlook.tokens.colour("soft"), 1.0)
            made.setDashPattern([3, 3])
            painter.setPen(made)
            if low:
                painter.drawLine(QPointF(left, TOP - 4), QPointF(left, self._foot))
            self._text(painter, QRectF(left, TOP - 34, right - left, 16), name, "soft")

    def _grid(self, painter: QPainter, scale: Scale) -> None:
        right = self.width() - RIGHT
        for tick in scale.ticks:
            y = scale.place(tick, TOP, self._foot)
            painter.setPen(pen(self._outlook.tokens.colour("hair"), 1.0))
            painter.drawLine(QPointF(LEFT, y), QPointF(right, y))
            self._text(painter, QRectF(0, y - 8, LEFT - 4, 16), f"{tick:g}", "soft")

    def _bars(self, painter: QPainter, counts: tuple[int, ...], scale: Scale) -> None:
        tokens = self._outlook.tokens
        for number, count in enumerate(counts):
            if not count:
                continue
            left, right = self._x(number / 10), self._x((number + 1) / 10)
            top = scale.place(float(count), TOP, self._foot)
            single = 5 <= number < 15
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(tokens.colour("accent" if single else "work"))
            painter.drawRect(QRectF(left + 1, top, right - left - 2, self._foot - top))

    def _target(self, painter: QPainter) -> None:
        assert self.measures is not None
        tokens = self._outlook.tokens
        unit = MEASURES["spacing"].unit(self._outlook.units)
        size = float(self.measures.target.to(unit).magnitude)
        x = self._x(1.0)
        painter.setPen(pen(tokens.colour("ink"), 1.6))
        painter.drawLine(QPointF(x, TOP - 6), QPointF(x, self._foot))
        sign = unit_sign(unit)
        self._text(painter, QRectF(x - 70, TOP - 20, 140, 14), f"target {size:.2f} {sign}", "ink")
        for half in range(8):
            at = self._x(half / 2)
            words = f"{size * half / 2:.1f}"
            self._text(painter, QRectF(at - 20, self._foot + 3, 40, 14), words, "soft")
        box = QRectF(LEFT, self._foot + 17, self.width() - LEFT - RIGHT, 14)
        painter.setPen(tokens.colour("soft"))
        words = f"spacing, {sign}; classes of a tenth of the target"
        painter.drawText(box, Qt.AlignmentFlag.AlignRight, words)
