"""The left column of the Seed page: next lot, field, and the inputs of the job."""

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from changeover.desk.edits import NextJob
from changeover.desk.look_up import Known
from changeover.quantities import Refusal, Units
from changeover.seed.fields import Field
from changeover.seed.lots import SeedLot
from changeover.window.seed.job_form import JobForm
from changeover.window.seed.lot_words import field_facts, field_line, lot_facts, lot_line
from changeover.window.seed.picker import Picker
from changeover.window.words import label, rule

WIDTH = 284
NO_LOTS = "No seed lots yet. Enter one from the tag on its bag: New…"
NO_FIELDS = "No fields yet. You can go on without one: figures are then for one acre."
NO_FIELD = "Without a field the figures are for one acre of loam."
CHOOSE_LOT = "Choose the seed lot that is planted next, and the proposal forms here."


class SeedChoosing(QFrame):
    """What comes next, as typed and not yet saved; ``changed`` follows every key."""

    changed = Signal()

    def __init__(self, units: Units) -> None:
        super().__init__()
        self.setObjectName("column")
        self.setFixedWidth(WIDTH)
        self._units = units
        self.lot: Picker[SeedLot] = Picker("Next seed lot", "choose a lot", NO_LOTS)
        self.field: Picker[Field] = Picker("Field", "no field", NO_FIELDS)
        self.inputs = JobForm(units)
        self.area = QScrollArea()
        self._lay_out()
        for part in (self.lot, self.field, self.inputs):
            part.changed.connect(self._change)

    def show_known(self, known: Known, units: Units) -> None:
        """Offer the lots and fields of a store; what is typed stays."""
        self._units = units
        with QSignalBlocker(self):
            self.lot.offer((lot.number, lot_line(lot), lot) for lot in known.lots)
            self.field.offer((one.name, field_line(one, units), one) for one in known.fields)
            self.inputs.show_units(units)
            self.inputs.show_planter(known.planter, known.lots, units)
            self._say_facts()

    def show_job(self, job: NextJob | None) -> None:
        """Fill the column with a job that is saved, or empty it."""
        with QSignalBlocker(self):
            self.lot.box.choose(job.lot if job is not None else "")
            self.field.box.choose((job.field or "") if job is not None else "")
            self.inputs.show_job(job)
            self._say_facts()

    def job(self) -> NextJob:
        """Return what is chosen and typed. Raises Refusal."""
        lot, field = self.lot.picked, self.field.picked
        if lot is None:
            raise Refusal(CHOOSE_LOT)
        return self.inputs.job(lot.number, field.name if field is not None else None)

    def _change(self) -> None:
        self._say_facts()
        self.changed.emit()

    def _say_facts(self) -> None:
        lot, field = self.lot.picked, self.field.picked
        self.lot.say("\n".join(lot_facts(lot, self._units)) if lot is not None else "")
        self.field.say(field_facts(field) if field is not None else NO_FIELD)

    def _lay_out(self) -> None:
        inside = QWidget()
        inside.setObjectName("surface")
        column = QVBoxLayout(inside)
        column.setContentsMargins(16, 14, 12, 14)
        column.setSpacing(10)
        for widget in (self.lot, rule(), self.field, rule(), label("Job", "title"), self.inputs):
            column.addWidget(widget)
        column.addStretch()
        self.area.setWidget(inside)
        self.area.setWidgetResizable(True)
        self.area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 1, 0)
        whole.addWidget(self.area)
