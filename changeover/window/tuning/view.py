"""Tuning vacuum from bench runs: counts at the left, fitted curves and the verdict at the right."""

from typing import Any

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from changeover.desk.edits import SetCells, Side
from changeover.desk.tune import Tuned, read_runs, tune
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell, Value
from changeover.quantities import Quantity, Refusal, is_quantity, show
from changeover.seed.bench_counts import Reading
from changeover.seed.tuning_advice import Advice
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.background import Background, Pool
from changeover.window.door import Door
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.quantity_field import QuantityField
from changeover.window.outlook import Outlook
from changeover.window.tuning.figures import runs_of, tuning_figures
from changeover.window.tuning.plot import TuningPlot
from changeover.window.tuning.rows import read_runs_typed, rows_of
from changeover.window.tuning.table import TuningModel, TuningTable
from changeover.window.tuning.words import TuningWords, target_level, tuning_words
from changeover.window.words import button, label

FILES = "Bench runs (*.csv);;All files (*)"
FITS_AFTER_MS = 120
HINT = "Type counts, or paste them from a spreadsheet. Two levels or more; five tell most."


class TuningView(QWidget):
    """Fits as counts are typed; the best level can be taken as the target of the fans."""

    def __init__(
        self, door: Door, outlook: Outlook, asking: Asking, pool: Pool | None = None
    ) -> None:
        super().__init__()
        self._door, self._outlook, self._asking = door, outlook, asking
        self.runs: tuple[Reading, ...] = ()
        self.tuned: Tuned | None = None
        self.advice: Advice | None = None
        self.model = TuningModel(outlook)
        self.table, self.plot = TuningTable(self.model), TuningPlot(outlook)
        self.which: ChoiceBox[str | None] = ChoiceBox("Shown")
        self.fans: ChoiceBox[Place | None] = ChoiceBox("Fans")
        units = outlook.units
        self.present = QuantityField("Present vacuum", "pressure", units, hint="not known")
        self.head, self.verdict = label(look="title", wrap=True), label(wrap=True)
        self.below: QLabel = label(look="soft", wrap=True)
        self.take = button("Take as target", "main", self.take_target)
        self.take.setShortcut("Alt+T")
        self._fit = Background(self, pool)
        self._timer = QTimer(self, singleShot=True, interval=FITS_AFTER_MS)
        self._lay_out()
        self._listen()
        self._offer_fans()
        self.refit()

    def show_runs(self, runs: tuple[Reading, ...]) -> None:
        """Put runs in the table in place of what is there."""
        self.model.show_rows(rows_of(runs, self._outlook.units))

    def open_file(self) -> None:
        """Ask for a file of bench runs and put them in the table."""
        path = self._asking.choose_file("Bench runs", FILES)
        runs = attempt(self._door, lambda: read_runs(path)) if path is not None else None
        if runs:
            self.show_runs(runs)

    def show_units(self) -> None:
        """Show levels in the units of the outlook; typed ones keep their meaning."""
        self.model.show_units(self._outlook.units)
        self.present.show_units(self._outlook.units)
        self.refit()

    def refit(self) -> None:
        """Read the table and fit its counts away from the window's thread."""
        self._timer.stop()
        units = self._outlook.units
        try:
            runs = read_runs_typed(self.model.rows, units)
            present = self.present.quantity()
        except Refusal as refusal:
            self._fit.stop()
            self._show_refusal(str(refusal))
            return
        most = self._outlook.board.planter.fan_limit
        self.runs = runs
        self._fit.start(lambda _stop, _report: tune(runs, present, most, units))

    def take_target(self) -> None:
        """Make the best level the target of the fans chosen."""
        level = target_level(self.advice, self._outlook.units) if self.advice is not None else None
        if level is None:
            return
        board = self._outlook.board
        places = (self.fans.chosen,) if self.fans.chosen else board.planter.places(Scope.FAN)
        values: dict[Cell, Value | None] = {Cell("vacuum", place): level for place in places}
        before = {cell: board.target.get(cell) for cell in values}
        name = self.advice.name.lower() if self.advice is not None else ""
        why = f"Tuned from bench runs of {name}, {len(self.runs)} runs"
        if self._door.push(SetCells(board.planter.name, Side.TARGET, values, before, why)):
            self.take.setEnabled(False)
            self.take.setText(f"Target is {show(level, 'pressure', self._outlook.units)}")

    def _show_tuned(self, tuned: Tuned) -> None:
        self.tuned = tuned
        every: list[tuple[str, str | None]] = [
            (f"row or meter {one.name}", one.name) for one in tuned.meters
        ]
        if len(tuned.meters) > 1:
            every.insert(0, ("all meters together", None))
        self.which.offer(every)
        self.which.setVisible(len(every) > 1)
        self._show_advice()

    def _show_advice(self) -> None:
        tuned = self.tuned
        if tuned is None:
            return
        name = self.which.chosen
        named = {one.name: one for one in tuned.meters}
        self.advice = named[name] if name is not None else tuned.together
        words = tuning_words(self.advice, self._outlook.units)
        present = self.present.quantity() if self.present.check() else None
        figures = tuning_figures(
            runs_of(self.runs, name, tuned), self.advice, present, self._outlook.units
        )
        self.plot.show_figures(figures, f"{words.head}. {words.verdict}")
        self._show_words(words, tuned)

    def _show_words(self, words: TuningWords, tuned: Tuned) -> None:
        self.head.setText(words.head)
        self.verdict.setText(words.verdict)
        position = (tuned.position.says,) if tuned.position is not None else ()
        self.below.setText("\n".join((*words.lines, *position)))
        target = words.target
        level = f" {show(target, 'pressure', self._outlook.units)}" if target is not None else ""
        self.take.setText(f"Take{level} as target")
        self.take.setEnabled(target is not None)

    def _show_refusal(self, sentence: str) -> None:
        self.tuned = self.advice = None
        self.which.hide()
        self.plot.show_figures(None)
        self.head.setText("Counts are needed")
        self.verdict.setText(sentence)
        self.below.setText("")
        self.take.setText("Take as target")
        self.take.setEnabled(False)

    def _offer_fans(self) -> None:
        board = self._outlook.board
        places = board.planter.places(Scope.FAN)
        several: list[tuple[str, Place | None]] = [("all fans", None)] if len(places) > 1 else []
        self.fans.offer([*several, *((place.label, place) for place in places)])
        self.present.show_quantity(_only([board.as_found.get(Cell("vacuum", p)) for p in places]))

    def _listen(self) -> None:
        self.model.edited.connect(self._timer.start)
        self.present.changed.connect(self._timer.start)
        self._timer.timeout.connect(self.refit)
        self._fit.done.connect(self._show_tuned)
        self._fit.failed.connect(self._show_refusal)
        self.which.currentIndexChanged.connect(self._show_advice)

    def _lay_out(self) -> None:
        left, right, ends, foot = QVBoxLayout(), QVBoxLayout(), QHBoxLayout(), QHBoxLayout()
        left.setSpacing(8)
        left.addWidget(label(HINT, "soft", wrap=True))
        left.addWidget(self.table, 1)
        ends.addWidget(button("Open a file…", clicked=self.open_file))
        ends.addWidget(button("Empty the table", clicked=lambda: self.model.show_rows(())))
        ends.addStretch()
        ends.addWidget(label("Present vacuum"))
        self.present.setFixedWidth(110)
        ends.addWidget(self.present)
        left.addLayout(ends)
        right.setSpacing(6)
        right.addWidget(self.which, 0, Qt.AlignmentFlag.AlignLeft)
        self.which.setMinimumWidth(220)
        right.addWidget(self.plot, 1)
        for widget in (self.head, self.verdict, self.below):
            right.addWidget(widget)
        foot.addWidget(label("for", "soft"))
        foot.addWidget(self.fans)
        self.fans.setMinimumWidth(110)
        foot.addStretch()
        foot.addWidget(self.take)
        right.addLayout(foot)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(20)
        whole.addLayout(left, 5)
        whole.addLayout(right, 6)


class TuningDialog(QDialog):
    """The tuning view over a page."""

    def __init__(
        self,
        door: Door,
        outlook: Outlook,
        asking: Asking,
        parent: QWidget,
        pool: Pool | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Vacuum from bench runs")
        self.view = TuningView(door, outlook, asking, pool)
        column, ends = QVBoxLayout(self), QHBoxLayout()
        column.setContentsMargins(20, 16, 20, 14)
        column.setSpacing(10)
        column.addWidget(label("Vacuum from bench runs", "page-title"))
        column.addWidget(self.view, 1)
        ends.addStretch()
        ends.addWidget(button("Close", clicked=self.reject))
        column.addLayout(ends)
        self.resize(1120, 640)


def _only(values: list[Any]) -> Quantity | None:
    """Return the one quantity that all are, None when they differ or are not known."""
    first = values[0] if values else None
    return first if is_quantity(first) and all(value == first for value in values) else None
