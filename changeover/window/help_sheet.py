"""The help sheet: every key on one page, over the window until it is closed."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from changeover.window.keys import MATRIX_KEYS, SEED_KEYS, WINDOW_KEYS, Key
from changeover.window.words import button, label

WORDS_WIDTH = 300
UNDO_LASTS = (
    "Undo lasts while the window is open. What is ticked can be unticked at any time, today or\n"
    "tomorrow; what was there before always stands in the history on the Record page."
)


class HelpSheet(QDialog):
    """Two columns of keys; Escape or F1 closes it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle("Keys")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        columns = QHBoxLayout()
        columns.setSpacing(36)
        left = _column("Everywhere", WINDOW_KEYS)
        left.insertLayout(left.count() - 1, _column("On the Seed page", SEED_KEYS))
        left.insertSpacing(left.count() - 2, 12)
        columns.addLayout(left)
        columns.addLayout(_column("In the matrix", MATRIX_KEYS))
        close = QHBoxLayout()
        close.addStretch()
        close.addWidget(button("Close", clicked=self.close))
        sheet = QVBoxLayout(self)
        sheet.setContentsMargins(24, 20, 24, 16)
        sheet.setSpacing(16)
        sheet.addLayout(columns)
        sheet.addWidget(label(UNDO_LASTS, "soft"))
        sheet.addLayout(close)

    @classmethod
    def turn(cls, window: QWidget) -> None:
        """Open the sheet over a window, or close it when it is open."""
        open_one = window.findChild(cls)
        if open_one is None:
            cls(window).show()
        else:
            open_one.close()


def _column(title: str, keys: tuple[Key, ...]) -> QVBoxLayout:
    grid = QGridLayout()
    grid.setHorizontalSpacing(18)
    grid.setVerticalSpacing(7)
    for row, key in enumerate(keys):
        grid.addWidget(label(key.keys, "strong"), row, 0, Qt.AlignmentFlag.AlignTop)
        words = label(key.does)
        words.setWordWrap(True)
        words.setFixedWidth(WORDS_WIDTH)
        words.setMinimumHeight(words.heightForWidth(WORDS_WIDTH))
        grid.addWidget(words, row, 1)
    column = QVBoxLayout()
    column.addWidget(label(title, "title"))
    column.addSpacing(6)
    column.addLayout(grid)
    column.addStretch()
    return column
