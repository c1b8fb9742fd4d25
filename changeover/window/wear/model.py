"""The table model of a wear inspection: parts down, rows across, each cell with its verdict."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt

from changeover.desk.inspect_wear import (
    Inspection,
    Spot,
    Value,
    judge,
    limit_of,
    parts_of,
    read_cell,
    show_cell,
)
from changeover.proof.wear import Kind, WearLimit, WearState, WearVerdict
from changeover.quantities import MEASURES, Refusal, Units
from changeover.window.door import Door
from changeover.window.proof.draft import Draft

Index = QModelIndex | QPersistentModelIndex
NOWHERE = QModelIndex()
ROLE = Qt.ItemDataRole
Values = Mapping[Spot, Value | None]


class WearModel(QAbstractTableModel):
    """Shows the draft, or an inspection taken before, which cannot be edited."""

    def __init__(self, draft: Draft[Inspection], door: Door) -> None:
        super().__init__()
        self._draft, self._door = draft, door
        self._past: Inspection | None = None
        self.parts: tuple[str, ...] = ()
        self.rows: tuple[int, ...] = ()
        self.limits: tuple[WearLimit, ...] = ()
        self.units = Units.US
        self.verdicts: dict[Spot, WearVerdict] = {}
        self._shown: Mapping[Spot, Value] = {}

    @property
    def inspection(self) -> Inspection:
        """What is shown: the one taken before, else the draft."""
        return self._past or self._draft.value

    @property
    def editable(self) -> bool:
        return self._past is None

    def show_all(
        self,
        rows: Sequence[int],
        limits: Sequence[WearLimit],
        units: Units,
        past: Inspection | None = None,
    ) -> None:
        """Show other rows, limits, units or inspection."""
        parts = parts_of(limits)
        shape = (parts, tuple(rows)) != (self.parts, self.rows)
        if shape:
            self.beginResetModel()
        self.parts, self.rows = parts, tuple(rows)
        self.limits, self.units, self._past = tuple(limits), units, past
        self._shown = self.inspection.cells
        self.verdicts = _judged(self.inspection, self.limits)
        if shape:
            self.endResetModel()
        elif self.parts and self.rows:
            last = self.index(len(self.parts) - 1, len(self.rows) - 1)
            self.dataChanged.emit(self.index(0, 0), last)
            self.headerDataChanged.emit(Qt.Orientation.Vertical, 0, len(self.parts) - 1)

    def spot(self, index: Index) -> Spot:
        """Return the row of the planter and the part at an index."""
        return self.rows[index.column()], self.parts[index.row()]

    def index_of(self, spot: Spot) -> QModelIndex:
        return self.index(self.parts.index(spot[1]), self.rows.index(spot[0]))

    def limit(self, part: str) -> WearLimit | None:
        """Return the limit that holds for a part."""
        return limit_of(part, self.inspection, self.limits)

    def measured(self, part: str) -> bool:
        limit = self.limit(part)
        return limit is not None and limit.kind is not Kind.LOOK

    def read(self, spot: Spot, text: str) -> Values:
        """Return a typed cell as values to put. Raises Refusal."""
        return {spot: read_cell(self.inspection, spot, text, self.limits, self.units)}

    def rowCount(self, parent: Index = NOWHERE) -> int:
        return 0 if parent.isValid() else len(self.parts)

    def columnCount(self, parent: Index = NOWHERE) -> int:
        return 0 if parent.isValid() else len(self.rows)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = ROLE.DisplayRole
    ) -> Any:
        across = orientation is Qt.Orientation.Horizontal
        entries: Sequence[object] = self.rows if across else self.parts
        if role != ROLE.DisplayRole or not 0 <= section < len(entries):
            return None
        return str(self.rows[section]) if across else self.part_words(self.parts[section])

    def part_words(self, part: str) -> str:
        """Return a part as it heads its line, with the unit where it is measured."""
        name = part[0].upper() + part[1:]
        unit = MEASURES["diameter"].unit(self.units)
        return f"{name}, {unit}" if self.measured(part) else name

    def data(self, index: Index, role: int = ROLE.DisplayRole) -> Any:
        if not index.isValid():
            return None
        spot = self.spot(index)
        if role in (ROLE.DisplayRole, ROLE.EditRole):
            return show_cell(self.inspection.cells.get(spot), self.units)
        if role in (ROLE.ToolTipRole, ROLE.AccessibleTextRole):
            return self.says(spot)
        return Qt.AlignmentFlag.AlignCenter if role == ROLE.TextAlignmentRole else None

    def says(self, spot: Spot) -> str:
        """Say in words how a cell stands."""
        row, part = spot
        verdict = self.verdicts.get(spot)
        if verdict is None:
            return f"Row {row}, {part}: not read"
        return f"Row {row}, {part}: {verdict.condition.mark} {verdict.condition}. {verdict.says}"

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
            values = self.read(self.spot(index), str(value))
        except Refusal as refusal:
            self._door.refused.emit(str(refusal))
            return False
        return self.put(values)

    def put(self, values: Values) -> bool:
        """Put values in cells (None empties one) as one step that can be undone."""
        old = self._draft.value
        cells = {spot: one for spot, one in old.cells.items() if spot not in values}
        cells |= {spot: one for spot, one in values.items() if one is not None}
        if not self.editable or cells == old.cells:
            return False
        return self._draft.push(replace(old, cells=cells))

    def state(self, index: Index) -> WearState | None:
        """Return the condition of a cell, None when it was not read."""
        verdict = self.verdicts.get(self.spot(index))
        return None if verdict is None else verdict.condition

    def follow(self) -> None:
        """Show the draft as it is by now; only what changed is judged again."""
        if self._past is not None:
            return
        old, new = self._shown, self.inspection.cells
        spots = frozenset(spot for spot in {*old, *new} if old.get(spot) is not new.get(spot))
        self._shown = new
        kept = {spot: one for spot, one in self.verdicts.items() if spot not in spots}
        self.verdicts = kept | _judged(self.inspection, self.limits, spots)
        for row, part in spots:
            if row in self.rows and part in self.parts:
                there = self.index_of((row, part))
                self.dataChanged.emit(there, there)


def _judged(
    inspection: Inspection, limits: tuple[WearLimit, ...], spots: frozenset[Spot] | None = None
) -> dict[Spot, WearVerdict]:
    """Judge what can be judged; a reading that a change of limits made impossible is left out."""
    found: dict[Spot, WearVerdict] = {}
    for spot, value in inspection.cells.items():
        if spots is not None and spot not in spots:
            continue
        single = Inspection(inspection.day, {spot: value}, inspection.applies, inspection.worked)
        try:
            found |= judge(single, limits)
        except Refusal:
            continue
    return found
