"""Small drawings beside a reason: a widget that shows one, and what each must be able to do."""

from typing import Protocol

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from changeover.window.marks import pen
from changeover.window.outlook import Outlook
from changeover.window.theme import Tokens


class Sketch(Protocol):
    """One small drawing: ``height`` in pixels, ``says`` the same in words."""

    @property
    def height(self) -> int: ...
    @property
    def says(self) -> str: ...
    def paint(self, painter: QPainter, box: QRectF, tokens: Tokens) -> None: ...


class SketchCard(QWidget):
    """A card that shows a sketch, or hides where there is none."""

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook = outlook
        self.sketch: Sketch | None = None
        self.hide()

    def show_sketch(self, sketch: Sketch | None) -> None:
        self.sketch = sketch
        self.setVisible(sketch is not None)
        if sketch is not None:
            self.setFixedHeight(sketch.height)
            self.setAccessibleName(sketch.says)
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self.sketch is None:
            return
        painter, tokens = QPainter(self), self._outlook.tokens
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(pen(tokens.colour("hair"), 1.0))
        painter.setBrush(tokens.colour("surface"))
        box = QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5)
        painter.drawRoundedRect(box, 6, 6)
        self.sketch.paint(painter, box.adjusted(10, 6, -10, -6), tokens)
