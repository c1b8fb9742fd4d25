"""Start-up: the one place that puts store, door, outlook and window together."""

import getpass
import os
import sys
import tempfile
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from typing import TYPE_CHECKING, Any

from platformdirs import user_config_path, user_data_path
from PySide6.QtWidgets import QApplication

from changeover.window.curtain import Curtain
from changeover.window.kept import kept_file, kept_look
from changeover.window.theme import font

if TYPE_CHECKING:
    from changeover.desk.board import Board
    from changeover.desk.opening import Store
    from changeover.quantities import Units
    from changeover.window.asking import Asking
    from changeover.window.door import Edit, Outcome
    from changeover.window.main_window import MainWindow
    from changeover.window.preferences import Preferences
    from changeover.window.session import Session


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

    def __init__(self, store: "Store", who: str) -> None:
        self._store, self._who = store, who

    def read(self, job: Callable[..., Any], *args: Any, **kwargs: Any) -> Any:
        return job(self._store, *args, **kwargs)

    def read_board(self, planter: str, units: "Units", *, proposal: bool) -> "Board":
        from changeover.desk.board import read_board

        return read_board(self._store, planter, units, proposal=proposal)

    def apply(self, edit: "Edit") -> "Outcome":
        from changeover.desk.door import apply

        return apply(self._store, edit, self._who)  # type: ignore[arg-type]


def build_window(
    store: "Store",
    preferences: "Preferences",
    asking: "Asking | None" = None,
    planter: str = "",
) -> "MainWindow":
    """Put a window on a store together; ``planter`` is the one to begin with."""
    from changeover.desk.fleet import planter_names
    from changeover.window.asking import DialogAsking
    from changeover.window.door import Door
    from changeover.window.main_window import MainWindow
    from changeover.window.outlook import Outlook

    desk, names = Desk(store, getpass.getuser()), planter_names(store)
    first = next((name for name in (planter, preferences.planter) if name in names), "")
    outlook = Outlook(
        desk.read_board, first or (names or ("",))[0], preferences.units, preferences.tokens
    )
    window = MainWindow(desk.read, Door(desk.apply), outlook, asking or DialogAsking())
    outlook.moved.connect(lambda: preferences.keep(outlook))
    outlook.recoloured.connect(lambda: preferences.keep(outlook))
    return window


def open_session(file: Path, curtain: Curtain) -> "Session":
    """Make the session that changes the curtain for a window."""
    from changeover.window.asking import DialogAsking
    from changeover.window.preferences import Preferences
    from changeover.window.session import Session

    preferences, asking = Preferences(file), DialogAsking()
    return Session(
        lambda store: build_window(store, preferences, asking),
        preferences,
        asking,
        user_data_path("changeover"),
        curtain,
    )


def run(where: str = "") -> int:
    """Open the window on a store, on the last one, or on the first choices; return the status.

    The frame of the window is shown before store and calculations are imported.
    """
    app, file = application(), user_config_path("changeover") / "window.ini"
    curtain = Curtain(kept_look(kept_file(file)), f"opening {Path(where).name}" if where else "")
    sessions: list[Session] = []

    def begin() -> None:
        sessions.append(open_session(file, curtain))
        sessions[0].begin(where)

    curtain.painted.connect(begin)
    curtain.show()
    status = app.exec()
    for session in sessions:
        session.close()
    return status


def take_shots(where: str, planter: str, folder: Path) -> list[Path]:
    """Write a picture of every screen of a store into a folder. Raises Refusal."""
    from changeover.desk.fleet import planter_lines
    from changeover.desk.opening import open_store
    from changeover.window.preferences import Preferences
    from changeover.window.shots import take_shots

    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    app = application()
    with tempfile.TemporaryDirectory() as spare, closing(open_store(where, reading=True)) as store:
        busy = (line.name for line in planter_lines(store) if line.next)
        preferences = Preferences(Path(spare) / "window.ini")
        window = build_window(store, preferences, planter=planter or next(busy, ""))
        taken = take_shots(window, folder)
        window.outlook.rest()
        window.deleteLater()
        app.sendPostedEvents()
    return taken
