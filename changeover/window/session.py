"""One run of the program: which store is open, and its window or the first choices on screen."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QWidget

from changeover.desk.opening import Store, open_or_read
from changeover.quantities import Refusal
from changeover.window.asking import Asking, DialogAsking
from changeover.window.main_window import MainWindow
from changeover.window.preferences import Preferences

BuildWindow = Callable[[Store, Preferences, Asking], MainWindow]
SEEN_ALONE = (
    "The store {} is read-only: everything in it can be seen and printed, nothing changed. Allow "
    "writing to it and its folder, or open a copy, to work in it."
)
STORES = "Stores (*.sqlite);;All files (*)"


class Session(QObject):
    """Opens and changes stores; a store that is refused leaves what is on screen as it is.

    ``build`` makes the window of a store, ``folder`` holds the working copy of the demo and
    ``curtain`` is what is on the screen until the first one is there.
    """

    def __init__(
        self,
        build: Callable[[Store], MainWindow],
        preferences: Preferences,
        asking: Asking,
        folder: Path,
        curtain: QWidget | None = None,
    ) -> None:
        super().__init__()
        self._build, self._preferences = build, preferences
        self._asking, self._folder = asking, folder
        self.where = ""
        self.store: Store | None = None
        self.screen = curtain

    def begin(self, where: str = "") -> None:
        """Open a store, the one opened last, or show the choices of the first start."""
        wanted = where or self._preferences.store
        if not (wanted and self.open(wanted)):
            self._show(self._first_start())

    def open(self, where: str, *, create: bool = False) -> bool:
        """Open a store in place of the one that is open; say whether it could be opened.

        In place of the demo that travels along, its working copy is opened.
        """
        from changeover.desk.demo.working_copy import spared

        try:
            where = spared(where, self._folder)
            store = open_or_read(where, create=create)
        except Refusal as refusal:
            self._asking.tell(str(refusal))
            return False
        before = self._preferences.store
        self._preferences.keep_store(where)  # the window opens on the planter seen last in it
        window = self._window_on(store)
        if window is None:
            store.close()
            self._preferences.keep_store(before)
            return False
        self._close_store()
        self.store, self.where = store, where
        window.store_wanted.connect(self.choose_store)
        window.new_store_wanted.connect(self.choose_new_store)
        window.demo_wanted.connect(self.open_demo)
        window.again_wanted.connect(self.start_again)
        self._show(window)
        if store.read_only:
            window.notice.say(SEEN_ALONE.format(store.name))
        return True

    def _window_on(self, store: Store) -> MainWindow | None:
        """Return the window on a store, or say why what is in it cannot be read."""
        try:
            window = self._build(store)
            window.begin()
        except Refusal as refusal:
            self._asking.tell(str(refusal))
            return None
        return window

    def choose_store(self) -> None:
        """Ask for a store and open it."""
        path = self._asking.choose_file("Open a store", STORES)
        if path is not None:
            self.open(str(path))

    def choose_new_store(self) -> None:
        """Ask where a new store is to be, and open it empty."""
        path = self._asking.choose_new_file("A new store", "planters.sqlite", STORES)
        if path is None:
            return
        if path.exists():
            self._asking.tell(f"There is a file {path.name} already; choose another name.")
        else:
            self.open(str(path), create=True)

    def open_demo(self) -> None:
        """Open the working copy of the demo."""
        from changeover.desk.demo.working_copy import working_copy

        try:
            self.open(str(working_copy(self._folder)))
        except Refusal as refusal:
            self._asking.tell(str(refusal))

    def start_again(self) -> None:
        """Put a fresh copy of the demo in place of the one that is open."""
        from changeover.desk.demo.working_copy import start_again

        self._close_store()
        try:
            start_again(Path(self.where))
        except Refusal as refusal:
            self._asking.tell(str(refusal))
        self.open(self.where)

    def close(self) -> None:
        """Close the screen and the store."""
        if self.screen is not None:
            self.screen.close()
        self._close_store()

    def _first_start(self) -> QWidget:
        from changeover.window.first_start import FirstStart

        choices = FirstStart(self._preferences.tokens)
        choices.demo_wanted.connect(self.open_demo)
        choices.new_store_wanted.connect(self.choose_new_store)
        choices.store_wanted.connect(self.choose_store)
        return choices

    def _show(self, screen: QWidget) -> None:
        """Show a screen in place of the one before, which goes once its own signal has returned."""
        old, self.screen = self.screen, screen
        if old is not None:
            screen.resize(old.size())
        screen.show()
        if old is not None:
            old.close()
            QTimer.singleShot(0, old, old.deleteLater)

    def _close_store(self) -> None:
        if isinstance(self.screen, MainWindow):
            self.screen.outlook.rest()
        if self.store is not None:
            self.store.close()
            self.store = None


def open_session(build: BuildWindow, file: Path, folder: Path, curtain: QWidget) -> Session:
    """Return the session that changes the curtain for a window; ``file`` keeps preferences."""
    preferences, asking = Preferences(file), DialogAsking()
    return Session(
        lambda store: build(store, preferences, asking), preferences, asking, folder, curtain
    )
