"""Choosing one lot or field: the box, what is known of the one chosen, and new, change, remove."""

from collections.abc import Iterable
from typing import Generic, TypeVar

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.words import button, label

Kept = TypeVar("Kept")


class Picker(QWidget, Generic[Kept]):
    """Picks one by its name; ``none`` are the words for choosing none at all."""

    changed = Signal()
    new_wanted = Signal()
    change_wanted = Signal()
    remove_wanted = Signal()

    def __init__(self, title: str, none: str, empty: str) -> None:
        super().__init__()
        self._none, self._empty = none, empty
        self._kept: dict[str, Kept] = {}
        self.box: ChoiceBox[str] = ChoiceBox(title)
        self.facts = label(look="soft", wrap=True)
        self.new = button("New…", clicked=self.new_wanted.emit)
        self.change = button("Change…", clicked=self.change_wanted.emit)
        self.remove = button("Remove", clicked=self.remove_wanted.emit)
        for one, name in ((self.new, "new"), (self.change, "change"), (self.remove, "remove")):
            one.setProperty("look", "small")
            one.setAccessibleName(f"{title}: {name}")
        self.box.currentIndexChanged.connect(self._choose)
        column, ends = QVBoxLayout(self), QHBoxLayout()
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(5)
        column.addWidget(label(title, "title"))
        column.addWidget(self.box)
        column.addWidget(self.facts)
        ends.setSpacing(6)
        for one in (self.new, self.change, self.remove):
            ends.addWidget(one)
        ends.addStretch()
        column.addLayout(ends)

    @property
    def picked(self) -> Kept | None:
        """The one that is chosen, None when none is."""
        return self._kept.get(self.box.chosen or "")

    def offer(self, every: Iterable[tuple[str, str, Kept]]) -> None:
        """Offer others, each with its name and its line; the one chosen stays if it is there."""
        lines = list(every)
        self._kept = {name: kept for name, _, kept in lines}
        self.box.offer([(self._none, ""), *((line, name) for name, line, _ in lines)])
        self._follow()

    def say(self, facts: str) -> None:
        """Show what is known of the one chosen."""
        text = facts if self._kept else self._empty
        self.facts.setText(text)
        self.facts.setVisible(bool(text))

    def _choose(self) -> None:
        self._follow()
        self.changed.emit()

    def _follow(self) -> None:
        for one in (self.change, self.remove):
            one.setEnabled(self.picked is not None)
