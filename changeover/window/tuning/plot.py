"""The tuning plot: skips and doubles against vacuum, fitted curves, best level and its band."""

from collections.abc import Callable, Iterable
from math import ceil, floor, log10

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from changeover.window.marks import pen
from changeover.window.outlook import Outlook
from changeover.window.planter.signs import MIDDLE, text
from changeover.window.tuning.figures import Line, Response, TuningFigures

LEFT, TOP, RIGHT, FOOT = 46.0, 34.0, 14.0, 58.0
KEY_PX = 240
RIGHT_SIDE = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
LEFT_SIDE = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
At = Callable[[float, float], QPointF]


class TuningPlot(QWidget):
    """Paints figures; circles are skips, squares doubles, the dashed line both together."""

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook = outlook
        self.figures: TuningFigures | None = None
        self.setMinimumSize(320, 220)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def show_figures(self, figures: TuningFigures | None, says: str = "") -> None:
        """Show other figures, or an empty plot; ``says`` is the same in words."""
        self.figures = figures
        self.setAccessibleName(says or "Plot of skips and doubles, empty")
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(520, 340)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        figures, box = self.figures, QRectF(self.rect())
        inner = box.adjusted(LEFT, TOP, -RIGHT, -FOOT)
        if figures is None or not figures.skips.points:
            words = "Counts at two or more levels draw skips and doubles here."
            text(painter, inner, words, self._outlook.tokens, "soft", side=MIDDLE)
            return
        low, high = levels_shown(figures)
        most = percent_shown(figures)

        def at(level: float, percent: float) -> QPointF:
            x = inner.left() + inner.width() * (level - low) / (high - low)
            return QPointF(x, inner.bottom() - inner.height() * min(percent, most) / most)

        self._paint_grid(painter, inner, at, most)
        self._paint_levels(painter, inner, at, figures)
        painter.save()
        painter.setClipRect(inner.adjusted(-6, -6, 6, 6))
        self._paint_response(painter, at, figures.skips, "accent")
        self._paint_response(painter, at, figures.doubles, "work")
        self._paint_line(painter, at, figures.total, "ink", dashed=True)
        self._paint_points(painter, at, figures)
        painter.restore()
        self._paint_best(painter, inner, at, figures)
        self._paint_key(painter, box)

    def _paint_grid(self, painter: QPainter, box: QRectF, at: At, most: float) -> None:
        tokens = self._outlook.tokens
        for percent in ticks(0.0, most):
            y = at(0.0, percent).y()
            painter.setPen(pen(tokens.colour("hair"), 1.0))
            painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))
            place = QRectF(0, y - 8, LEFT - 8, 16)
            text(painter, place, f"{percent:g} %", tokens, "soft", side=RIGHT_SIDE)

    def _paint_levels(self, painter: QPainter, box: QRectF, at: At, figures: TuningFigures) -> None:
        """Write the levels run along the foot, and the band of the best one behind all."""
        tokens = self._outlook.tokens
        if figures.best_low is not None and figures.best_high is not None:
            left, right = at(figures.best_low, 0).x(), at(figures.best_high, 0).x()
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(tokens.colour("accent_wash"))
            band = QRectF(left, box.top(), max(3.0, right - left), box.height())
            painter.drawRect(band)
        last = -1e9
        for point in figures.skips.points:
            x = at(point.vacuum, 0).x()
            if x - last > 30:
                place = QRectF(x - 24, box.bottom() + 4, 48, 16)
                text(painter, place, f"{point.vacuum:.3g}", tokens, "soft", side=MIDDLE)
                last = x
        unit = QRectF(0, box.bottom() + 4, LEFT - 8, 16)
        text(painter, unit, figures.unit, tokens, "soft", side=RIGHT_SIDE)
        self._paint_mark(painter, box, at, figures.present, "present")
        self._paint_mark(painter, box, at, figures.following, "next")

    def _paint_mark(
        self, painter: QPainter, box: QRectF, at: At, level: float | None, name: str
    ) -> None:
        """Mark a level at the foot with a small upward sign and its name."""
        if level is None:
            return
        tokens, x, y = self._outlook.tokens, at(level, 0).x(), box.bottom() + 21
        if not box.left() - 4 <= x <= box.right() + 4:
            return
        painter.setPen(pen(tokens.colour("soft"), 1.4))
        painter.drawPolyline(
            QPolygonF([QPointF(x - 4, y + 4), QPointF(x, y), QPointF(x + 4, y + 4)])
        )
        text(painter, QRectF(x - 40, y + 4, 80, 13), name, tokens, "soft", side=MIDDLE)

    def _paint_response(self, painter: QPainter, at: At, response: Response, token: str) -> None:
        tokens = self._outlook.tokens
        if response.low:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(tokens.colour(token, 34))
            edge = [at(*spot) for spot in (*response.low, *reversed(response.high))]
            painter.drawPolygon(QPolygonF(edge))
        self._paint_line(painter, at, response.curve, token)

    def _paint_line(
        self, painter: QPainter, at: At, line: Line, token: str, *, dashed: bool = False
    ) -> None:
        if not line:
            return
        made = pen(self._outlook.tokens.colour(token), 1.3 if dashed else 2.0)
        if dashed:
            made.setDashPattern([3.0, 3.0])
        painter.setPen(made)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPolyline(QPolygonF([at(*spot) for spot in line]))

    def _paint_points(self, painter: QPainter, at: At, figures: TuningFigures) -> None:
        tokens = self._outlook.tokens
        for response, token, aside in (
            (figures.skips, "accent", -2.0),
            (figures.doubles, "work", 2.0),
        ):
            for point in response.points:
                spot = at(point.vacuum, point.percent) + QPointF(aside, 0)
                painter.setPen(pen(tokens.colour(token), 1.4))
                for end in (point.low, point.high):
                    painter.drawLine(spot, QPointF(spot.x(), at(point.vacuum, end).y()))
                paint_point(painter, spot, self._outlook, token)

    def _paint_best(self, painter: QPainter, box: QRectF, at: At, figures: TuningFigures) -> None:
        if figures.best is None:
            return
        tokens, x = self._outlook.tokens, at(figures.best, 0).x()
        line = pen(tokens.colour("accent"), 1.2)
        line.setStyle(Qt.PenStyle.DotLine)
        painter.setPen(line)
        painter.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()))
        place = QRectF(min(max(x - 60, 0), self.width() - 120), box.top() - 18, 120, 16)
        words = f"{figures.best:.3g} {figures.unit}"
        text(painter, place, words, tokens, "accent", bold=True, pixels=13, side=MIDDLE)

    def _paint_key(self, painter: QPainter, box: QRectF) -> None:
        tokens, y, x = self._outlook.tokens, box.bottom() - 11, LEFT
        for token, words in (("accent", "skips"), ("work", "doubles")):
            paint_point(painter, QPointF(x + 5, y), self._outlook, token)
            text(painter, QRectF(x + 15, y - 8, 60, 16), words, tokens, "soft", side=LEFT_SIDE)
            x += 72
        self._paint_line(painter, QPointF, ((x, y), (x + 22, y)), "ink", dashed=True)
        whole = self.width() >= x + 28 + KEY_PX
        words = "both; bars and bands: 95 % intervals" if whole else "both; 95 %"
        text(painter, QRectF(x + 28, y - 8, 260, 16), words, tokens, "soft", side=LEFT_SIDE)


