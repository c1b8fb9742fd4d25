"""A proof as it is being entered: kept in the window, undone step by step, saved as one edit."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Generic, TypeVar

from changeover.desk.changed import Changed
from changeover.window.door import Door, Edit, EditCommand

Entered = TypeVar("Entered")


@dataclass(frozen=True)
class Taken:
    """What taking another draft over did: no kind of data of the store changed."""

    inverse: Any
    changed: frozenset[Changed] = frozenset()


class Draft(Door, Generic[Entered]):
    """The values of an unsaved proof, on the undo stack of the window's door.

    Pushing another value takes it over; ``begin`` does so without a step of undo.
    """

    def __init__(self, door: Door, empty: Entered) -> None:
        super().__init__(self._take, door)
        self.stack = door.stack
        self.value = empty
        self._door = door
        self.refused.connect(door.refused)

    def begin(self, value: Entered) -> None:
        """Start from another value; what was there is not kept."""
        self.value = value
        self.changed.emit(frozenset())

    def save(self, make: Callable[[], Any], after: Entered) -> bool:
        """Push the edit that saves the draft, which then becomes ``after``; undo brings it back.

        Raises Refusal when the edit cannot be made.
        """
        command = SaveCommand(make(), self._door, self, after)
        before = self.stack.index()
        self.stack.push(command)
        return self.stack.index() > before

    def _take(self, value: Edit) -> Taken:
        before, self.value = self.value, value  # type: ignore[assignment]
        return Taken(before)


class SaveCommand(EditCommand):
    """An edit that saves a draft; the draft follows it there and back."""

    def __init__(self, edit: Edit, door: Door, draft: Draft[Any], after: Any) -> None:
        super().__init__(edit, door)
        self._draft, self._other = draft, after

    def redo(self) -> None:
        super().redo()
        self._change()

    def undo(self) -> None:
        super().undo()
        self._change()

    def _change(self) -> None:
        if not self.isObsolete():
            now = self._draft.value
            self._draft.begin(self._other)
            self._other = now
