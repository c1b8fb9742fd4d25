"""The vacuum view of the Proof page: gauges by row, each fan's manifold, and both fans compared."""

from dataclasses import replace
from datetime import date

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
from changeover.desk.gauge import (
    RUNNING_FAN,
    Gauges,
    compared,
    fans,
    first_gauges,
    gauges_taken,
    judge,
    save,
)
from changeover.desk.prove.proofs import KeptFinding, Proof, PutProof, findings
from changeover.quantities import Refusal
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.caution import CautionBar
from changeover.window.door import Door
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.day_field import DayField
from changeover.window.outlook import Outlook
from changeover.window.page import Read
from changeover.window.proof.draft import Draft
from changeover.window.proof.findings import FindingCards
from changeover.window.proof.note_field import NoteField
from changeover.window.proof.view import ProofView
from changeover.window.vacuum.line import VacuumLine
from changeover.window.vacuum.model import VacuumModel
from changeover.window.vacuum.panels import VacuumPanels, fans_words
from changeover.window.vacuum.plot import VacuumPlot
from changeover.window.wear.view import scrolled
from changeover.window.words import button, label, pill

SIDE_WIDTH = 272
HINT = (
    "Type from row to row; ▲ marks where a fan feeds its manifold; the band reaches from the set "
    "value to 10 % below."
)


