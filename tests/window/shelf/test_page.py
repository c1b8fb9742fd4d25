"""The Shelf page shows counts and needs, and changes them through the door."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt

from changeover.planter.parts import Condition
from changeover.window.shelf.page import ShelfPage
from changeover.window.shelf.part_form import PartForm
from tests.window.on_demo import OnDemo, on_demo


@pytest.fixture
def shelf(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, ShelfPage) as put:
        yield put


def column(shelf: OnDemo, title: str) -> int:
    return [one.title for one in shelf.page.model.columns].index(title)


def row(shelf: OnDemo, code: str) -> int:
    return [line.part.code for line in shelf.page.model.rows].index(code)


def text(shelf: OnDemo, code: str, title: str) -> str:
    return shelf.page.model.index(row(shelf, code), column(shelf, title)).data()


def test_the_model_is_sound(shelf: OnDemo, qtmodeltester: Any) -> None:
    qtmodeltester.check(shelf.page.model)


def test_what_the_open_switch_lacks_is_said_with_a_mark(shelf: OnDemo) -> None:
    short = [line for line in shelf.page.lines if line.short]
    assert short
    assert text(shelf, short[0].part.code, "Short") == f"! {short[0].short} short"
    shelf.page.only_short.setChecked(True)
    assert list(shelf.page.model.rows) == short


def test_a_typed_count_with_its_bin_is_set_and_undone(shelf: OnDemo) -> None:
    model, code = shelf.page.model, shelf.page.lines[0].part.code
    before = text(shelf, code, "Good")
    index = model.index(row(shelf, code), column(shelf, "Good"))
    assert model.setData(index, "31 Z9")
    assert text(shelf, code, "Good") == "31  Z9"
    shelf.door.stack.undo()
    assert text(shelf, code, "Good") == before


@pytest.mark.parametrize("typed", ["many", "-3", "1.5"])
def test_a_count_that_is_none_is_refused(shelf: OnDemo, typed: str) -> None:
    index = shelf.page.model.index(0, column(shelf, "New"))
    assert not shelf.page.model.setData(index, typed)
    assert "is not a count" in shelf.refused[0]


def test_a_part_on_the_shelf_cannot_be_removed(shelf: OnDemo) -> None:
    held = next(line for line in shelf.page.lines if line.counts.get(Condition.GOOD))
    shelf.page.view.selectRow(row(shelf, held.part.code))
    shelf.page.remove()
    assert "set the count to 0 first" in shelf.refused[0]


def test_the_form_adds_a_disc_and_refuses_half_a_cell(shelf: OnDemo, qtbot: Any) -> None:
    form = PartForm(None, (), shelf.door, shelf.outlook, shelf.page)
    qtbot.addWidget(form)
    form.code.setText("Q44")
    form.sort.setCurrentText("disc")
    form.cells.setText("44.5")
    assert "not a whole number" in form.refusal.text()
    assert not form.take.isEnabled()
    form.cells.setText("44")
    qtbot.mouseClick(form.take, Qt.MouseButton.LeftButton)
    assert text(shelf, "Q44", "Cells") == "44"


def test_a_code_that_is_taken_is_refused_in_the_form(shelf: OnDemo, qtbot: Any) -> None:
    form = PartForm(None, (), shelf.door, shelf.outlook, shelf.page)
    qtbot.addWidget(form)
    form.code.setText(shelf.page.lines[0].part.code)
    qtbot.mouseClick(form.take, Qt.MouseButton.LeftButton)
    assert "is there already" in form.refusal.text()


def test_a_changed_part_keeps_what_was_not_touched(shelf: OnDemo, qtbot: Any) -> None:
    disc = next(line.part for line in shelf.page.lines if line.part.sort == "disc")
    form = PartForm(disc, (), shelf.door, shelf.outlook, shelf.page)
    qtbot.addWidget(form)
    assert form.part() == disc
