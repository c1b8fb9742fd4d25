"""Start-up: the one place that puts store, door, outlook and window together."""

import getpass
import os
import sys
import tempfile
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from typing import Any

from platformdirs import user_config_path, user_data_path
from PySide6.QtWidgets import QApplication

from changeover.desk.board import Board, read_board
from changeover.desk.fleet import planter_names
from changeover.desk.opening import Store, open_store
from changeover.quantities import Units
from changeover.window.asking import Asking, DialogAsking
from changeover.window.door import Door, Edit, Outcome
from changeover.window.main_window import MainWindow
from changeover.window.outlook import Outlook
from changeover.window.preferences import Preferences
from changeover.window.session import Session
from changeover.window.theme import font


def application() -> QApplication:
    """Return the one application, in the look of the program."""
    app = QApplication.instance() or QApplication(sys.argv[:1])
    assert isinstance(app, QApplication)
    app.setApplicationName("Changeover")
    app.setStyle("Fusion")
    app.setFont(font())
    return app


class Desk:
    """The store seen from the window: reads with the desk's functions, applies edits."""

    def __init__(self, store: Store, who: str) -> None:
        self._store, self._who = store, who

    def read(self, job: Callable[..., Any], *args: Any, **kwargs: Any) -> Any:
        return job(self._store, *args, **kwargs)

    def read_board(self, planter: str, units: Units, *, proposal: bool) -> Board:
        return read_board(self._store, planter, units, proposal=proposal)

    def apply(self, edit: Edit) -> Outcome:
        from changeover.desk.door import apply

        return apply(self._store, edit, self._who)  # type: ignore[arg-type]


def build_window(
    store: Store, preferences: Preferences, asking: Asking | None = None, planter: str = ""
) -> MainWindow:
    """Put a window on a store together; ``planter`` is the one to begin with."""
    desk, names = Desk(store, getpass.getuser()), planter_names(store)
    first = next((name for name in (planter, preferences.planter) if name in names), "")
    outlook = Outlook(
        desk.read_board, first or (names or ("",))[0], preferences.units, preferences.tokens
    )
    window = MainWindow(desk.read, Door(desk.apply), outlook, asking or DialogAsking())
    outlook.moved.connect(lambda: preferences.keep(outlook))
    outlook.recoloured.connect(lambda: preferences.keep(outlook))
    return window


def _with_next(store: Store) -> str:
    """Return the first planter that has a next lot, so that there is something to see."""
    from changeover.desk.fleet import planter_lines

    return next((line.name for line in planter_lines(store) if line.next), "")


def take_shots(where: str, planter: str, folder: Path) -> list[Path]:
    """Write a picture of every screen of a store into a folder. Raises Refusal."""
    from changeover.window.shots import take_shots

    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    app = application()
    with tempfile.TemporaryDirectory() as spare, closing(open_store(where)) as store:
        preferences = Preferences(Path(spare) / "window.ini")
        window = build_window(store, preferences, planter=planter or _with_next(store))
        taken = take_shots(window, folder)
        window.deleteLater()
        app.sendPostedEvents()
    return taken


def run(where: str = "") -> int:
    """Open the window on a store, on the last one, or on the first choices; return the status."""
    app = application()
    preferences = Preferences(user_config_path("changeover") / "window.ini")
    asking = DialogAsking()
    session = Session(
        lambda store: build_window(store, preferences, asking),
        preferences,
        asking,
        user_data_path("changeover"),
    )
    session.begin(where)
    return app.exec()
