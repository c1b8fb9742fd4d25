"""A row unit from the side: the depths to scale below the ground, the closing wheel behind."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter

from changeover.window.marks import pen
from changeover.window.planter.signs import text
from changeover.window.theme import Tokens

LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
GROUND_AT = 74
ROOM = 58


@dataclass(frozen=True)
class RowUnitSketch:
    """Depths are shares of ``deepest``, the scale's last notch; None where not known.

    ``press`` is the closing position as a share of its index, 0 the lightest.
    """

    now: float | None
    wanted: float | None
    now_words: str
    wanted_words: str
    deepest_words: str
    press: float | None = None
    height: int = 150

    @property
    def says(self) -> str:
        return f"Depth now {self.now_words or 'not known'}, wanted {self.wanted_words or 'open'}"

    def paint(self, painter: QPainter, box: QRectF, tokens: Tokens) -> None:
        ground = box.top() + GROUND_AT
        self._paint_ground(painter, box, ground, tokens)
        self._paint_unit(painter, box.left(), ground, tokens)
        self._paint_closing(painter, box.left(), ground, tokens)
        self._paint_depths(painter, box, ground, tokens)

    def _paint_ground(self, painter: QPainter, box: QRectF, ground: float, tokens: Tokens) -> None:
        painter.setPen(pen(tokens.colour("soft"), 1.2))
        painter.drawLine(QPointF(box.left(), ground), QPointF(box.right(), ground))
        painter.setPen(pen(tokens.colour("hair"), 1.0))
        for x in range(0, int(box.width()), 14):
            at = box.left() + x
            painter.drawLine(QPointF(at + 6, ground + 3), QPointF(at, ground + 10))
        foot = ground + ROOM
        painter.setPen(pen(tokens.colour("hair"), 1.0))
        painter.drawLine(QPointF(box.left() + 34, foot), QPointF(box.right(), foot))
        words = QRectF(box.left() + 36, foot - 13, 120, 12)
        text(painter, words, self.deepest_words, tokens, "soft", pixels=10, side=LEFT)

    def _paint_unit(self, painter: QPainter, left: float, ground: float, tokens: Tokens) -> None:
        painter.setPen(pen(tokens.colour("soft"), 1.4))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for rise in (58, 47):
            painter.drawLine(QPointF(left + 30, ground - rise), QPointF(left + 96, ground - rise))
        wheel, opener = QPointF(left + 84, ground - 23), QPointF(left + 100, ground - 20)
        painter.drawEllipse(wheel, 23, 23)
        share = self.wanted if self.wanted is not None else self.now
        depth = ROOM * (share or 0.0)
        radius = 20 + depth / 2
        painter.drawEllipse(QPointF(opener.x(), ground + depth - radius), radius, radius)
        painter.drawEllipse(wheel, 3, 3)

    def _paint_closing(self, painter: QPainter, left: float, ground: float, tokens: Tokens) -> None:
        painter.setPen(pen(tokens.colour("soft"), 1.4))
        press = self.press if self.press is not None else 0.0
        wheel = QPointF(left + 178, ground - 13 + 3 * press)
        painter.drawEllipse(wheel, 13, 13)
        painter.drawLine(QPointF(left + 116, ground - 46), wheel)
        if self.press is None:
            return
        painter.setPen(pen(tokens.colour("accent"), 2.0))
        pull = 10 + 24 * press
        painter.drawLine(
            QPointF(wheel.x(), wheel.y() - 18 - pull), QPointF(wheel.x(), wheel.y() - 18)
        )
        painter.drawPolyline(
            [
                QPointF(wheel.x() - 4, wheel.y() - 23),
                QPointF(wheel.x(), wheel.y() - 18),
                QPointF(wheel.x() + 4, wheel.y() - 23),
            ]
        )

    def _paint_depths(self, painter: QPainter, box: QRectF, ground: float, tokens: Tokens) -> None:
        left, right = box.left() + 66, box.right() - 92
        levels = [(self.now, self.now_words, "work", Qt.PenStyle.DashLine)]
        same = self.now is not None and self.wanted is not None and self.now == self.wanted
        if same:
            levels = []
        levels.append((self.wanted, self.wanted_words, "accent", Qt.PenStyle.SolidLine))
        taken: list[float] = []
        for share, words, ink, style in levels:
            if share is None:
                continue
            y = ground + ROOM * share
            line = pen(tokens.colour(ink), 1.8)
            line.setStyle(style)
            painter.setPen(line)
            painter.drawLine(QPointF(left, y), QPointF(right, y))
            at = y if all(abs(y - other) > 13 for other in taken) else y - 14
            taken.append(at)
            place = QRectF(right + 6, at - 8, 88, 16)
            text(painter, place, words, tokens, ink, bold=ink == "accent", side=LEFT)
            if ink == "accent":
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(tokens.colour("accent"))
                painter.drawEllipse(QPointF(left + 62, y - 3), 3.4, 3.4)
