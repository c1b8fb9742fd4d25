"""The Seed page: next lot and field, with the proposal forming as the inputs change."""

from collections.abc import Iterator
from dataclasses import replace
from typing import ClassVar

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QDialog, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.desk.edits import NextJob
from changeover.desk.fields import remove_field
from changeover.desk.look_up import Known, read_known
from changeover.desk.lots import remove_lot
from changeover.desk.plan_switch import work_view
from changeover.planter.setup import Setup
from changeover.quantities import Refusal, is_quantity
from changeover.seed.reasons import Proposal
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.caution import CautionBar
from changeover.window.door import Door
from changeover.window.matrix.sheet import Sheet, Shown
from changeover.window.outlook import Outlook
from changeover.window.page import EVERYTHING, Page, Read
from changeover.window.seed.cards import SeedCards
from changeover.window.seed.choosing import CHOOSE_LOT, SeedChoosing
from changeover.window.seed.lines import ProposalLine, proposal_lines
from changeover.window.seed.side import SeedSide
from changeover.window.seed.taking import confirmed, taking_over
from changeover.window.seed.words import FIGURE, figure_card, figure_reason, line_card
from changeover.window.standing import Standing
from changeover.window.words import Elided, button, label

FORMS_AFTER_MS = 15
BEFORE = "What stands below is for the inputs as they were before."
NO_PLANTER = "No planter yet. Make one on the Planters page, then come back."


