"""The whole circle in the real window: look, choose, accept, export, tick off, close, reopen."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from changeover.app import build_window
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.switch.tasks import Task
from changeover.window.main_window import MainWindow
from changeover.window.matrix.sheet import Shown
from changeover.window.preferences import Preferences
from changeover.window.seed.page import SeedPage
from changeover.window.session import Session
from changeover.window.work.page import WorkPage
from changeover.window.workbench_page import RowsPage, SwitchPage
from tests.window.invented import Answers

PLANTER, LOT, FIELD = "Penny Twelve", "Y-208", "Otter Flat"
ROW = Place.of_row(1)
DISC = Cell("disc", ROW)


class Farm:
    """A person with the program: opens the demo, and later the same store again."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.sheets = folder / "sheets"
        self.sheets.mkdir()
        self.asking = Answers(confirm=True, folder=self.sheets)
        self.sessions: list[Session] = []

    def sit_down(self) -> MainWindow:
        preferences = Preferences(self.folder / "window.ini")
        session = Session(
            lambda store: build_window(store, preferences, self.asking),
            preferences,
            self.asking,
            self.folder / "data",
        )
        self.sessions.append(session)
        session.begin()
        if not isinstance(session.screen, MainWindow):
            session.open_demo()
        window = session.screen
        assert isinstance(window, MainWindow)
        window.outlook.show_planter(PLANTER)
        return window

    def get_up(self) -> None:
        for session in self.sessions:
            session.close()
        self.sessions.clear()


@pytest.fixture
def farm(tmp_path: Path, qtbot: QtBot) -> Iterator[Farm]:
    made = Farm(tmp_path)
    yield made
    made.get_up()


def choose_next(window: MainWindow) -> None:
    page = window.open_page("seed")
    assert isinstance(page, SeedPage)
    page.choosing.lot.box.choose(LOT)
    page.choosing.field.box.choose(FIELD)
    page.take_over()


def meter_task(page: WorkPage) -> Task:
    assert page.view is not None
    return next(
        t for t in page.view.worklist.tasks if any(c.cell == DISC for c in t.changes.get(ROW, ()))
    )


def tick_what_comes_before(page: WorkPage, task: Task) -> None:
    assert page.view is not None
    for key in task.needs:
        earlier = page.view.worklist.task(key)
        tick_what_comes_before(page, earlier)
        page.tick(earlier.key, earlier.places, True)  # noqa: FBT003


def test_from_corn_to_soybean_and_on_after_a_night(farm: Farm, qtbot: QtBot) -> None:
    window = farm.sit_down()
    before = window.outlook.board.as_found.get(DISC)
    choose_next(window)
    assert window.current == "switch"
    switch = window.pages["switch"]
    assert isinstance(switch, SwitchPage)
    assert window.outlook.board.label_next == f"Soybean lot {LOT} → {FIELD}"
    target = window.outlook.board.target.get(DISC)
    assert target not in (None, before)
    assert window.header.ready.ready < 12

    work = window.open_page("work")
    assert isinstance(work, WorkPage)
    work.print_sheets()
    assert {path.suffix for path in farm.sheets.iterdir()} >= {".xlsx", ".csv", ".pdf"}
    task = meter_task(work)
    tick_what_comes_before(work, task)
    work.tick(task.key, (ROW,), True)  # noqa: FBT003
    assert window.outlook.board.as_found.get(DISC) == target
    rows = window.open_page("rows")
    assert isinstance(rows, RowsPage)
    assert rows.model.sheet.shown is Shown.FOUND

    farm.get_up()
    again = farm.sit_down()
    assert again.outlook.board.as_found.get(DISC) == target
    reopened = again.open_page("work")
    assert isinstance(reopened, WorkPage)
    assert reopened.view is not None
    assert ROW in reopened.view.progress.done[task.key]
    assert meter_task(reopened).places == task.places
