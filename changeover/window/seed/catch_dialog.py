"""A catch test at the planter: seed caught is typed in, and what it shows stands below."""

from PySide6.QtWidgets import QDialog, QFormLayout, QHBoxLayout, QVBoxLayout, QWidget

from changeover.desk.board import Board
from changeover.desk.catch_test import CatchTest, catch_words
from changeover.planter.drive import GroundDrive
from changeover.planter.setup import Setup, working_spacing
from changeover.quantities import Q, Quantity, Refusal
from changeover.window.caution import CautionBar
from changeover.window.entry.quantity_field import QuantityField
from changeover.window.outlook import Outlook
from changeover.window.seed.lot_words import per_mass
from changeover.window.words import button, label

CAUTIONS = (
    "Lower the planter or lock its cylinders and block the wheels before you reach below a row.",
    "Keep clear of chains and discs while somebody turns the wheel or the motor.",
    "Treated seed: wear the gloves that its tag names, and put it back into its own bag.",
)


class CatchDialog(QDialog):
    """Reckons a catch test; nothing is kept, the correction is for the hands at the drive."""

    def __init__(
        self, board: Board, wanted: Quantity | None, outlook: Outlook, over: QWidget
    ) -> None:
        super().__init__(over)
        self.setWindowTitle("Catch test")
        self._units = units = outlook.units
        self.rows = QuantityField("Rows caught", "count", units, hint="how many", needed=True)
        self.spacing = QuantityField("Row spacing", "row_spacing", units, needed=True)
        self.distance = QuantityField("Distance", "row_length", units, hint="driven, or turns")
        self.turns = QuantityField("Wheel turns", "ratio", units, hint="of the drive wheel")
        self.round = QuantityField("Wheel, round", "diameter", units, hint="ground in one turn")
        self.slip = QuantityField("Slip", "share", units, hint="in the field, when turned by hand")
        self.seeds = QuantityField("Seeds caught", "count", units, hint="counted, or mass")
        self.mass = QuantityField("Mass caught", "mass", units, hint="weighed")
        self.per_mass = QuantityField("Seeds per mass", "seeds_per_mass", units)
        self.wanted = QuantityField("Rate wanted", "seed_rate", units)
        self.says = label(wrap=True)
        self.cautions = CautionBar(outlook)
        self._lay_out()
        self._fill(board, wanted)
        for field in self.fields:
            field.changed.connect(self.reckon)
        self.reckon()
        self.rows.setFocus()

    @property
    def fields(self) -> tuple[QuantityField, ...]:
        """Every field, in the order in which they stand."""
        return (
            self.rows, self.spacing, self.distance, self.turns, self.round, self.slip,
            self.seeds, self.mass, self.per_mass, self.wanted,
        )  # fmt: skip

    def test(self) -> CatchTest:
        """Return the test as typed. Raises Refusal."""
        return CatchTest(
            rows=self.rows.must(),
            row_spacing=self.spacing.must(),
            seeds=self.seeds.quantity(),
            mass=self.mass.quantity(),
            distance=self.distance.quantity(),
            turns=self.turns.quantity(),
            round=self.round.quantity(),
            slip=self.slip.quantity() or Q(0.0, "percent"),
            seeds_per_mass=self.per_mass.quantity(),
            wanted=self.wanted.quantity(),
        )

    def reckon(self) -> None:
        """Show what the test shows, or what is still missing."""
        try:
            words = catch_words(self.test(), self._units)
        except Refusal as refusal:
            words = (str(refusal),)
        self.says.setText("\n".join(words))

    def _fill(self, board: Board, wanted: Quantity | None) -> None:
        target = Setup({**board.as_found.values, **board.target.values})
        self.spacing.show_quantity(working_spacing(board.planter, target))
        self.wanted.show_quantity(wanted)
        if board.lot is not None and board.lot.thousand_seed_mass is not None:
            self.per_mass.show_quantity(per_mass(board.lot.thousand_seed_mass))
        drives = board.planter.drives.values()
        ground = next((one for one in drives if isinstance(one, GroundDrive)), None)
        if ground is not None:
            self.round.show_quantity(ground.rolling_circumference)
            self.slip.show_quantity(Q(100.0 * ground.slip, "percent"))

    def _lay_out(self) -> None:
        form, ends, whole = QFormLayout(), QHBoxLayout(), QVBoxLayout(self)
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        form.setHorizontalSpacing(16)
        form.setVerticalSpacing(6)
        for field in self.fields:
            form.addRow(field.what, field)
        ends.addStretch()
        ends.addWidget(button("Close", "main", self.accept))
        whole.setContentsMargins(20, 18, 20, 16)
        whole.setSpacing(10)
        whole.addWidget(label("Catch test", "title"))
        whole.addWidget(self.cautions)
        whole.addLayout(form)
        whole.addWidget(self.says)
        whole.addLayout(ends)
        self.cautions.show_lines(CAUTIONS)
        self.says.setMinimumHeight(80)
        self.setMinimumWidth(520)
