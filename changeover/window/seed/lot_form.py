"""The form of a seed lot, filled in from its tag; what is wrong stands below while it is typed."""

from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QLineEdit, QWidget

from changeover.desk.edits import PutLot
from changeover.desk.tables import crops
from changeover.quantities import Q, Quantity, Refusal, grouped, read_quantity
from changeover.seed.lots import Purity, SeedLot, Treatment
from changeover.window.door import Door
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.form_dialog import FormDialog
from changeover.window.entry.quantity_field import QuantityField
from changeover.window.outlook import Outlook
from changeover.window.seed.dose_text import dose_text, read_dose
from changeover.window.seed.lot_words import crop_name, per_mass
from changeover.window.seed.sieve_text import read_sieve, show_sieve


class LotForm(FormDialog):
    """Adds a seed lot, or changes one.

    The mass of a thousand seeds and the seeds per mass say the same: the one typed last is
    taken, and the other follows it.
    """

    wanted = (
        "Lot number and crop are needed; the more of the tag is entered, the better the proposal."
    )

    def __init__(self, lot: SeedLot | None, door: Door, outlook: Outlook, parent: QWidget) -> None:
        super().__init__(
            "A new seed lot" if lot is None else f"Seed lot {lot.number}", door, parent
        )
        units = outlook.units
        self._before, self._following = lot, False
        self.number, self.name, self.treated_with = QLineEdit(), QLineEdit(), QLineEdit()
        known = sorted({*crops(), *([lot.crop] if lot else [])}, key=crop_name)
        self.crop = ChoiceBox("Crop", [("choose a crop", ""), *((crop_name(k), k) for k in known)])
        self.thousand = QuantityField("Thousand-seed mass", "thousand_seed_mass", units)
        self.per_mass = QuantityField("Seeds per mass", "seeds_per_mass", units)
        self.sieve = QLineEdit()
        self.sides = {
            name: QuantityField(name.capitalize(), "seed_size", units, hint=name)
            for name in ("length", "width", "thickness")
        }
        self.germination = QuantityField("Germination", "share", units, also=_percent)
        self.treatment = ChoiceBox("Treatment", [(one.value, one) for one in Treatment])
        self.purity = ChoiceBox("Purity class", [(one.value, one) for one in Purity])
        self.modified = QCheckBox("genetically modified")
        self.seeds, self.packages = QLineEdit(), QLineEdit()
        self.dense = QuantityField("Bulk density", "bulk_density", units, hint="mass per volume")
        self.dose = QLineEdit()
        self.mass = QuantityField("Package mass", "mass", units, hint="or mass")
        self._lay_out()
        self._fill(lot)
        self._listen()
        self.check()

    def edit(self) -> PutLot:
        return PutLot(self.lot(), before=self._before)

    def lot(self) -> SeedLot:
        """Return the lot as described. Raises Refusal."""
        share = self.germination.quantity()
        return SeedLot(
            number=self.number.text().strip(),
            crop=self.crop.chosen or "",
            name=self.name.text().strip(),
            thousand_seed_mass=self._thousand(),
            sieve=self._sieve(),
            length=self.sides["length"].quantity(),
            width=self.sides["width"].quantity(),
            thickness=self.sides["thickness"].quantity(),
            germination=None if share is None else _share(share, self._before),
            treatment=self.treatment.chosen or Treatment.NONE,
            treatment_name=self._treated_with(),
            purity=self.purity.chosen or Purity.COMMERCIAL,
            genetically_modified=self.modified.isChecked(),
            package_seeds=self._package_seeds(),
            package_mass=self.mass.quantity(),
            packages=self._packages(),
            bulk_density=self.dense.quantity(),
            lubricant=self._dose(),
        )

    def _thousand(self) -> Quantity | None:
        per_mass = self.per_mass.quantity()
        thousand = self.thousand.quantity()
        if thousand is None and per_mass is not None:
            thousand = _other(per_mass)
        return thousand

    def _sieve(self) -> tuple[float, float] | None:
        before = self._before.sieve if self._before is not None else None
        if before is not None and self.sieve.text() == show_sieve(before):
            return before
        return read_sieve(self.sieve.text())

    def _treated_with(self) -> str:
        treated = self.treatment.chosen is Treatment.TREATED
        return self.treated_with.text().strip() if treated else ""

    def _package_seeds(self) -> int | None:
        text = self.seeds.text().strip()
        if not text:
            return None
        count = float(read_quantity(text, "count", what="Seeds in a package").magnitude)
        if count != int(count):
            raise Refusal(
                f"Seeds in a package: {text} is not a whole number; write it like 80 000."
            )
        return int(count)

    def _packages(self) -> float | None:
        text = self.packages.text().strip()
        return float(read_quantity(text, "count", what="Packages").magnitude) if text else None

    def _dose(self) -> Quantity | None:
        before = self._before.lubricant if self._before is not None else None
        if before is not None and self.dose.text() == dose_text(before):
            return before
        return read_dose(self.dose.text())

    def _follow(self, typed: QuantityField, other: QuantityField) -> None:
        """Let the other of thousand-seed mass and seeds per mass follow the one typed."""
        if self._following:
            return
        self._following = True
        try:
            quantity = typed.quantity()
            other.show_quantity(None if quantity is None else _other(quantity))
        except Refusal:
            other.show_quantity(None)
        finally:
            self._following = False
        self.check()

    def _follow_treatment(self) -> None:
        self.form.setRowVisible(self.treated_with, self.treatment.chosen is Treatment.TREATED)
        self.check()

    def _fill(self, lot: SeedLot | None) -> None:
        if lot is None:
            return
        self.number.setText(lot.number)
        self.name.setText(lot.name)
        self.crop.choose(lot.crop)
        self.thousand.show_quantity(lot.thousand_seed_mass)
        if lot.thousand_seed_mass is not None:
            self.per_mass.show_quantity(per_mass(lot.thousand_seed_mass))
        self.sieve.setText(show_sieve(lot.sieve))
        for name, field in self.sides.items():
            field.show_quantity(getattr(lot, name))
        if lot.germination is not None:
            self.germination.show_quantity(Q(100.0 * lot.germination, "percent"))
        self.treatment.choose(lot.treatment)
        self.treated_with.setText(lot.treatment_name)
        self.purity.choose(lot.purity)
        self.modified.setChecked(lot.genetically_modified)
        self.seeds.setText("" if lot.package_seeds is None else grouped(lot.package_seeds, 0))
        self.mass.show_quantity(lot.package_mass)
        self.dense.show_quantity(lot.bulk_density)
        self.dose.setText(dose_text(lot.lubricant))
        self.packages.setText("" if lot.packages is None else f"{lot.packages:g}")

    def _listen(self) -> None:
        self.thousand.changed.connect(lambda: self._follow(self.thousand, self.per_mass))
        self.per_mass.changed.connect(lambda: self._follow(self.per_mass, self.thousand))
        for line in (self.number, self.name, self.sieve, self.seeds, self.packages, self.dose):
            line.textChanged.connect(self.check)
        for field in (*self.sides.values(), self.germination, self.mass, self.dense):
            field.changed.connect(self.check)
        for box in (self.crop, self.purity):
            box.currentIndexChanged.connect(self.check)
        self.treatment.currentIndexChanged.connect(self._follow_treatment)
        self._follow_treatment()

    def _lay_out(self) -> None:
        lines: tuple[tuple[str, QWidget, str], ...] = (
            ("Lot number", self.number, "as on the tag"),
            ("Crop", self.crop, ""),
            ("Variety or name", self.name, ""),
            ("Mass of 1000 seeds", _beside(self.thousand, self.per_mass), ""),
            ("Sieve grade", self.sieve, "sixty-fourths of an inch, such as 18 to 20"),
            ("Seed size", _beside(*self.sides.values()), ""),
            ("Germination", self.germination, "percent, from the tag"),
            ("Treatment", self.treatment, ""),
            ("Treated with", self.treated_with, "its name or colour"),
            ("Purity class", _beside(self.purity, self.modified), ""),
            ("Package", _beside(self.seeds, self.mass), ""),
            ("Packages there", self.packages, "how many"),
            ("Bulk density", self.dense, "mass per volume, empty for the crop’s own"),
            ("Dry lubricant", self.dose, "for each package, such as 2 oz or 0.1 l"),
        )
        for words, widget, hint in lines:
            self.form.addRow(words, widget)
            if isinstance(widget, QLineEdit):
                widget.setPlaceholderText(hint)
            elif isinstance(widget, QuantityField):
                widget.line.setPlaceholderText(hint)
        self.thousand.line.setPlaceholderText("mass, such as 318 g")
        self.per_mass.line.setPlaceholderText("or seeds per mass")
        self.seeds.setPlaceholderText("seeds, such as 80 000")
        self.setMinimumWidth(560)


def _beside(*widgets: QWidget) -> QWidget:
    whole, line = QWidget(), QHBoxLayout()
    whole.setLayout(line)
    line.setContentsMargins(0, 0, 0, 0)
    line.setSpacing(8)
    for widget in widgets:
        line.addWidget(widget, 1)
    return whole


def _other(quantity: Quantity) -> Quantity:
    """Turn a thousand-seed mass into seeds per mass, and back. Raises Refusal for none."""
    if not float(quantity.magnitude) > 0:
        raise Refusal("A thousand seeds weigh more than nothing; check the figure.")
    if quantity.check("[mass]"):
        return per_mass(quantity).to("seed/kg")
    thousand: Quantity = Q(1000.0, "seed") / quantity
    return thousand.to("g")


def _percent(share: Quantity) -> None:
    if not 1 <= share.to("percent").magnitude <= 100:
        raise Refusal("Germination is 1 to 100 %; enter the percentage on the tag, such as 92.")


def _share(share: Quantity, before: SeedLot | None) -> float:
    """Return a percentage as a share, the very one from before where it is the same."""
    found = float(share.to("percent").magnitude) / 100.0
    kept = before.germination if before is not None else None
    return kept if kept is not None and abs(kept - found) < 1e-9 else found
