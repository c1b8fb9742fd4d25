"""The Record page: saved setups, any two compared, and the history of every change."""

from typing import ClassVar

from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QStackedWidget, QVBoxLayout
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.window.asking import Asking
from changeover.window.door import Door
from changeover.window.outlook import Outlook
from changeover.window.page import EVERYTHING, Page, Read
from changeover.window.record.compare import CompareView
from changeover.window.record.history import HistoryView
from changeover.window.record.setups import SetupsView
from changeover.window.words import label, pill


class RecordPage(Page):
    """Three views of what was: setups, two of them compared, and the history."""

    wants: ClassVar[frozenset[Changed]] = EVERYTHING

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.setups = SetupsView(read, door, outlook, asking)
        self.compare = CompareView(read, door, outlook, asking)
        self.history = HistoryView(read, door, outlook, asking)
        self.views = {"setups": self.setups, "compare": self.compare, "history": self.history}
        self.stack, self.pills = QStackedWidget(), QButtonGroup(self)
        head = QHBoxLayout()
        head.setSpacing(8)
        head.addWidget(label("Record", "page-title"))
        head.addSpacing(16)
        for number, (name, view) in enumerate(self.views.items()):
            chosen = pill(name)
            self.pills.addButton(chosen, number)
            self.stack.addWidget(view)
            head.addWidget(chosen)
        head.addStretch()
        self.pills.idClicked.connect(self.show_view)
        self.setups.compare_wanted.connect(self._compare)
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 16, 24, 16)
        column.setSpacing(12)
        column.addLayout(head)
        column.addWidget(self.stack, 1)
        self.pills.button(0).setChecked(True)

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        for view in self.views.values():
            view.refresh(changed)

    def show_view(self, number: int) -> None:
        """Show one of the views by its number from the left."""
        self.stack.setCurrentIndex(number)
        self.pills.button(number).setChecked(True)

    def _compare(self, name: str) -> None:
        self.compare.choose(name)
        self.show_view(list(self.views).index("compare"))
