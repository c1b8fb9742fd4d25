"""The bench run: skips and doubles by row, findings, and entering another run by keyboard."""

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget
from typing_extensions import override

from changeover.desk.bench_runs import BenchRun, run_of
from changeover.desk.changed import Changed
from changeover.desk.prove.bench import BenchVerdict, judge_run, save_run
from changeover.desk.prove.bench_entry import imported_lines
from changeover.desk.prove.meters import level_readings, meter_history, which_vacuum
from changeover.desk.prove.proofs import KeptFinding, Proof, TakenProof, findings, proofs
from changeover.desk.prove.report import print_bench
from changeover.planter.places import Scope
from changeover.planter.setup import Cell
from changeover.quantities import Quantity, Refusal, how_many, is_quantity
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.dates import moment_text
from changeover.window.door import Door
from changeover.window.outlook import Outlook
from changeover.window.page import Read
from changeover.window.proof.bench_entry import BenchEntry
from changeover.window.proof.bench_side import BenchSide
from changeover.window.proof.bench_words import bench_plot, enough_says, run_about, where_of
from changeover.window.proof.draft import Draft
from changeover.window.proof.findings import FindingCards
from changeover.window.proof.note_field import NoteField
from changeover.window.proof.plot import RowPlotView
from changeover.window.proof.view import ProofView
from changeover.window.words import label

HEADING = "skips and doubles by row, with 95 % intervals"
TABLES = "Tables (*.csv *.txt);;All files (*)"


