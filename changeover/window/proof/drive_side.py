"""Beside a drive start: speeds and what to look at next, the wheel sensor, the row sensors."""

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtWidgets import QVBoxLayout, QWidget

from changeover.desk.prove.drive import DriveProof, JudgedDrive
from changeover.proof.drive_start import DriveStart
from changeover.proof.pulses import WheelCalibration, WheelRun
from changeover.proof.wording import percent
from changeover.quantities import Refusal, Units, how_many, read_quantity, show
from changeover.window.proof.fields import FieldLine, ProofField
from changeover.window.words import button, label


class DrivePanel(QWidget):
    """What a start says in words, and fields for wheel runs, controllers and silent rows.

    ``push`` takes another proof over, ``refused`` says why something typed cannot be.
    """

    def __init__(
        self, push: Callable[[DriveProof], object], refused: Callable[[str], object]
    ) -> None:
        super().__init__()
        self._push, self._refused = push, refused
        self.proof, self.units, self._rows = DriveProof(), Units.US, range(1, 1)
        self.says, self.next = label("", wrap=True), label("", "source", wrap=True)
        self.wheel, self.sensors = label("", "soft", wrap=True), label("", "soft", wrap=True)
        self.pulses, self.distance = ProofField("pulses", 70), ProofField("measured distance", 84)
        self.controllers = ProofField("controllers", 44)
        self.silent = ProofField("rows whose sensor is silent", 100, "none")
        named = (("pulses", self.pulses), ("over", self.distance))
        self.run = FieldLine(named, self.add_run)
        self.counted = FieldLine(
            (("controllers", self.controllers), ("silent", self.silent)), self.take_sensors, last=2
        )
        for field in self.counted.fields:
            field.editingFinished.connect(self.take_sensors)
        self.clear = button("Take the runs out", "quiet", self.clear_runs)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(self.says)
        column.addWidget(label("What to look at next", "title"))
        column.addWidget(self.next)
        column.addWidget(label("Wheel sensor", "title"))
        for widget in (self.run, self.wheel, self.clear):
            column.addWidget(widget)
        column.addWidget(label("Row sensors", "title"))
        column.addWidget(self.counted)
        column.addWidget(self.sensors)

    def show_proof(
        self,
        proof: DriveProof,
        judged: JudgedDrive | None,
        units: Units,
        rows: range,
        *,
        editable: bool,
    ) -> None:
        """Show a drive start and what it says."""
        self.proof, self.units, self._rows = proof, units, rows
        for widget in (self.run, self.counted):
            widget.setEnabled(editable)
        self.clear.setVisible(editable and bool(proof.wheel))
        if not self.controllers.hasFocus():
            self.controllers.setText("" if proof.controllers is None else str(proof.controllers))
        if not self.silent.hasFocus():
            self.silent.setText(", ".join(map(str, proof.silent)))
        if judged is None:
            self.says.setText("")
            self.next.setText("Enter what was read.")
            return
        self.says.setText(start_says(judged.start, units))
        self.next.setText(next_says(judged.start))
        self.wheel.setText(wheel_says(judged.wheel, units))
        self.sensors.setText(sensors_say(judged))

    def add_run(self) -> None:
        """Take one run of the wheel sensor over a measured course in."""
        try:
            pulses = _whole(self.pulses.text(), "Pulses", "those counted")
            length = read_quantity(self.distance.text(), "row_length", self.units, "Distance")
            run = WheelRun(pulses, length)
        except Refusal as refusal:
            self._refused(str(refusal))
            return
        self.pulses.clear()
        self._put(wheel=(*self.proof.wheel, run))
        self.run.start()

    def clear_runs(self) -> None:
        """Take all runs of the wheel sensor out."""
        self._put(wheel=())

    def take_sensors(self) -> None:
        """Take the number of controllers and the silent rows over."""
        if not (self.controllers.isModified() or self.silent.isModified()):
            return
        try:
            controllers = _count(self.controllers.text())
            silent = _rows(self.silent.text(), self._rows)
        except Refusal as refusal:
            self._refused(str(refusal))
            return
        for field in self.counted.fields:
            field.setModified(False)
        self._put(controllers=controllers, silent=silent)

    def _put(self, **more: object) -> None:
        self._push(replace(self.proof, **more))  # type: ignore[arg-type]


