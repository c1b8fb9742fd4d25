"""A piece of the seed disc to scale: its cells, the seed on one, the singulator over them."""

from dataclasses import dataclass
from math import cos, pi, sin

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter

from changeover.window.marks import pen
from changeover.window.planter.signs import text
from changeover.window.theme import Tokens

LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
SHOWN_MM = 46.0


@dataclass(frozen=True)
class DiscSketch:
    """Sizes in millimetres, None where not known; ``open_share`` is left open by the singulator."""

    name: str
    cells: int
    hole: float
    circle: float | None
    seed: tuple[float, float] | None
    open_share: float | None
    height: int = 142

    @property
    def says(self) -> str:
        return f"{self.name}: {self.cells} cells, hole {self.hole:g} mm"

    @property
    def gap(self) -> float:
        """The way from cell to cell; three holes where the circle of cells is not known."""
        return pi * self.circle / self.cells if self.circle else 3 * self.hole

    def paint(self, painter: QPainter, box: QRectF, tokens: Tokens) -> None:
        scale = box.width() / SHOWN_MM
        radius = (self.circle / 2 if self.circle else 400.0) * scale
        crown = QPointF(box.center().x(), box.top() + 34)
        hub = QPointF(crown.x(), crown.y() + radius)
        painter.save()
        painter.setClipRect(box.adjusted(0, 0, 0, -13 * len(self._lines()) - 4))
        painter.setPen(pen(tokens.colour("soft"), 1.2))
        painter.setBrush(tokens.colour("rail"))
        rim = radius + 8 * scale / 2
        painter.drawEllipse(hub, rim, rim)
        spots = list(self._spots(hub, radius, scale))
        self._paint_cells(painter, spots, scale, tokens)
        self._paint_cover(painter, hub, radius, scale, tokens)
        painter.restore()
        self._paint_words(painter, box, tokens)

    def _lines(self) -> list[str]:
        words = [self.says]
        if self.open_share is not None:
            words.append(f"singulator leaves {self.open_share:.0%} of the cell open")
        if self.seed is not None:
            words.append(f"seed {self.seed[0]:.1f} × {self.seed[1]:.1f} mm, to scale")
        if self.circle is None:
            words.append("way between the cells not known")
        return words

    def _spots(self, hub: QPointF, radius: float, scale: float) -> list[QPointF]:
        turn = self.gap * scale / radius
        return [
            QPointF(hub.x() + radius * sin(turn * n), hub.y() - radius * cos(turn * n))
            for n in range(-6, 7)
        ]

    def _paint_cells(
        self, painter: QPainter, spots: list[QPointF], scale: float, tokens: Tokens
    ) -> None:
        half = self.hole / 2 * scale
        for number, spot in enumerate(spots):
            painter.setPen(pen(tokens.colour("ink"), 1.2))
            painter.setBrush(tokens.colour("surface"))
            painter.drawEllipse(spot, half, half)
            if self.seed is not None and number % 2 == 0:
                painter.setPen(pen(tokens.colour("done"), 1.4))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawEllipse(spot, self.seed[0] / 2 * scale, self.seed[1] / 2 * scale)

    def _paint_cover(
        self, painter: QPainter, hub: QPointF, radius: float, scale: float, tokens: Tokens
    ) -> None:
        if self.open_share is None:
            return
        edge = radius - self.hole / 2 * scale + self.open_share * self.hole * scale
        width = 7 * scale
        line = pen(tokens.colour("accent", 46), width)
        line.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.setPen(line)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawEllipse(hub, edge + width / 2, edge + width / 2)
        painter.setPen(pen(tokens.colour("accent"), 1.4))
        painter.drawEllipse(hub, edge, edge)

    def _paint_words(self, painter: QPainter, box: QRectF, tokens: Tokens) -> None:
        words = self._lines()
        top = box.bottom() - 13 * len(words)
        for number, line in enumerate(words):
            place = QRectF(box.left() + 2, top + 13 * number, box.width() - 4, 13)
            text(painter, place, line, tokens, "soft", pixels=10, side=LEFT)