def paint_point(painter: QPainter, spot: QPointF, outlook: Outlook, ink: str) -> None:
    """Draw the mark of a point: an open circle for skips, a filled square for doubles."""
    tokens = outlook.tokens
    painter.setPen(pen(tokens.colour(ink), 1.6))
    if ink == "accent":
        painter.setBrush(tokens.colour("surface"))
        painter.drawEllipse(spot, 4.0, 4.0)
    else:
        painter.setBrush(tokens.colour(ink))
        painter.drawRect(QRectF(spot.x() - 3.5, spot.y() - 3.5, 7, 7))


def levels_shown(figures: TuningFigures) -> tuple[float, float]:
    """Return the ends of the axis of levels: those run, with the present and the next, and air."""
    levels = [point.vacuum for point in figures.skips.points]
    levels += [level for level in (figures.present, figures.following) if level is not None]
    low, high = min(levels), max(levels)
    air = 0.06 * (high - low) or 0.1 * high
    return low - air, high + air


def percent_shown(figures: TuningFigures) -> float:
    """Return the top of the axis of shares, a round number above all points and curves."""
    points = (point.high for one in (figures.skips, figures.doubles) for point in one.points)
    most = max((*points, *(y for _, y in figures.total), 1.0))
    step = tick_step(most)
    return min(100.0, ceil(most / step) * step)


def ticks(low: float, high: float) -> Iterable[float]:
    """Return three to six round numbers from low to high."""
    step = tick_step(high - low)
    return [low + step * n for n in range(floor((high - low) / step + 1e-9) + 1)]


def tick_step(span: float) -> float:
    """Return a step of 1, 2 or 5 times a power of ten that cuts a span in about five."""
    power = 10.0 ** floor(log10(span / 5))
    return next(step * power for step in (1.0, 2.0, 5.0, 10.0) if step * power >= span / 5 - 1e-12)
