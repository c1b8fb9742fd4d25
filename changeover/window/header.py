"""The header: planter, what it is set to now, what comes next, rows ready, units and undo."""

from collections.abc import Callable, Mapping, Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QAction, QPainter, QPaintEvent, QPolygonF
from PySide6.QtWidgets import (
    QAbstractButton,
    QHBoxLayout,
    QMenu,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from changeover.quantities import Refusal, Units, how_many, show
from changeover.window.door import Door
from changeover.window.marks import pen
from changeover.window.outlook import Outlook
from changeover.window.theme import SMALL_PX, TEXT_PX, font
from changeover.window.words import Elided, button, label

HEADER_HEIGHT = 56
UNIT_WORDS = {Units.US: "inches · seeds/ac", Units.METRIC: "metric · seeds/ha"}


class NextButton(QAbstractButton):
    """What comes next, in the accent; a click chooses lot and field."""

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook = outlook
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setMaximumWidth(340)

    def sizeHint(self) -> QSize:
        return QSize(300, 40)

    def minimumSizeHint(self) -> QSize:
        return QSize(170, 40)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter, tokens = QPainter(self), self._outlook.tokens
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(pen(tokens.colour("accent"), 2.0 if self.hasFocus() else 1.0))
        painter.setBrush(tokens.colour("accent_wash"))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 6, 6)
        painter.setPen(tokens.colour("accent"))
        painter.setFont(font(SMALL_PX))
        width = self.width() - 46
        painter.drawText(14, 4, width, 16, Qt.AlignmentFlag.AlignVCenter, "next")
        painter.setPen(tokens.colour("ink"))
        painter.setFont(font(TEXT_PX))
        text = self.text() or "choose seed and field"
        shown = painter.fontMetrics().elidedText(text, Qt.TextElideMode.ElideRight, width)
        self.setToolTip(text if shown != text else "")
        painter.drawText(14, 18, width, 20, Qt.AlignmentFlag.AlignVCenter, shown)
        painter.setPen(pen(tokens.colour("accent")))
        x, y = self.width() - 22, self.height() / 2
        painter.drawPolyline(
            QPolygonF([QPointF(x, y - 3), QPointF(x + 5, y + 2), QPointF(x + 10, y - 3)])
        )


class ReadyBar(QWidget):
    """How many rows are ready, as words and a bar."""

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook, self.ready, self.rows = outlook, 0, 1
        self.setFixedSize(168, 40)

    def show_rows(self, ready: int, rows: int) -> None:
        self.ready, self.rows = ready, rows
        self.setAccessibleName(f"{ready} of {rows} rows ready")
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter, tokens = QPainter(self), self._outlook.tokens
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(tokens.colour("soft"))
        painter.setFont(font(SMALL_PX))
        painter.drawText(0, 4, 100, 16, Qt.AlignmentFlag.AlignVCenter, "rows ready")
        painter.setPen(tokens.colour("ink"))
        painter.setFont(font(TEXT_PX, bold=True))
        words = f"{self.ready} of {self.rows}"
        painter.drawText(0, 18, 80, 20, Qt.AlignmentFlag.AlignVCenter, words)
        left = painter.fontMetrics().horizontalAdvance(words) + 10
        bar = QRectF(left, 25, self.width() - left - 2, 8)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(tokens.colour("band"))
        painter.drawRoundedRect(bar, 4, 4)
        painter.setBrush(tokens.colour("accent"))
        bar.setWidth(bar.width() * self.ready / max(1, self.rows))
        painter.drawRoundedRect(bar, 4, 4)


class Arrow(QWidget):
    """The arrow from now to next."""

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook = outlook
        self.setFixedSize(34, 40)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(pen(self._outlook.tokens.colour("soft")))
        painter.drawLine(QPointF(2, 20), QPointF(31, 20))
        painter.drawPolyline(QPolygonF([QPointF(24, 14), QPointF(31, 20), QPointF(24, 26)]))


