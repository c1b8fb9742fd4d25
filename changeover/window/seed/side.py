"""The right side of the Seed page: the full reason of a line, and what can be done about it."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QBoxLayout

from changeover.planter.setup import Cell
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.matrix.sheet import Sheet
from changeover.window.outlook import Outlook
from changeover.window.reason.panel import ReasonPanel
from changeover.window.reason.words import ReasonWords
from changeover.window.seed.lines import ProposalLine
from changeover.window.words import button

NO_LINE = "Choose a line to see how it was reckoned and who says so."
WITHOUT_MANUAL = ("seed", "row_lock")
CAUGHT = ("seed_rate", "sprockets")


class SeedSide(ReasonPanel):
    """Shows a line of the proposal; where rows differ, a box chooses which rows are shown."""

    manual_wanted = Signal(str)
    tuning_wanted = Signal()
    catch_wanted = Signal()

    def __init__(self, outlook: Outlook) -> None:
        super().__init__(outlook)
        self.use_button.hide()
        self.keep_button.hide()
        self.rows: ChoiceBox[Cell] = ChoiceBox("Rows shown")
        self.manual = button("Enter from your manual…", clicked=self._want_manual)
        self.manual.setToolTip("A value from the machine's own manual wins over all others (Alt+M)")
        self.manual.setShortcut("Alt+M")
        self.tune = button("Tune from bench runs…", clicked=self.tuning_wanted.emit)
        self.tune.setShortcut("Alt+B")
        self.tune.setToolTip("Find the best vacuum from counts of skips and doubles (Alt+B)")
        self.buttons.setDirection(QBoxLayout.Direction.TopToBottom)
        self.catch = button("Check by a catch test…", clicked=self.catch_wanted.emit)
        self.catch.setToolTip("Reckon the rate from seed caught over a distance (Alt+C)")
        self.catch.setShortcut("Alt+C")
        for widget in (self.rows, self.tune, self.catch, self.manual):
            self.buttons.addWidget(widget)
        self._sheet: Sheet | None = None
        self._line: ProposalLine | None = None
        self.rows.currentIndexChanged.connect(self._show_rows)
        self.show_line(None, None)

    def show_nothing(self) -> None:
        """Say that a line is to be chosen."""
        self.show_words(ReasonWords("Says who?", "", why=NO_LINE))

    def show_line(self, sheet: Sheet | None, line: ProposalLine | None) -> None:
        """Show the reason of a line, or nothing."""
        self._sheet, self._line = sheet, line
        groups = line.groups if line is not None else ()
        self.rows.offer((group.short, group.cell) for group in groups)
        self.rows.setVisible(len(groups) > 1)
        key = line.setting.key if line is not None else ""
        self.manual.setVisible(bool(key) and key not in WITHOUT_MANUAL)
        self.tune.setVisible(key == "vacuum")
        self.catch.setVisible(key in CAUGHT)
        self._show_rows()

    def _show_rows(self) -> None:
        cell = self.rows.chosen
        if self._sheet is None or self._line is None or cell is None:
            self.show_nothing()
            return
        self.show_cell(self._sheet, cell)
        group = next(group for group in self._line.groups if group.cell == cell)
        self.title.setText(f"{self._line.setting.name}, {group.where}")

    def _want_manual(self) -> None:
        if self._line is not None:
            self.manual_wanted.emit(self._line.setting.key)
