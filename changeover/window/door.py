"""The door of the window: every change goes through it as an edit on the undo stack."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any, Protocol

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
    somebody else has changed the store meanwhile, so that all pages read it again; ``choose`` is
    asked then, where one of the two values can be kept, and says whether it is this one's.
    """

    changed = Signal(object)
    refused = Signal(str)
    told = Signal(str)
    overtaken = Signal()

    def __init__(self, apply: Apply, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._apply = apply
        self.latest: Edit | None = None
        self.choose: Callable[[Conflict], bool] = lambda _conflict: False
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
        except Conflict as conflict:
            self.overtaken.emit()
            return self._settle(edit, conflict)
        except Refusal as refusal:
            self.refused.emit(str(refusal))
            return None
        self.latest = edit
        self.changed.emit(outcome.changed)
        return outcome.inverse

    def _settle(self, edit: Any, conflict: Conflict) -> Edit | None:
        """Carry an edit out over what somebody else stored meanwhile, if a person so chooses."""
        can = conflict.stored is not None and hasattr(edit, "before")
        if can and edit.before != conflict.stored and self.choose(conflict):
            return self.carry_out(replace(edit, before=conflict.stored))
        self.refused.emit(str(conflict))
        return None
