"""The minutes of each kind of work are typed over, reckoned with, undone and taken back."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QThreadPool

from changeover.desk.minutes import OWN
from changeover.window.work.minutes_dialog import MinutesDialog
from changeover.window.work.page import WorkPage
from tests.window.on_demo import OnDemo, on_demo

ONCE, EACH, STANDARD, SOURCE = 1, 2, 3, 4


@pytest.fixture
def work(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, WorkPage) as put:
        put.page.open_minutes()
        yield put
        put.page.findChild(MinutesDialog).close()
        QThreadPool.globalInstance().waitForDone()


@pytest.fixture
def listed(work: OnDemo) -> MinutesDialog:
    return work.page.findChild(MinutesDialog)


def row(listed: MinutesDialog, name: str) -> int:
    return [kind.name for kind in listed.model.rows].index(name)


def text(listed: MinutesDialog, name: str, column: int) -> str:
    return listed.model.index(row(listed, name), column).data()


def put(listed: MinutesDialog, name: str, column: int, typed: str) -> bool:
    return listed.model.setData(listed.model.index(row(listed, name), column), typed)


def test_the_model_is_sound(listed: MinutesDialog, qtmodeltester: Any) -> None:
    qtmodeltester.check(listed.model)


def test_own_minutes_stand_beside_the_standard_with_their_source(listed: MinutesDialog) -> None:
    assert text(listed, "empty_tank", ONCE) == "4 min"
    assert text(listed, "empty_tank", STANDARD) == "5 min + 12 min each"
    assert text(listed, "empty_tank", SOURCE) == OWN
    assert "Iowa State" in text(listed, "clean_tube", SOURCE)
    assert "common practice" in text(listed, "open_meter", SOURCE)


def test_typed_minutes_change_the_work_left_and_undo_takes_them_back(
    work: OnDemo, listed: MinutesDialog
) -> None:
    before = work.page.view.progress.minutes_left
    assert put(listed, "swap_part", EACH, "3.5")
    assert text(listed, "swap_part", EACH) == "3.5 min"
    assert text(listed, "swap_part", ONCE) == "0 min"
    assert text(listed, "swap_part", STANDARD) == "0 min + 1 min each"
    assert work.page.view.progress.minutes_left > before
    work.door.stack.undo()
    assert text(listed, "swap_part", EACH) == "1 min"
    assert text(listed, "swap_part", SOURCE) != OWN
    assert work.page.view.progress.minutes_left == before


def test_back_to_the_standard_and_undo_of_that(work: OnDemo, listed: MinutesDialog) -> None:
    listed.view.selectRow(row(listed, "empty_tank"))
    listed.back_to_standard()
    assert text(listed, "empty_tank", ONCE) == "5 min"
    listed.back_to_standard()
    assert listed.refusal.text() == "Empty tank: these are the standard minutes already."
    work.door.stack.undo()
    assert text(listed, "empty_tank", ONCE) == "4 min"


@pytest.mark.parametrize("typed", ["-1", "2000 min", "nan", "soon", "3 in", ""])
def test_minutes_that_cannot_be_are_refused(
    work: OnDemo, listed: MinutesDialog, typed: str
) -> None:
    assert not put(listed, "dig", EACH, typed)
    assert listed.refusal.text().startswith("Dig, minutes each")
    assert text(listed, "dig", EACH) == "4 min"


def test_without_a_chosen_kind_nothing_goes_back(listed: MinutesDialog) -> None:
    listed.view.clearSelection()
    listed.view.setCurrentIndex(listed.model.index(-1, -1))
    listed.back_to_standard()
    assert listed.refusal.text() == "Choose a kind of work first."
