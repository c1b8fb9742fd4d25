"""The strip of positions of an index or a depth scale, with the one now and the one wanted."""

from dataclasses import dataclass

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter

from changeover.window.planter.signs import MIDDLE, text
from changeover.window.theme import Tokens

LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)


@dataclass(frozen=True)
class NotchSketch:
    """``names`` of the positions from 1; ``now`` and ``wanted`` are their numbers or None."""

    title: str
    names: tuple[str, ...]
    now: int | None
    wanted: int | None
    height: int = 62

    @property
    def says(self) -> str:
        now = self.names[self.now - 1] if self.now else "not known"
        wanted = self.names[self.wanted - 1] if self.wanted else "open"
        return f"{self.title}: now {now}, wanted {wanted}"

    def paint(self, painter: QPainter, box: QRectF, tokens: Tokens) -> None:
        text(
            painter,
            QRectF(box.left() + 2, box.top(), 52, 16),
            self.title,
            tokens,
            "soft",
            side=LEFT,
        )
        pitch = box.width() / len(self.names)
        for number, name in enumerate(self.names, start=1):
            left = box.left() + pitch * (number - 1)
            chosen, leaving = number == self.wanted, number == self.now != self.wanted
            ink = "accent" if chosen else "work" if leaving else "band"
            tall = 17 if chosen else 12 if leaving else 9
            width = min(pitch - 4, 16.0)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(tokens.colour(ink))
            bar = QRectF(left + (pitch - width) / 2, box.top() + 32, width, tall)
            painter.drawRoundedRect(bar, 2, 2)
            if chosen or leaving:
                wide = QRectF(left - 14, box.top() + 15, pitch + 28, 15)
                inside = wide.intersected(box)
                text(painter, inside, name, tokens, ink, bold=chosen, side=MIDDLE)
