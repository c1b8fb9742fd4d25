"""The lines of the planter form about its drives: kind, and what that kind needs to be known."""

from PySide6.QtWidgets import QComboBox, QFormLayout, QLineEdit, QWidget

from changeover.planter.drive import Drive, GroundDrive, MotorDrive, MotorKind
from changeover.quantities import Refusal, Units
from changeover.window.entry.kept_fields import KeptFields
from changeover.window.words import label

GROUND, UNKNOWN = "ground wheel and sprockets", "not entered"
KINDS = (UNKNOWN, MotorKind.HYDRAULIC.value, MotorKind.ELECTRIC.value, GROUND)


class DriveLines:
    """Adds its lines to a form; all drive groups of a planter turn alike."""

    def __init__(self, form: QFormLayout, units: Units) -> None:
        self._form, self._kept = form, KeptFields(units)
        self.kind = QComboBox()
        self.kind.addItems(list(KINDS))
        self.driver, self.driven, self.wheel = QLineEdit(), QLineEdit(), QLineEdit()
        self.ratio, self.slip = QLineEdit(), QLineEdit()
        self.least, self.most, self.oil = QLineEdit(), QLineEdit(), QLineEdit()
        self.ground: tuple[QWidget, ...] = (self.driver, self.driven, self.wheel, self.slip)
        self.motor: tuple[QWidget, ...] = (self.least, self.most)
        self.ratio_label = label()
        lines: tuple[tuple[str, QLineEdit, str], ...] = (
            ("Driver sprockets", self.driver, "teeth to choose from, such as 15, 19, 23"),
            ("Driven sprockets", self.driven, "teeth to choose from, such as 20, 24, 28"),
            ("Wheel rolls", self.wheel, "ground covered in one wheel turn under load"),
            ("Wheel slip", self.slip, "such as 5 %"),
            ("Least motor speed", self.least, "such as 20 rpm"),
            ("Most motor speed", self.most, "such as 600 rpm"),
            ("Oil in a turn", self.oil, "displacement, such as 2.25 in^3"),
        )
        form.addRow("Drive", self.kind)
        form.addRow(self.ratio_label, self.ratio)
        for words, field, hint in lines:
            form.addRow(words, field)
            field.setPlaceholderText(hint)
        self.kind.currentTextChanged.connect(self.follow_kind)
        self.follow_kind(self.kind.currentText())

    @property
    def fields(self) -> tuple[QLineEdit, ...]:
        return (
            self.driver, self.driven, self.wheel, self.ratio, self.slip,
            self.least, self.most, self.oil,
        )  # fmt: skip

    def follow_kind(self, kind: str) -> None:
        """Show the lines that a kind of drive needs."""
        for field in self.ground:
            self._form.setRowVisible(field, kind == GROUND)
        for field in self.motor:
            self._form.setRowVisible(field, kind in (KINDS[1], KINDS[2]))
        self._form.setRowVisible(self.oil, kind == MotorKind.HYDRAULIC.value)
        self._form.setRowVisible(self.ratio, kind != UNKNOWN)
        ground = kind == GROUND
        self.ratio_label.setText("Disc turns a wheel turn" if ground else "Motor turns a disc turn")
        hint = "with equal sprockets, such as 0.5" if ground else "such as 8"
        self.ratio.setPlaceholderText(hint)

    def show_drive(self, drive: Drive | None) -> None:
        """Fill the lines with a drive, or leave them empty."""
        if isinstance(drive, GroundDrive):
            self.kind.setCurrentText(GROUND)
            self.driver.setText(", ".join(map(str, drive.driver)))
            self.driven.setText(", ".join(map(str, drive.driven)))
            self._kept.fill(self.wheel, drive.rolling_circumference, "row_length")
            self.slip.setText(f"{drive.slip * 100:g} %")
            self.ratio.setText(f"{drive.ratio:g}")
        elif isinstance(drive, MotorDrive):
            self.kind.setCurrentText(drive.kind.value)
            self.ratio.setText(f"{drive.ratio:g}")
            self._kept.fill(self.least, drive.least_speed, "disc_speed")
            self._kept.fill(self.most, drive.most_speed, "disc_speed")
            self._kept.fill(self.oil, drive.displacement, "displacement")

    def drive(self) -> Drive | None:
        """Return the drive as described, None when it is not entered. Raises Refusal."""
        kind = self.kind.currentText()
        if kind == UNKNOWN:
            return None
        if kind == GROUND:
            return GroundDrive(
                driver=self._teeth(self.driver, "Driver sprockets"),
                driven=self._teeth(self.driven, "Driven sprockets"),
                rolling_circumference=self._kept.read(self.wheel, "row_length", "Wheel rolls"),
                ratio=self._number(self.ratio, "Disc turns a wheel turn"),
                slip=self._share(self.slip),
            )
        hydraulic = kind == MotorKind.HYDRAULIC.value
        oil = self._kept.read_if_any(self.oil, "displacement", "Oil in a turn")
        return MotorDrive(
            kind=MotorKind(kind),
            ratio=self._number(self.ratio, "Motor turns a disc turn"),
            least_speed=self._kept.read(self.least, "disc_speed", "Least motor speed"),
            most_speed=self._kept.read(self.most, "disc_speed", "Most motor speed"),
            displacement=oil if hydraulic else None,
        )

    def _share(self, field: QLineEdit) -> float:
        share = self._kept.read_if_any(field, "share", "Wheel slip")
        return float(share.to("").magnitude) if share is not None else 0.0

    def _teeth(self, field: QLineEdit, what: str) -> tuple[int, ...]:
        parts = [part.strip() for part in field.text().split(",") if part.strip()]
        for part in parts:
            if not part.isdigit():
                raise Refusal(f"{what}: “{part}” is not a count of teeth; write them like 15, 19.")
        return tuple(int(part) for part in parts)

    def _number(self, field: QLineEdit, what: str) -> float:
        try:
            return float(field.text())
        except ValueError as error:
            raise Refusal(f"{what}: “{field.text()}” is not a number; write it like 8.") from error
