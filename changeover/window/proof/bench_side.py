"""Beside a bench run: which vacuum, enough cells, a meter over the years, and what to do next."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QScrollArea, QVBoxLayout, QWidget

from changeover.desk.prove.meters import MeterHistory
from changeover.desk.tune import Tuned
from changeover.proof.trend import Trend
from changeover.proof.wording import percent
from changeover.quantities import Quantity, Units
from changeover.seed.bench_counts import Reading
from changeover.window.outlook import Outlook
from changeover.window.proof.saved import NARROW, SIDE_WIDTH
from changeover.window.tuning.figures import tuning_figures
from changeover.window.tuning.plot import TuningPlot
from changeover.window.words import button, label

ONE_LEVEL = (
    "Run the meters at two more levels of vacuum, one below and one above, and the best level is "
    "fitted here."
)


class BenchSide(QWidget):
    """The panel to the right of a bench run; its buttons are signals."""

    enter = Signal()
    save = Signal()
    discard = Signal()
    import_wanted = Signal()
    printed = Signal()
    run_chosen = Signal(int)
    meter_chosen = Signal(str)

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self.setObjectName("side")
        self.setFixedWidth(SIDE_WIDTH)
        self.curve = TuningPlot(outlook)
        self.curve.setMinimumSize(240, 230)
        self.vacuum = label("", wrap=True)
        self.enough = label("", wrap=True)
        self.history = label("", wrap=True)
        self.runs, self.meters = QComboBox(), QComboBox()
        self.runs.setAccessibleName("Run that is shown")
        self.meters.setAccessibleName("Meter whose history is shown")
        for combo in (self.runs, self.meters):
            combo.setSizeAdjustPolicy(NARROW)
            combo.setMinimumContentsLength(12)
        self.runs.activated.connect(self.run_chosen)
        self.meters.textActivated.connect(self.meter_chosen)
        self.enter_button = button("Enter another run", "main", self.enter.emit)
        self.save_button = button("Save the run", "main", self.save.emit)
        self.discard_button = button("Leave it", clicked=self.discard.emit)
        self.import_button = button("Import a CSV…", clicked=self.import_wanted.emit)
        self.print_button = button("Print the bench report", clicked=self.printed.emit)
        self._lay_out()

    def show_entering(self, entering: bool, *, rows: int) -> None:
        """Show the buttons that go with entering a run, or with looking at one."""
        self.enter_button.setVisible(not entering)
        self.save_button.setVisible(entering)
        self.save_button.setEnabled(rows > 0)
        self.discard_button.setVisible(entering)
        self.runs.setVisible(not entering and self.runs.count() > 0)

    def show_runs(self, titles: Sequence[str], shown: int) -> None:
        """List the saved runs, latest first."""
        self.runs.clear()
        self.runs.addItems(list(titles))
        self.runs.setCurrentIndex(shown)

    def show_meters(self, serials: Sequence[str], shown: str) -> None:
        """List the meters of the planter."""
        self.meters.clear()
        self.meters.addItems(list(serials))
        self.meters.setCurrentText(shown)

    def show_vacuum(
        self,
        tuned: Tuned | None,
        runs: Sequence[Reading],
        present: Quantity | None,
        units: Units,
    ) -> None:
        """Show which vacuum the runs at several levels advise."""
        advice = None if tuned is None else tuned.together
        if advice is not None:
            self.curve.show_figures(tuning_figures(runs, advice, present, units), advice.says)
        self.curve.setVisible(advice is not None)
        self.vacuum.setText(ONE_LEVEL if advice is None else advice.says)

    def show_history(self, told: MeterHistory | None) -> None:
        """Show a meter's runs over the years, and whether its faults rise."""
        if told is None:
            self.history.setText("No bench run of this meter yet.")
            return
        self.history.setText("\n".join(history_lines(told)))

    def _lay_out(self) -> None:
        inside, scroll, column = QWidget(), QScrollArea(), QVBoxLayout()
        inside.setLayout(column)
        column.setContentsMargins(18, 4, 16, 16)
        column.setSpacing(7)
        column.addWidget(self.runs)
        for widget in (self.enter_button, self.save_button, self.discard_button):
            column.addWidget(widget)
        column.addWidget(self.import_button)
        column.addWidget(self.print_button)
        column.addSpacing(6)
        column.addWidget(label("Which vacuum?", "title"))
        column.addWidget(self.curve)
        column.addWidget(self.vacuum)
        column.addSpacing(6)
        column.addWidget(label("Enough cells?", "title"))
        column.addWidget(self.enough)
        column.addSpacing(6)
        column.addWidget(label("A meter over the years", "title"))
        column.addWidget(self.meters)
        column.addWidget(self.history)
        column.addStretch()
        scroll.setWidget(inside)
        scroll.setWidgetResizable(True)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(scroll)


def history_lines(told: MeterHistory) -> tuple[str, ...]:
    """Say each run of a meter, and how skips and doubles move over the years."""
    lines = [
        f"{skips.on:%d %b %Y}: skips {percent(skips.events / skips.cells)}, "
        f"doubles {percent(doubles.events / doubles.cells)}"
        for skips, doubles in zip(told.skips.runs, told.doubles.runs, strict=True)
    ]
    return (*lines[-5:], _moves("Skips", told.skips), _moves("Doubles", told.doubles))


def _moves(what: str, found: Trend) -> str:
    if found.per_year is None or found.p is None:
        return f"{what}: no trend to tell from one day."
    way = "rise" if found.per_year > 0 else "fall"
    sure = f"p = {found.p:.2g}"
    if found.p > 0.05:
        return f"{what}: no trend beyond chance ({sure})."
    return f"{what} {way} by {percent(abs(found.per_year))} a year ({sure})."
