"""A field for one day, written as year-month-day, with the sentence of what is wrong below it."""

from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from changeover.quantities import Refusal
from changeover.window.words import label


class DayField(QWidget):
    """One day, None when empty."""

    changed = Signal()

    def __init__(self, what: str) -> None:
        super().__init__()
        self._what = what
        self.line, self.sentence = QLineEdit(), label(look="work-text", wrap=True)
        self.line.setPlaceholderText("year-month-day")
        self.line.setAccessibleName(what)
        self.sentence.hide()
        self.setFocusProxy(self.line)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addWidget(self.line)
        column.addWidget(self.sentence)
        self.line.textChanged.connect(self._typed)

    def day(self) -> date | None:
        """Return the day, None when the field is empty. Raises Refusal."""
        text = self.line.text().strip()
        if not text:
            return None
        try:
            return date.fromisoformat(text)
        except ValueError as error:
            raise Refusal(
                f"{self._what}: “{text[:20]}” is not a day; write it like 2027-05-03."
            ) from error

    def show_day(self, day: date | None) -> None:
        self.line.setText(day.isoformat() if day else "")

    def check(self) -> None:
        """Say below the field what is wrong with it."""
        try:
            self.day()
            says = ""
        except Refusal as refusal:
            says = str(refusal)
        self.sentence.setText(says)
        self.sentence.setVisible(bool(says))

    def _typed(self) -> None:
        self.check()
        self.changed.emit()
