"""In the whole window: from what comes next, by way of the Seed page, to the open Switch page."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt

from changeover.app import build_window
from changeover.desk.demo.working_copy import start_again
from changeover.desk.opening import open_store
from changeover.window.main_window import MainWindow
from changeover.window.preferences import Preferences
from tests.window.on_demo import Answers

BAR = "Penny Twelve"


@pytest.fixture
def window(qtbot: Any, tmp_path: Path) -> Iterator[MainWindow]:
    store = open_store(start_again(tmp_path / "demo.sqlite"))
    made = build_window(store, Preferences(tmp_path / "window.ini"), Answers(), BAR)
    qtbot.addWidget(made)
    made.show()
    made.begin()
    yield made
    made.close()
    store.close()


def choose_beans(window: MainWindow, qtbot: Any) -> Any:
    window.header.choose_next.emit()
    page = window.pages["seed"]
    page.choosing.lot.box.choose("B-22")
    page.choosing.field.box.choose("Crow Strip")
    qtbot.waitUntil(page.take.isEnabled)
    return page


def test_what_comes_next_leads_to_the_seed_page_and_on_to_the_switch(
    window: MainWindow, qtbot: Any
) -> None:
    page = choose_beans(window, qtbot)
    assert window.current == "seed"
    qtbot.mouseClick(page.take, Qt.MouseButton.LeftButton)
    assert window.current == "switch"
    assert "B-22" in window.header.next.text()
    assert window.outlook.standing.to_do == 12


def test_one_undo_takes_choice_and_target_back(window: MainWindow, qtbot: Any) -> None:
    page = choose_beans(window, qtbot)
    page.take_over()
    assert window.door.stack.count() == 1
    window.door.stack.undo()
    assert window.outlook.board.next_job is None
    window.door.stack.redo()
    assert window.outlook.board.next_job.lot == "B-22"


def test_units_and_colours_change_under_the_form(window: MainWindow, qtbot: Any) -> None:
    page = choose_beans(window, qtbot)
    page.choosing.inputs.speed.line.setText("4 1/2")
    window.header.units.menu().actions()[1].trigger()
    assert page.choosing.inputs.speed.text == "4 1/2 mph"
    assert "ha" in page.choosing.field.box.currentText()
    window.outlook.turn_lights()
    assert page.grab().toImage().pixelColor(2, 300).lightness() < 80
