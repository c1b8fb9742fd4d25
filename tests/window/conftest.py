"""Fixtures for the window: a desk in memory, a page alone, the whole window."""

from collections.abc import Callable, Iterator
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from changeover.window.main_window import MainWindow
from changeover.window.pages import PageLine
from changeover.window.workbench_page import SwitchPage
from tests.window.invented import Answers, MemoryDesk, make_board

WORKBENCH = (
    PageLine("rows", "Rows", "changeover.window.workbench_page", "RowsPage"),
    PageLine("switch", "Switch", "changeover.window.workbench_page", "SwitchPage"),
)


@pytest.fixture(autouse=True)
def no_key_held(request: pytest.FixtureRequest) -> None:
    """Let go of Ctrl and Shift, which simulated clicks of an earlier test leave pressed."""
    if "qtbot" in request.fixturenames:
        request.getfixturevalue("qapp")
        QTest.keyClick(QWidget(), Qt.Key.Key_A)
        assert QApplication.keyboardModifiers() == Qt.KeyboardModifier.NoModifier


@pytest.fixture
def desk() -> MemoryDesk:
    return MemoryDesk(make_board())


@pytest.fixture
def make_page(qtbot: QtBot) -> Callable[..., SwitchPage]:
    def make(desk: MemoryDesk, page: type = SwitchPage, **answers: Any) -> SwitchPage:
        door, outlook = desk.door(), desk.outlook()
        outlook.look_up()
        made = page(desk.read, door, outlook, Answers(**answers))
        door.changed.connect(lambda changed: outlook.note(changed, door.latest))
        door.changed.connect(made.refresh)
        qtbot.addWidget(made)
        made.resize(1156, 664)
        made.show()
        return made

    return make


@pytest.fixture
def page(desk: MemoryDesk, make_page: Callable[..., SwitchPage]) -> SwitchPage:
    return make_page(desk)


@pytest.fixture
def window(desk: MemoryDesk, qtbot: QtBot) -> Iterator[MainWindow]:
    made = MainWindow(desk.read, desk.door(), desk.outlook(), Answers(), WORKBENCH)
    qtbot.addWidget(made)
    made.outlook.look_up()
    made.show()
    made.begin()
    yield made
    made.close()
