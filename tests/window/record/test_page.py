"""The Record page lists setups, compares any two and shows every change."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from changeover.desk.edits import SetCells, Side
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Units
from changeover.window.record.page import RecordPage
from tests.window.on_demo import OnDemo, on_demo

ROW_3 = Cell("closing", Place.of_row(3))


@pytest.fixture
def record(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, RecordPage) as put:
        yield put


def close_row_3(record: OnDemo, position: int) -> None:
    board = record.outlook.board
    before = {ROW_3: board.as_found.get(ROW_3)}
    record.door.push(
        SetCells(record.outlook.planter, Side.AS_FOUND, {ROW_3: position}, before, "by hand")
    )


def test_the_models_are_sound(record: OnDemo, qtmodeltester: Any) -> None:
    for view in record.page.views.values():
        qtmodeltester.check(view.model)


def test_two_seasons_of_setups_are_listed(record: OnDemo) -> None:
    years = {one.saved[:4] for one in record.page.setups.model.rows}
    assert len(years) >= 2


def test_a_saved_setup_differs_from_now_only_in_what_changed(record: OnDemo) -> None:
    record.answers.texts = ["before the rain"]
    record.page.setups.save()
    close_row_3(record, 5)
    record.page.compare.choose("before the rain")
    lines = record.page.compare.model.rows
    assert [(line.setting, line.where) for line in lines] == [("Closing", "row 3")]
    assert record.page.compare.says.text() == "1 value differs"


def test_a_setup_taken_as_target_is_undone_in_one_step(record: OnDemo) -> None:
    before = record.outlook.board.target
    record.page.setups.view.selectRow(0)
    record.page.setups.take()
    assert record.outlook.board.target != before
    record.door.stack.undo()
    assert record.outlook.board.target == before


def test_the_history_says_who_from_what_to_what_and_can_be_searched(record: OnDemo) -> None:
    close_row_3(record, 5)
    newest = record.page.history.model.rows[0]
    assert (newest.who, newest.why, newest.where) == ("tester", "by hand", "row 3")
    assert (newest.what, newest.new) == ("as found: closing", "4")
    record.page.history.search.setText("by hand tester")
    assert len(record.page.history.model.rows) == 1


def test_alike_changes_of_one_entry_stand_on_one_line(record: OnDemo) -> None:
    ticks = [line for line in record.page.history.model.rows if line.what == "work: set closing"]
    assert "rows 1–9" in [line.where for line in ticks]


def test_withdrawing_asks_first_and_can_be_undone(record: OnDemo) -> None:
    setups = record.page.setups
    count = len(setups.model.rows)
    setups.view.selectRow(0)
    record.answers.yes = False
    setups.withdraw()
    assert len(setups.model.rows) == count
    record.answers.yes = True
    setups.withdraw()
    assert len(setups.model.rows) == count - 1
    record.door.stack.undo()
    assert len(setups.model.rows) == count


def test_the_history_is_shown_in_the_units_chosen(record: OnDemo) -> None:
    history = record.page.history
    history.search.setText("target: vacuum")
    us = [line.new for line in history.model.rows if line.new]
    record.outlook.show_units(Units.METRIC)
    record.page.refresh(frozenset())
    metric = [line.new for line in history.model.rows if line.new]
    assert {text.split()[-1] for text in us} == {"inH₂O"}
    assert {text.split()[-1] for text in metric} == {"kPa"}
    assert len(metric) == len(us)
