"""The frame: header, rail, pages made when opened, and who is told what changed."""

from contextlib import closing
from dataclasses import replace
from pathlib import Path
from typing import ClassVar

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from changeover.app import build_window
from changeover.desk.changed import Changed
from changeover.desk.demo.working_copy import start_again
from changeover.desk.door import apply
from changeover.desk.edits import SetCells, Side
from changeover.desk.opening import open_store
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Units
from changeover.window.help_sheet import HelpSheet
from changeover.window.main_window import MainWindow
from changeover.window.marks import Mark
from changeover.window.page import EVERYTHING, Page
from changeover.window.pages import PAGES, PageLine
from changeover.window.preferences import Preferences
from changeover.window.rail import RailNote
from changeover.window.theme import DARK
from tests.window.invented import Answers, MemoryDesk, make_board

DEPTH = Cell("depth", Place.of_row(14))
TO_NOTCH_7 = SetCells("Long Acre", Side.TARGET, {DEPTH: 7}, {DEPTH: 4})


class ShelfOnly(Page):
    """A page that only wants to hear of the shelf."""

    wants: ClassVar[frozenset[Changed]] = frozenset({Changed.SHELF})

    def refresh(self, changed: frozenset[Changed]) -> None:
        self.heard = [*getattr(self, "heard", []), changed]


LINES = (
    PageLine("shelf", "Shelf", __name__, "ShelfOnly"),
    PageLine("switch", "Switch", "changeover.window.workbench_page", "SwitchPage"),
)


def test_pages_are_made_when_they_are_first_opened(window: MainWindow) -> None:
    assert set(window.pages) == {"switch"}
    window.open_page("rows")
    assert set(window.pages) == {"switch", "rows"}
    assert window.current == "rows"


def test_the_header_tells_planter_now_next_and_rows_ready(window: MainWindow) -> None:
    header = window.header
    assert header.planter.text() == "Long Acre ▾"
    assert header.now.text() == "Corn, Hill Nine · set 3 May"
    assert header.next.text() == "Soybean lot S-114 → West Bottom"
    assert (header.ready.ready, header.ready.rows) == (9, 24)


def test_the_rail_tells_how_far_each_step_is(window: MainWindow) -> None:
    assert window.rail.steps["rows"].note == RailNote(Mark.READY, "24 set")
    assert window.rail.steps["switch"].note == RailNote(Mark.WORK, "15 rows to do")


def test_an_edit_changes_header_rail_and_page(window: MainWindow) -> None:
    keys = {DEPTH.setting, "disc", "brush", "singulator", "closing"}
    cells = {Cell(key, Place.of_row(14)): None for key in keys}
    before = {cell: window.outlook.board.target.get(cell) for cell in cells}
    window.door.push(SetCells("Long Acre", Side.TARGET, cells, before))
    assert window.header.ready.ready == 10
    assert window.rail.steps["switch"].note.text == "14 rows to do"


def test_undo_stands_in_the_header(window: MainWindow, desk: MemoryDesk, qtbot: QtBot) -> None:
    assert not window.header.undo.isEnabled()
    window.door.push(TO_NOTCH_7)
    qtbot.mouseClick(window.header.undo, Qt.MouseButton.LeftButton)
    assert desk.board.target.get(DEPTH) == 4
    assert window.header.redo.isVisible()


def test_a_refused_edit_is_said_at_the_foot(window: MainWindow, desk: MemoryDesk) -> None:
    desk.refuse = "Depth, row 14: somebody else has set it meanwhile."
    window.door.push(TO_NOTCH_7)
    assert window.notice.isVisible()
    assert window.notice.words.text() == desk.refuse
    desk.refuse = ""
    window.door.push(TO_NOTCH_7)
    assert not window.notice.isVisible()


def test_what_was_taken_otherwise_than_typed_is_said(window: MainWindow) -> None:
    window.door.push(replace(TO_NOTCH_7, note="Depth, row 14: taken to the nearest notch."))
    assert window.notice.isVisible()
    assert window.notice.words.text() == "Depth, row 14: taken to the nearest notch."
    window.door.stack.undo()
    assert not window.notice.isVisible()


def test_a_page_hears_only_what_it_wants_and_only_while_it_is_shown(
    desk: MemoryDesk, qtbot: QtBot
) -> None:
    window = MainWindow(desk.read, desk.door(), desk.outlook(), Answers(), LINES)
    qtbot.addWidget(window)
    page = window.open_page("shelf")
    window.door.push(TO_NOTCH_7)
    assert page.heard == [EVERYTHING]  # type: ignore[attr-defined]
    window.open_page("switch")
    window.outlook.show_units(Units.METRIC)
    assert len(page.heard) == 1  # type: ignore[attr-defined]
    window.open_page("shelf")
    assert len(page.heard) == 2  # type: ignore[attr-defined]


