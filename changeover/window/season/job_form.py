"""The form of one field job of the season: lot, field, planter, window, cost of a day late."""

from collections.abc import Sequence
from dataclasses import fields as fields_of
from typing import Any

from PySide6.QtWidgets import QLineEdit, QScrollArea, QWidget

from changeover.desk.edits import NextJob, PlannedJob, PutJob
from changeover.desk.labels import crop_words
from changeover.desk.season.lines import read_lateness_cost
from changeover.quantities import Refusal, Units
from changeover.seed.fields import Field
from changeover.seed.lots import SeedLot
from changeover.window.door import Door
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.form_dialog import FormDialog
from changeover.window.seed.job_form import JobForm

ANY = "any planter that can"


class SeasonJobForm(FormDialog):
    """Adds a job, or changes one."""

    wanted = "Name, seed lot and field are needed; give a window of days and what a day late costs."

    def __init__(
        self,
        job: PlannedJob | None,
        choices: tuple[Sequence[SeedLot], Sequence[Field], Sequence[str]],
        units: Units,
        door: Door,
        parent: QWidget,
    ) -> None:
        super().__init__("A job of the season" if job is None else f"Job {job.name}", door, parent)
        self._before = job
        lots, places, planters = choices
        self.name, self.cost = QLineEdit(), QLineEdit()
        self.lot = ChoiceBox("Lot", [(_lot_words(lot), lot.number) for lot in lots])
        self.field = ChoiceBox("Field", [(one.name, one.name) for one in places])
        self.planter = ChoiceBox("Planter", [(ANY, ""), *((name, name) for name in planters)])
        self.inputs = JobForm(units)
        self._lay_out()
        self._fill(job)
        for line in (self.name, self.cost):
            line.textChanged.connect(self.check)
        for box in (self.lot, self.field, self.planter):
            box.currentIndexChanged.connect(self.check)
        self.inputs.changed.connect(self.check)
        self.check()

    def edit(self) -> PutJob:
        return PutJob(self.job(), before=self._before)

    def job(self) -> PlannedJob:
        """Return the job as described. Raises Refusal."""
        if self.lot.chosen is None or self.field.chosen is None:
            raise Refusal("A job needs a seed lot and a field; enter them on the Seed page first.")
        inputs = self.inputs.job(self.lot.chosen, self.field.chosen)
        if inputs.first_day and inputs.last_day and inputs.last_day < inputs.first_day:
            raise Refusal("The last day lies before the first; swap them.")
        values: dict[str, Any] = {one.name: getattr(inputs, one.name) for one in fields_of(NextJob)}
        if self._before is not None and inputs.row_spacing is None:
            values["row_spacing"] = self._before.row_spacing
        return PlannedJob(
            **values,
            name=self.name.text().strip(),
            planter=self.planter.chosen or None,
            lateness_cost=read_lateness_cost(self.cost.text()),
            done=self._before.done if self._before is not None else False,
        )

    def _fill(self, job: PlannedJob | None) -> None:
        self.inputs.show_job(job)
        if job is None:
            return
        self.name.setText(job.name)
        self.lot.choose(job.lot)
        self.field.choose(job.field or "")
        self.planter.choose(job.planter or "")
        self.cost.setText("" if job.lateness_cost is None else f"{job.lateness_cost:g}")

    def _lay_out(self) -> None:
        self.name.setPlaceholderText("what you call it, such as beans Otter Flat")
        self.cost.setPlaceholderText("money a day after the last day, optional")
        self.inputs.form.setRowVisible(self.inputs.spacing, False)  # noqa: FBT003
        for words, widget in (
            ("Name", self.name),
            ("Lot", self.lot),
            ("Field", self.field),
            ("Planter", self.planter),
            ("A day late", self.cost),
        ):
            self.form.addRow(words, widget)
        scroll = QScrollArea()
        scroll.setWidget(self.inputs)
        scroll.setWidgetResizable(True)
        scroll.setMinimumHeight(330)
        self.form.addRow(scroll)


def _lot_words(lot: SeedLot) -> str:
    return f"{crop_words(lot.crop)} {lot.number}{f', {lot.name}' if lot.name else ''}"
