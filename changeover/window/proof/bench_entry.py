"""Entering a bench run by keyboard: the conditions once, then one row after another."""

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QCheckBox, QVBoxLayout, QWidget
from typing_extensions import override

from changeover.desk.bench_runs import BenchLine, BenchRun
from changeover.desk.prove.bench import BenchVerdict, judge_run
from changeover.desk.prove.bench_entry import pasted_lines, read_line
from changeover.proof.bench import BenchLimits
from changeover.quantities import Quantity, Refusal, read_quantity, show
from changeover.window.entry.list_table import ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.proof.bench_words import bench_columns, row_says, whole_says
from changeover.window.proof.draft import Draft
from changeover.window.proof.fields import FieldLine, ProofField
from changeover.window.words import label

HOW = "Enter goes on; after the doubles the row is taken. Events such as 12s 68s 101d are optional."


class BenchEntry(QWidget):
    """The strip of fields, what it says of the row that is being typed, and the rows taken.

    ``verdict`` gives the verdict on the rows taken, None while there are none.
    """

    def __init__(
        self,
        draft: Draft[BenchRun],
        outlook: Outlook,
        verdict: Callable[[], BenchVerdict | None],
    ) -> None:
        super().__init__()
        self._draft, self._outlook, self._verdict = draft, outlook, verdict
        self.row = ProofField("row or meter", 78)
        self.cells = ProofField("cells passed", 62, "250")
        self.skips, self.doubles = ProofField("skips", 50), ProofField("doubles", 50)
        self.events = ProofField("events by cell", 0, "12s 68s 101d")
        self.vacuum = ProofField("vacuum", 88)
        self.disc_cells = ProofField("cells on the disc", 50)
        self.position = ProofField("singulator position", 70)
        self.skip_most = ProofField("most skips", 62, "none")
        self.double_most = ProofField("most doubles", 62, "none")
        self.to_tune = QCheckBox("only to tune")
        self.to_tune.setToolTip("At a level that will not stay: no findings come of this run.")
        self.to_tune.clicked.connect(self._turn_to_tune)
        self.strip, self.conditions = self._strip(), self._conditions()
        self.says = label(HOW, "soft", wrap=True)
        self.says.setMinimumHeight(30)
        columns = bench_columns(lambda: outlook.board, lambda: draft.value, verdict)
        self.model: ListModel[int] = ListModel(columns, draft, outlook)
        self.table = LineView(self.model, self.remove, self.paste)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        for widget in (self.conditions, self.strip, self.says):
            column.addWidget(widget)

    def show_run(self) -> None:
        """Show the draft: its conditions, its rows, and what they say together."""
        run, units = self._draft.value, self._outlook.units
        vacuum = "" if run.vacuum is None else show(run.vacuum, "pressure", units)
        cells = "" if run.disc_cells is None else str(run.disc_cells)
        limits = (_percent(run.limits.skip_most), _percent(run.limits.double_most))
        texts = (vacuum, cells, run.position, *limits)
        for field, text in zip(self.conditions.fields, texts, strict=True):
            if not field.hasFocus():
                field.setText(text)
        self.to_tune.setChecked(run.to_tune)
        self.model.show_rows(range(len(run.lines)))
        judged = self._verdict()
        self._say(HOW if judged is None else whole_says(judged))

    def start(self) -> None:
        """Put the keyboard where the next row is typed."""
        self._next_row()
        self.strip.start()

    def take(self) -> None:
        """Take the typed row over and go on to the next one; say what is wrong with it."""
        try:
            line = self._typed()
        except Refusal as refusal:
            self._say(str(refusal), wrong=True)
            return
        if self._draft.push(self._draft.value.with_line(line)):
            for field in (self.skips, self.doubles, self.events):
                field.clear()
            self._next_row()
            self.strip.start()
            judged = self._verdict()
            if judged is not None:
                self._say(f"{row_says(judged, line.row)} {whole_says(judged)}")

    def take_conditions(self) -> None:
        """Take vacuum, disc, singulator and limits over when they were changed."""
        if not any(field.isModified() for field in self.conditions.fields):
            return
        try:
            run = self._with_conditions()
        except Refusal as refusal:
            self._say(str(refusal), wrong=True)
            return
        for field in self.conditions.fields:
            field.setModified(False)
        if run != self._draft.value:
            self._draft.push(run)

    def paste(self) -> None:
        """Take a block of rows from the clipboard, whole or not at all."""
        try:
            lines = pasted_lines(self._outlook.board, QGuiApplication.clipboard().text())
        except Refusal as refusal:
            self._say(str(refusal), wrong=True)
            return
        run = self._draft.value
        self._draft.push(replace(run, lines=(*run.lines, *lines)))

    def _turn_to_tune(self, on: bool) -> None:
        self._draft.push(replace(self._draft.value, to_tune=on))

    def remove(self, at: int) -> None:
        """Take a row out again."""
        self._draft.push(self._draft.value.without_line(at))

    def _typed(self) -> BenchLine:
        return read_line(self._outlook.board, self.strip.texts())

    def _live(self) -> None:
        """Say how the row that is being typed would stand, as soon as it can be judged."""
        try:
            run = self._draft.value.with_line(self._typed())
            self._say(row_says(judge_run(run), run.lines[-1].row))
        except Refusal:
            self._say(HOW)

    def _next_row(self) -> None:
        lines = self._draft.value.lines
        rows = self._outlook.board.planter.row_numbers
        last = lines[-1].row if lines else 0
        self.row.setText(str(last + 1) if last + 1 in rows else "")
        if lines and not self.cells.text():
            self.cells.setText(str(lines[-1].cells))

    def _with_conditions(self) -> BenchRun:
        run, units = self._draft.value, self._outlook.units
        vacuum, cells = self.vacuum.text().strip(), self.disc_cells.text().strip()
        if cells and not (cells.isdecimal() and 2 <= int(cells) <= 400):
            raise Refusal(f"Cells on the disc: “{cells}” is not possible; enter 2 to 400.")
        kept = run.vacuum is not None and vacuum == show(run.vacuum, "pressure", units)
        read = read_quantity(vacuum, "pressure", units, "Vacuum") if vacuum else None
        return replace(
            run,
            vacuum=run.vacuum if kept else read,
            disc_cells=int(cells) if cells else None,
            position=self.position.text().strip(),
            limits=BenchLimits(
                run.limits.single_least,
                read_share(self.skip_most.text(), "Most skips"),
                read_share(self.double_most.text(), "Most doubles"),
            ),
        )

    def _say(self, words: str, *, wrong: bool = False) -> None:
        self.says.setProperty("look", "work-text" if wrong else "soft")
        self.says.style().polish(self.says)
        self.says.setText(words)

    def _strip(self) -> FieldLine:
        named = (
            ("row or meter", self.row),
            ("cells", self.cells),
            ("skips", self.skips),
            ("doubles", self.doubles),
            ("events", self.events),
        )
        made = FieldLine(named, self.take, last=2)
        for field in made.fields:
            field.textEdited.connect(self._live)
        return made

    def _conditions(self) -> FieldLine:
        named = (
            ("vacuum", self.vacuum),
            ("cells on the disc", self.disc_cells),
            ("singulator", self.position),
            ("limits: skips", self.skip_most),
            ("doubles", self.double_most),
        )
        made = FieldLine(named, self.strip_start)
        made.line.addWidget(self.to_tune)
        made.line.addStretch()
        for field in made.fields:
            field.editingFinished.connect(self.take_conditions)
        return made

    def strip_start(self) -> None:
        """Go from the conditions to the rows."""
        self.strip.start()


class LineView(ListView):
    """The rows taken; Delete takes one out, and a block can be pasted."""

    def __init__(
        self,
        model: ListModel[int],
        remove: Callable[[int], None],
        paste: Callable[[], None],
    ) -> None:
        super().__init__(model, "Rows of the run")
        self._remove, self._paste = remove, paste
        self.setMinimumHeight(150)

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Delete and self.chosen is not None:
            self._remove(self.chosen)
        elif event.matches(QKeySequence.StandardKey.Paste):
            self._paste()
        else:
            super().keyPressEvent(event)


def read_share(text: str, what: str) -> float | None:
    """Return a share 0 to 1 from a text in percent, None when it is empty. Raises Refusal."""
    if not text.strip():
        return None
    share: Quantity = read_quantity(text, "share", what=what)
    value = float(share.to("count").magnitude)
    if not 0 <= value <= 1:
        raise Refusal(f"{what}: “{text}” is not possible; enter 0 to 100 %.")
    return value


def _percent(share: float | None) -> str:
    return "" if share is None else f"{100 * share:g} %"
