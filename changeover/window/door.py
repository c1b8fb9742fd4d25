"""The door of the window: every change goes through it as an edit on the undo stack."""

from collections.abc import Callable
from typing import Protocol

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from changeover.desk.changed import Changed
from changeover.desk.edits import Conflict
from changeover.quantities import Refusal


class Edit(Protocol):
    """A frozen edit of ``changeover.desk.edits``."""


class Outcome(Protocol):
    """What the desk says of an applied edit."""

    @property
    def changed(self) -> frozenset[Changed]: ...
    @property
    def inverse(self) -> Edit: ...


Apply = Callable[[Edit], Outcome]


class EditCommand(QUndoCommand):
    """One edit on the stack; doing or undoing it swaps it for its inverse."""

    def __init__(self, edit: Edit, door: "Door") -> None:
        super().__init__(str(getattr(edit, "says", "")))
        self._edit, self._door = edit, door

    def redo(self) -> None:
        self._swap()

    def undo(self) -> None:
        self._swap()

    def _swap(self) -> None:
        inverse = self._door.carry_out(self._edit)
        if inverse is None:
            self.setObsolete(True)
        else:
            self._edit = inverse


class Door(QObject):
    """Takes edits, keeps the undo stack and says what changed or why an edit was refused.

    ``latest`` is the edit that was carried out last. ``told`` says what a person must know of an
    edit that was taken, its ``note``. ``overtaken`` says, before the refusal, that
    somebody else has changed the store meanwhile, so that all pages read it again.
    """

    changed = Signal(object)
    refused = Signal(str)
    told = Signal(str)
    overtaken = Signal()

    def __init__(self, apply: Apply, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._apply = apply
        self.latest: Edit | None = None
        self.stack = QUndoStack(self)

    def push(self, edit: Edit) -> bool:
        """Apply an edit and put it on the undo stack; say whether it was taken."""
        before = self.stack.index()
        self.stack.push(EditCommand(edit, self))
        taken = self.stack.index() > before
        note = str(getattr(edit, "note", ""))
        if taken and note:
            self.told.emit(note)
        return taken

    def carry_out(self, edit: Edit) -> Edit | None:
        """Apply an edit without the stack; return its inverse, or None when it was refused."""
        try:
            outcome = self._apply(edit)
        except Refusal as refusal:
            if isinstance(refusal, Conflict):
                self.overtaken.emit()
            self.refused.emit(str(refusal))
            return None
        self.latest = edit
        self.changed.emit(outcome.changed)
        return outcome.inverse
