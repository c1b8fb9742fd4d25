"""The first start: try the demo, make a store of one's own, or open one that is there."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QApplication, QFrame, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from changeover.window.theme import Tokens, palette, style_sheet
from changeover.window.words import button, label

INTRO = (
    "Takes a planter set for one crop to a planter proven right for the next: every row as it is "
    "set now, what the next seed needs and why, what differs, and the work in order."
)
ABOUT_DEMO = "Three invented planters, half-way through a season, on a copy to try things on."
ABOUT_NEW = "A new file for your own planters. The first planter takes a minute to describe."
ABOUT_OPEN = "A store that you or somebody else has saved before."


class FirstStart(QWidget):
    """Three ways to begin; says which was chosen and does nothing itself."""

    demo_wanted = Signal()
    new_store_wanted = Signal()
    store_wanted = Signal()

    def __init__(self, tokens: Tokens) -> None:
        super().__init__()
        self.setWindowTitle("Changeover")
        self.setObjectName("page")
        self.setMinimumSize(1280, 720)
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.setPalette(palette(tokens))
        self.setStyleSheet(style_sheet(tokens))
        self.demo = button("Open the demo", "main", self.demo_wanted.emit)
        self.new = button("Make a new store…", clicked=self.new_store_wanted.emit)
        self.open = button("Open a store…", clicked=self.store_wanted.emit)
        self._lay_out()
        self.demo.setFocus()

    def _lay_out(self) -> None:
        middle = QVBoxLayout()
        middle.setSpacing(14)
        intro = label(INTRO, wrap=True)
        middle.addWidget(label("Changeover", "page-title"))
        middle.addWidget(intro)
        middle.addSpacing(10)
        cards = QHBoxLayout()
        cards.setSpacing(16)
        for title, about, one in (
            ("Look round", ABOUT_DEMO, self.demo),
            ("Begin", ABOUT_NEW, self.new),
            ("Go on", ABOUT_OPEN, self.open),
        ):
            cards.addWidget(_card(title, about, one))
        middle.addLayout(cards)
        across = QHBoxLayout()
        across.addStretch(1)
        across.addLayout(middle, 4)
        across.addStretch(1)
        whole = QVBoxLayout(self)
        whole.addStretch(2)
        whole.addLayout(across)
        whole.addStretch(3)


def _card(title: str, about: str, way: QWidget) -> QFrame:
    card = QFrame()
    card.setProperty("look", "ground-card")
    column = QVBoxLayout(card)
    column.setContentsMargins(18, 16, 18, 16)
    column.setSpacing(8)
    words: QLabel = label(about, wrap=True)
    words.setMinimumHeight(54)
    column.addWidget(label(title, "title"))
    column.addWidget(words, 1)
    column.addWidget(way)
    return card
