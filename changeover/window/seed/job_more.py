"""What else a job may say: meter error, overlap, reserve, where seed waits, and other lots."""

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QFormLayout, QWidget

from changeover.desk.edits import NextJob
from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.quantities import Q, Quantity, Refusal, Units
from changeover.seed.lots import SeedLot
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.quantity_field import QuantityField
from changeover.window.seed.hopper_lots import HopperLots
from changeover.window.seed.lot_words import lot_line

SAME = "the same lot"
MOST_TANKS = 4  # more than these, or row hoppers, are told by their rows


class JobMore(QWidget):
    """The rarer inputs of a job; ``changed`` follows every key."""

    changed = Signal()

    def __init__(self, units: Units) -> None:
        super().__init__()
        self.overlap = QuantityField("Overlap", "share", units, hint="none", also=_whole)
        self.reserve = QuantityField("Reserve", "share", units, hint="none", also=_ninety)
        self.error = QuantityField("Meter error", "share", units, hint="none", also=_half)
        self.both_ends = QCheckBox("seed waits at both ends")
        self.tanks: dict[Place, ChoiceBox[str]] = {}
        self.hoppers = HopperLots()
        self.form = QFormLayout(self)
        self.form.setContentsMargins(0, 0, 0, 0)
        self.form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        self.form.setHorizontalSpacing(10)
        self.form.setVerticalSpacing(5)
        self.form.addRow("Meter error", self.error)
        self.form.addRow("Overlap", self.overlap)
        self.form.addRow("Reserve", self.reserve)
        self.form.addRow(self.both_ends)
        self.form.addRow(self.hoppers)
        self.form.setRowVisible(self.hoppers, False)  # noqa: FBT003
        self.overlap.setToolTip("The share of the area that is sown twice")
        self.reserve.setToolTip("The share of a fill that is left when you stop for seed")
        self.error.setToolTip("The share that the meters drop too few; below 0 for too many")
        for field in self.shares:
            field.changed.connect(self.changed)
        self.both_ends.toggled.connect(self.changed)
        self.hoppers.changed.connect(self.changed)

    @property
    def shares(self) -> tuple[QuantityField, ...]:
        """The fields of a share."""
        return (self.error, self.overlap, self.reserve)

    @property
    def says_something(self) -> bool:
        """Whether anything is entered here."""
        texts = any(field.text for field in self.shares)
        tanks = any(box.chosen for box in self.tanks.values())
        return texts or self.both_ends.isChecked() or tanks or self.hoppers.says_something

    def show_planter(self, planter: Planter, lots: Sequence[SeedLot], units: Units) -> None:
        """Offer another lot for each tank; row hoppers, and many tanks, by their rows."""
        tanks = planter.groups_of(Scope.TANK)
        places = planter.places(Scope.TANK) if 0 < len(tanks) <= MOST_TANKS else ()
        self.hoppers.show_planter(planter, lots)
        self.form.setRowVisible(self.hoppers, not places)
        if tuple(self.tanks) != tuple(places):
            for box in self.tanks.values():
                self.form.removeRow(box)
            self.tanks = {place: self._tank(place) for place in places}
        lines = [(lot_line(lot), lot.number) for lot in lots]
        for box in self.tanks.values():
            box.offer([(SAME, ""), *lines])
        for field in self.shares:
            field.show_units(units)

    def show_job(self, job: NextJob) -> None:
        """Fill in what a job says."""
        self.overlap.show_quantity(_percent(job.overlap))
        self.reserve.show_quantity(_percent(job.reserve))
        self.error.show_quantity(_percent(job.meter_error))
        self.both_ends.setChecked(job.seed_at_both_ends)
        others = dict(job.other_lots)
        self.hoppers.show_pairs(() if self.tanks else job.other_lots)
        for place, box in self.tanks.items():
            box.choose(others.get(place, ""))

    def into(self, job: NextJob) -> NextJob:
        """Return a job with what is entered here. Raises Refusal."""
        chosen = tuple((place, box.chosen) for place, box in self.tanks.items() if box.chosen)
        return replace(
            job,
            overlap=_share(self.overlap.quantity()),
            reserve=_share(self.reserve.quantity()),
            meter_error=_share(self.error.quantity()),
            seed_at_both_ends=self.both_ends.isChecked(),
            other_lots=(*chosen, *(() if self.tanks else self.hoppers.pairs())),
        )

    def _tank(self, place: Place) -> ChoiceBox[str]:
        box: ChoiceBox[str] = ChoiceBox(place.label, [(SAME, "")])
        box.currentIndexChanged.connect(self.changed)
        self.form.addRow(place.label.capitalize(), box)
        return box


def _percent(share: float | None) -> Quantity | None:
    return None if share is None else Q(100.0 * share, "percent")


def _share(share: Quantity | None) -> float | None:
    return None if share is None else float(share.to("percent").magnitude) / 100.0


def _whole(share: Quantity) -> None:
    if not 0 <= share.to("percent").magnitude <= 100:
        raise Refusal("The overlap is 0 to 100 % of the area; enter the share sown twice.")


def _ninety(share: Quantity) -> None:
    if not 0 <= share.to("percent").magnitude <= 90:
        raise Refusal("The reserve is 0 to 90 % of a fill; enter what is left when you stop.")


def _half(share: Quantity) -> None:
    if not -50 <= share.to("percent").magnitude <= 50:
        raise Refusal("The meter error is -50 to 50 %; enter the share dropped too few, such as 1.")
