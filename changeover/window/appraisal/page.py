"""The Trade-in page: one planter appraised, two side by side, and the price lists."""

from collections.abc import Iterator
from typing import ClassVar

from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.window.appraisal.beside import BesideView
from changeover.window.appraisal.one import OneView
from changeover.window.appraisal.prices import PricesView
from changeover.window.asking import Asking
from changeover.window.door import Door
from changeover.window.outlook import Outlook
from changeover.window.page import Page, Read
from changeover.window.words import label, pill


class TradeInPage(Page):
    """The frame of the three views."""

    wants: ClassVar[frozenset[Changed]] = frozenset(
        {
            Changed.APPRAISALS,
            Changed.PRICES,
            Changed.WEAR_LIMITS,
            Changed.PROOFS,
            Changed.PLANTERS,
        }
    )

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.one = OneView(read, door, outlook, asking)
        self.beside = BesideView(read, door, outlook, asking)
        self.prices = PricesView(read, door, outlook, asking)
        self.views: dict[str, Page] = {
            "appraisal": self.one,
            "side by side": self.beside,
            "prices": self.prices,
        }
        self.stack, self.pills = QStackedWidget(), QButtonGroup(self)
        head, column = QHBoxLayout(), QVBoxLayout(self)
        head.setSpacing(8)
        head.setContentsMargins(0, 0, 24, 0)
        head.addWidget(label("Trade-in", "page-title"))
        head.addSpacing(16)
        for number, (name, view) in enumerate(self.views.items()):
            chosen = pill(name)
            self.pills.addButton(chosen, number)
            self.stack.addWidget(view)
            head.addWidget(chosen)
        head.addStretch()
        self.pills.idClicked.connect(self.show_view)
        column.setContentsMargins(24, 16, 0, 0)
        column.setSpacing(12)
        column.addLayout(head)
        column.addWidget(self.stack, 1)
        self.pills.button(0).setChecked(True)

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        for view in self.views.values():
            view.refresh(changed)

    @override
    def stops(self) -> tuple[QWidget, ...]:
        return (self.one.rows, self.one.form) if self.stack.currentIndex() == 0 else (self,)

    @override
    def recolour(self) -> None:
        super().recolour()
        for view in self.views.values():
            view.recolour()

    @override
    def more_to_see(self) -> Iterator[tuple[str, QWidget]]:
        for number, name in ((1, "side-by-side"), (2, "prices")):
            self.show_view(number)
            yield name, self.window()
        self.show_view(0)

    def show_view(self, number: int) -> None:
        """Show one of the views by its number from the left."""
        self.stack.setCurrentIndex(number)
        self.pills.button(number).setChecked(True)
