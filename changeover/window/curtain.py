"""What stands on the screen from the first moment until the store is open."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from changeover.window.theme import PAGE_TITLE_PX, TEXT_PX, Tokens, font

HEADER_HEIGHT, RAIL_WIDTH = 56, 124


@contextmanager
def no_collecting() -> Iterator[None]:
    """Look for no garbage while everything is imported: there is none yet, and it takes a tenth."""
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()
        gc.enable()


class Curtain(QWidget):
    """The empty frame of the window; ``painted`` is emitted once it can be seen.

    It needs none of the libraries that reckon or store, so it is there before they are.
    """

    painted = Signal()

    def __init__(self, tokens: Tokens, words: str) -> None:
        super().__init__()
        self.setObjectName("curtain")
        self.setWindowTitle("Changeover")
        self._tokens, self._words, self._seen = tokens, words, False
        self.resize(1280, 720)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter, tokens = QPainter(self), self._tokens
        width, height = self.width(), self.height()
        painter.fillRect(self.rect(), tokens.colour("surface"))
        painter.fillRect(0, HEADER_HEIGHT, RAIL_WIDTH, height, tokens.colour("rail"))
        painter.setPen(tokens.colour("hair"))
        painter.drawLine(0, HEADER_HEIGHT, width, HEADER_HEIGHT)
        painter.drawLine(RAIL_WIDTH, HEADER_HEIGHT, RAIL_WIDTH, height)
        painter.setPen(tokens.colour("ink"))
        painter.setFont(font(PAGE_TITLE_PX, bold=True))
        painter.drawText(
            QRectF(19, 0, 400, HEADER_HEIGHT), Qt.AlignmentFlag.AlignVCenter, "Changeover"
        )
        painter.setPen(tokens.colour("soft"))
        painter.setFont(font(TEXT_PX))
        page = QRectF(RAIL_WIDTH, HEADER_HEIGHT, width - RAIL_WIDTH, height - HEADER_HEIGHT)
        painter.drawText(page, Qt.AlignmentFlag.AlignCenter, self._words)
        if not self._seen:
            self._seen = True
            QTimer.singleShot(0, self, self.painted.emit)
