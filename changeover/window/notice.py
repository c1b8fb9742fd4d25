"""The strip at the foot of the window that says in one sentence why an edit was refused."""

from PySide6.QtCore import QRectF, QSize, Qt, QTimer
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget

from changeover.window.marks import Mark, paint_mark
from changeover.window.outlook import Outlook

STAYS_MS = 20_000


class MarkLabel(QWidget):
    """One mark as a widget."""

    def __init__(self, mark: Mark, outlook: Outlook, size: int = 18) -> None:
        super().__init__()
        self.mark, self._outlook, self._size = mark, outlook, size
        self.setFixedSize(QSize(size, size))
        self.setAccessibleName(mark.value)

    def paintEvent(self, _event: QPaintEvent) -> None:
        box = QRectF(0, 0, self._size, self._size)
        paint_mark(QPainter(self), box, self.mark, self._outlook.tokens)


class Notice(QWidget):
    """Shows a sentence until it is closed, another takes its place or some time has gone."""

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self.setObjectName("notice")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.words = QLabel()
        self.words.setWordWrap(True)
        close = QPushButton("Close")
        close.setProperty("look", "quiet")
        close.clicked.connect(self.hide)
        line = QHBoxLayout(self)
        line.setContentsMargins(16, 6, 12, 6)
        line.setSpacing(10)
        line.addWidget(MarkLabel(Mark.ATTENTION, outlook))
        line.addWidget(self.words, 1)
        line.addWidget(close)
        self._timer = QTimer(self, singleShot=True, interval=STAYS_MS)
        self._timer.timeout.connect(self.hide)
        self.hide()

    def say(self, sentence: str) -> None:
        self.words.setText(sentence)
        self.setAccessibleName(sentence)
        self.show()
        self._timer.start()
