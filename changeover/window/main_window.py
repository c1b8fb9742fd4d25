"""The main window: header, rail and one page at a time, put together and told what changed."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import (
    QApplication,
    QHBoxLayout,
    QMainWindow,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from changeover.desk.changed import Changed
from changeover.desk.edits import Conflict
from changeover.desk.fleet import planter_names
from changeover.quantities import Refusal
from changeover.window.asking import Asking
from changeover.window.door import Door
from changeover.window.header import Header
from changeover.window.notice import Notice
from changeover.window.outlook import Outlook
from changeover.window.page import EVERYTHING, Page, Read
from changeover.window.pages import PAGES, PageLine
from changeover.window.rail import Rail
from changeover.window.rail_notes import rail_notes
from changeover.window.shortcuts import install
from changeover.window.theme import palette, style_sheet

LEAST_WIDTH, LEAST_HEIGHT = 1280, 720


class MainWindow(QMainWindow):
    """The frame of all pages; a page is made when first opened and refreshed while it is shown."""

    opened = Signal(str)
    store_wanted = Signal()
    new_store_wanted = Signal()
    demo_wanted = Signal()
    again_wanted = Signal()

    def __init__(
        self,
        read: Read,
        door: Door,
        outlook: Outlook,
        asking: Asking,
        pages: Sequence[PageLine] = PAGES,
    ) -> None:
        super().__init__()
        self.setWindowTitle("Changeover")
        self._read, self.door, self.outlook, self._asking = read, door, outlook, asking
        self._lines = {line.key: line for line in pages}
        self.pages: dict[str, Page] = {}
        self._stale: dict[str, frozenset[Changed]] = {}
        self.header = Header(lambda: read(planter_names), door, outlook)
        self.rail, self.notice = Rail(pages, outlook), Notice(outlook)
        self.stack = QStackedWidget()
        self._put_together()
        self._listen()
        install(self)
        self.recolour()

    def open_page(self, key: str) -> Page:
        """Show a page, making it when it is opened for the first time.

        Without a planter only the page that makes one can be opened.
        """
        if not self.outlook.planter and self.has_page("planter") and key != "planter":
            self.notice.say("There is no planter yet; describe the first one here.")
            key = "planter"
        page = self.pages.get(key) or self._make(key)
        self.rail.mark_open(key)
        self.stack.setCurrentWidget(page)
        self._freshen(key)
        self.opened.emit(key)
        return page

    def begin(self) -> None:
        """Open the first page: the switch, or a new planter where there is none yet."""
        first = "switch" if self.outlook.planter else "planter"
        self.open_page(first if self.has_page(first) else self.page_keys()[0])

    @property
    def current(self) -> str:
        """The key of the page that is shown."""
        shown = self.stack.currentWidget()
        return next((key for key, page in self.pages.items() if page is shown), "")

    def go_round(self) -> None:
        """Put the keyboard on the next of rail, page and the parts of the page."""
        stops = (self.rail.steps[self.current], *self.pages[self.current].stops())
        here = [n for n, stop in enumerate(stops) if stop.hasFocus() or _holds_focus(stop)]
        following = stops[(here[-1] + 1) % len(stops)] if here else stops[0]
        following.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def page_keys(self) -> tuple[str, ...]:
        return tuple(self._lines)

    def has_page(self, key: str) -> bool:
        return key in self._lines

    def recolour(self) -> None:
        """Put on the colours of the outlook."""
        tokens = self.outlook.tokens
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.setPalette(palette(tokens))
        self.setStyleSheet(style_sheet(tokens))
        for page in self.pages.values():
            page.recolour()

    def _put_together(self) -> None:
        middle, body, column = QWidget(), QHBoxLayout(), QVBoxLayout()
        body.setContentsMargins(0, 0, 0, 0)
        body.setSpacing(0)
        body.addWidget(self.rail)
        body.addWidget(self.stack, 1)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.header)
        column.addLayout(body, 1)
        column.addWidget(self.notice)
        middle.setLayout(column)
        self.setCentralWidget(middle)
        self.setMinimumSize(LEAST_WIDTH, LEAST_HEIGHT)

    def _listen(self) -> None:
        self.door.changed.connect(self._hear)
        self.door.overtaken.connect(self._look_again)
        self.door.choose = self._choose
        self.door.refused.connect(self.notice.say)
        self.door.told.connect(self.notice.say)
        self.outlook.moved.connect(lambda: self._refresh(EVERYTHING))
        self.outlook.refused.connect(self.notice.say)
        self.outlook.looked_up.connect(lambda: self._refresh(frozenset({Changed.NEXT})))
        self.outlook.recoloured.connect(self.recolour)
        self.rail.chosen.connect(self.open_page)
        self.rail.again.connect(self.again_wanted)
        self.header.give_jobs(
            {
                "New planter…": lambda: self._open_if_there("planter"),
                "Open a store…": self.store_wanted.emit,
                "New store…": self.new_store_wanted.emit,
                "Open the demo": self.demo_wanted.emit,
            }
        )
        self.header.choose_next.connect(lambda: self._open_if_there("seed"))

    def _open_if_there(self, key: str) -> None:
        if self.has_page(key):
            self.open_page(key)

    def _make(self, key: str) -> Page:
        made = self._lines[key].load()(self._read, self.door, self.outlook, self._asking)
        made.page_wanted.connect(self._open_if_there)
        self.pages[key] = made
        self._stale[key] = EVERYTHING
        self.stack.addWidget(made)
        return made

    def _hear(self, changed: frozenset[Changed]) -> None:
        self.notice.hide()
        self.outlook.note(changed, self.door.latest)
        self._refresh(changed)

    def _choose(self, conflict: Conflict) -> bool:
        """Ask whose value stands, and say whether it is this person's."""
        return self._asking.confirm(
            f"{conflict.what} was changed by someone else meanwhile.",
            f"Theirs: {conflict.theirs}.\nYours: {conflict.mine}.",
            "Keep mine",
        )

    def _look_again(self) -> None:
        """Read everything again, as somebody else has changed the store."""
        self.outlook.forget()
        self._refresh(EVERYTHING)

    def _refresh(self, changed: frozenset[Changed]) -> None:
        for key, page in self.pages.items():
            if changed & page.wants:
                self._stale[key] = self._stale.get(key, frozenset()) | changed
        self._freshen(self.current)

    def _freshen(self, key: str) -> None:
        """Refresh frame and page where they are stale; a store that cannot be read is said."""
        try:
            self.header.refresh()
            if self.outlook.planter:
                self.rail.show_notes(rail_notes(self.outlook))
                self.rail.show_demo(demo=self.outlook.board.demo)
            changed = self._stale.pop(key, frozenset())
            if changed:
                self.pages[key].refresh(changed)
        except Refusal as refusal:
            self.notice.say(str(refusal))

    def closeEvent(self, event: QCloseEvent) -> None:
        """Look nothing up any more: the store may close next."""
        self.outlook.forget()
        super().closeEvent(event)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.ActivationChange and self.isActiveWindow():
            self.rail.update()


def _holds_focus(widget: QWidget) -> bool:
    focused = QApplication.focusWidget()
    return focused is not None and widget.isAncestorOf(focused)