def start_says(start: DriveStart, units: Units) -> str:
    """Say the first condition not met, those not judged, and the speeds."""
    first = start.first_unmet
    lines = [f"First not met: {first}." if first else "No condition found that is not met."]
    if start.not_judged:
        lines.append(f"Cannot be judged yet: {', '.join(start.not_judged)}.")
    if start.expected is not None:
        lines.append(f"Target speed reckoned: {show(start.expected, 'disc_speed', units)}.")
    if start.oil_needed is not None:
        lines.append(f"Oil that it takes: {show(start.oil_needed, 'oil_flow', units)}.")
    if start.actual_share is not None:
        word = "within" if start.within_tolerance else "outside"
        lines.append(f"Actual at {percent(start.actual_share)} of target, {word} tolerance.")
    if start.saturated is not None:
        lines.append(
            "The drive command is at its limit." if start.saturated else "Command not full."
        )
    return "\n".join(lines)


def next_says(start: DriveStart) -> str:
    """Say what to look at next, likeliest first, with source and caution."""
    if not start.next_steps:
        return "Nothing: read on, or the drive turns as it should."
    steps = [f"{n}.  {one.text} ({one.source})" for n, one in enumerate(start.next_steps, 1)]
    cautions = dict.fromkeys(one.caution for one in start.next_steps if one.caution)
    return "\n".join((*steps, *cautions))


def wheel_says(found: WheelCalibration | None, units: Units) -> str:
    """Say the calibration in both conventions, and how far the runs disagree."""
    if found is None:
        return "Drive a measured course loaded, at work speed, two or three times."
    us = units is Units.US
    per = found.pulses_per_distance.to("pulse/ft" if us else "pulse/m").magnitude
    each = found.distance_per_pulse.to("in/pulse" if us else "cm/pulse").magnitude
    words = (
        f"{found.runs} runs: {per:.3f} pulses per {'ft' if us else 'm'}, or {each:.4f} "
        f"{'in' if us else 'cm'} per pulse; enter the one that the controller asks for."
    )
    spread = "" if found.spread is None else f" Spread between runs {percent(found.spread)}."
    return words + spread + ("" if found.enough_runs else " Drive it at least once more.")


def sensors_say(judged: JudgedDrive) -> str:
    """Say whether the controllers read every row sensor, and which rows are silent."""
    found, silence = judged.sensors, judged.silence
    if found is None:
        return "Enter how many controllers there are."
    there = "there is 1" if found.controllers == 1 else f"there are {found.controllers}"
    words = (
        f"{how_many(found.sensors, 'sensor')} at {found.per_controller} a controller need "
        f"{how_many(found.needed, 'controller')}; {there}."
    )
    if not found.enough:
        words = f"! {words} {found.unread} sensors are not read."
    if silence is not None and silence.rows:
        words += f"\nSilent: rows {', '.join(map(str, silence.rows))}."
    if silence is not None and silence.controllers:
        words += f" All of {', '.join(silence.controllers)}: look at it and its harness first."
    return words


def _count(text: str) -> int | None:
    return _whole(text, "Controllers", "how many there are") if text.strip() else None


def _whole(text: str, what: str, wanted: str) -> int:
    plain = text.replace(" ", "")
    if not plain.isdecimal():
        raise Refusal(f"{what} “{text}” are no whole number; enter {wanted}.")
    return int(plain)


def _rows(text: str, rows: range) -> tuple[int, ...]:
    words = text.replace(",", " ").split()
    for word in words:
        if not word.isdecimal() or int(word) not in rows:
            raise Refusal(f"“{word}” is no row of this planter; enter 1 to {rows[-1]}.")
    return tuple(sorted({int(word) for word in words}))
