"""Beside the worklist: what comes next, who does what, parts to lay out, what comes back."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QGridLayout, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from changeover.desk.plan_switch import WorkView
from changeover.desk.prove.tasks import FINDING
from changeover.switch.shared_kit import at_hand
from changeover.switch.tasks import KitLine
from changeover.window.outlook import Outlook
from changeover.window.words import button, label

SIDE_WIDTH = 340


class WorkSide(QWidget):
    """The column at the right; emits ``done`` for the next step and ``signed`` at the end.

    ``labels_wanted`` asks for the labels of the bags of parts.
    """

    done = Signal()
    signed = Signal()
    labels_wanted = Signal()

    def __init__(self, outlook: Outlook, who: QWidget) -> None:
        super().__init__()
        self._outlook, self.who = outlook, who
        self.setObjectName("side")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setFixedWidth(SIDE_WIDTH)
        self.next_title = label("", "strong", wrap=True)
        self.next_about = label("", "soft", wrap=True)
        self.next_button = button("Done", "main", self.done.emit)
        self.sign_button = button("Sign the switch off", "main", self.signed.emit)
        self.parts, self.back = QGridLayout(), QGridLayout()
        self.parts_title = label("Parts to lay out", "title")
        self.labels = button("Labels…", clicked=self.labels_wanted.emit)
        self.labels.setToolTip("Print a label for each bag of parts, with who fits them")
        self.back_title = label("Back to the shelf", "title")
        self._lay_out()

    def show_view(self, view: WorkView) -> None:
        """Show the next step and the kit of a worklist."""
        self._show_next(view)
        lines, back = view.kit.lines, view.kit.back
        _empty(self.parts)
        for number, line in enumerate(lines):
            self._show_part(number, line)
        _empty(self.back)
        for number, part in enumerate(back):
            self.back.addWidget(label(str(part.count), "strong"), number, 0)
            self.back.addWidget(label(part.part), number, 1)
            self.back.addWidget(label("to be inspected", "soft"), number, 2)
        self.parts_title.setText("Parts to lay out" if lines else "No parts to lay out")
        self.back_title.setVisible(bool(back))
        self.labels.setVisible(bool(lines))

    def set_yard(self, yard: bool) -> None:
        """Make the buttons large enough for a gloved finger."""
        for made in (self.next_button, self.sign_button):
            made.setMinimumHeight(48 if yard else 0)

    def _show_next(self, view: WorkView) -> None:
        task, progress = view.progress.next_task, view.progress
        self.next_button.setVisible(task is not None)
        self.sign_button.setVisible(view.ready_to_sign)
        if task is None:
            self.next_title.setText("All done" if progress.tasks_total else "Nothing to do")
            self.next_about.setText("")
            return
        place = progress.left(task)[0]
        self.next_title.setText(f"Next: {place.label}")
        self.next_about.setText(task.title)
        self.next_button.setText(f"Done at {place.label}")
        if task.key.startswith(FINDING):
            self.next_button.hide()
            self.next_title.setText(f"Prove again: {place.label}")

    def _show_part(self, number: int, line: KitLine) -> None:
        self.parts.addWidget(label(str(line.needed), "strong"), number, 0)
        self.parts.addWidget(label(line.part), number, 1)
        loud = bool(line.short_together)
        said = f"! {at_hand(line)}" if loud else at_hand(line)
        self.parts.addWidget(label(said, "work-text" if loud else "soft", wrap=True), number, 2)

    def _lay_out(self) -> None:
        card = QFrame()
        card.setProperty("look", "card")
        inner = QVBoxLayout(card)
        inner.setSpacing(6)
        for widget in (self.next_title, self.next_about, self.next_button, self.sign_button):
            inner.addWidget(widget)
        inside, scroll, column = QWidget(), QScrollArea(), QVBoxLayout()
        inside.setLayout(column)
        column.setContentsMargins(20, 16, 16, 16)
        column.setSpacing(10)
        column.addWidget(card)
        column.addSpacing(8)
        column.addWidget(self.who)
        column.addSpacing(8)
        parts = QHBoxLayout()
        parts.addWidget(self.parts_title, 1)
        parts.addWidget(self.labels)
        column.addLayout(parts)
        column.addLayout(self.parts)
        column.addSpacing(8)
        column.addWidget(self.back_title)
        column.addLayout(self.back)
        column.addStretch()
        for grid in (self.parts, self.back):
            grid.setColumnStretch(2, 1)
            grid.setHorizontalSpacing(12)
            grid.setVerticalSpacing(6)
        scroll.setWidget(inside)
        scroll.setWidgetResizable(True)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(scroll)


def _empty(grid: QGridLayout) -> None:
    while grid.count():
        item = grid.takeAt(0)
        if item is not None and (widget := item.widget()) is not None:
            widget.hide()
            widget.deleteLater()
