"""The meters of a planter: serial, row, zero of hub spacing, hours; a typed row moves a meter."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any, ClassVar

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.desk.edits import PutMeters
from changeover.desk.meters import meters, move_meter
from changeover.planter.parts import Meter
from changeover.quantities import Refusal, read_quantity, show
from changeover.window.asking import Asking
from changeover.window.door import Door
from changeover.window.entry.list_table import Column, ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Page, Read
from changeover.window.words import button, label, pill

HINT = "Type another row and the two meters change places; leave it empty to take one to the bench."


class MetersList(Page):
    """The meters of the planter in view, or every meter with those on the bench."""

    wants: ClassVar[frozenset[Changed]] = frozenset({Changed.METERS, Changed.PLANTERS})

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.model: ListModel[Meter] = ListModel(self._columns(), door, outlook)
        self.view, self.every = ListView(self.model, "Meters"), pill("every meter")
        self.every.toggled.connect(lambda: self.refresh(frozenset()))
        head, column = QHBoxLayout(), QVBoxLayout(self)
        head.addWidget(label("Meters", "title"))
        head.addWidget(label(HINT, "soft"), 1)
        head.addWidget(self.every)
        head.addWidget(button("New meter…", clicked=self.add))
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(head)
        column.addWidget(self.view, 1)

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        planter = None if self.every.isChecked() else self.outlook.planter
        self.model.show_rows(self.read(meters, planter))

    def add(self) -> None:
        """Ask for the serial of a new meter, which begins on the bench."""
        serial = self.asking.ask_text("New meter", "Serial of the meter:")
        if serial is None:
            return
        try:
            edit = PutMeters((Meter(serial.strip()),))
        except Refusal as refusal:
            self.door.refused.emit(str(refusal))
            return
        if self.door.push(edit):
            self.every.setChecked(True)

    def _columns(self) -> tuple[Column[Meter], ...]:
        return (
            Column("Serial", lambda meter: meter.serial),
            Column("Planter", lambda meter: meter.planter or "on the bench"),
            Column("Row", lambda meter: str(meter.row or ""), edit=self._move, number=True),
            Column("Zero of hub spacing", self._zero, edit=self._set(self._with_zero)),
            Column("Hours", _hours, edit=self._set(self._with_hours), number=True),
            Column("Note", lambda m: m.note, edit=self._set(_with_note), wide=True),
        )

    def _zero(self, meter: Meter) -> str:
        zero = meter.hub_zero
        return show(zero, "hub_spacing", self.outlook.units) if zero is not None else "not measured"

    def _move(self, meter: Meter, text: str) -> Any:
        typed = text.strip()
        if typed and not typed.isdigit():
            raise Refusal(f"Meter {meter.serial}: “{typed}” is not a row number; write it like 7.")
        planter = meter.planter or self.outlook.planter
        where = (planter, int(typed)) if typed else (None, None)
        return self.read(move_meter, meter.serial, *where)

    def _set(self, change: Callable[[Meter, str], Meter]) -> Callable[[Meter, str], PutMeters]:
        return lambda meter, text: PutMeters((change(meter, text.strip()),), before=(meter,))

    def _with_zero(self, meter: Meter, text: str) -> Meter:
        what = f"Meter {meter.serial}, zero of hub spacing"
        zero = read_quantity(text, "hub_spacing", self.outlook.units, what) if text else None
        return replace(meter, hub_zero=zero)

    def _with_hours(self, meter: Meter, text: str) -> Meter:
        try:
            return replace(meter, hours=float(text or 0))
        except ValueError as error:
            if isinstance(error, Refusal):
                raise
            raise Refusal(f"Meter {meter.serial}: “{text}” is not a number of hours.") from error


def _hours(meter: Meter) -> str:
    return f"{meter.hours:g}"


def _with_note(meter: Meter, text: str) -> Meter:
    return replace(meter, note=text)
