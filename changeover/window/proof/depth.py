"""Depth digs: entered by row, judged against the goal, and taken over as calibration."""

from datetime import UTC, datetime
from pathlib import Path

from PySide6.QtWidgets import QCheckBox, QWidget
from typing_extensions import override

from changeover.desk.prove.depth import (
    DepthProof,
    RowDepth,
    accept_calibration,
    depth_of,
    earlier_digs,
    import_digs,
    judge_digs,
    notches_as_found,
    save_digs,
    wanted_depth,
)
from changeover.desk.prove.proofs import Proof, PutProof, TakenProof
from changeover.desk.prove.report import print_depth
from changeover.desk.prove.row_lines import EarlierDigs, calibration_words
from changeover.proof.depth import DepthGoal
from changeover.quantities import Q, Refusal
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.door import Door
from changeover.window.entry.list_table import ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Read
from changeover.window.proof.depth_entry import DepthEntry
from changeover.window.proof.depth_words import depth_columns, depth_plot
from changeover.window.proof.frame import EnteredView
from changeover.window.proof.plot import RowPlotView
from changeover.window.words import button, label

HEADING = "mean depth by row with its 95 % interval; shaded: target and tolerance"
TOLERANCE = Q(0.25, "in")  # one notch of common practice, no source; the user's to change
ACCEPTING = (
    "Each row takes over what its digs tell: a depth line of its own where it was dug at two "
    "notches or more, else only its offset. The notch to go to becomes the target. Lower the "
    "planter, or lock its cylinders, before anyone sets a notch."
)


class DepthView(EnteredView[DepthProof]):
    """Shows saved digs, or those that are being entered."""

    kind = Proof.DEPTH
    what = "depth dig"

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.rows: tuple[RowDepth, ...] = ()
        self.entry = DepthEntry(self.draft, outlook, self.judged)
        self.plot = RowPlotView(outlook)
        self.model: ListModel[RowDepth] = ListModel(depth_columns(outlook.units), door, outlook)
        self.table = ListView(self.model, "Digs by row")
        self.table.setMinimumHeight(160)
        self.table.horizontalHeader().setStretchLastSection(True)
        self.accept = button("Take the calibration over", clicked=self.take_over)
        self.past = QCheckBox("With digs of the year before")
        self.past.setChecked(True)
        self.past.setToolTip("Digs of a row at other notches, on other days, tell of its line too")
        self.past.toggled.connect(lambda _on: self.show_entered())
        self.lines = label(wrap=True, look="soft")
        self.side.column.addWidget(self.past)
        self.side.column.addWidget(self.accept)
        self.side.column.addWidget(self.lines)
        self.side.column.addWidget(label(ACCEPTING, "soft", wrap=True))
        self.side.column.addStretch()
        heading = label(HEADING, "soft")
        self.put_together(self.entry, heading, self.plot, self.table, self.cards)

    def empty(self) -> DepthProof:
        return DepthProof()

    def fresh(self) -> DepthProof:
        last = self.read_back(self.saved[0]).goal if self.saved else None
        share = None if last is None else last.share_least
        tolerance = TOLERANCE if last is None else last.tolerance
        board = self.outlook.board
        wanted = wanted_depth(board)
        goal = None if wanted is None else DepthGoal(wanted, tolerance, share)
        return DepthProof({}, goal or last, notches_as_found(board))

    def read_back(self, proof: TakenProof) -> DepthProof:
        return depth_of(proof)

    def edit(self) -> PutProof:
        return save_digs(self.outlook.board, self.draft.value)

    def imported(self, path: Path) -> DepthProof:
        planter = self.outlook.board.planter
        rows = range(1, planter.rows + 1)
        return import_digs(path, self.draft.value, rows, planter.depth.count)

    def printed(self, folder: Path) -> Path:
        if not self.rows:
            raise Refusal("There are no digs to print; enter some first.")
        return print_depth(self.outlook.board, self.entered, self.rows, self.taken, folder)

    @override
    def start(self) -> None:
        self.entry.start()
        if self.draft.value.goal is None:
            self.entry.conditions.start()

    @override
    def stops(self) -> tuple[QWidget, ...]:
        first = self.entry.depths if self.entering else self.side.enter_button
        return (first, self.table)

    def take_over(self) -> None:
        """Take the rows' lines or offsets over into the planter, and their notches as target."""
        edit = attempt(self.door, lambda: accept_calibration(self.outlook.board, self.rows))
        if edit is not None:
            self.door.push(edit)

    def show_entered(self) -> None:
        proof, board = self.entered, self.outlook.board
        self.rows = self.judged(proof) if proof.rows else ()
        self.model.columns = depth_columns(self.outlook.units)
        self.model.show_rows(self.rows)
        self.plot.show_plot(depth_plot(board, proof, self.rows))
        self.entry.setVisible(self.entering)
        self.cards.setVisible(not self.entering)
        self.note.show_note(proof.note)
        if self.entering:
            self.entry.show_proof()
        self.side.show_entering(
            entering=self.entering, rows=len(proof.rows), judged=bool(self.rows)
        )
        found = [one.calibration for one in self.rows if one.calibration is not None]
        self.accept.setEnabled(bool(found))
        self.lines.setText("\n\n".join(calibration_words(found)))
        self.lines.setVisible(bool(found))
        self.past.setVisible(any(self._before()))
        self.say_state(len(proof.rows))

    def judged(self, proof: DepthProof) -> tuple[RowDepth, ...]:
        """Return the verdict on every row, with the digs of earlier days. Raises Refusal."""
        return judge_digs(
            self.outlook.board, proof, self._before() if self.past.isChecked() else ()
        )

    def _before(self) -> tuple[EarlierDigs, ...]:
        """Return the digs of saved proofs before the one in view."""
        if self.entering or not self.saved:
            return earlier_digs(self.saved, datetime.now(UTC).date())
        shown = self.saved[self.chosen]
        day = datetime.fromisoformat(shown.taken).date()
        return earlier_digs(self.saved[self.chosen + 1 :], day)
