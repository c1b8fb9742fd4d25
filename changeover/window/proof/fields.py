"""Fields for entering proofs by keyboard: Enter goes on, and undo reaches the window."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QWidget
from typing_extensions import override

from changeover.window.words import label


class ProofField(QLineEdit):
    """A line edit that leaves undo to the window while nothing has been typed in it."""

    def __init__(self, name: str, width: int = 0, hint: str = "") -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setPlaceholderText(hint)
        if width:
            self.setFixedWidth(width)

    @override
    def event(self, event: QEvent) -> bool:
        if (
            event.type() is QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and event.matches(QKeySequence.StandardKey.Undo)
            and not self.isUndoAvailable()
        ):
            event.ignore()
            return False
        return super().event(event)


class FieldLine(QWidget):
    """Named fields in a line; Enter goes to the next one and, in the last ones, calls ``done``."""

    def __init__(
        self, fields: Sequence[tuple[str, ProofField]], done: Callable[[], object], last: int = 1
    ) -> None:
        super().__init__()
        self.fields = tuple(field for _, field in fields)
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(6)
        self.line = line
        for number, (name, field) in enumerate(fields):
            line.addWidget(label(name, "soft"))
            line.addWidget(field, 1 if not field.minimumWidth() else 0)
            if number >= len(fields) - last:
                field.returnPressed.connect(done)
            else:
                field.returnPressed.connect(self._to(fields[number + 1][1]))

    def texts(self) -> tuple[str, ...]:
        """Return what stands in the fields."""
        return tuple(field.text() for field in self.fields)

    def start(self, number: int = 0) -> None:
        """Put the keyboard on a field, its text chosen."""
        self.fields[number].setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.fields[number].selectAll()

    def _to(self, field: ProofField) -> Callable[[], None]:
        def go() -> None:
            field.setFocus(Qt.FocusReason.TabFocusReason)
            field.selectAll()

        return go
