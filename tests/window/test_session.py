"""Opening and changing stores: first start, demo, a store that is refused."""

import shutil
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtGui import QShortcut
from pytestqt.qtbot import QtBot

from changeover.app import build_window
from changeover.bundled import bundled
from changeover.desk.door import apply
from changeover.desk.edits import PutPlanter, SaveSetup
from changeover.desk.fleet import planter_names
from changeover.desk.opening import open_store
from changeover.quantities import Units
from changeover.store.backup import backup_folder
from changeover.window.first_start import FirstStart
from changeover.window.main_window import MainWindow
from changeover.window.preferences import Preferences
from changeover.window.session import Session
from changeover.window.theme import DARK
from tests.window.invented import Answers, long_planter

Make = Callable[..., Session]


def copied(tmp_path: Path) -> Path:
    """Return a copy of the demo beside which nothing else lies."""
    (tmp_path / "yard").mkdir()
    return shutil.copyfile(bundled("demo.sqlite"), tmp_path / "yard" / "shared.sqlite")


@pytest.fixture
def make(tmp_path: Path, qtbot: QtBot) -> Iterator[Make]:
    made: list[Session] = []

    def session(**answers: object) -> Session:
        preferences = Preferences(tmp_path / "window.ini")
        asking = Answers(**answers)
        one = Session(
            lambda store: build_window(store, preferences, asking),
            preferences,
            asking,
            tmp_path / "data",
        )
        one.asking = asking  # type: ignore[attr-defined]
        made.append(one)
        return one

    yield session
    for one in made:
        one.close()


def test_the_first_start_offers_three_ways(make: Make) -> None:
    session = make()
    session.begin()
    screen = session.screen
    assert isinstance(screen, FirstStart)
    assert [b.text() for b in (screen.demo, screen.new, screen.open)] == [
        "Open the demo", "Make a new store…", "Open a store…",
    ]  # fmt: skip


@pytest.mark.parametrize(
    "harm",
    ["DROP TABLE cell", "UPDATE cell SET value = '{\"value\": \"x\"}' WHERE setting = 'vacuum'"],
)
def test_a_store_that_turns_out_damaged_leaves_what_is_on_screen(
    make: Make, tmp_path: Path, harm: str
) -> None:
    session, file = make(), copied(tmp_path)
    session.open_demo()
    window, where = session.screen, session.where
    with closing(sqlite3.connect(file)) as connection, connection:
        connection.execute(harm)
    assert not session.open(str(file))
    said = session.asking.told[-1]  # type: ignore[attr-defined]
    assert "shared.sqlite is damaged" in said
    assert (session.screen, session.where) == (window, where)
    assert isinstance(window, MainWindow)
    window.outlook.forget()
    assert window.outlook.board.planter.name
    assert Preferences(tmp_path / "window.ini").store == where


def test_the_demo_opens_on_a_working_copy(make: Make, tmp_path: Path) -> None:
    session = make()
    session.begin()
    session.screen.demo_wanted.emit()  # type: ignore[union-attr]
    assert isinstance(session.screen, MainWindow)
    assert Path(session.where).parent == tmp_path / "data"
    assert session.screen.outlook.board.demo


def test_the_demo_that_travels_along_is_spared(make: Make, tmp_path: Path) -> None:
    session = make()
    assert session.open(str(bundled("demo.sqlite")))
    assert Path(session.where) == tmp_path / "data" / "demo.sqlite"
    assert not backup_folder(bundled("demo.sqlite")).exists()


def test_the_store_opened_last_is_opened_again(make: Make) -> None:
    first = make()
    first.open_demo()
    first.close()
    again = make()
    again.begin()
    assert again.where == first.where
    assert isinstance(again.screen, MainWindow)


def test_a_store_that_is_none_is_refused_and_the_window_stays(make: Make, tmp_path: Path) -> None:
    session = make()
    session.open_demo()
    window = session.screen
    bad = tmp_path / "letter.sqlite"
    bad.write_text("Dear neighbour")
    assert not session.open(str(bad))
    assert session.screen is window
    assert "letter.sqlite" in session.asking.told[0]  # type: ignore[attr-defined]
    assert bad.read_text() == "Dear neighbour"


