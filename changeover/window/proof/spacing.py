"""Spacing in the furrow: entered by row, judged in both conventions, with bootstrap intervals."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from PySide6.QtWidgets import QButtonGroup, QGridLayout, QHBoxLayout, QWidget
from typing_extensions import override

from changeover.desk.prove.proofs import Proof, PutProof, TakenProof
from changeover.desk.prove.report import print_spacing
from changeover.desk.prove.spacing import (
    JudgedSpacing,
    SpacingTest,
    import_spacings,
    intervals_of,
    judge_test,
    save_test,
    spacing_of,
)
from changeover.proof.bootstrap import SpacingIntervals
from changeover.quantities import Quantity, Refusal
from changeover.window.asking import Asking
from changeover.window.background import Background
from changeover.window.door import Door
from changeover.window.entry.list_table import ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Read
from changeover.window.proof.frame import EnteredView
from changeover.window.proof.histogram import Histogram
from changeover.window.proof.spacing_entry import SpacingEntry
from changeover.window.proof.spacing_words import (
    EXPLAINED,
    POSITIONS,
    SPACINGS,
    SpacingLine,
    figures_said,
    spacing_columns,
    spacing_lines,
)
from changeover.window.words import button, label, pill

Intervals = tuple[Mapping[int, SpacingIntervals], SpacingIntervals]


class SpacingView(EnteredView[SpacingTest]):
    """Shows a saved spacing test, or the one that is being entered."""

    kind = Proof.SPACING
    what = "spacing test"

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.judged: JudgedSpacing | None = None
        self.convention = SPACINGS
        self.intervals: Intervals | None = None
        self._reckoned = (0, 0)
        self.work = Background(self)
        self.entry = SpacingEntry(self.draft, outlook)
        self.histogram = Histogram(outlook)
        columns = spacing_columns(SPACINGS, outlook.units)
        self.model: ListModel[SpacingLine] = ListModel(columns, door, outlook)
        self.table = ListView(self.model, "Spacing by row")
        self.table.setMinimumHeight(150)
        self.table.selectionModel().currentRowChanged.connect(lambda *_: self._show_row())
        self.figures, self.of = QGridLayout(), label("", "title")
        self.explained = label("", "soft", wrap=True)
        self.bootstrap = button("Intervals by bootstrap", clicked=self.reckon)
        self.work.done.connect(self._take_intervals)
        self.work.failed.connect(self.explained.setText)
        self.work.progressed.connect(lambda done: self.side.progress.setValue(int(100 * done)))
        self.work.busy_changed.connect(self._show_busy)
        self._lay_out()

    def empty(self) -> SpacingTest:
        return SpacingTest()

    def fresh(self) -> SpacingTest:
        if self.saved:
            last = spacing_of(self.saved[0])
            return SpacingTest(self._target() or last.target, {}, last.limits)
        return SpacingTest(self._target())

    def read_back(self, proof: TakenProof) -> SpacingTest:
        return spacing_of(proof)

    def edit(self) -> PutProof:
        return save_test(self.outlook.planter, self.draft.value, self.lot)

    def imported(self, path: Path) -> SpacingTest:
        rows = self.outlook.board.planter.row_numbers
        return import_spacings(path, self.draft.value, range(rows[0], rows[-1] + 1))

    def printed(self, folder: Path) -> Path:
        if self.judged is None:
            raise Refusal("There is no spacing test to print; enter one first.")
        board = self.outlook.board
        return print_spacing(board, self.entered, self.judged, self.intervals, self.taken, folder)

    @override
    def start(self) -> None:
        self.entry.start()
        if self.draft.value.target is None:
            self.entry.conditions.start()

    @override
    def stops(self) -> tuple[QWidget, ...]:
        first = self.entry.figures if self.entering else self.side.enter_button
        return (first, self.table)

    def show_entered(self) -> None:
        test = self.entered
        self.judged = judged_or_none(test)
        if self._reckoned != self._in_view():
            self.intervals = None
        lines = () if self.judged is None else spacing_lines(self.judged)
        self.model.show_rows(lines)
        self.entry.setVisible(self.entering)
        self.cards.setVisible(not self.entering)
        self.note.show_note(test.note)
        if self.entering:
            self.entry.show_test()
        self.side.show_entering(
            entering=self.entering, rows=len(test.rows), judged=self.judged is not None
        )
        self.bootstrap.setEnabled(self.judged is not None)
        self.say_state(len(test.rows))
        self._show_row()

    def show_convention(self, convention: str) -> None:
        """Show shares of spacings, or of drop positions."""
        self.convention = convention
        self.model.columns = spacing_columns(convention, self.outlook.units)
        self.model.headerDataChanged.emit(1, 0, len(self.model.columns) - 1)
        self.show_entered()

    def reckon(self) -> None:
        """Reckon bootstrap intervals behind the window, or stop doing so."""
        if self.work.busy:
            self.work.stop()
            return
        test = self.entered
        self._reckoned = self._in_view()
        self.work.start(lambda stop, report: intervals_of(test, stop, report))

    def _in_view(self) -> tuple[int, int]:
        """Return what tells the proof in view from any other: its number, or the draft's rows."""
        if self.entering or not self.saved:
            return 0, id(self.draft.value.rows)
        return self.saved[self.chosen].number, 0

    def _take_intervals(self, found: Any) -> None:
        if self._reckoned == self._in_view():
            self.intervals = found
            self._show_row()

    def _show_busy(self, busy: bool) -> None:
        self.side.progress.setVisible(busy)
        self.bootstrap.setText("Stop reckoning" if busy else "Intervals by bootstrap")

    def _show_row(self) -> None:
        chosen = self.table.chosen
        lines = self.model.rows
        line = lines[chosen] if chosen is not None and chosen < len(lines) else None
        line = line or (lines[0] if lines else None)
        self.histogram.show_measures(None if line is None else line.measures)
        self.histogram.setVisible(line is not None)
        self._show_figures(line)

    def _show_figures(self, line: SpacingLine | None) -> None:
        while self.figures.count():
            item = self.figures.takeAt(0)
            if item is not None and (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self.explained.setText(EXPLAINED[self.convention])
        if line is None:
            self.of.setText("No spacings yet")
            return
        self.of.setText("All rows" if line.row is None else f"Row {line.row}")
        found = None
        if self.intervals is not None:
            each, whole = self.intervals
            found = whole if line.row is None else each.get(line.row)
        said = figures_said(line.measures, self.convention, found, self.outlook.units)
        for number, (name, value) in enumerate(said):
            self.figures.addWidget(label(name, "soft"), number, 0)
            self.figures.addWidget(label(value, wrap=True), number, 1)

    def _target(self) -> Quantity | None:
        """Return the spacing in the row that the look-up proposes, None while there is none."""
        proposal = self.outlook.board.proposal
        figures = () if proposal is None else proposal.figures
        return next((one.quantity for one in figures if one.key == "spacing"), None)

    def _lay_out(self) -> None:
        head, line, group = QWidget(), QHBoxLayout(), QButtonGroup(self)
        head.setLayout(line)
        line.setContentsMargins(0, 0, 0, 0)
        for name in (SPACINGS, POSITIONS):
            made = pill(name)
            made.setChecked(name == SPACINGS)
            made.clicked.connect(lambda _on=False, name=name: self.show_convention(name))
            group.addButton(made)
            line.addWidget(made)
        line.addStretch()
        column = self.side.column
        column.addWidget(self.bootstrap)
        column.addSpacing(6)
        column.addWidget(self.of)
        column.addLayout(self.figures)
        self.figures.setColumnStretch(1, 1)
        self.figures.setHorizontalSpacing(10)
        column.addWidget(self.explained)
        column.addStretch()
        self.put_together(self.entry, head, self.histogram, self.table, self.cards)


def judged_or_none(test: SpacingTest) -> JudgedSpacing | None:
    """Return the verdict on a test, None while it cannot be judged."""
    try:
        return judge_test(test)
    except Refusal:
        return None
