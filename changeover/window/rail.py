"""The rail of steps at the left: mark, title and a word on how far each step is."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRectF, QSize, Qt, Signal, SignalInstance
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QVBoxLayout, QWidget

from changeover.window.fitting import fitted
from changeover.window.marks import Mark, paint_mark, pen
from changeover.window.outlook import Outlook
from changeover.window.pages import PageLine
from changeover.window.theme import SMALL_PX, TEXT_PX, font
from changeover.window.words import button, label

RAIL_WIDTH, STEP_HEIGHT = 124, 54


@dataclass(frozen=True)
class RailNote:
    """How far a step is: its mark and a few words."""

    mark: Mark = Mark.OPEN
    text: str = ""


class RailStep(QAbstractButton):
    """One step of the rail, painted as a whole."""

    def __init__(self, line: PageLine, outlook: Outlook) -> None:
        super().__init__()
        self.line, self._outlook, self.note = line, outlook, RailNote()
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(line.title)
        self.setText(line.title)

    def show_note(self, note: RailNote) -> None:
        self.note = note
        self.setToolTip(note.text)
        self.setAccessibleDescription(f"{note.mark.value}; {note.text}")
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(RAIL_WIDTH, STEP_HEIGHT)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        tokens = self._outlook.tokens
        if self.isChecked() or self.hasFocus():
            painter.setPen(pen(tokens.colour("accent"), 1.0 if self.isChecked() else 0.6))
            painter.setBrush(tokens.colour("surface" if self.isChecked() else "rail"))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(6.5, 1.5, -6.5, -1.5), 8, 8)
        mark = Mark.HERE if self.isChecked() else self.note.mark
        paint_mark(
            painter,
            QRectF(16, self.height() / 2 - (11 if self.note.text else 8), 16, 16),
            mark,
            tokens,
        )
        self._paint_words(painter)

    def _paint_words(self, painter: QPainter) -> None:
        tokens, left = self._outlook.tokens, 40
        width = self.width() - left - 9
        painter.setPen(tokens.colour("ink"))
        painter.setFont(font(TEXT_PX, bold=self.isChecked()))
        top = 8 if self.note.text else 17
        painter.drawText(left, top, width, 20, Qt.AlignmentFlag.AlignVCenter, self.line.title)
        painter.setPen(tokens.colour("soft"))
        made, text = fitted(self.note.text, width, SMALL_PX)
        painter.setFont(made)
        painter.drawText(left, 28, width, 18, Qt.AlignmentFlag.AlignVCenter, text)


class Rail(QWidget):
    """All steps; emits the key of the one that was chosen."""

    chosen = Signal(str)
    again = Signal()

    def __init__(self, lines: Sequence[PageLine], outlook: Outlook) -> None:
        super().__init__()
        self.setObjectName("rail")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setFixedWidth(RAIL_WIDTH)
        self._group = QButtonGroup(self)
        self.steps = {line.key: RailStep(line, outlook) for line in lines}
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 12, 0, 12)
        column.setSpacing(4)
        for step in self.steps.values():
            self._group.addButton(step)
            column.addWidget(step)
            step.clicked.connect(lambda _on=False, key=step.line.key: self.chosen.emit(key))
        column.addStretch()
        self.demo = _demo_foot(self.again)
        column.addWidget(self.demo)

    def show_demo(self, *, demo: bool) -> None:
        """Say that all names are invented, with the way back to the beginning."""
        self.demo.setVisible(demo)

    def mark_open(self, key: str) -> None:
        """Show which page is open."""
        self.steps[key].setChecked(True)

    def show_notes(self, notes: Mapping[str, RailNote]) -> None:
        for key, step in self.steps.items():
            step.show_note(notes.get(key, RailNote()))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        ways = {Qt.Key.Key_Up: self.focusPreviousChild, Qt.Key.Key_Down: self.focusNextChild}
        way = ways.get(Qt.Key(event.key()))
        if way is None:
            super().keyPressEvent(event)
        else:
            way()


def _demo_foot(again: SignalInstance) -> QWidget:
    foot = QWidget()
    column = QVBoxLayout(foot)
    column.setContentsMargins(12, 0, 8, 0)
    column.addWidget(label("Demo: all names are invented.", "soft", wrap=True))
    start = button("Start again", "quiet", again.emit)
    start.setToolTip("Put the demo back to its beginning; what was done in it is lost")
    column.addWidget(start)
    foot.hide()
    return foot
