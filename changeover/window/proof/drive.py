"""Drive start: conditions with what was read, the first not met, and what to look at next."""

from dataclasses import replace

from PySide6.QtWidgets import QComboBox, QHBoxLayout, QWidget
from typing_extensions import override

from changeover.desk.prove.drive import (
    DriveProof,
    JudgedDrive,
    drive_of,
    fresh_drive,
    judge_drive,
    needs_of,
    save_drive,
)
from changeover.desk.prove.proofs import Proof, PutProof, TakenProof
from changeover.planter.places import Scope
from changeover.proof.drive_readings import DriveNeeds, DriveReadings
from changeover.quantities import MEASURES, Refusal, read_quantity, show
from changeover.window.asking import Asking
from changeover.window.caution import CautionBar
from changeover.window.door import Door
from changeover.window.outlook import Outlook
from changeover.window.page import Read
from changeover.window.proof.drive_form import DriveForm
from changeover.window.proof.drive_side import DrivePanel
from changeover.window.proof.fields import FieldLine, ProofField
from changeover.window.proof.frame import EnteredView
from changeover.window.words import label

CAUTION = (
    "Meters may turn without warning: keep everyone clear of drives, fans and row units. The "
    "machine's own manual comes first."
)


class DriveView(EnteredView[DriveProof]):
    """Shows a saved drive start, or the one that is being entered."""

    kind = Proof.DRIVE
    what = "drive start"
    files = False
    prints = False

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.judged: JudgedDrive | None = None
        self.caution = CautionBar(outlook)
        self.caution.show_lines([CAUTION])
        self.group = QComboBox()
        self.group.setAccessibleName("drive group")
        self.group.textActivated.connect(self.choose_group)
        self.cells, self.ratio = ProofField("cells on the disc", 52), ProofField("ratio", 58)
        self.least = ProofField("least ground speed", 80)
        named = (
            ("cells on the disc", self.cells),
            ("motor turns a disc turn", self.ratio),
            ("least ground speed", self.least),
        )
        self.needs = FieldLine(named, self.take_needs, last=3)
        for field in self.needs.fields:
            field.editingFinished.connect(self.take_needs)
        refused = door.refused.emit
        self.form = DriveForm(outlook, self.take_readings, refused)
        self.panel = DrivePanel(self.draft.push, refused)
        self.side.column.addWidget(self.panel)
        self.side.column.addStretch()
        head, line = QWidget(), QHBoxLayout()
        head.setLayout(line)
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(label("drive", "soft"))
        line.addWidget(self.group)
        line.addWidget(self.needs)
        line.addStretch()
        self.put_together(self.caution, head, self.form, self.cards, note_after=2)

    def empty(self) -> DriveProof:
        return DriveProof()

    def fresh(self) -> DriveProof:
        return fresh_drive(self.outlook.board)

    def read_back(self, proof: TakenProof) -> DriveProof:
        return drive_of(proof)

    def edit(self) -> PutProof:
        return save_drive(self.outlook.board, self.draft.value)

    @override
    def start(self) -> None:
        next(iter(self.form.flags.values())).setFocus()

    @override
    def stops(self) -> tuple[QWidget, ...]:
        first = next(iter(self.form.flags.values()))
        return (first, self.panel.pulses) if self.entering else (self.side.enter_button,)

    def choose_group(self, name: str) -> None:
        """Read another drive group."""
        proof = self.draft.value
        self.draft.push(replace(proof, group=name, needs=needs_of(self.outlook.board, name)))

    def take_readings(self, readings: DriveReadings) -> None:
        """Take other readings over."""
        if readings != self.draft.value.readings:
            self.draft.push(replace(self.draft.value, readings=readings))

    def take_needs(self) -> None:
        """Take what the drive needs over when it was changed."""
        needs = self.draft.value.needs
        if needs is None or not any(field.isModified() for field in self.needs.fields):
            return
        try:
            changed = self._needs(needs)
        except Refusal as refusal:
            self.door.refused.emit(str(refusal))
            return
        for field in self.needs.fields:
            field.setModified(False)
        self.draft.push(replace(self.draft.value, needs=changed))

    def show_entered(self) -> None:
        proof, board = self.entered, self.outlook.board
        self.judged = None if proof.needs is None else judge_drive(board, proof)
        names = [one.name for one in board.planter.groups_of(Scope.DRIVE)] or [proof.group]
        if [self.group.itemText(n) for n in range(self.group.count())] != names:
            self.group.clear()
            self.group.addItems(names)
        self.group.setCurrentText(proof.group)
        self.group.setEnabled(self.entering)
        self.needs.setEnabled(self.entering)
        self._show_needs(proof.needs)
        self.form.show_readings(proof.readings, editable=self.entering)
        if self.judged is not None:
            self.form.show_start(self.judged.start)
        rows = board.planter.row_numbers
        self.panel.show_proof(proof, self.judged, self.outlook.units, rows, editable=self.entering)
        self.cards.setVisible(not self.entering)
        self.note.show_note(proof.note)
        told = (*vars(proof.readings).values(), proof.controllers, proof.silent or None)
        read = any(value is not None for value in told)
        self.side.show_entering(
            entering=self.entering, rows=int(read), judged=self.judged is not None
        )
        self._say(proof)

    def _say(self, proof: DriveProof) -> None:
        if self.entering:
            self.say_about(f"a drive start being entered, {proof.group}".rstrip(", "))
        else:
            self.say_state(self.outlook.board.planter.rows, (proof.group,))

    def _show_needs(self, needs: DriveNeeds | None) -> None:
        texts = ("", "", "")
        if needs is not None:
            least = show(needs.least_ground_speed, "speed", self.outlook.units)
            texts = (str(needs.cells), f"{needs.motor_ratio:g}", least)
        for field, text in zip(self.needs.fields, texts, strict=True):
            if not (field.hasFocus() and field.isModified()):
                field.setText(text)

    def _needs(self, needs: DriveNeeds) -> DriveNeeds:
        cells, units = self.cells.text().strip(), self.outlook.units
        if not cells.isdecimal():
            raise Refusal(f"Cells on the disc: “{cells}” is no whole number; enter them.")
        ratio = read_quantity(self.ratio.text(), "ratio", units, "Motor turns a disc turn")
        least = needs.least_ground_speed
        if self.least.text() != show(least, "speed", units):
            example = MEASURES["speed"].unit(units)
            least = read_quantity(self.least.text(), "speed", units, f"Least speed in {example}")
        turns = float(ratio.to("count").magnitude)
        return replace(needs, cells=int(cells), motor_ratio=turns, least_ground_speed=least)