def test_a_missing_store_leads_to_the_first_start(make: Make, tmp_path: Path) -> None:
    session = make()
    session.begin(str(tmp_path / "gone.sqlite"))
    assert isinstance(session.screen, FirstStart)
    assert session.asking.told  # type: ignore[attr-defined]


def test_a_new_store_is_made_empty(make: Make, tmp_path: Path) -> None:
    session = make(new_file=tmp_path / "mine.sqlite")
    session.choose_new_store()
    assert isinstance(session.screen, MainWindow)
    assert session.screen.outlook.planter == ""
    assert (tmp_path / "mine.sqlite").exists()


def test_a_new_store_never_overwrites_a_file(make: Make, tmp_path: Path) -> None:
    taken = tmp_path / "mine.sqlite"
    taken.write_text("keep me")
    make(new_file=taken).choose_new_store()
    assert taken.read_text() == "keep me"


def test_starting_again_puts_the_demo_back(make: Make) -> None:
    session = make()
    session.open_demo()
    assert session.store is not None
    apply(session.store, PutPlanter(long_planter()), "test")
    session.screen.again_wanted.emit()  # type: ignore[union-attr]
    with closing(open_store(session.where)) as store:
        assert "Long Acre" not in planter_names(store)


def test_what_is_looked_at_is_remembered(make: Make, tmp_path: Path) -> None:
    session = make()
    session.open_demo()
    outlook = session.screen.outlook  # type: ignore[union-attr]
    other = next(n for n in planter_names(session.store) if n != outlook.planter)  # type: ignore[arg-type]
    outlook.show_planter(other)
    outlook.show_units(Units.METRIC)
    outlook.show_tokens(DARK)
    kept = Preferences(tmp_path / "window.ini")
    assert (kept.planter, kept.units, kept.tokens) == (other, Units.METRIC, DARK)


def test_a_read_only_store_says_so_once_shows_all_and_refuses_edits(
    make: Make, tmp_path: Path, qtbot: QtBot
) -> None:
    path = copied(tmp_path)
    path.chmod(0o444)
    session = make()
    assert session.open(str(path))
    window = session.screen
    assert isinstance(window, MainWindow)
    assert "read-only: everything in it can be seen" in window.notice.words.text()
    assert session.asking.told == []  # type: ignore[attr-defined]
    for key in ("planter", "shelf", "record"):
        assert window.open_page(key)
    assert window.pages["record"].history.lines  # type: ignore[attr-defined]
    with qtbot.waitSignal(window.door.refused) as refused:
        assert not window.door.push(SaveSetup(window.outlook.planter, "as it was"))
    assert "is read-only, so nothing was changed" in refused.args[0]
    assert [one.name for one in path.parent.iterdir()] == [path.name]


def test_each_store_opens_on_its_own_planter_again(make: Make, tmp_path: Path) -> None:
    one, other = tmp_path / "one.sqlite", tmp_path / "other.sqlite"
    for path, names in ((one, ("A", "B")), (other, ("B", "C", "D"))):
        with closing(open_store(path, create=True)) as store:
            for name in names:
                apply(store, PutPlanter(replace(long_planter(), name=name)), "Ada")
    session = make()
    for path, name in ((one, "B"), (other, "D")):
        session.open(str(path))
        session.screen.outlook.show_planter(name)  # type: ignore[union-attr]
    for path, name in ((one, "B"), (other, "D")):
        session.open(str(path))
        assert session.screen.outlook.planter == name  # type: ignore[union-attr]


def test_the_window_opens_on_the_planter_that_is_being_switched(make: Make) -> None:
    session = make()
    session.open_demo()
    window = session.screen
    assert isinstance(window, MainWindow)
    assert window.outlook.board.next_job is not None
    assert window.outlook.planter != planter_names(session.store)[0]  # type: ignore[arg-type]


def test_every_page_of_the_rail_has_a_key_and_the_tenth_the_nought(make: Make) -> None:
    session = make()
    session.open_demo()
    window = session.screen
    assert isinstance(window, MainWindow)
    keys = {one.key().toString(): one for one in window.findChildren(QShortcut)}
    assert len(window.page_keys()) == 10
    assert {f"Ctrl+{number}" for number in range(10)} <= set(keys)
    keys["Ctrl+0"].activated.emit()
    assert window.current == window.page_keys()[9] == "planter"
