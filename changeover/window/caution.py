"""A bar of cautions: the triangle and whole sentences, never cut."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from changeover.window.marks import Mark, paint_mark
from changeover.window.outlook import Outlook
from changeover.window.words import button, label

SHORT = 2


class CautionBar(QWidget):
    """Cautions that hold for a whole page; hidden when there are none."""

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook = outlook
        self.setObjectName("caution")
        self.words = label(wrap=True)
        self.words.setObjectName("cautionText")
        self.more = button("", "quiet")
        self.more.setCheckable(True)
        self.more.toggled.connect(self._say)
        box = QHBoxLayout(self)
        box.setContentsMargins(44, 6, 10, 6)
        box.addWidget(self.words, 1)
        box.addWidget(self.more, 0, Qt.AlignmentFlag.AlignTop)
        self._lines: tuple[str, ...] = ()
        self.hide()

    def show_lines(self, lines: Sequence[str]) -> None:
        """Show the cautions, one a line; beyond two, the rest behind a button."""
        self._lines = tuple(lines)
        self.more.setVisible(len(self._lines) > SHORT)
        self.setVisible(bool(self._lines))
        self._say()

    def _say(self) -> None:
        whole = self.more.isChecked() or len(self._lines) <= SHORT
        first, last = self._lines[: SHORT - 1], self._lines[-1:]
        self.words.setText("\n".join(self._lines if whole else (*first, *last)))
        self.more.setText("fewer" if whole else f"all {len(self._lines)} cautions")

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter, tokens = QPainter(self), self._outlook.tokens
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(tokens.colour("work_wash"))
        painter.setBrush(tokens.colour("work_wash"))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), 6, 6)
        paint_mark(painter, QRectF(13, 8, 20, 20), Mark.ATTENTION, tokens)