class SeedPage(Page):
    """Lot, field and job at the left, the proposal in the middle, the full reason at the right."""

    wants: ClassVar[frozenset[Changed]] = EVERYTHING - {
        Changed.TICKS,
        Changed.TIMES,
        Changed.TARGET,
    }

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.known: Known | None = None
        self.job: NextJob | None = None
        self.proposal: Proposal | None = None
        self.sheet: Sheet | None = None
        self.lines: dict[str, ProposalLine] = {}
        self._saved: tuple[str, NextJob | None] | None = None
        self.choosing, self.side = SeedChoosing(outlook.units), SeedSide(outlook)
        self.cards, self.warnings = SeedCards(outlook), CautionBar(outlook)
        self.about = Elided("", "soft")
        self.empty = label(CHOOSE_LOT, wrap=True)
        self.take = button("Take over as target", "main", self.take_over)
        self.take.setShortcut("Alt+T")
        self.take.setToolTip("Make this lot the next one and the proposal the target (Alt+T)")
        self.area = QScrollArea()
        self._timer = QTimer(self, singleShot=True, interval=FORMS_AFTER_MS)
        self._lay_out()
        self._listen()

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        if not self.outlook.planter:
            self._show_nothing(NO_PLANTER)
            return
        self.known = self.read(read_known, self.outlook.planter)
        saved = (self.outlook.planter, self.outlook.board.next_job)
        self.choosing.show_known(self.known, self.outlook.units)
        if saved != self._saved:
            self._saved = saved
            self.choosing.show_job(saved[1])
        self.form_proposal()

    def form_proposal(self) -> None:
        """Look the inputs up as they stand, saved or not, and show what is proposed.

        While an input is refused, the last proposal stays in view and cannot be taken over.
        """
        self._timer.stop()
        self.job = None
        if self.known is None:
            return
        try:
            job = self.choosing.job()
            self.proposal = self.known.propose(job, self.outlook.units)
        except Refusal as refusal:
            self._show_refusal(str(refusal))
            return
        self.job, self.sheet = job, self._sheet_of(job, self.proposal)
        self._show_proposal()

    def take_over(self) -> None:
        """Make the inputs the next job and the proposal the target, then open the Switch page."""
        self.form_proposal()
        job, outlook = self.job, self.outlook
        if job is None or self.proposal is None:
            return
        view = self.read(work_view, outlook.planter, outlook.units)
        if not confirmed(view, job, self.asking):
            return
        if self.door.push(taking_over(outlook.board, job, self.proposal, outlook.units)):
            self.page_wanted.emit("switch")

    @override
    def stops(self) -> tuple[QWidget, ...]:
        here = next((card for card in self.cards.cards if card.here), self.cards)
        return (self.choosing.lot.box, here, self.side.area)

    @override
    def recolour(self) -> None:
        super().recolour()
        for card in self.cards.cards:
            card.update()

    @override
    def more_to_see(self) -> Iterator[tuple[str, QWidget]]:
        jobs = {
            "lot": self._open_lot,
            "new-lot": lambda: self._open_lot(new=True),
            "field": self._open_field,
            "manual": lambda: self._open_manual("vacuum") if "vacuum" in self.lines else None,
        }
        yield from self.dialogs_to_see(jobs)

    def _sheet_of(self, job: NextJob, proposal: Proposal) -> Sheet:
        """See the board as it would be with the proposal as its target."""
        known, board = self.known, self.outlook.board
        assert known is not None
        seen = replace(
            board,
            lot=known.lot(job.lot),
            job=known.job(job),
            next_job=job,
            proposal=proposal,
            target=Setup(proposal.values()),
        )
        return Sheet(seen, Standing(seen), self.outlook.units, Shown.BOTH)

    def _show_proposal(self) -> None:
        sheet, proposal, units = self.sheet, self.proposal, self.outlook.units
        assert sheet is not None
        assert proposal is not None
        lines = proposal_lines(sheet)
        self.lines = {line.setting.key: line for line in lines}
        figures = [figure_card(figure, units) for figure in proposal.figures]
        self.cards.show_lines([*(line_card(line) for line in lines), *figures])
        self.warnings.show_lines(proposal.warnings)
        differing = sum(line.differs for line in lines)
        missing = sum(line.missing for line in lines)
        without = f", {missing} without a proposal" if missing else ""
        self.about.setText(f"{differing} of {len(lines)} settings differ from now{without}")
        for widget, shown in ((self.empty, False), (self.cards, True)):
            widget.setVisible(shown)
        self.take.setEnabled(True)
        self._show_reason(self.cards.here)

    def _show_refusal(self, sentence: str) -> None:
        """Say what is wrong with the inputs, above the proposal that was there before."""
        seen = self.sheet.board.planter.name if self.sheet is not None else ""
        if self.choosing.lot.picked is None or seen != self.outlook.planter:
            self._show_nothing(sentence)
            return
        self.warnings.show_lines((sentence, BEFORE))
        self.about.setText("")
        self.take.setEnabled(False)

    def _show_nothing(self, why: str) -> None:
        """Say what is missing in place of a proposal."""
        self.proposal = self.sheet = None
        self.lines = {}
        self.empty.setText(why)
        self.empty.show()
        self.cards.hide()
        self.warnings.show_lines(())
        self.about.setText("")
        self.take.setEnabled(False)
        self.side.show_line(None, None)

    def _show_reason(self, key: str) -> None:
        if not key.startswith(FIGURE):
            self.side.show_line(self.sheet, self.lines.get(key))
            return
        self.side.show_line(None, None)
        figures = self.proposal.figures if self.proposal is not None else ()
        for figure in figures:
            if FIGURE + figure.key == key:
                self.side.show_words(figure_reason(figure, self.outlook.units))

    def _open_lot(self, *, new: bool = False) -> None:
        from changeover.window.seed.lot_form import LotForm

        lot = None if new else self.choosing.lot.picked
        self._open(LotForm(lot, self.door, self.outlook, self))

    def _open_field(self, *, new: bool = False) -> None:
        from changeover.window.seed.field_form import FieldForm

        field = None if new else self.choosing.field.picked
        self._open(FieldForm(field, self.door, self.outlook, self))

    def _open_manual(self, key: str) -> None:
        from changeover.window.seed.manual_form import ManualForm

        line, lot, known = self.lines[key], self.choosing.lot.picked, self.known
        if lot is None or known is None or self.proposal is None:
            return
        disc = next((c.value for k, c in self.proposal.cells.items() if k.setting == "disc"), None)
        code = disc if isinstance(disc, str) else None
        outlook, door = self.outlook, self.door
        self._open(ManualForm(line.setting, lot.crop, code, known, door, outlook, self))

    def _open_tuning(self) -> None:
        from changeover.window.tuning.view import TuningDialog

        self._open(TuningDialog(self.door, self.outlook, self.asking, self))

    def _open_catch(self) -> None:
        from changeover.window.seed.catch_dialog import CatchDialog

        if self.sheet is None or self.proposal is None:
            return
        rates = (c.value for k, c in self.proposal.cells.items() if k.setting == "seed_rate")
        wanted = next((rate for rate in rates if is_quantity(rate)), None)
        self._open(CatchDialog(self.sheet.board, wanted, self.outlook, self))

    def _open(self, dialog: QDialog) -> None:
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.open()

    def _remove_lot(self) -> None:
        lot = self.choosing.lot.picked
        if lot is not None and self.asking.confirm(f"Remove lot {lot.number}?", yes="Remove"):
            edit = attempt(self.door, lambda: self.read(remove_lot, lot.number))
            if edit is not None:
                self.door.push(edit)

    def _remove_field(self) -> None:
        field = self.choosing.field.picked
        if field is not None and self.asking.confirm(f"Remove field {field.name}?", yes="Remove"):
            edit = attempt(self.door, lambda: self.read(remove_field, field.name))
            if edit is not None:
                self.door.push(edit)

    def _listen(self) -> None:
        choosing = self.choosing
        choosing.changed.connect(self._timer.start)
        self._timer.timeout.connect(self.form_proposal)
        self.cards.chosen.connect(self._come_to)
        self.side.manual_wanted.connect(self._open_manual)
        self.side.tuning_wanted.connect(self._open_tuning)
        self.side.catch_wanted.connect(self._open_catch)
        choosing.lot.new_wanted.connect(lambda: self._open_lot(new=True))
        choosing.lot.change_wanted.connect(self._open_lot)
        choosing.lot.remove_wanted.connect(self._remove_lot)
        choosing.field.new_wanted.connect(lambda: self._open_field(new=True))
        choosing.field.change_wanted.connect(self._open_field)
        choosing.field.remove_wanted.connect(self._remove_field)

    def _come_to(self, key: str) -> None:
        self._show_reason(key)
        self.area.ensureWidgetVisible(self.cards.card(key), 0, 24)

    def _lay_out(self) -> None:
        head, middle, inside = QHBoxLayout(), QVBoxLayout(), QWidget()
        head.setContentsMargins(16, 14, 16, 8)
        head.setSpacing(10)
        head.addWidget(label("Seed", "page-title"))
        head.addWidget(self.about, 1)
        head.addWidget(self.take)
        inside.setObjectName("surface")
        column = QVBoxLayout(inside)
        column.setContentsMargins(8, 0, 12, 16)
        column.setSpacing(8)
        for widget in (self.warnings, self.empty, self.cards):
            column.addWidget(widget)
        column.addStretch()
        self.empty.setIndent(8)
        self.area.setWidget(inside)
        self.area.setWidgetResizable(True)
        self.area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        middle.setSpacing(0)
        middle.addLayout(head)
        middle.addWidget(self.area, 1)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self.choosing)
        whole.addLayout(middle, 1)
        whole.addWidget(self.side)
