"""Pictures of every screen, with new pages in by themselves."""

from itertools import product
from pathlib import Path

import pytest
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QDialog
from pytestqt.qtbot import QtBot

from changeover.quantities import Refusal
from changeover.window.main_window import MainWindow
from changeover.window.planter.page import PlantersPage
from changeover.window.shots import take_shots
from tests.window.conftest import WORKBENCH
from tests.window.invented import Answers, MemoryDesk
from tests.window.on_demo import on_demo


@pytest.fixture
def shown(desk: MemoryDesk, qtbot: QtBot) -> MainWindow:
    window = MainWindow(desk.read, desk.door(), desk.outlook(), Answers(), WORKBENCH)
    qtbot.addWidget(window)
    return window


@pytest.mark.qt_log_ignore("This plugin does not support", extend=True)
def test_every_page_is_taken_in_both_looks_and_sizes(shown: MainWindow, tmp_path: Path) -> None:
    taken = {path.name for path in take_shots(shown, tmp_path)}
    names = ("rows", "switch", "switch-rows-down", "switch-settings", "keys", "first-start")
    kinds = product(names, ("light", "dark"), ("1280x720", "1920x1080"))
    assert taken == {f"{name}-{look}-{size}.png" for name, look, size in kinds}
    picture = QImage(str(tmp_path / "switch-dark-1920x1080.png"))
    assert (picture.width(), picture.height()) == (1920, 1080)


@pytest.mark.qt_log_ignore("This plugin does not support", extend=True)
def test_a_folder_that_is_not_there_is_refused(shown: MainWindow, tmp_path: Path) -> None:
    with pytest.raises(Refusal, match="cannot be written"):
        take_shots(shown, tmp_path / "gone")
    shown.close()


@pytest.mark.qt_log_ignore("This plugin does not support", extend=True)
def test_dialogs_are_opened_for_their_pictures_and_put_away(qtbot: QtBot, tmp_path: Path) -> None:
    with on_demo(qtbot, tmp_path, PlantersPage) as put:
        put.page.show()
        seen = [(name, type(one).__name__) for name, one in put.page.more_to_see()]
        assert seen == [("form", "PlanterForm"), ("new", "PlanterForm")]
        assert not any(one.isVisible() for one in put.page.findChildren(QDialog))
        assert not list(put.page.dialogs_to_see({"none": lambda: None}))