class BenchView(ProofView):
    """Shows a saved run, or the one that is being entered."""

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.draft: Draft[BenchRun] = Draft(door, BenchRun())
        self.entering = False
        self.saved: tuple[TakenProof, ...] = ()
        self.known: tuple[KeptFinding, ...] = ()
        self.chosen = 0
        self.verdict: BenchVerdict | None = None
        self._planter = ""
        self.entry = BenchEntry(self.draft, outlook, lambda: self.verdict)
        self.plot, self.cards = RowPlotView(outlook), FindingCards(door, outlook)
        self.note = NoteField(self.draft, lambda: self.entering)
        self.side = BenchSide(outlook)
        self.draft.changed.connect(lambda _changed: self._show_run())
        self._listen()
        self._lay_out()

    @property
    def run(self) -> BenchRun:
        """The run that is shown."""
        if self.entering or not self.saved:
            return self.draft.value
        return run_of(self.saved[self.chosen])

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        planter = self.outlook.planter
        if planter != self._planter:
            self._planter, self.chosen, self.entering = planter, 0, False
            self.draft.begin(BenchRun())
        self.saved = self.read(proofs, planter, Proof.BENCH)
        self.known = self.read(findings, planter, Proof.BENCH)
        self.chosen = min(self.chosen, max(0, len(self.saved) - 1))
        titles = [f"{moment_text(one.taken)} {one.note}".strip() for one in self.saved]
        self.side.show_runs(titles, self.chosen)
        serials = [meter.serial for meter in self.outlook.board.meters]
        shown = self.side.meters.currentText()
        self.side.show_meters(serials, shown if shown in serials else (serials or [""])[0])
        self._show_meter(self.side.meters.currentText())
        self.cards.show_findings(self.known, lambda one: where_of(self.outlook.board, one))
        self._show_run()
        self._show_vacuum()

    @override
    def stops(self) -> tuple[QWidget, ...]:
        return (self.entry.row, self.entry.table) if self.entering else (self.side.enter_button,)

    @override
    def recolour(self) -> None:
        super().recolour()
        for card in (self.plot, self.side.curve):
            card.update()

    def enter(self) -> None:
        """Begin another run under the conditions of the planter and the limits of the last one."""
        self.entering = True
        if not self.draft.value.lines:
            self.draft.begin(self._fresh())
        self._show_run()
        self.entry.start()

    def discard(self) -> None:
        """Leave the run that is being entered; it stays until another is begun."""
        self.entering = False
        self._show_run()

    def save(self) -> None:
        """Save the run that is being entered, with what fell short in it."""
        self.note.take()
        run, lot = self.draft.value, self._lot()
        planter = self.outlook.planter
        self.chosen = 0
        saved = attempt(
            self.door,
            lambda: self.draft.save(lambda: save_run(planter, run, lot, self.known), BenchRun()),
        )
        if saved:
            self.entering = False
            self._show_run()

    def import_file(self) -> None:
        """Take the rows of a CSV into the run that is being entered."""
        path = self.asking.choose_file("Import a bench run", TABLES)
        if path is None:
            return
        lines = attempt(self.door, lambda: imported_lines(self.outlook.board, path))
        if lines:
            self.enter()
            run = self.draft.value
            self.draft.push(replace(run, lines=(*run.lines, *lines)))

    def print_report(self) -> None:
        """Print the run that is shown into a folder of the person's choice."""
        verdict = self.verdict
        folder = None if verdict is None else self.asking.choose_folder("Folder for the report")
        if folder is None or verdict is None:
            return
        taken = self.saved[self.chosen].taken if self.saved and not self.entering else ""
        path = attempt(
            self.door,
            lambda: print_bench(self.outlook.board, self.run, verdict, taken, folder),
        )
        if path is not None:
            self.asking.tell(f"The bench report lies in {folder}.", path.name)

    def _show_run(self) -> None:
        run, board = self.run, self.outlook.board
        if self.draft.value.lines and not self.saved:
            self.entering = True
        self.verdict = judge_or_none(run)
        self.plot.show_plot(bench_plot(board, self.verdict, run))
        self.side.enough.setText(
            "Enter a run to see." if self.verdict is None else enough_says(self.verdict, run)
        )
        self.side.show_entering(self.entering, rows=len(self.draft.value.lines))
        self.side.print_button.setEnabled(self.verdict is not None)
        for widget in (self.entry, self.entry.table):
            widget.setVisible(self.entering)
        self.cards.setVisible(not self.entering)
        self.note.show_note(run.note)
        if self.entering:
            self.entry.show_run()
            self.say_about(f"a run being entered, {how_many(len(run.lines), 'row')} so far")
        elif self.saved:
            self.say_about(run_about(self.saved[self.chosen], run, self.outlook.units))
        else:
            self.say_about("no bench run yet")

    def _show_meter(self, serial: str) -> None:
        self.side.show_history(self.read(meter_history, serial) if serial else None)

    def _choose(self, number: int) -> None:
        self.chosen = number
        self._show_run()
        self._show_vacuum()

    def _show_vacuum(self) -> None:
        """Show what the runs with the lot in view advise on vacuum."""
        units, present = self.outlook.units, self._vacuum()
        most = self.outlook.board.planter.fan_limit
        lot = self._lot() if self.entering or not self.saved else self.saved[self.chosen].lot
        tuned = attempt(self.door, lambda: which_vacuum(self.saved, lot, present, most, units))
        self.side.show_vacuum(tuned, level_readings(self.saved, lot), present, units)

    def _lot(self) -> str | None:
        lot = self.outlook.board.lot
        return lot.number if lot is not None else None

    def _vacuum(self) -> Quantity | None:
        """Return the vacuum as found on the first fan, None while it is not known."""
        board = self.outlook.board
        place = board.planter.places(Scope.FAN)[0]
        value = board.as_found.get(Cell("vacuum", place))
        return value if is_quantity(value) else None

    def _fresh(self) -> BenchRun:
        board = self.outlook.board
        last = run_of(self.saved[0]) if self.saved else BenchRun()
        place = board.planter.places(Scope.ROW)[0]
        code = board.as_found.get(Cell("disc", place))
        cells = next((part.cells for part in board.parts if part.code == code), None)
        index = board.as_found.get(Cell("singulator", place))
        position = board.planter.singulator.name(index) if isinstance(index, int) else ""
        return BenchRun(
            vacuum=self._vacuum(),
            position=position,
            disc_cells=cells,
            limits=last.limits,
            plan=last.plan,
        )

    def _listen(self) -> None:
        jobs: dict[object, Callable[[], None]] = {
            self.side.enter: self.enter,
            self.side.save: self.save,
            self.side.discard: self.discard,
            self.side.import_wanted: self.import_file,
            self.side.printed: self.print_report,
        }
        for signal, job in jobs.items():
            signal.connect(job)  # type: ignore[attr-defined]
        self.side.run_chosen.connect(self._choose)
        self.side.meter_chosen.connect(self._show_meter)

    def _lay_out(self) -> None:
        inside, scroll, column = QWidget(), QScrollArea(), QVBoxLayout()
        inside.setObjectName("surface")
        inside.setLayout(column)
        column.setContentsMargins(0, 0, 16, 16)
        column.setSpacing(8)
        column.addWidget(self.entry)
        column.addWidget(self.note)
        column.addWidget(label(HEADING, "soft"))
        column.addWidget(self.plot, 3)
        column.addWidget(self.entry.table, 2)
        column.addWidget(self.cards)
        column.addStretch()
        scroll.setWidget(inside)
        scroll.setWidgetResizable(True)
        both = QHBoxLayout(self)
        both.setContentsMargins(0, 0, 0, 0)
        both.setSpacing(0)
        both.addWidget(scroll, 1)
        both.addWidget(self.side)


def judge_or_none(run: BenchRun) -> BenchVerdict | None:
    """Return the verdict on a run, None while it cannot be judged."""
    try:
        return judge_run(run)
    except Refusal:
        return None
