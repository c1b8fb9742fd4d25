"""The form of a field job: the state of the soil, the speed, and the rate or stand wanted."""

from collections.abc import Sequence
from enum import StrEnum

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFormLayout, QHBoxLayout, QWidget

from changeover.desk.edits import NextJob
from changeover.planter.machine import Planter
from changeover.quantities import Q, Quantity, Refusal, Units, show
from changeover.seed.fields import Moisture, Tillage
from changeover.seed.lots import SeedLot
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.day_field import DayField
from changeover.window.entry.quantity_field import QuantityField
from changeover.window.seed.job_more import JobMore
from changeover.window.words import button


class RateBy(StrEnum):
    """What decides the seed rate."""

    TABLE = "the crop table"
    RATE = "seed rate"
    STAND = "stand wanted"


class JobForm(QWidget):
    """The inputs of a job but its lot and field; ``changed`` follows every key."""

    changed = Signal()

    def __init__(self, units: Units) -> None:
        super().__init__()
        self._units = units
        self._row_spacing: Quantity | None = None
        self.moisture = ChoiceBox("Moisture", [(one.value, one) for one in Moisture])
        self.tillage = ChoiceBox("Tillage", [(one.value, one) for one in Tillage])
        self.temperature = QuantityField("Soil temperature", "temperature", units, hint="optional")
        self.speed = QuantityField("Speed", "speed", units, needed=True)
        self.rate_by = ChoiceBox("Rate by", [(one.value, one) for one in RateBy])
        self.rate = QuantityField("Seed rate", "seed_rate", units, needed=True)
        self.stand = QuantityField("Stand", "seed_rate", units, needed=True)
        self.emergence = QuantityField("Emergence", "share", units, hint="100 %", also=_share)
        self.spacing: ChoiceBox[str] = ChoiceBox("Row spacing")
        self.area = QuantityField("Area", "area", units, hint="whole field")
        self.first, self.last = DayField("First day"), DayField("Last day")
        self.days, self.more = QWidget(), JobMore(units)
        self.open_more = button("More ▾", "quiet")
        self.open_more.setCheckable(True)
        self._spacings: dict[str, Quantity] = {}
        self._lay_out()
        self._listen()
        self._follow_rate()

    @property
    def quantities(self) -> tuple[QuantityField, ...]:
        """Every field of a quantity."""
        return (
            self.temperature, self.speed, self.rate, self.stand, self.emergence, self.area,
        )  # fmt: skip

    def show_planter(self, planter: Planter, lots: Sequence[SeedLot], units: Units) -> None:
        """Offer the row spacings of a planter and lots for its tanks; only one is not asked."""
        self.more.show_planter(planter, lots, units)
        narrow, wide = planter.narrow_spacing, planter.row_spacing
        self._spacings = {"narrow": narrow, "wide": wide} if planter.split_rows else {}
        words = [(show(one, "row_spacing", units), key) for key, one in self._spacings.items()]
        self.spacing.offer([("rows as found", ""), *words])
        self.form.setRowVisible(self.spacing, bool(planter.split_rows))

    def show_units(self, units: Units) -> None:
        """Show the quantities in other units; what was typed keeps its meaning."""
        self._units = units
        for field in self.quantities:
            field.show_units(units)

    def show_job(self, job: NextJob | None) -> None:
        """Fill the form with a job, or with the first guess."""
        shown = job or NextJob("-")
        self.moisture.choose(shown.moisture)
        self.tillage.choose(shown.tillage)
        self.temperature.show_quantity(shown.soil_temperature)
        self.speed.show_quantity(shown.speed)
        by = RateBy.RATE if shown.seed_rate is not None else RateBy.TABLE
        self.rate_by.choose(RateBy.STAND if shown.stand is not None else by)
        self.rate.show_quantity(shown.seed_rate)
        self.stand.show_quantity(shown.stand)
        share = shown.emergence
        self.emergence.show_quantity(Q(100.0 * share, "percent") if share is not None else None)
        self.area.show_quantity(shown.area)
        self.spacing.choose(self._key_of(shown.row_spacing))
        self.first.show_day(shown.first_day)
        self.last.show_day(shown.last_day)
        self.more.show_job(shown)
        self.open_more.setChecked(self.more.says_something)

    def job(self, lot: str, field: str | None) -> NextJob:
        """Return the job as described, for a lot and a field. Raises Refusal."""
        by = self.rate_by.chosen
        emergence = self.emergence.quantity()
        job = NextJob(
            lot=lot,
            field=field,
            speed=self.speed.must(),
            seed_rate=self.rate.must() if by is RateBy.RATE else None,
            stand=self.stand.must() if by is RateBy.STAND else None,
            emergence=None
            if emergence is None
            else float(emergence.to("percent").magnitude) / 100.0,
            moisture=self.moisture.chosen or Moisture.MOIST,
            tillage=self.tillage.chosen or Tillage.TILLED,
            soil_temperature=self.temperature.quantity(),
            row_spacing=self._spacings.get(self.spacing.chosen or ""),
            first_day=self.first.day(),
            last_day=self.last.day(),
            area=self.area.quantity(),
        )
        return self.more.into(job)

    def _key_of(self, spacing: Quantity | None) -> str:
        keys = (
            key for key, one in self._spacings.items() if spacing is not None and one == spacing
        )
        return next(keys, "")

    def _follow_rate(self) -> None:
        by = self.rate_by.chosen
        self.form.setRowVisible(self.rate, by is RateBy.RATE)
        self.form.setRowVisible(self.stand, by is RateBy.STAND)

    def _listen(self) -> None:
        self.rate_by.currentIndexChanged.connect(self._follow_rate)
        for box in (self.moisture, self.tillage, self.rate_by, self.spacing):
            box.currentIndexChanged.connect(self.changed)
        for field in self.quantities:
            field.changed.connect(self.changed)
        for day in (self.first, self.last):
            day.changed.connect(self.changed)
        self.more.changed.connect(self.changed)
        self.open_more.toggled.connect(self.more.setVisible)

    def _lay_out(self) -> None:
        self.form = QFormLayout(self)
        self.form.setContentsMargins(0, 0, 0, 0)
        self.form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        self.form.setHorizontalSpacing(10)
        self.form.setVerticalSpacing(5)
        beside = QHBoxLayout(self.days)
        beside.setContentsMargins(0, 0, 0, 0)
        beside.setSpacing(6)
        for day, hint in ((self.first, "first"), (self.last, "last")):
            day.line.setPlaceholderText(hint)
            beside.addWidget(day, 1)
        lines: tuple[tuple[str, QWidget], ...] = (
            ("Moisture", self.moisture), ("Tillage", self.tillage),
            ("Soil temp.", self.temperature), ("Speed", self.speed),
            ("Rate by", self.rate_by), ("Seed rate", self.rate), ("Stand", self.stand),
            ("Emergence", self.emergence), ("Rows apart", self.spacing), ("Area", self.area),
            ("Days", self.days),
        )  # fmt: skip
        for words, widget in lines:
            self.form.addRow(words, widget)
        self.form.addRow(self.open_more)
        self.form.addRow(self.more)
        self.more.hide()


def _share(share: Quantity) -> None:
    if not 0 < share.to("percent").magnitude <= 100:
        raise Refusal("Emergence is above 0 and at most 100 %; enter the share that comes up.")
