"""The vacuum view of the Proof page: gauges by row, each fan's manifold, and both fans compared."""

from dataclasses import replace
from datetime import date

from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QSizePolicy, QVBoxLayout, QWidget
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
from changeover.quantities import Refusal
from changeover.window.asking import Asking
from changeover.window.caution import CautionBar
from changeover.window.choice_box import ChoiceBox
from changeover.window.day_field import DayField
from changeover.window.door import Door
from changeover.window.outlook import Outlook
from changeover.window.page import Read
from changeover.window.proof_view import ProofView
from changeover.window.vacuum_line import VacuumLine
from changeover.window.vacuum_model import VacuumModel
from changeover.window.vacuum_panels import VacuumPanels, fans_words
from changeover.window.vacuum_plot import VacuumPlot
from changeover.window.words import button, label

SIDE_WIDTH = 272
HINT = (
    "Type from row to row; ▲ marks where a fan feeds its manifold; the band reaches from the set "
    "value to 10 % below."
)


class VacuumProof(ProofView):
    """Types, plots, judges and saves gauge readings."""

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.model = VacuumModel(door, date.today())  # noqa: DTZ011
        self.line, self.plot = VacuumLine(self.model, door, outlook), VacuumPlot(outlook)
        self.panels, self.caution = VacuumPanels(outlook.units), CautionBar(outlook)
        self.shown: ChoiceBox[int] = ChoiceBox("Readings")
        self.day = DayField("Day")
        self.save_button = button("Save the readings", "main", self.save)
        self._taken: tuple[Gauges, ...] = ()
        self._draft, self._planter = Gauges(date.today()), ""  # noqa: DTZ011
        self.line.laid_out.connect(self._align)
        self.plot.row_chosen.connect(self.line.choose)
        self.model.altered.connect(self._judge)
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
        if planter != self._planter:
            self._begin(planter)
        self._show()

    def save(self) -> None:
        """Save the readings as a proof with its findings, and begin anew."""
        try:
            edit = save(self.outlook.board, replace(self.model.gauges, day=self._day()))
        except Refusal as refusal:
            self.door.refused.emit(str(refusal))
            return
        if self.door.push(edit):
            self._begin(self.outlook.planter)
            self._show()

    def _day(self) -> date:
        day = self.day.day()
        if day is None or day > date.today():  # noqa: DTZ011
            raise Refusal("Enter the day on which the gauges were read, not one to come.")
        return day

    def _begin(self, planter: str) -> None:
        self._planter = planter
        last = self._taken[0] if self._taken else None
        self._draft = first_gauges(self.outlook.board, date.today(), last)  # noqa: DTZ011
        self.day.show_day(self._draft.day)
        self.shown.choose(0)

    def _show(self) -> None:
        past = next((one for one in self._taken if one.number == self.shown.chosen), None)
        gauges, units, board = past or self._draft, self.outlook.units, self.outlook.board
        self.panels.show_fans(fans(board), units)
        for panel in self.panels.fans:
            panel.show_gauges(gauges, units, editable=past is None)
        rows = range(1, board.planter.rows + 1)
        self.day.setEnabled(past is None)
        self.save_button.setEnabled(past is None)
        self.caution.show_lines(RUNNING_FAN)
        self.model.show_gauges(gauges, rows, units, editable=past is None)
        if not self.line.currentIndex().isValid():
            self.line.setCurrentIndex(self.model.index(0, 0))
        self._align()

    def _take_fans(self) -> None:
        """Take the set values and places of the fans from their panels."""
        if not self.model.editable:
            return
        wanted = {one.group.name: one.wanted() for one in self.panels.fans}
        values = {name: one for name, one in wanted.items() if one is not None}
        near = {one.group.name: one.near.chosen or 0 for one in self.panels.fans}
        self.model.gauges = replace(self.model.gauges, set_values=values, near=near)
        self._judge()

    def _judge(self) -> None:
        gauges, units = self.model.gauges, self.outlook.units
        if self.model.editable:
            self._draft = gauges
        found = judge(self.outlook.board, gauges)
        self.plot.show_gauges(gauges, found)
        for panel, one in zip(self.panels.fans, found, strict=False):
            panel.show_judged(one, units)
        self.panels.beside.setText(fans_words(compared(found), found, units))
        read = f"{len(gauges.cells)} of {self.outlook.board.planter.rows} rows read"
        self.say_about(f"gauges of {gauges.day.isoformat()}, {read}")

    def _align(self) -> None:
        self.plot.show_columns(self.line.edges())

    def _lay_out(self) -> None:
        head, foot = QHBoxLayout(), QHBoxLayout()
        head.setSpacing(8)
        for words, field, width in (("", self.shown, 170), ("Day", self.day, 108)):
            if words:
                head.addWidget(label(words, "soft"))
            field.setFixedWidth(width)
            field.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
            head.addWidget(field)
        head.addStretch()
        foot.addWidget(label(HINT, "soft", wrap=True), 1)
        foot.addWidget(self.save_button)
        column, body, side = QVBoxLayout(), QHBoxLayout(self), QScrollArea()
        column.setContentsMargins(0, 0, 12, 12)
        column.setSpacing(8)
        column.addLayout(head)
        column.addWidget(self.caution)
        column.addWidget(self.plot, 1)
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
