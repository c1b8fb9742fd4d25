"""The reason panel: what is proposed for the cell in view, and who says so."""

from PySide6.QtCore import QPointF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from changeover.planter.setup import Cell
from changeover.window.caution import CautionBar
from changeover.window.marks import pen
from changeover.window.matrix.sheet import Sheet
from changeover.window.outlook import Outlook
from changeover.window.reason.sketch import SketchCard
from changeover.window.reason.sketches import sketches
from changeover.window.reason.words import NO_CELL, ReasonWords, Rung, reason_words
from changeover.window.words import button, label

PANEL_WIDTH = 292
LONG_HOW = 320


class Dot(QWidget):
    """The dot before a rung, filled for the one used."""

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook, self.used = outlook, False
        self.setFixedSize(QSize(12, 17))

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter, tokens = QPainter(self), self._outlook.tokens
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink = tokens.colour("accent" if self.used else "soft")
        painter.setPen(pen(ink, 1.4))
        painter.setBrush(ink if self.used else Qt.BrushStyle.NoBrush)
        painter.drawEllipse(QPointF(6, 9), 4, 4)


class Ladder(QWidget):
    """The trust order, best first, with the rung that is used."""

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._outlook = outlook
        self.rungs: list[tuple[Dot, QLabel]] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(4)

    def show_rungs(self, rungs: tuple[Rung, ...]) -> None:
        while len(self.rungs) < len(rungs):
            self._add()
        for number, (dot, words) in enumerate(self.rungs):
            shown = number < len(rungs)
            dot.setVisible(shown)
            words.setVisible(shown)
            if shown:
                rung = rungs[number]
                dot.used = rung.used
                dot.update()
                words.setText(f"{rung.words} — used" if rung.used else rung.words)
                words.setStyleSheet("font-weight: bold;" if rung.used else "")

    def _add(self) -> None:
        dot, words = Dot(self._outlook), label(wrap=True)
        line = QHBoxLayout()
        line.setSpacing(7)
        line.addWidget(dot, 0, Qt.AlignmentFlag.AlignTop)
        line.addWidget(words, 1)
        self._column.addLayout(line)
        self.rungs.append((dot, words))


class ReasonPanel(QFrame):
    """Shows one cell; ``use`` and ``keep`` ask to take the proposal or to keep as found."""

    use = Signal(object)
    keep = Signal()

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self.setObjectName("side")
        self.setFixedWidth(PANEL_WIDTH)
        self.words = ReasonWords(NO_CELL, "")
        self.title, self.value = label(look="title", wrap=True), label(look="work", wrap=True)
        self.proposed, self.source = label(wrap=True), label(look="source", wrap=True)
        self.why, self.how = label(wrap=True), label(wrap=True)
        self.headings = {name: label(name, "heading") for name in ("Why", "How", "Trust order")}
        self.main, self.strip = SketchCard(outlook), SketchCard(outlook)
        self.area = QScrollArea()
        self.ladder, self.caution = Ladder(outlook), CautionBar(outlook)
        self.more = button("All of the reckoning ▾", "quiet", lambda: self._show_how(in_full=True))
        self.use_button = button(
            "Use for all", "main", lambda: self.use.emit(self.words.open_cells)
        )
        self.keep_button = button("Keep as found", clicked=self.keep.emit)
        self.use_button.setToolTip("Take the proposal as the target (Alt+A)")
        self.keep_button.setToolTip("Make the target what is there now (Alt+K)")
        self.use_button.setShortcut("Alt+A")
        self.keep_button.setShortcut("Alt+K")
        self._lay_out()
        self.show_nothing()

    def show_nothing(self) -> None:
        """Say that a cell is to be chosen."""
        self.show_words(ReasonWords("Says who?", "", why=NO_CELL))

    def show_words(self, words: ReasonWords) -> None:
        """Show what there is to say of something that is no cell: no drawing goes with it."""
        self._show(words)
        self.main.show_sketch(None)
        self.strip.show_sketch(None)

    def show_cell(self, sheet: Sheet, cell: Cell) -> None:
        """Show what there is to say of a cell."""
        self._show(reason_words(sheet, cell))
        main, strip = sketches(sheet, cell)
        self.main.show_sketch(main)
        self.strip.show_sketch(strip)

    def _show(self, words: ReasonWords) -> None:
        self.words = words
        self.title.setText(words.title)
        self.value.setText(words.value)
        look = "work" if words.differs else "strong"
        if self.value.property("look") != look:
            self.value.setProperty("look", look)
            self.value.style().polish(self.value)
        texts = {self.value: words.value, self.proposed: words.proposed, self.why: words.why}
        texts |= {self.how: words.how, self.source: words.source}
        for widget, text in texts.items():
            widget.setText(text)
            widget.setVisible(bool(text))
        self.headings["Why"].setVisible(bool(words.source))
        self.headings["How"].setVisible(bool(words.how))
        self._show_how(in_full=False)
        self.headings["Trust order"].setVisible(bool(words.rungs))
        self.ladder.show_rungs(words.rungs)
        self.caution.show_lines(words.cautions)
        self.use_button.setText(words.use)
        self.use_button.setEnabled(bool(words.open_cells))
        self.keep_button.setEnabled(words.can_keep)

    def _show_how(self, *, in_full: bool) -> None:
        """Show how the value was reckoned; a long reckoning at first by its beginning."""
        how = self.words.how
        long = len(how) > LONG_HOW
        self.how.setText(how if in_full or not long else f"{beginning(how, LONG_HOW)} …")
        self.more.setVisible(long and not in_full)

    def _lay_out(self) -> None:
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(18, 16, 14, 12)
        column.setSpacing(6)
        head = (self.title, self.value, self.proposed, self.main, self.strip)
        body = (
            self.headings["Why"], self.why, self.source, self.headings["How"], self.how, self.more,
            self.headings["Trust order"], self.ladder, self.caution,
        )  # fmt: skip
        for widget in (*head, *body):
            if widget in self.headings.values():
                column.addSpacing(6)
            column.addWidget(widget)
        column.addStretch()
        area = self.area
        area.setWidget(inside)
        area.setWidgetResizable(True)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.buttons = QHBoxLayout()
        self.buttons.setContentsMargins(18, 8, 14, 14)
        self.buttons.setSpacing(8)
        self.buttons.addWidget(self.use_button, 1)
        self.buttons.addWidget(self.keep_button, 1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(area, 1)
        whole.addLayout(self.buttons)


def beginning(text: str, most: int) -> str:
    """Return the beginning of a text up to the end of a word."""
    return text[:most].rsplit(maxsplit=1)[0].rstrip(",;:(")
