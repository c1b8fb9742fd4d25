"""Depth digs are typed row by row, judged at once, and taken over as calibration."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt

from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.window.proof.depth import DepthView
from tests.window.on_demo import OnDemo, on_demo

SHALLOW = "1.24 1.26 1.25 1.25 1.26"


@pytest.fixture
def depth(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, DepthView, "Penny Twelve") as put:
        put.page.enter()
        yield put


def type_digs(qtbot: Any, entry: Any, text: str) -> None:
    qtbot.keyClicks(entry.depths, text)
    qtbot.keyClick(entry.depths, Qt.Key.Key_Return)


def test_the_goal_is_that_of_the_notch_and_rows_are_typed_in_turn(
    depth: OnDemo, qtbot: Any
) -> None:
    entry = depth.page.entry
    assert (entry.target.text(), entry.tolerance.text()) == ("1.75 in", "0.25 in")
    assert (entry.row.text(), entry.notch.text()) == ("1", "6")
    type_digs(qtbot, entry, SHALLOW)
    assert "go from notch 6 to 8" in entry.says.text()
    assert entry.row.text() == "2"
    assert depth.page.plot.plot.attention == {1}


def test_another_goal_judges_the_digs_anew_and_undo_brings_the_old_one(
    depth: OnDemo, qtbot: Any
) -> None:
    type_digs(qtbot, depth.page.entry, SHALLOW)
    depth.page.entry.target.setText("1.25 in")
    depth.page.entry.target.setModified(True)
    depth.page.entry.take_conditions()
    assert depth.page.rows[0].notch_to == 6
    depth.door.stack.undo()
    assert depth.page.rows[0].notch_to == 8


def test_taking_the_calibration_over_changes_planter_and_target_in_one_undo(
    depth: OnDemo, qtbot: Any
) -> None:
    type_digs(qtbot, depth.page.entry, SHALLOW)
    depth.page.take_over()
    board = depth.outlook.board
    assert board.planter.depth.depth(6, 1).to("in").magnitude == pytest.approx(1.252)
    assert board.target.get(Cell("depth", Place.of_row(1))) == 8
    depth.door.stack.undo()
    assert 1 not in depth.outlook.board.planter.depth.offsets


def dig_at(qtbot: Any, entry: Any, row: int, notch: int, text: str) -> None:
    entry.row.setText(str(row))
    entry.notch.setText(str(notch))
    entry.depths.clear()
    type_digs(qtbot, entry, text)


def column(page: Any, title: str) -> list[str]:
    (one,) = (one for one in page.model.columns if one.title == title)
    return [one.text(row) for row in page.model.rows]


def test_digs_at_two_notches_offer_the_rows_own_line_and_say_why(depth: OnDemo, qtbot: Any) -> None:
    entry, page = depth.page.entry, depth.page
    dig_at(qtbot, entry, 2, 4, "1.58 1.6 1.62")
    assert page.lines.text().startswith("Row 2: only the offset. 3 digs at notch 4")
    dig_at(qtbot, entry, 2, 8, "2.35 2.40 2.45")
    assert "its own line: step 0.200 ± 0.022 in" in entry.says.text()
    assert column(page, "Takes over") == ["step 0.200 ± 0.022 in"]
    assert page.lines.text().startswith("Row 2: 6 digs at notches 4 and 8 give this row its own")
    page.take_over()
    scale = depth.outlook.board.planter.depth
    assert scale.step_of(2).to("in").magnitude == pytest.approx(0.2)
    assert scale.depth(8, 2).to("in").magnitude == pytest.approx(2.4)


def test_no_depths_take_the_digs_of_that_notch_out(depth: OnDemo, qtbot: Any) -> None:
    entry = depth.page.entry
    dig_at(qtbot, entry, 2, 4, "1.58 1.6 1.62")
    dig_at(qtbot, entry, 2, 8, "2.35 2.40 2.45")
    dig_at(qtbot, entry, 2, 4, "")
    assert entry.says.text() == "Row 2: its digs at notch 4 are out; undo to keep."
    assert depth.page.draft.value.dug(2).keys() == {8}
    depth.door.stack.undo()
    assert depth.page.draft.value.dug(2).keys() == {4, 8}


def test_digs_saved_before_count_for_the_line_unless_they_are_left_out(
    depth: OnDemo, qtbot: Any
) -> None:
    page = depth.page
    dig_at(qtbot, page.entry, 2, 4, "1.58 1.6 1.62")
    page.save()
    page.enter()
    dig_at(qtbot, page.entry, 2, 8, "2.35 2.40 2.45")
    assert column(page, "Takes over") == ["step 0.200 ± 0.022 in"]
    assert not page.past.isHidden()
    page.past.setChecked(False)
    assert column(page, "Takes over") == ["offset 0.15 in"]


def test_the_goal_is_the_depth_that_most_rows_mean(depth: OnDemo, qtbot: Any) -> None:
    type_digs(qtbot, depth.page.entry, SHALLOW)
    depth.page.take_over()
    depth.page.discard()
    goal = depth.page.fresh().goal
    assert goal.target.to("in").magnitude == pytest.approx(1.75)


def test_what_cannot_be_is_said(depth: OnDemo, qtbot: Any) -> None:
    type_digs(qtbot, depth.page.entry, "1.5 55")
    assert "a depth of 55 is not possible" in depth.page.entry.says.text()
    depth.page.entry.depths.clear()
    depth.page.entry.notch.setText("99")
    type_digs(qtbot, depth.page.entry, "1.5")
    assert "notch “99” is not possible" in depth.page.entry.says.text()
    assert depth.page.rows == ()


def test_digs_are_saved_and_shown_again_with_their_finding(depth: OnDemo, qtbot: Any) -> None:
    type_digs(qtbot, depth.page.entry, SHALLOW)
    depth.page.save()
    assert not depth.page.entering
    assert depth.page.rows[0].digs.n == 5
    assert len(depth.page.cards.cards) == 1


def test_digs_are_imported_and_printed(depth: OnDemo, tmp_path: Path) -> None:
    path = tmp_path / "digs.csv"
    path.write_text("row,depth (in)\n4,1.7\n4,1.8\n", encoding="utf-8")
    depth.answers.folder = path
    depth.page.import_file()
    assert [one.digs.row for one in depth.page.rows] == [4]
    depth.answers.folder = tmp_path
    depth.page.print_report()
    assert list(tmp_path.glob("depth-*.pdf"))


def test_the_model_is_sound(depth: OnDemo, qtbot: Any, qtmodeltester: Any) -> None:
    type_digs(qtbot, depth.page.entry, SHALLOW)
    qtmodeltester.check(depth.page.model)
