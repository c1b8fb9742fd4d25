"""The inspection that is being typed: changed cell by cell, each change undone like any other."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from changeover.desk.inspect_wear import Inspection, Spot, Value

Values = Mapping[Spot, Value | None]


class Draft(QObject):
    """One inspection not saved yet; ``altered`` carries the spots that changed."""

    altered = Signal(object)

    def __init__(self, stack: QUndoStack, day: date) -> None:
        super().__init__()
        self._stack, self.inspection = stack, Inspection(day)

    def begin(self, inspection: Inspection) -> None:
        """Put another inspection in place of what was typed; this cannot be undone."""
        self.inspection = inspection

    def put(self, values: Values, words: str) -> None:
        """Put values in cells (None empties one) as one step that can be undone."""
        old = {spot: self.inspection.cells.get(spot) for spot in values}
        if old != dict(values):
            self._stack.push(_Typed(self, values, old, words))

    def take(self, values: Values) -> None:
        """Put values in cells without a step on the stack."""
        cells = {s: v for s, v in self.inspection.cells.items() if s not in values}
        cells |= {spot: value for spot, value in values.items() if value is not None}
        self.inspection = replace(self.inspection, cells=cells)
        self.altered.emit(frozenset(values))


class _Typed(QUndoCommand):
    """One step of typing."""

    def __init__(self, draft: Draft, new: Values, old: Values, words: str) -> None:
        super().__init__(words)
        self._draft, self._new, self._old = draft, new, old

    def redo(self) -> None:
        self._draft.take(self._new)

    def undo(self) -> None:
        self._draft.take(self._old)
