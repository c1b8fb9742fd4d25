"""Gauge readings not saved yet, one column for each row of the planter; a change can be undone."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QUndoCommand

from changeover.desk.gauge import Gauges
from changeover.proof.fan import MOST_VACUUM
from changeover.quantities import Q, Quantity, Refusal, Units, read_quantity, show
from changeover.window.door import Door

Index = QModelIndex | QPersistentModelIndex
NOWHERE = QModelIndex()
ROLE = Qt.ItemDataRole
Values = Mapping[int, Quantity | None]


class VacuumModel(QAbstractTableModel):
    """Holds readings not saved yet, or shows some taken before; a change is one undo step."""

    altered = Signal()

    def __init__(self, door: Door, day: date) -> None:
        super().__init__()
        self._door = door
        self.gauges, self.rows, self.units = Gauges(day), tuple[int, ...](), Units.US
        self.editable = True

    def show_gauges(
        self, gauges: Gauges, rows: Sequence[int], units: Units, *, editable: bool = True
    ) -> None:
        """Show other readings; typing is not possible in those taken before."""
        shape = tuple(rows) != self.rows
        if shape:
            self.beginResetModel()
        self.gauges, self.rows, self.units = gauges, tuple(rows), units
        self.editable = editable
        if shape:
            self.endResetModel()
        else:
            self.dataChanged.emit(self.index(0, 0), self.index(0, len(self.rows) - 1))
        self.altered.emit()

    def put(self, values: Values, words: str) -> None:
        """Put readings (None empties one) as one step on the undo stack."""
        old = {row: self.gauges.cells.get(row) for row in values}
        if self.editable and old != dict(values):
            self._door.stack.push(_Typed(self, values, old, words))

    def take(self, values: Values) -> None:
        """Put readings without a step on the stack."""
        cells = {row: one for row, one in self.gauges.cells.items() if row not in values}
        cells |= {row: one for row, one in values.items() if one is not None}
        self.gauges = replace(self.gauges, cells=cells)
        self.dataChanged.emit(self.index(0, 0), self.index(0, len(self.rows) - 1))
        self.altered.emit()

    def read(self, column: int, text: str) -> Values:
        """Return a typed reading as values to put. Raises Refusal."""
        row = self.rows[column]
        if not text.strip():
            return {row: None}
        read = read_quantity(text, "pressure", self.units, f"Vacuum, row {row}")
        if not Q(0.0, "inH2O") <= read <= MOST_VACUUM:
            raise Refusal(
                f"Vacuum, row {row}: {text.strip()} is not possible; enter 0 to 60 inH₂O."
            )
        return {row: read}

    def rowCount(self, parent: Index = NOWHERE) -> int:
        return 0 if parent.isValid() or not self.rows else 1

    def columnCount(self, parent: Index = NOWHERE) -> int:
        return 0 if parent.isValid() else len(self.rows)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = ROLE.DisplayRole
    ) -> Any:
        if role != ROLE.DisplayRole or section < 0:
            return None
        if orientation is Qt.Orientation.Vertical:
            return "Vacuum" if section == 0 else None
        return str(self.rows[section]) if section < len(self.rows) else None

    def data(self, index: Index, role: int = ROLE.DisplayRole) -> Any:
        if not index.isValid():
            return None
        if role == ROLE.TextAlignmentRole:
            return Qt.AlignmentFlag.AlignCenter
        reading = self.gauges.cells.get(self.rows[index.column()])
        if role in (ROLE.DisplayRole, ROLE.EditRole):
            return "" if reading is None else show(reading, "pressure", self.units, sign=False)
        if role in (ROLE.ToolTipRole, ROLE.AccessibleTextRole):
            words = "not read" if reading is None else show(reading, "pressure", self.units)
            return f"Row {self.rows[index.column()]}: {words}"
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = super().flags(index)
        if index.isValid() and self.editable:
            flags |= Qt.ItemFlag.ItemIsEditable
        return flags

    def setData(self, index: Index, value: Any, role: int = ROLE.EditRole) -> bool:
        if not index.isValid() or role != ROLE.EditRole or not self.editable:
            return False
        if str(value) == self.data(index, ROLE.EditRole):
            return False
        try:
            values = self.read(index.column(), str(value))
        except Refusal as refusal:
            self._door.refused.emit(str(refusal))
            return False
        self.put(values, "Type a reading")
        return True


class _Typed(QUndoCommand):
    """One step of typing."""

    def __init__(self, model: VacuumModel, new: Values, old: Values, words: str) -> None:
        super().__init__(words)
        self._model, self._new, self._old = model, new, old

    def redo(self) -> None:
        self._model.take(self._new)

    def undo(self) -> None:
        self._model.take(self._old)
