"""The wear view: typed row after row, judged at once, undone, and saved with findings."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication

from changeover.desk.inspect_wear import wear_view
from changeover.desk.prove.proofs import Proof, findings
from changeover.proof.wear import WearState
from changeover.quantities import Q, Units
from changeover.window.page import EVERYTHING
from changeover.window.wear.view import WearProof
from tests.window.on_demo import OnDemo, on_demo

PLANTER = "Old Fiddle 24"
DISC, TUBE, WIPER = "opener disc diameter", "seed tube", "wiper"


@pytest.fixture
def wear(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, WearProof, PLANTER) as put:
        put.page.day.show_day(date(2026, 3, 1))
        put.page.variants[DISC].choose("15 in new")
        yield put


def type_in(wear: OnDemo, row: int, part: str, text: str) -> bool:
    model = wear.page.model
    return model.setData(model.index_of((row, part)), text)


def text_of(wear: OnDemo, row: int, part: str) -> str:
    return wear.page.model.index_of((row, part)).data()


def test_the_model_is_sound(wear: OnDemo, qtmodeltester: Any) -> None:
    type_in(wear, 1, DISC, "14.7")
    qtmodeltester.check(wear.page.model)


def test_parts_stand_down_and_rows_across(wear: OnDemo) -> None:
    model = wear.page.model
    assert model.columnCount() == 24
    assert {DISC, TUBE, WIPER, "hose", "vacuum seal", "disc flatness"} <= set(model.parts)


def test_a_reading_is_judged_as_it_is_typed(wear: OnDemo) -> None:
    model = wear.page.model
    for text, state in (("14.9", WearState.GOOD), ("14.6", WearState.WATCH), ("14.4", "replace")):
        assert type_in(wear, 3, DISC, text)
        assert model.state(model.index_of((3, DISC))) == state
    assert "✕ replace" in model.says((3, DISC))


def test_typing_is_undone_and_done_again(wear: OnDemo) -> None:
    type_in(wear, 3, DISC, "14.9")
    type_in(wear, 3, DISC, "14.4")
    wear.door.stack.undo()
    assert text_of(wear, 3, DISC) == "14.90"
    wear.door.stack.undo()
    assert text_of(wear, 3, DISC) == ""
    wear.door.stack.redo()
    assert text_of(wear, 3, DISC) == "14.90"


@pytest.mark.parametrize(("part", "text"), [(DISC, "3"), (DISC, "g"), (TUBE, "14")])
def test_what_cannot_be_is_refused_with_row_and_part(wear: OnDemo, part: str, text: str) -> None:
    assert not type_in(wear, 5, part, text)
    assert wear.refused[0].startswith("Row 5, ")
    assert text_of(wear, 5, part) == ""


def test_enter_goes_down_the_row_and_on_to_the_next(wear: OnDemo, qtbot: Any) -> None:
    matrix, model = wear.page.matrix, wear.page.model
    matrix.setCurrentIndex(model.index_of((1, model.parts[-2])))
    qtbot.keyClick(matrix, Qt.Key.Key_Return)
    assert matrix.here() == (1, model.parts[-1])
    qtbot.keyClick(matrix, Qt.Key.Key_Return)
    assert matrix.here() == (2, model.parts[0])


def test_the_selection_is_filled_along_one_part(wear: OnDemo, qtbot: Any) -> None:
    type_in(wear, 1, TUBE, "g")
    matrix, line = wear.page.matrix, wear.page.model.parts.index(TUBE)
    matrix.setCurrentIndex(wear.page.model.index_of((1, TUBE)))
    matrix.selectRow(line)
    qtbot.keyClick(matrix, Qt.Key.Key_D, Qt.KeyboardModifier.ControlModifier)
    assert [text_of(wear, row, TUBE) for row in (2, 24)] == ["good", "good"]
    wear.door.stack.undo()
    assert text_of(wear, 24, TUBE) == ""


def test_a_block_is_pasted_whole_or_not_at_all(wear: OnDemo) -> None:
    matrix, model = wear.page.matrix, wear.page.model
    matrix.setCurrentIndex(model.index_of((23, DISC)))
    QGuiApplication.clipboard().setText("14.9\t14.8\n2.2\t99")
    matrix.paste()
    assert text_of(wear, 23, DISC) == ""
    QGuiApplication.clipboard().setText("14.9\t14.8\n2.2\t2.3")
    matrix.paste()
    assert (text_of(wear, 24, DISC), text_of(wear, 23, "opener contact")) == ("14.80", "2.20")
    matrix.setCurrentIndex(model.index_of((24, DISC)))
    matrix.paste()
    assert "beyond the matrix" in wear.refused[-1]


def test_saving_makes_findings_and_begins_anew(wear: OnDemo) -> None:
    type_in(wear, 4, DISC, "14.3")
    type_in(wear, 4, TUBE, "g")
    wear.page.worked.line.setText("1200 acre")
    wear.page.save()
    found = findings(wear.store, PLANTER, Proof.WEAR)
    assert [(one.finding.row, one.finding.part) for one in found] == [(4, DISC)]
    (kept,) = wear_view(wear.store, PLANTER).inspections
    assert (kept.day, kept.worked) == (date(2026, 3, 1), Q(1200.0, "acre"))
    assert kept.applies == {DISC: "15 in new"}
    assert text_of(wear, 4, DISC) == ""


def test_a_day_to_come_and_an_empty_sheet_are_not_saved(wear: OnDemo) -> None:
    wear.page.save()
    assert "Nothing is entered" in wear.refused[-1]
    type_in(wear, 4, TUBE, "g")
    wear.page.day.show_day(date(2999, 1, 1))
    wear.page.save()
    assert "still to come" in wear.refused[-1]
    assert wear_view(wear.store, PLANTER).inspections == ()


def test_an_earlier_inspection_is_shown_and_cannot_be_typed_over(wear: OnDemo) -> None:
    type_in(wear, 4, DISC, "14.9")
    wear.page.save()
    type_in(wear, 4, DISC, "14.8")
    wear.page.shown.setCurrentIndex(1)
    assert text_of(wear, 4, DISC) == "14.90"
    assert not type_in(wear, 4, DISC, "14.7")
    wear.page.shown.setCurrentIndex(0)
    assert text_of(wear, 4, DISC) == "14.80"


def test_two_dates_tell_what_is_left(wear: OnDemo) -> None:
    type_in(wear, 4, DISC, "14.9")
    wear.page.worked.line.setText("1000 acre")
    wear.page.save()
    wear.page.day.show_day(date(2026, 9, 1))
    wear.page.worked.line.setText("2000 acre")
    type_in(wear, 4, DISC, "14.7")
    wear.page.matrix.setCurrentIndex(wear.page.model.index_of((4, DISC)))
    assert "1\u202f000 ac left" in wear.page.side.rate.text()
    assert "Iowa State" in wear.page.side.source.text()


def test_a_limit_from_the_manual_is_entered_and_judged_by(wear: OnDemo, qtbot: Any) -> None:
    type_in(wear, 4, DISC, "14.3")
    dialog = wear.page.change_limits()
    qtbot.addWidget(dialog)
    form = dialog.add()
    form.part.setCurrentText(DISC)
    form.low.setText("14 in")
    assert not form.take.isEnabled()
    form.note.setText("page 40")
    form.accept()
    assert dialog.model.rows[0].source.text == "your manual: page 40"
    model = wear.page.model
    assert model.state(model.index_of((4, DISC))) is WearState.GOOD
    dialog.view.selectRow(0)
    dialog.remove()
    assert model.state(model.index_of((4, DISC))) is WearState.REPLACE
    dialog.close()


def test_published_limits_cannot_be_removed(wear: OnDemo, qtbot: Any) -> None:
    dialog = wear.page.change_limits()
    qtbot.addWidget(dialog)
    dialog.view.selectRow(0)
    dialog.remove()
    assert "your own" in wear.refused[-1]
    dialog.close()


def test_other_units_show_other_figures_and_keep_the_reading(wear: OnDemo) -> None:
    type_in(wear, 4, DISC, "14.9")
    wear.outlook.units = Units.METRIC
    wear.page.refresh(EVERYTHING)
    assert text_of(wear, 4, DISC) == "378"
    assert wear.page.draft.value.cells[4, DISC] == Q(14.9, "in")


def test_undoing_the_save_brings_the_readings_back(wear: OnDemo) -> None:
    type_in(wear, 4, DISC, "14.3")
    wear.page.save()
    wear.door.stack.undo()
    assert text_of(wear, 4, DISC) == "14.30"
    assert findings(wear.store, PLANTER, Proof.WEAR) == ()
    wear.door.stack.redo()
    assert text_of(wear, 4, DISC) == ""
    assert len(findings(wear.store, PLANTER, Proof.WEAR)) == 1


def test_a_finding_is_put_on_the_worklist_and_closed_by_a_new_reading(wear: OnDemo) -> None:
    type_in(wear, 4, DISC, "14.3")
    wear.page.save()
    (card,) = wear.page.cards.cards.values()
    card.turn()
    assert wear.page.findings.text() == "findings (1)"
    assert card.task.text() == "On the worklist ✓"
    type_in(wear, 4, DISC, "15")
    wear.page.save()
    assert wear.page.findings.text() == "findings (0)"


def test_the_latest_inspection_is_shown_until_another_is_begun(qtbot: Any, tmp_path: Path) -> None:
    with on_demo(qtbot, tmp_path, WearProof, "Magpie 31") as put:
        assert put.page.model.inspection.day == date(2026, 4, 27)
        assert "5\u202f500.0 ac done by then" in put.page.told.text()
        assert put.page.save_button.text() == "Inspect again"
        put.page.save_button.click()
        assert put.page.model.inspection.cells == {}
        assert put.page.save_button.text() == "Save the inspection"
