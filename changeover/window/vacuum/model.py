"""Gauge readings not saved yet, one column for each row of the planter; a change can be undone."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt

from changeover.desk.gauge import Gauges
from changeover.proof.fan import MOST_VACUUM
from changeover.quantities import Q, Quantity, Refusal, Units, read_quantity, show
from changeover.window.door import Door
from changeover.window.proof.draft import Draft

Index = QModelIndex | QPersistentModelIndex
NOWHERE = QModelIndex()
ROLE = Qt.ItemDataRole
Values = Mapping[int, Quantity | None]


class VacuumModel(QAbstractTableModel):
    """Shows the draft, or readings taken before; a change is one step of undo."""

    def __init__(self, draft: Draft[Gauges], door: Door) -> None:
        super().__init__()
        self._draft, self._door = draft, door
        self._past: Gauges | None = None
        self.rows, self.units = tuple[int, ...](), Units.US

    @property
    def gauges(self) -> Gauges:
        """What is shown: readings taken before, else the draft."""
        return self._past or self._draft.value

    @property
    def editable(self) -> bool:
        return self._past is None

    def show_gauges(self, rows: Sequence[int], units: Units, past: Gauges | None = None) -> None:
        """Show other rows, units or readings; those taken before cannot be typed over."""
        shape = tuple(rows) != self.rows
        if shape:
            self.beginResetModel()
        self.rows, self.units, self._past = tuple(rows), units, past
        if shape:
            self.endResetModel()
        else:
            self.follow()

    def follow(self) -> None:
        """Show the readings as they are by now."""
        if self.rows:
            self.dataChanged.emit(self.index(0, 0), self.index(0, len(self.rows) - 1))

    def put(self, values: Values) -> bool:
        """Put readings (None empties one) as one step that can be undone."""
        old = self._draft.value
        cells = {row: one for row, one in old.cells.items() if row not in values}
        cells |= {row: one for row, one in values.items() if one is not None}
        if not self.editable or cells == old.cells:
            return False
        return self._draft.push(replace(old, cells=cells))

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
        return self.put(values)
