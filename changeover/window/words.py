"""Small makers of labels and buttons in the looks that the style sheet knows."""

from collections.abc import Callable

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QLabel, QPushButton, QSizePolicy

from changeover.window.fitting import fitted
from changeover.window.theme import TEXT_PX, font

PILL_PX = 12


def label(text: str = "", look: str = "", *, wrap: bool = False) -> QLabel:
    """Return a label in a look of the style sheet; a wrapped one never cuts its text."""
    made = QLabel(text)
    made.setTextFormat(Qt.TextFormat.PlainText)
    if look:
        made.setProperty("look", look)
    if wrap:
        made.setWordWrap(True)
        made.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
    return made


def button(text: str, look: str = "", clicked: Callable[[], object] | None = None) -> QPushButton:
    """Return a push button in a look of the style sheet."""
    made = QPushButton(text)
    made.setAutoDefault(False)
    if look:
        made.setProperty("look", look)
    if clicked is not None:
        made.clicked.connect(lambda _checked=False: clicked())
    return made


def pill(text: str, *, checkable: bool = True) -> QPushButton:
    """Return a small round button that stays pressed."""
    made = button(text, "pill")
    made.setCheckable(checkable)
    made.setMinimumWidth(QFontMetrics(font(PILL_PX, bold=True)).horizontalAdvance(text) + 26)
    return made


def rule() -> QFrame:
    """Return a thin line across."""
    made = QFrame()
    made.setProperty("look", "rule")
    return made


class Elided(QLabel):
    """A label of one line that ends in … when there is no room and tells all in its tip.

    With ``fit`` its text is set smaller and narrower first.
    """

    def __init__(self, text: str = "", look: str = "", *, fit: bool = False) -> None:
        super().__init__(text)
        self._fit = fit
        self.setTextFormat(Qt.TextFormat.PlainText)
        if look:
            self.setProperty("look", look)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)

    def minimumSizeHint(self) -> QSize:
        return QSize(40, super().minimumSizeHint().height())

    def sizeHint(self) -> QSize:
        return QSize(
            self.fontMetrics().horizontalAdvance(self.text()) + 2, super().sizeHint().height()
        )

    def paintEvent(self, _event: QPaintEvent) -> None:
        made, text = self._shown()
        self.setToolTip(self.text() if text != self.text() else "")
        painter = QPainter(self)
        painter.setFont(made)
        painter.setPen(self.palette().windowText().color())
        painter.drawText(self.contentsRect(), int(Qt.AlignmentFlag.AlignVCenter), text)

    def _shown(self) -> tuple[QFont, str]:
        """Return the font and the text that there is room for."""
        room = self.contentsRect().width()
        if self._fit:
            return fitted(self.text(), room, TEXT_PX)
        cut = self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, room)
        return self.font(), cut
