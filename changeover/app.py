"""Start-up: the one place that puts store, door, outlook and window together."""

import getpass
import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import changeover.window.plain_import  # isort: skip  # noqa: F401  before anything of Qt
from platformdirs import user_config_path, user_data_path
from PySide6.QtWidgets import QApplication

from changeover.window.curtain import Curtain, no_collecting
from changeover.window.kept import kept_file, kept_look
from changeover.window.theme import font

if TYPE_CHECKING:
    from changeover.desk.opening import Store
    from changeover.window.asking import Asking
    from changeover.window.main_window import MainWindow
    from changeover.window.preferences import Preferences
    from changeover.window.session import Session


# The sums here are too small to be shared out; a row of waiting threads only delays the start.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")


def application() -> QApplication:
    """Return the one application, in the look of the program."""
    app = QApplication.instance() or QApplication(sys.argv[:1])
    assert isinstance(app, QApplication)
    app.setApplicationName("Changeover")
    app.setStyle("Fusion")
    app.setFont(font())
    return app


def build_window(
    store: "Store",
    preferences: "Preferences",
    asking: "Asking | None" = None,
    planter: str = "",
) -> "MainWindow":
    """Put a window on a store together; ``planter`` is the one to begin with, if it is there."""
    from changeover.desk.fleet import first_planter, planter_names
    from changeover.window.asking import DialogAsking
    from changeover.window.desk_link import DeskLink
    from changeover.window.door import Door
    from changeover.window.main_window import MainWindow
    from changeover.window.outlook import Outlook

    desk = DeskLink(store, getpass.getuser())
    asked = planter if planter and planter in planter_names(store) else ""
    first = asked or first_planter(store, preferences.planter)
    outlook = Outlook(desk.read_board, first, preferences.units, preferences.tokens)
    window = MainWindow(desk.read, Door(desk.apply), outlook, asking or DialogAsking())
    outlook.moved.connect(lambda: preferences.keep(outlook))
    outlook.recoloured.connect(lambda: preferences.keep(outlook))
    return window


def run(where: str = "") -> int:
    """Open the window on a store, on the last one, or on the first choices; return the status.

    The frame of the window is shown before store and calculations are imported.
    """
    app, file = application(), user_config_path("changeover") / "window.ini"
    data = user_data_path("changeover")
    curtain = Curtain(kept_look(kept_file(file)), f"opening {Path(where).name}" if where else "")
    sessions: list[Session] = []

    def begin() -> None:
        with no_collecting():
            from changeover.window.session import open_session

            sessions.append(open_session(build_window, file, data, curtain))
            sessions[0].begin(where)

    curtain.painted.connect(begin)
    curtain.show()
    status = app.exec()
    for session in sessions:
        session.close()
    return status


def take_shots(where: str, planter: str, folder: Path) -> list[Path]:
    """Write a picture of every screen of a store into a folder. Raises Refusal."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    application()
    from changeover.window.shots import take_shots_of_store

    return take_shots_of_store(build_window, where, planter, folder)