class Header(QWidget):
    """The header of the window; emits ``choose_next`` when the next lot is to be chosen."""

    choose_next = Signal()

    def __init__(self, planters: Callable[[], Sequence[str]], door: Door, outlook: Outlook) -> None:
        super().__init__()
        self.setObjectName("header")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setFixedHeight(HEADER_HEIGHT)
        self._planters, self._door, self._outlook = planters, door, outlook
        self._jobs: dict[str, Callable[[], object]] = {}
        self.planter = button("", "quiet")
        self.planter.setObjectName("planter")
        self.planter_menu = QMenu(self.planter)
        self.planter_menu.aboutToShow.connect(self._list_planters)
        self.planter.setMenu(self.planter_menu)
        self.planter.setToolTip("Choose another planter (Alt+P)")
        self.planter.setShortcut("Alt+P")
        self.about, self.now = label("", "soft"), Elided(fit=True)
        self.next, self.ready = NextButton(outlook), ReadyBar(outlook)
        self.next.clicked.connect(self.choose_next)
        self.units = button(UNIT_WORDS[outlook.units], "quiet")
        self.units.setMenu(self._units_menu())
        self.undo = button("Undo", clicked=door.stack.undo)
        self.undo.setToolTip("Undo lasts while the window is open; ticks can be taken back later")
        self.redo = button("Redo", "quiet", door.stack.redo)
        self._lay_out()
        door.stack.canUndoChanged.connect(self.undo.setEnabled)
        door.stack.canRedoChanged.connect(self.redo.setVisible)
        self.undo.setEnabled(door.stack.canUndo())
        self.redo.setVisible(door.stack.canRedo())

    def give_jobs(self, jobs: Mapping[str, Callable[[], object]]) -> None:
        """Offer jobs by their words below the list of planters."""
        self._jobs = dict(jobs)

    def refresh(self) -> None:
        """Show the board of the outlook."""
        if not self._outlook.planter:
            self.planter.setText("No planter yet ▾")
            return
        board, standing = self._outlook.board, self._outlook.standing
        spacing = show(board.planter.row_spacing, "row_spacing", self._outlook.units)
        self.planter.setText(f"{board.planter.name} ▾")
        self.about.setText(f"{how_many(board.planter.rows, 'row')}\n{spacing.replace('.0 ', ' ')}")
        self.now.setText(board.label_now)
        self.next.setText(board.label_next)
        self.next.setAccessibleName(f"next: {board.label_next or 'choose seed and field'}")
        self.next.update()
        self.ready.show_rows(standing.ready, standing.in_use)
        self.units.setText(f"{UNIT_WORDS[self._outlook.units]} ▾")

    def _lay_out(self) -> None:
        line = QHBoxLayout(self)
        line.setContentsMargins(12, 4, 14, 4)
        line.setSpacing(10)
        now = QVBoxLayout()
        now.setSpacing(1)
        now.addStretch()
        now.addWidget(label("now", "soft"))
        now.addWidget(self.now)
        now.addStretch()
        line.addWidget(self.planter)
        line.addWidget(self.about)
        line.addSpacing(8)
        line.addLayout(now, 2)
        line.addWidget(Arrow(self._outlook))
        line.addWidget(self.next, 3)
        line.addSpacing(8)
        line.addWidget(self.ready)
        line.addStretch(0)
        for widget in (self.units, self.redo, self.undo):
            line.addWidget(widget)

    def _list_planters(self) -> None:
        self.planter_menu.clear()
        try:
            names = self._planters()
        except Refusal as refusal:
            self._door.refused.emit(str(refusal))
            return
        for words, job in self._jobs.items():
            self.planter_menu.addAction(words).triggered.connect(lambda _on=False, job=job: job())
        before = self.planter_menu.insertSeparator(self.planter_menu.actions()[0])
        for name in names:
            action = QAction(name, self.planter_menu, checkable=True)
            action.setChecked(name == self._outlook.planter)
            action.triggered.connect(lambda _on=False, name=name: self._outlook.show_planter(name))
            self.planter_menu.insertAction(before, action)

    def _units_menu(self) -> QMenu:
        menu = QMenu(self)
        for units, words in UNIT_WORDS.items():
            action = menu.addAction(words)
            action.triggered.connect(lambda _on=False, units=units: self._outlook.show_units(units))
        menu.addSeparator()
        menu.addAction("Light or dark", self._outlook.turn_lights)
        return menu