class VacuumProof(ProofView):
    """Types, plots, judges and saves gauge readings."""

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.draft: Draft[Gauges] = Draft(door, Gauges(date.today()))  # noqa: DTZ011
        self.model = VacuumModel(self.draft, door)
        self.line, self.plot = VacuumLine(self.model, door, outlook), VacuumPlot(outlook)
        self.panels, self.caution = VacuumPanels(outlook.units), CautionBar(outlook)
        self.shown: ChoiceBox[int] = ChoiceBox("Readings")
        self.day, self.day_name = DayField("Day"), label("Day", "soft")
        self.cards, self.findings = FindingCards(door, outlook), pill("findings")
        self.note = NoteField(self.draft, lambda: self.model.editable)
        self.stack = QStackedWidget()
        self.findings.setMinimumWidth(112)
        self.save_button = button("Save the readings", "main", self.go_on)
        self._taken: tuple[Gauges, ...] = ()
        self._planter = ""
        self.line.laid_out.connect(self._align)
        self.plot.row_chosen.connect(self.line.choose)
        self.draft.changed.connect(lambda _kinds: self._drafted())
        self.panels.changed.connect(self._take_fans)
        self.shown.currentIndexChanged.connect(lambda _n: self._show())
        self._lay_out()

    @override
    def stops(self) -> tuple[QWidget, ...]:
        return (self.line, self.shown, self.panels)

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        planter = self.outlook.planter
        self._taken = self.read(gauges_taken, planter)
        past = [(f"{one.day.day} {one.day:%B %Y}", one.number) for one in self._taken]
        self.shown.offer([("new readings", 0), *past])
        found = self.read(findings, planter, Proof.VACUUM)
        self.cards.show_findings(found, where_of)
        self.findings.setText(f"findings ({len(found)})")
        if planter != self._planter:
            self._begin(planter)
        self._show()

    def go_on(self) -> None:
        """Save what was typed, or begin other readings where earlier ones are shown."""
        if self.model.editable:
            self.save()
        else:
            self.shown.choose(0)
            self.line.setFocus()

    def save(self) -> None:
        """Save the readings as a proof with its findings, and begin anew; undo brings them back."""
        self.note.take()
        board = self.outlook.board

        def edit() -> PutProof:
            return save(board, replace(self.draft.value, day=self._day()))

        empty = first_gauges(board, date.today(), self.draft.value)  # noqa: DTZ011
        attempt(self.door, lambda: self.draft.save(edit, empty))

    def _day(self) -> date:
        day = self.day.day()
        if day is None or day > date.today():  # noqa: DTZ011
            raise Refusal("Enter the day on which the gauges were read, not one to come.")
        return day

    def _begin(self, planter: str) -> None:
        self._planter = planter
        last = self._taken[0] if self._taken else None
        self.shown.choose(last.number if last is not None else 0)
        self.day.show_day(date.today())  # noqa: DTZ011
        board = self.outlook.board
        self.panels.show_fans(fans(board), self.outlook.units)
        self._fill(first_gauges(board, date.today(), last))  # noqa: DTZ011

    def _fill(self, gauges: Gauges) -> None:
        self.draft.value = gauges
        for panel in self.panels.fans:
            panel.show_gauges(gauges, self.outlook.units, editable=True)
        self.draft.begin(gauges)

    def _show(self) -> None:
        past = next((one for one in self._taken if one.number == self.shown.chosen), None)
        units, board = self.outlook.units, self.outlook.board
        self.panels.show_fans(fans(board), units)
        for panel in self.panels.fans:
            panel.show_gauges(past or self.draft.value, units, editable=past is None)
        self.day.setVisible(past is None)
        self.day_name.setVisible(past is None)
        self.save_button.setText("Save the readings" if past is None else "Read again")
        self.caution.show_lines(RUNNING_FAN)
        self.model.show_gauges(range(1, board.planter.rows + 1), units, past)
        if not self.line.currentIndex().isValid():
            self.line.setCurrentIndex(self.model.index(0, 0))
        self._judge()
        self._align()
        self.note.show_note((past or self.draft.value).note)

    def _take_fans(self) -> None:
        """Take the set values and places of the fans from their panels."""
        if self.model.editable:
            self.draft.begin(self._with_fans(self.draft.value))

    def _with_fans(self, gauges: Gauges) -> Gauges:
        wanted = {one.group.name: one.wanted() for one in self.panels.fans}
        values = {name: one for name, one in wanted.items() if one is not None}
        near = {one.group.name: one.near.chosen or 0 for one in self.panels.fans}
        return replace(gauges, set_values=values, near=near)

    def _drafted(self) -> None:
        """Follow the draft; what an undo brings back takes on the fans as their panels stand."""
        if self.model.editable and self.panels.fans:
            self.draft.value = self._with_fans(self.draft.value)
            self.model.follow()
            self._judge()
            self.note.show_note(self.draft.value.note)

    def _judge(self) -> None:
        gauges, units = self.model.gauges, self.outlook.units
        found = judge(self.outlook.board, gauges)
        self.plot.show_gauges(gauges, found)
        for panel, one in zip(self.panels.fans, found, strict=False):
            panel.show_judged(one, units)
        self.panels.beside.setText(fans_words(compared(found), found, units))
        read = f"{len(gauges.cells)} of {self.outlook.board.planter.rows} rows read"
        self.say_about(read if self.model.editable else f"{gauges.day.isoformat()}, {read}")

    def _align(self) -> None:
        self.plot.show_columns(self.line.edges())

    def _lay_out(self) -> None:
        head, foot = QHBoxLayout(), QHBoxLayout()
        head.setSpacing(8)
        head.addWidget(self.shown)
        head.addWidget(self.day_name)
        head.addWidget(self.day)
        for field, width in ((self.shown, 170), (self.day, 108)):
            field.setFixedWidth(width)
            field.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        head.addWidget(self.note, 8)
        head.addStretch(1)
        head.addWidget(self.findings)
        foot.addWidget(label(HINT, "soft", wrap=True), 1)
        foot.addWidget(self.save_button)
        column, body, side = QVBoxLayout(), QHBoxLayout(self), QScrollArea()
        column.setContentsMargins(0, 0, 12, 12)
        column.setSpacing(8)
        column.addLayout(head)
        column.addWidget(self.caution)
        self.stack.addWidget(self.plot)
        self.stack.addWidget(scrolled(self.cards))
        self.findings.toggled.connect(lambda on: self.stack.setCurrentIndex(int(on)))
        column.addWidget(self.stack, 1)
        column.addWidget(self.line)
        column.addLayout(foot)
        side.setObjectName("side")
        side.setFixedWidth(SIDE_WIDTH)
        side.setWidgetResizable(True)
        side.setWidget(self.panels)
        body.setContentsMargins(0, 0, 0, 0)
        body.setSpacing(0)
        body.addLayout(column, 1)
        body.addWidget(side)


def where_of(kept: KeptFinding) -> str:
    """Say where a finding is: ``Row 9, fan 1``."""
    fan = kept.finding.part.removeprefix("vacuum, ")
    row = kept.finding.row
    return f"Row {row}, {fan}" if row is not None else fan.capitalize()
