"""A box to choose one of a few values, each shown by its words; values are compared, not places."""

from collections.abc import Iterable
from typing import Generic, TypeVar

from PySide6.QtCore import QSignalBlocker
from PySide6.QtGui import QPaintEvent
from PySide6.QtWidgets import (
    QComboBox,
    QSizePolicy,
    QStyle,
    QStyleOptionComboBox,
    QStylePainter,
)

from changeover.window.fitting import fitted
from changeover.window.theme import TEXT_PX

Choice = TypeVar("Choice")


class ChoiceBox(QComboBox, Generic[Choice]):
    """Chooses among values; ``chosen`` is None while there is nothing to choose.

    Words that have no room are set smaller and narrower before they are cut with a ….
    """

    def __init__(self, name: str, choices: Iterable[tuple[str, Choice]] = ()) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.setMinimumWidth(72)
        self.values: list[Choice] = []
        self.offer(choices)

    @property
    def chosen(self) -> Choice | None:
        """The value that is chosen, None when there is none."""
        place = self.currentIndex()
        return self.values[place] if 0 <= place < len(self.values) else None

    def offer(self, choices: Iterable[tuple[str, Choice]]) -> None:
        """Offer other choices, keeping the value that is chosen where it is among them."""
        had, before, every = bool(self.values), self.chosen, list(choices)
        with QSignalBlocker(self):
            self.clear()
            self.values = [value for _, value in every]
            self.addItems([words for words, _ in every])
            if had and before in self.values:
                self.setCurrentIndex(self.values.index(before))

    def choose(self, value: Choice | None) -> None:
        """Choose a value; one that is not offered leaves the choice as it is."""
        if value in self.values:
            self.setCurrentIndex(self.values.index(value))

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter, option = QStylePainter(self), QStyleOptionComboBox()
        self.initStyleOption(option)
        painter.drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option)
        field = self.style().subControlRect(
            QStyle.ComplexControl.CC_ComboBox,
            option,
            QStyle.SubControl.SC_ComboBoxEditField,
            self,
        )
        words = self.currentText()
        made, shown = fitted(words, field.width() - 4, TEXT_PX)
        self.setToolTip(words if shown != words else "")
        option.currentText = shown
        painter.setFont(made)
        painter.drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option)
