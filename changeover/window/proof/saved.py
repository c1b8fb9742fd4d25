"""What proof views have in common beside them: which saved one is shown, and the buttons."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QProgressBar, QScrollArea, QVBoxLayout, QWidget

from changeover.desk.prove.proofs import TakenProof
from changeover.window.dates import moment_text
from changeover.window.words import button

SIDE_WIDTH = 300
NARROW = QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon


class ProofSide(QWidget):
    """The panel to the right of a proof: saved ones, buttons as signals, and room for more.

    ``what`` names the sort of proof on its buttons: ``spacing test``.
    """

    enter = Signal()
    save = Signal()
    discard = Signal()
    import_wanted = Signal()
    printed = Signal()
    chosen = Signal(int)

    def __init__(self, what: str, *, files: bool = True, prints: bool = True) -> None:
        super().__init__()
        self.setObjectName("side")
        self.setFixedWidth(SIDE_WIDTH)
        self.saved = QComboBox()
        self.saved.setAccessibleName(f"{what} that is shown")
        self.saved.setSizeAdjustPolicy(NARROW)
        self.saved.setMinimumContentsLength(12)
        self.saved.activated.connect(self.chosen)
        self.enter_button = button(f"Enter a {what}", "main", self.enter.emit)
        self.save_button = button(f"Save the {what}", "main", self.save.emit)
        self.discard_button = button("Leave it", clicked=self.discard.emit)
        self.import_button = button("Import a CSV…", clicked=self.import_wanted.emit)
        self.print_button = button("Print the report", clicked=self.printed.emit)
        self.import_button.setVisible(files)
        self.print_button.setVisible(prints)
        self.progress = QProgressBar()
        self.progress.setTextVisible(False)
        self.progress.setFixedHeight(6)
        self.progress.hide()
        inside, scroll, self.column = QWidget(), QScrollArea(), QVBoxLayout()
        inside.setLayout(self.column)
        self.column.setContentsMargins(18, 4, 16, 16)
        self.column.setSpacing(7)
        for widget in (
            self.saved,
            self.enter_button,
            self.save_button,
            self.discard_button,
            self.import_button,
            self.print_button,
            self.progress,
        ):
            self.column.addWidget(widget)
        scroll.setWidget(inside)
        scroll.setWidgetResizable(True)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(scroll)

    def show_saved(self, proofs: Sequence[TakenProof], shown: int) -> None:
        """List the saved proofs, latest first."""
        self.saved.clear()
        self.saved.addItems([f"{moment_text(one.taken)} {one.note}".strip() for one in proofs])
        self.saved.setCurrentIndex(shown)

    def show_entering(self, *, entering: bool, rows: int, judged: bool) -> None:
        """Show the buttons that go with entering, or with looking at a saved one."""
        self.enter_button.setVisible(not entering)
        self.save_button.setVisible(entering)
        self.save_button.setEnabled(rows > 0 and judged)
        self.discard_button.setVisible(entering)
        self.saved.setVisible(not entering and self.saved.count() > 0)
        self.print_button.setEnabled(judged)
