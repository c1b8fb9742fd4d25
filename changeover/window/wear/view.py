"""The wear view of the Proof page: parts by row, typed row after row, judged as they are typed."""

from dataclasses import replace
from datetime import date
from typing import ClassVar

from PySide6.QtWidgets import (
    QHBoxLayout,
    QScrollArea,
    QSizePolicy,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.desk.inspect_wear import (
    Inspection,
    Spot,
    WearView,
    rates,
    save,
    variants,
    wear_view,
)
from changeover.desk.prove.proofs import KeptFinding, Proof, PutProof, findings
from changeover.proof.wear import WearRate, WearState
from changeover.quantities import Quantity, Refusal, how_many
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.door import Door
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.day_field import DayField
from changeover.window.entry.quantity_field import QuantityField
from changeover.window.outlook import Outlook
from changeover.window.page import Read
from changeover.window.proof.draft import Draft
from changeover.window.proof.findings import FindingCards
from changeover.window.proof.note_field import NoteField
from changeover.window.proof.view import PROOF_DATA, ProofView
from changeover.window.wear.limits_dialog import WearLimitsDialog
from changeover.window.wear.matrix import WearMatrix
from changeover.window.wear.model import WearModel
from changeover.window.wear.side import WearSide
from changeover.window.wear.words import day_words, past_words
from changeover.window.words import Elided, button, label, pill

VARIED = {"opener disc diameter": "Opener discs", "opener contact": "Blade"}
HINT = "Type a figure, or g for good and r for replace; Enter goes on, Ctrl+D fills the selection."


class WearProof(ProofView):
    """Types, shows and saves wear inspections."""

    wants: ClassVar[frozenset[Changed]] = PROOF_DATA | {Changed.WEAR_LIMITS}

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.draft: Draft[Inspection] = Draft(door, Inspection(date.today()))  # noqa: DTZ011
        self.model = WearModel(self.draft, door)
        self.matrix = WearMatrix(self.model, door, outlook)
        self.side, self._planter = WearSide(), ""
        self.known = WearView((), (), ())
        self.shown: ChoiceBox[int] = ChoiceBox("Inspection")
        self.day, self.worked = (
            DayField("Day"),
            QuantityField("Done so far", "area", outlook.units, hint="area"),
        )
        self.variants = {part: ChoiceBox[str](name) for part, name in VARIED.items()}
        self.cards, self.findings = FindingCards(door, outlook), pill("findings")
        self.stack, self.inputs, self.told = QStackedWidget(), QWidget(), Elided("", "soft")
        self.note = NoteField(self.draft, lambda: self._past() is None)
        self.findings.setMinimumWidth(112)
        self.save_button = button("Save the inspection", "main", self.go_on)
        self.matrix.moved.connect(self._show_side)
        self.draft.changed.connect(lambda _kinds: self._drafted())
        self.shown.currentIndexChanged.connect(lambda _n: self._show())
        self.day.changed.connect(self._show)
        self.worked.changed.connect(self._show)
        for box in self.variants.values():
            box.currentIndexChanged.connect(lambda _n: self._show())
        self._lay_out()

    @override
    def stops(self) -> tuple[QWidget, ...]:
        return (self.matrix, self.day, self.shown)

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        planter = self.outlook.planter
        self.known = self.read(wear_view, planter)
        self.worked.show_units(self.outlook.units)
        past = [(day_words(one), one.number) for one in self.known.inspections]
        self.shown.offer([("a new inspection", 0), *past])
        found = self.read(findings, planter, Proof.WEAR)
        self.cards.show_findings(found, where_of)
        self.findings.setText(f"findings ({len(found)})")
        for part, box in self.variants.items():
            box.offer([(one, one) for one in variants(part, self.known.limits)])
        if planter != self._planter:
            self._begin(planter)
        self._show()

    def go_on(self) -> None:
        """Save what was typed, or begin another inspection where an earlier one is shown."""
        if self._past() is None:
            self.save()
        else:
            self.shown.choose(0)
            self.matrix.setFocus()

    def save(self) -> None:
        """Save what was typed as a proof with its findings, and begin anew; undo brings it back."""
        self.note.take()
        planter, limits = self.outlook.planter, self.model.limits

        def edit() -> PutProof:
            typed = replace(self.typed(), worked=self.worked.quantity(), day=self._day())
            return self.read(save, planter, typed, limits)

        empty = Inspection(date.today())  # noqa: DTZ011
        if attempt(self.door, lambda: self.draft.save(edit, empty)):
            self.day.show_day(empty.day)

    def change_limits(self) -> WearLimitsDialog:
        """Open the list of limits."""
        dialog = WearLimitsDialog(self.read, self.door, self.outlook, self)
        dialog.open()
        return dialog

    def typed(self) -> Inspection:
        """Return the draft with the day, area and variants of the fields."""
        draft = self.draft.value
        parts = {part for _, part in draft.cells}
        chosen = {part: box.chosen for part, box in self.variants.items()}
        applies = {
            part: one for part, one in chosen.items() if one and (part in parts or not parts)
        }
        return replace(draft, applies=applies, day=self._day_or_today(), worked=self._worked())

    def _day(self) -> date:
        day = self.day.day()
        if day is None:
            raise Refusal("The day of the inspection is missing; enter it.")
        if day > date.today():  # noqa: DTZ011
            raise Refusal(f"{day.isoformat()} is still to come; enter the day of the inspection.")
        return day

    def _begin(self, planter: str) -> None:
        """Begin an empty inspection with the variants of the last one."""
        self._planter = planter
        self.draft.begin(Inspection(date.today()))  # noqa: DTZ011
        self.day.show_day(date.today())  # noqa: DTZ011
        last = self.known.inspections[:1]
        self.shown.choose(last[0].number if last else 0)
        for part, box in self.variants.items():
            box.choose(last[0].applies.get(part) if last else None)

    def _past(self) -> Inspection | None:
        number = self.shown.chosen
        return next((one for one in self.known.inspections if one.number == number), None)

    def _show(self) -> None:
        past = self._past()
        self.draft.value = self.typed()
        rows = range(1, self.outlook.board.planter.rows + 1)
        self.model.show_all(rows, self.known.limits, self.outlook.units, past)
        self.inputs.setVisible(past is None)
        self.told.setVisible(past is not None)
        self.told.setText("" if past is None else past_words(past, self.outlook.units))
        self.save_button.setText("Save the inspection" if past is None else "Inspect again")
        if not self.matrix.currentIndex().isValid() and self.model.rowCount():
            self.matrix.setCurrentIndex(self.model.index(0, 0))
        self._typed()

    def _day_or_today(self) -> date:
        try:
            return self.day.day() or date.today()  # noqa: DTZ011
        except Refusal:
            return self.draft.value.day

    def _worked(self) -> Quantity | None:
        try:
            return self.worked.quantity()
        except Refusal:
            return None

    def _drafted(self) -> None:
        """Follow the draft; what an undo brings back takes on the fields as they stand."""
        self.draft.value = self.typed()
        self.model.follow()
        self._typed()

    def _typed(self) -> None:
        now = self.model.inspection
        past = self._past()
        self.note.show_note("" if past else self.draft.value.note)
        worn = sum(v.condition is WearState.REPLACE for v in self.model.verdicts.values())
        what = f"inspection of {day_words(past)}" if past else "a new inspection"
        self.say_about(f"{what}, {how_many(len(now.rows), 'row')} read, {worn} to replace")
        self._show_side()

    def _show_side(self) -> None:
        spot = self.matrix.here()
        self.side.show_cell(self.model, spot, None if spot is None else self._rate(spot))

    def _rate(self, spot: Spot) -> WearRate | None:
        """Return the wear of one cell since it was read last, None where two dates are missing."""
        now = self.model.inspection
        cells = {one: value for one, value in now.cells.items() if one == spot}
        single = replace(now, cells=cells)
        return rates(single, self.known.inspections, self.model.limits).get(spot)

    def _lay_out(self) -> None:
        head, body, column = QHBoxLayout(self.inputs), QHBoxLayout(self), QVBoxLayout()
        top = QHBoxLayout()
        head.setContentsMargins(0, 0, 0, 0)
        head.setSpacing(8)
        self.shown.setFixedWidth(164)
        self.shown.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        fields = (("Day", self.day, 100), ("Done so far", self.worked, 98))
        choices = [(VARIED[part], box, 126) for part, box in self.variants.items()]
        for words, field, width in (*fields, *choices):
            head.addWidget(label(words, "soft"))
            field.setFixedWidth(width)
            field.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
            head.addWidget(field)
        head.addStretch()
        foot = QHBoxLayout()
        foot.addWidget(label(HINT, "soft", wrap=True), 1)
        foot.addWidget(self.findings)
        foot.addWidget(button("Limits…", clicked=self.change_limits))
        foot.addWidget(self.save_button)
        column.setContentsMargins(0, 0, 12, 12)
        column.setSpacing(8)
        top.addWidget(self.shown)
        top.addWidget(self.inputs, 1)
        top.addWidget(self.told, 1)
        column.addLayout(top)
        self.stack.addWidget(self.matrix)
        self.stack.addWidget(scrolled(self.cards))
        self.findings.toggled.connect(lambda on: self.stack.setCurrentIndex(int(on)))
        column.addWidget(self.stack, 1)
        column.addWidget(self.note)
        column.addLayout(foot)
        body.setContentsMargins(0, 0, 0, 0)
        body.setSpacing(0)
        body.addLayout(column, 1)
        body.addWidget(self.side)


def where_of(kept: KeptFinding) -> str:
    """Say where a finding is: ``Row 11``."""
    row = kept.finding.row
    return f"Row {row}" if row is not None else "Planter"


def scrolled(cards: FindingCards) -> QScrollArea:
    """Return findings in an area that scrolls, each as high as its words need."""
    area, inside = QScrollArea(), QWidget()
    column = QVBoxLayout(inside)
    column.setContentsMargins(0, 0, 8, 0)
    column.addWidget(cards)
    column.addStretch(1)
    inside.setObjectName("surface")
    area.setWidgetResizable(True)
    area.setWidget(inside)
    return area
