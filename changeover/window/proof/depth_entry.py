"""Entering depth digs by keyboard: the goal once, then one row of depths after another."""

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtWidgets import QComboBox, QVBoxLayout, QWidget

from changeover.desk.prove.depth import DepthProof, RowDepth, read_digs
from changeover.desk.prove.row_lines import taken_over
from changeover.proof.depth import DepthGoal
from changeover.quantities import Refusal, Units, read_quantity, show
from changeover.window.outlook import Outlook
from changeover.window.proof.bench_entry import read_share
from changeover.window.proof.depth_words import verdict_of
from changeover.window.proof.draft import Draft
from changeover.window.proof.fields import FieldLine, ProofField
from changeover.window.words import label

HOW = (
    "Depths of one row, from the soil to the seed, apart by blanks; Enter takes the row. Its digs "
    "at another notch stay beside these, for its depth line; Enter without depths takes them out."
)
UNITS = {Units.US: ("in", "cm", "mm"), Units.METRIC: ("mm", "cm", "in")}


class DepthEntry(QWidget):
    """The strips of fields, and what they say of the row that is being typed."""

    def __init__(
        self,
        draft: Draft[DepthProof],
        outlook: Outlook,
        judge: Callable[[DepthProof], tuple[RowDepth, ...]],
    ) -> None:
        super().__init__()
        self._draft, self._outlook, self._judge = draft, outlook, judge
        self.target, self.tolerance = ProofField("target depth", 84), ProofField("tolerance", 84)
        self.share = ProofField("least share in tolerance", 62, "none")
        self.row, self.notch = ProofField("row", 44), ProofField("notch as found", 44)
        self.depths = ProofField("depths of the row", 0, "1.7 1.9 1.8 …")
        self.unit = QComboBox()
        self.unit.setAccessibleName("Unit of the depths")
        self.says = label(HOW, "soft", wrap=True)
        self.says.setMinimumHeight(30)
        named = (
            ("target", self.target),
            ("±", self.tolerance),
            ("your limit: in tolerance at least", self.share),
        )
        self.conditions = FieldLine(named, self.start)
        self.conditions.line.addStretch()
        strip = (("row", self.row), ("notch", self.notch), ("depths", self.depths))
        self.strip = FieldLine(strip, self.take)
        self.strip.line.addWidget(self.unit)
        for field in self.conditions.fields:
            field.editingFinished.connect(self.take_conditions)
        self.row.editingFinished.connect(self._show_notch)
        self.depths.textEdited.connect(self._live)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        for widget in (self.conditions, self.strip, self.says):
            column.addWidget(widget)

    def show_proof(self) -> None:
        """Show the draft's goal, and the units of the window."""
        goal, units = self._draft.value.goal, self._outlook.units
        texts = ("", "", "")
        if goal is not None:
            least = "" if goal.share_least is None else f"{100 * goal.share_least:g} %"
            wanted = (show(one, "depth", units) for one in (goal.target, goal.tolerance))
            texts = (*wanted, least)  # type: ignore[assignment]
        for field, text in zip(self.conditions.fields, texts, strict=True):
            if not field.hasFocus() and not field.isModified():
                field.setText(text)
        if self.unit.itemText(0) != UNITS[units][0]:
            self.unit.clear()
            self.unit.addItems(UNITS[units])

    def start(self) -> None:
        """Put the keyboard where the next row is typed."""
        rows = self._outlook.board.planter.row_numbers
        free = next((row for row in rows if row not in self._draft.value.rows), rows[0])
        self.row.setText(str(free))
        self._show_notch()
        self.depths.clear()
        self.strip.start(2)

    def take(self) -> None:
        """Take the typed row over and go on to the next; say what is wrong with it."""
        try:
            gone = self._taken_out()
            proof, said = gone if gone is not None else self._typed_and_told()
        except Refusal as refusal:
            self._say(str(refusal), wrong=True)
            return
        if self._draft.push(proof):
            self.start()
            self._say(said)

    def take_conditions(self) -> None:
        """Take the goal over when it was changed and is whole."""
        fields = self.conditions.fields
        if not any(field.isModified() for field in fields):
            return
        if not (self.target.text().strip() and self.tolerance.text().strip()):
            return
        try:
            goal = self._goal()
        except Refusal as refusal:
            self._say(str(refusal), wrong=True)
            return
        for field in fields:
            field.setModified(False)
        self._draft.push(replace(self._draft.value, goal=goal))

    def _row_typed(self) -> int:
        text, rows = self.row.text().strip(), self._outlook.board.planter.row_numbers
        if not text.isdecimal() or int(text) not in rows:
            raise Refusal(f"“{text}” is no row of this planter; enter 1 to {rows[-1]}.")
        return int(text)

    def _typed(self) -> DepthProof:
        row = self._row_typed()
        found = read_digs(self.depths.text(), self.unit.currentText(), row)
        return self._draft.value.with_digs(row, self._notch_typed(row), found)

    def _notch_typed(self, row: int) -> int | None:
        text, count = self.notch.text().strip(), self._outlook.board.planter.depth.count
        if text and not (text.isdecimal() and 1 <= int(text) <= count):
            raise Refusal(f"Row {row}: notch “{text}” is not possible; enter 1 to {count}.")
        return int(text) if text else None

    def _typed_and_told(self) -> tuple[DepthProof, str]:
        proof = self._typed()
        return proof, self._says(proof)

    def _taken_out(self) -> tuple[DepthProof, str] | None:
        """Return the draft without the digs of the row and notch typed, if no depths are typed."""
        row, proof = self._row_typed(), self._draft.value
        notch = self._notch_typed(row)
        here = row in proof.rows and notch == proof.notches.get(row)
        if self.depths.text().strip() or not (here or notch in proof.dug(row)):
            return None
        where = f" at notch {notch}" if notch is not None else ""
        return proof.without_digs(row, notch), f"Row {row}: its digs{where} are out; undo to keep."

    def _says(self, proof: DepthProof) -> str:
        row, units = self._row_typed(), self._outlook.units
        one = next(each for each in self._judge(proof) if each.digs.row == row)
        said = f"Row {row}: {one.digs.n} digs, mean {show(one.digs.mean, 'depth', units)}"
        if one.digs.digs_needed:
            said += f", {one.digs.digs_needed} more to fix the mean to ⅛ in"
        if one.notch_to is not None and one.notch_to != one.notch:
            said += f", go from notch {one.notch} to {one.notch_to}"
        if one.calibration is not None and one.calibration.own_line:
            said += f", its own line: {taken_over(one.calibration, units)}"
        return f"{said}; {verdict_of(one)}."

    def _live(self) -> None:
        try:
            self._say(self._says(self._typed()))
        except Refusal:
            self._say(HOW)

    def _show_notch(self) -> None:
        text = self.row.text().strip()
        found = self._draft.value.notches.get(int(text)) if text.isdecimal() else None
        self.notch.setText("" if found is None else str(found))

    def _goal(self) -> DepthGoal:
        units, goal = self._outlook.units, self._draft.value.goal
        had = (None, None) if goal is None else (goal.target, goal.tolerance)
        read = [
            kept
            if kept is not None and field.text() == show(kept, "depth", units)
            else read_quantity(field.text(), "depth", units, name)
            for field, kept, name in zip(
                (self.target, self.tolerance), had, ("Target depth", "Tolerance"), strict=True
            )
        ]
        return DepthGoal(read[0], read[1], read_share(self.share.text(), "Share in tolerance"))

    def _say(self, words: str, *, wrong: bool = False) -> None:
        self.says.setProperty("look", "work-text" if wrong else "soft")
        self.says.style().polish(self.says)
        self.says.setText(words)
