"""The note of a proof that is being entered: where, when and by whom it was read, in free words."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from changeover.window.proof.draft import Draft
from changeover.window.proof.fields import ProofField

HINT = "note: weather, place, who read it"
MOST_CHARACTERS = 500


class NoteField(ProofField):
    """Shows the note of the proof in view, and takes another over into the draft of a new one."""

    def __init__(self, draft: Draft[Any], entering: Callable[[], bool]) -> None:
        super().__init__("note", hint=HINT)
        self._draft, self._entering = draft, entering
        self.setMaxLength(MOST_CHARACTERS)
        self.editingFinished.connect(self.take)

    def take(self) -> None:
        """Take the typed note over into the draft, as one step of undo."""
        note = self.text().strip()
        self.setModified(False)
        if self._entering() and note != self._draft.value.note:
            self._draft.push(replace(self._draft.value, note=note))

    def show_note(self, note: str) -> None:
        """Show a note; it can be changed only while its proof is being entered."""
        self.setReadOnly(not self._entering())
        self.setVisible(self._entering() or bool(note))
        if not self.isModified() and self.text() != note:
            self.setText(note)
