"""A scale of one quantity: the band that is as good, the value now, the one wanted, the limit."""

from dataclasses import dataclass
from typing import ClassVar

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter

from changeover.window.marks import pen
from changeover.window.planter.signs import MIDDLE, text
from changeover.window.theme import Tokens


@dataclass(frozen=True)
class Scale:
    """The unit of a scale and the decimals that it is written with."""

    unit: str
    digits: int


@dataclass(frozen=True)
class BandSketch:
    """Figures in the unit that is shown; ``low`` and ``high`` bound the band."""

    scale: Scale
    low: float | None
    high: float | None
    now: float | None
    wanted: float | None
    limit: float | None
    height: ClassVar[int] = 88

    @property
    def says(self) -> str:
        now = "not known" if self.now is None else f"{self.now:.{self.scale.digits}f}"
        wanted = "open" if self.wanted is None else f"{self.wanted:.{self.scale.digits}f}"
        return f"now {now}, wanted {wanted} {self.scale.unit}"

    @property
    def figures(self) -> list[float]:
        every = (self.low, self.high, self.now, self.wanted, self.limit)
        return [figure for figure in every if figure is not None]

    def _at(self, box: QRectF, figure: float) -> float:
        figures = self.figures
        low = min(0.0, *figures) if self.scale.digits < 3 else min(figures)
        span = (max(figures) - low) * 1.08 or 1.0
        return box.left() + 10 + (box.width() - 20) * (figure - low) / span

    def paint(self, painter: QPainter, box: QRectF, tokens: Tokens) -> None:
        axis = box.top() + 46
        if self.low is not None and self.high is not None:
            left, right = self._at(box, self.low), self._at(box, self.high)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(tokens.colour("accent_wash"))
            painter.drawRoundedRect(QRectF(left, axis - 14, right - left, 28), 3, 3)
            self._name(
                painter, box, left, axis + 16, f"{self.low:,.{self.scale.digits}f}", tokens, "soft"
            )
            self._name(
                painter,
                box,
                right,
                axis + 16,
                f"{self.high:,.{self.scale.digits}f}",
                tokens,
                "soft",
            )
        painter.setPen(pen(tokens.colour("soft"), 1.2))
        painter.drawLine(QPointF(box.left() + 4, axis), QPointF(box.right() - 4, axis))
        self._figure(painter, box, axis, self.limit, "soft", "limit", tokens)
        if self.now != self.wanted:
            self._figure(painter, box, axis, self.now, "work", "now", tokens)
        self._figure(painter, box, axis, self.wanted, "accent", "wanted", tokens)

    def _figure(
        self,
        painter: QPainter,
        box: QRectF,
        axis: float,
        figure: float | None,
        ink: str,
        name: str,
        tokens: Tokens,
    ) -> None:
        if figure is None:
            return
        x = self._at(box, figure)
        line = pen(tokens.colour(ink), 2.0)
        line.setStyle(Qt.PenStyle.SolidLine if ink == "accent" else Qt.PenStyle.DotLine)
        painter.setPen(line)
        painter.drawLine(QPointF(x, axis - 16), QPointF(x, axis + 14))
        words = f"{figure:,.{self.scale.digits}f}".replace(",", "\u202f")
        level = axis - 32 if ink == "accent" else axis - 45
        self._name(painter, box, x, level, f"{name} {words}", tokens, ink)

    def _name(
        self,
        painter: QPainter,
        box: QRectF,
        x: float,
        y: float,
        words: str,
        tokens: Tokens,
        ink: str,
    ) -> None:
        left = min(max(x - 50, box.left()), box.right() - 100)
        words = words.replace(",", "\u202f")
        text(
            painter, QRectF(left, y, 100, 14), words, tokens, ink, bold=ink == "accent", side=MIDDLE
        )
