"""Pictures of every screen, light and dark and in two sizes, for looking at the whole program."""

import tempfile
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path
from typing import Protocol

from PySide6.QtCore import QCoreApplication, QEventLoop
from PySide6.QtWidgets import QWidget

from changeover.desk.opening import Store, open_store
from changeover.quantities import Refusal
from changeover.window.first_start import FirstStart
from changeover.window.help_sheet import HelpSheet
from changeover.window.main_window import MainWindow
from changeover.window.preferences import Preferences
from changeover.window.theme import DARK, LIGHT, Tokens

SIZES = ((1280, 720), (1920, 1080))
LOOKS = (LIGHT, DARK)


class BuildWindow(Protocol):
    """Puts a window on a store together."""

    def __call__(self, store: Store, preferences: Preferences, *, planter: str) -> MainWindow: ...


def take_shots_of_store(build: BuildWindow, where: str, planter: str, folder: Path) -> list[Path]:
    """Take pictures of a store on one planter, by default one with a switch open."""
    with tempfile.TemporaryDirectory() as spare, closing(open_store(where, reading=True)) as store:
        preferences = Preferences(Path(spare) / "window.ini")
        window = build(store, preferences, planter=planter)
        taken = take_shots(window, folder)
        window.outlook.rest()
        window.deleteLater()
        QCoreApplication.sendPostedEvents()
    return taken


def take_shots(window: MainWindow, folder: Path) -> list[Path]:
    """Write a picture of each page, of the help sheet and of the first start; return the files.

    Pages are those of the rail, so a new page is in. Raises Refusal when a picture cannot be
    written.
    """
    window.show()
    window.open_page(window.page_keys()[0])
    window.outlook.look_up()
    taken = [path for look in LOOKS for path in _of_look(window, look, folder)]
    window.close()
    return taken


def _of_look(window: MainWindow, look: Tokens, folder: Path) -> Iterator[Path]:
    window.outlook.show_tokens(look)
    for size in SIZES:
        window.resize(*size)
        window.show()
        for key in window.page_keys():
            page = window.open_page(key)
            yield _save(window, folder, key, look, size)
            for name, widget in page.more_to_see():
                yield _save(widget, folder, f"{key}-{name}", look, size)
        yield _save_sheet(window, folder, look, size)
        yield _save_over(lambda: FirstStart(look), folder, "first-start", look, size)


def _save_sheet(window: MainWindow, folder: Path, look: Tokens, size: tuple[int, int]) -> Path:
    HelpSheet.turn(window)
    sheet = window.findChild(HelpSheet)
    assert sheet is not None
    saved = _save(sheet, folder, "keys", look, size)
    sheet.close()
    settle()
    return saved


def _save_over(
    make: Callable[[], QWidget], folder: Path, name: str, look: Tokens, size: tuple[int, int]
) -> Path:
    screen = make()
    screen.resize(*size)
    screen.show()
    saved = _save(screen, folder, name, look, size)
    screen.close()
    screen.deleteLater()
    return saved


def _save(widget: QWidget, folder: Path, name: str, look: Tokens, size: tuple[int, int]) -> Path:
    settle()
    path = folder / f"{name}-{look.name}-{size[0]}x{size[1]}.png"
    if not widget.grab().save(str(path)):
        raise Refusal(f"The picture {path.name} cannot be written to {folder}; choose another.")
    return path


def settle() -> None:
    """Let the window do what it has put off: layout, timers that are due, paint."""
    for _ in range(3):
        QCoreApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 50)