def test_units_change_everything_at_once(window: MainWindow) -> None:
    window.outlook.show_units(Units.METRIC)
    assert "76.2 cm" in window.header.about.text()
    sheet = window.pages["switch"].model.sheet  # type: ignore[attr-defined]
    assert sheet.units is Units.METRIC


def test_light_and_dark(window: MainWindow) -> None:
    window.outlook.show_tokens(DARK)
    assert DARK.ground in window.styleSheet()


def test_the_planter_menu_lists_the_fleet_and_the_stores(window: MainWindow) -> None:
    window.header.planter_menu.aboutToShow.emit()
    words = [action.text() for action in window.header.planter_menu.actions()]
    assert words[:2] == ["Long Acre", "Other Acre"]
    assert {"New planter…", "Open a store…", "New store…", "Open the demo"} <= set(words)


def test_the_demo_says_that_names_are_invented_and_begins_again_at_a_click(
    window: MainWindow, qtbot: QtBot
) -> None:
    assert window.rail.demo.isVisible()
    assert any("invented" in one.text() for one in window.rail.demo.findChildren(QLabel))
    with qtbot.waitSignal(window.again_wanted):
        window.rail.again.emit()


@pytest.mark.qt_log_ignore("This plugin does not support", extend=True)
def test_the_help_sheet_opens_and_closes_on_f1(window: MainWindow, qtbot: QtBot) -> None:
    qtbot.keyClick(window, Qt.Key.Key_F1)
    sheet = window.findChild(HelpSheet)
    texts = [one.text() for one in sheet.findChildren(QLabel)]
    assert any("Undo lasts while the window is open" in text for text in texts)
    assert sheet is not None
    assert sheet.isVisible()
    HelpSheet.turn(window)
    assert not sheet.isVisible()


def test_a_page_opens_by_its_number(window: MainWindow, qtbot: QtBot) -> None:
    qtbot.keyClick(window, Qt.Key.Key_1, Qt.KeyboardModifier.ControlModifier)
    assert window.current == "rows"


def test_f6_goes_round_rail_matrix_and_reason(window: MainWindow, qtbot: QtBot) -> None:
    window.activateWindow()
    page = window.pages["switch"]
    page.stops()[0].setFocus()
    qtbot.waitUntil(lambda: QApplication.focusWidget() is page.stops()[0])
    places = []
    for _ in range(3):
        window.go_round()
        places.append(QApplication.focusWidget())
    assert places == [page.stops()[1], window.rail.steps["switch"], page.stops()[0]]


def test_every_page_of_the_program_can_be_imported() -> None:
    for line in PAGES:
        assert issubclass(line.load(), Page)
    assert len({line.key for line in PAGES}) == len(PAGES)


def test_the_smallest_screen_is_enough(window: MainWindow) -> None:
    window.resize(1280, 720)
    assert (window.width(), window.height()) == (1280, 720)
    header = window.header
    assert header.undo.geometry().right() <= header.width()


def test_without_a_planter_it_opens_and_says_so(qtbot: QtBot) -> None:
    desk = MemoryDesk(make_board())
    outlook = desk.outlook()
    outlook.planter = ""
    window = MainWindow(desk.read, desk.door(), outlook, Answers(), LINES)
    qtbot.addWidget(window)
    window.begin()
    assert window.header.planter.text() == "No planter yet ▾"


def test_a_window_that_was_overtaken_shows_what_stands_now(tmp_path: Path, qtbot: QtBot) -> None:
    cell, answers = Cell("depth", Place.of_row(1)), Answers()
    with closing(open_store(start_again(tmp_path / "demo.sqlite"))) as store:
        window = build_window(store, Preferences(tmp_path / "window.ini"), answers, "Magpie 31")
        qtbot.addWidget(window)
        window.begin()
        before = window.outlook.board.as_found.get(cell)
        edits = [SetCells("Magpie 31", Side.AS_FOUND, {cell: n}, {cell: before}) for n in (3, 9)]
        apply(store, edits[0], "Bo")
        assert not window.door.push(edits[1])
        assert "someone else" in window.notice.words.text()
        assert window.outlook.board.as_found.get(cell) == 3
        window.outlook.rest()
