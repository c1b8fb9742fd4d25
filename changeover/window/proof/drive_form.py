"""The form of a drive start: each condition in its order, what was read, and how it stands."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QGridLayout, QWidget

from changeover.proof.drive_readings import Condition, DriveReadings
from changeover.proof.drive_start import DriveStart, State
from changeover.quantities import MEASURES, Refusal, Units, read_quantity, show, unit_sign
from changeover.window.marks import Mark
from changeover.window.notice import MarkLabel
from changeover.window.outlook import Outlook
from changeover.window.proof.bench_entry import read_share
from changeover.window.proof.fields import ProofField
from changeover.window.words import label

ANSWERS: tuple[tuple[str, bool | None], ...] = (("not read", None), ("yes", True), ("no", False))
MARKS = {
    State.MET: Mark.READY,
    State.UNMET: Mark.ATTENTION,
    State.NOT_READ: Mark.UNKNOWN,
    State.WAITING: Mark.OPEN,
}


@dataclass(frozen=True)
class Asked:
    """One reading of a condition: the field of the readings, its measure, and a name if needed.

    ``measure`` is ``flag`` for yes or no and ``share`` for percent.
    """

    field: str
    measure: str
    name: str = ""


ASKED: Mapping[Condition, tuple[Asked, ...]] = {
    Condition.CONTROLLER: (Asked("controller_set_up", "flag"),),
    Condition.RATE: (Asked("target_rate", "seed_rate"),),
    Condition.LOWERED: (Asked("lowered", "flag"),),
    Condition.HEIGHT: (Asked("height_calibrated", "flag"),),
    Condition.START_POINT: (Asked("start_point_set", "flag"),),
    Condition.GROUND_SPEED: (Asked("ground_speed", "speed"),),
    Condition.WHEEL_MOTION: (Asked("wheel_speed", "speed"),),
    Condition.WHEEL_AGREES: (),
    Condition.CLUTCHES: (Asked("clutches_on", "flag"),),
    Condition.SUPPLY: (Asked("supply", "flag"), Asked("oil_flow", "oil_flow", "oil flow")),
    Condition.TARGET: (Asked("target_speed", "disc_speed"),),
    Condition.COMMAND: (Asked("command", "share"),),
    Condition.ACTUAL: (Asked("actual_speed", "disc_speed"),),
}


class DriveForm(QWidget):
    """One line for each condition; ``changed`` is called with the readings once one is whole."""

    def __init__(
        self,
        outlook: Outlook,
        changed: Callable[[DriveReadings], object],
        refused: Callable[[str], object],
    ) -> None:
        super().__init__()
        self._outlook, self._changed, self._refused = outlook, changed, refused
        self.readings = DriveReadings()
        self.flags: dict[str, QComboBox] = {}
        self.fields: dict[str, tuple[ProofField, str]] = {}
        self.marks: dict[Condition, MarkLabel] = {}
        self.words = {one: label("", "soft", wrap=True) for one in Condition}
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(4)
        grid.setColumnStretch(4, 1)
        for number, condition in enumerate(Condition):
            self._line(grid, number, condition)

    def show_readings(self, readings: DriveReadings, *, editable: bool) -> None:
        """Show readings; a field that is being typed in is left alone."""
        self.readings = readings
        units = self._outlook.units
        for name, combo in self.flags.items():
            value = getattr(readings, name)
            combo.setCurrentIndex([answer for _, answer in ANSWERS].index(value))
            combo.setEnabled(editable)
        for name, (field, measure) in self.fields.items():
            field.setEnabled(editable)
            field.setPlaceholderText(unit_sign(MEASURES[measure].unit(units)))
            if not (field.hasFocus() and field.isModified()):
                field.setText(_text(getattr(readings, name), measure, units))

    def show_start(self, start: DriveStart) -> None:
        """Mark each condition, and say what was read of it."""
        for one in start.conditions:
            mark = self.marks[one.condition]
            mark.mark = MARKS[one.state]
            mark.setAccessibleName(str(one.state))
            mark.update()
            said = str(one.state)
            if one.evidence not in ("not read", "yes", "no"):
                said = f"{said}: {one.evidence}"
            words = self.words[one.condition]
            words.setProperty("look", "work-text" if one.state is State.UNMET else "soft")
            words.style().polish(words)
            words.setText(said)

    def _line(self, grid: QGridLayout, number: int, condition: Condition) -> None:
        self.marks[condition] = MarkLabel(Mark.UNKNOWN, self._outlook, 16)
        grid.addWidget(self.marks[condition], number, 0)
        grid.addWidget(label(f"{number + 1}.  {condition[:1].upper()}{condition[1:]}"), number, 1)
        for column, asked in enumerate(ASKED[condition], start=2):
            grid.addWidget(self._input(asked, condition), number, column)
        grid.addWidget(self.words[condition], number, 4, Qt.AlignmentFlag.AlignVCenter)

    def _input(self, asked: Asked, condition: Condition) -> QWidget:
        if asked.measure == "flag":
            combo = QComboBox()
            combo.addItems([words for words, _ in ANSWERS])
            combo.setAccessibleName(str(condition))
            combo.setFixedWidth(104)
            combo.activated.connect(lambda at: self._take(asked.field, ANSWERS[at][1]))
            self.flags[asked.field] = combo
            return combo
        field = ProofField(asked.name or str(condition), 136)
        field.editingFinished.connect(lambda: self._read(asked, field))
        self.fields[asked.field] = field, asked.measure
        return field

    def _read(self, asked: Asked, field: ProofField) -> None:
        if not field.isModified():
            return
        text, units = field.text().strip(), self._outlook.units
        what = field.accessibleName()
        try:
            value: Any = None
            if text and asked.measure == "share":
                value = read_share(text, what)
            elif text:
                value = read_quantity(text, asked.measure, units, what)
            self._take(asked.field, value)
            field.setModified(False)
        except Refusal as refusal:
            self._refused(str(refusal))

    def _take(self, name: str, value: Any) -> None:
        self._changed(replace(self.readings, **{name: value}))


def _text(value: Any, measure: str, units: Units) -> str:
    if value is None:
        return ""
    return f"{100 * value:g} %" if measure == "share" else show(value, measure, units)
