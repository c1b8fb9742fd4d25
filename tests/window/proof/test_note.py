"""Every proof takes a note while it is entered, keeps it, and shows it when it is looked at."""

from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt

from changeover.desk.prove.proofs import proofs
from changeover.window.proof.bench import BenchView
from changeover.window.proof.depth import DepthView
from changeover.window.proof.drive import DriveView
from changeover.window.proof.spacing import SpacingView
from changeover.window.vacuum.view import VacuumProof
from changeover.window.wear.view import WearProof
from tests.window.on_demo import OnDemo, on_demo

PENNY = "Penny Twelve"
VIEWS: tuple[type[Any], ...] = (
    BenchView,
    SpacingView,
    DepthView,
    DriveView,
    VacuumProof,
    WearProof,
)


def begin(put: OnDemo) -> Any:
    """Begin to enter a proof; return the field of its note."""
    page = put.page
    if hasattr(page, "enter"):
        page.enter()
    else:
        page.shown.choose(0)
    return page.note


def type_note(field: Any, qtbot: Any, text: str) -> None:
    field.setText("")
    qtbot.keyClicks(field, text)
    qtbot.keyClick(field, Qt.Key.Key_Return)


@pytest.mark.parametrize("view", VIEWS)
def test_a_note_is_typed_into_the_draft_and_undone(qtbot: Any, tmp_path: Path, view: Any) -> None:
    with on_demo(qtbot, tmp_path, view, PENNY) as put:
        note = begin(put)
        assert note.isVisibleTo(put.page)
        type_note(note, qtbot, "dry, east headland")
        assert put.page.draft.value.note == "dry, east headland"
        put.door.stack.undo()
        assert put.page.draft.value.note == ""
        assert note.text() == ""


def test_it_is_kept_with_the_proof_and_cannot_be_changed_there(qtbot: Any, tmp_path: Path) -> None:
    with on_demo(qtbot, tmp_path, DepthView, PENNY) as put:
        note = begin(put)
        qtbot.keyClicks(note, "dug by Bo")  # and straight on, without Enter
        qtbot.keyClicks(put.page.entry.depths, "1.7 1.8 1.75")
        qtbot.keyClick(put.page.entry.depths, Qt.Key.Key_Return)
        put.page.save()
        put.page.refresh(frozenset())
        assert proofs(put.store, PENNY)[0].note == "dug by Bo"
        assert (note.text(), note.isReadOnly()) == ("dug by Bo", True)
        begin(put)
        assert (note.text(), note.isReadOnly()) == ("", False)
