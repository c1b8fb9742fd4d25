"""The history: who changed what, when and why, from what to what."""

from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.desk.records import history
from changeover.quantities import how_many
from changeover.window.asking import Asking
from changeover.window.door import Door
from changeover.window.entry.list_table import Column, ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Page, Read
from changeover.window.record.history_lines import FoldedLine, fold
from changeover.window.words import label, pill

SHOWN = 2000


COLUMNS: tuple[Column[FoldedLine], ...] = (
    Column("When", lambda line: line.when),
    Column("Who", lambda line: line.who),
    Column("What", lambda line: line.what, wide=True),
    Column("Where", lambda line: line.where, wide=True),
    Column("From", lambda line: line.old, wide=True),
    Column("To", lambda line: line.new, wide=True),
    Column("Why", lambda line: line.why, wide=True),
)


class HistoryView(Page):
    """The latest changes, newest first; words typed narrow them down."""

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.search, self.every = QLineEdit(), pill("every planter")
        self.search.setPlaceholderText("Find: a row, a setting, a name …")
        self.search.setClearButtonEnabled(True)
        self.model: ListModel[FoldedLine] = ListModel(COLUMNS, door, outlook)
        self.view, self.says = ListView(self.model, "History"), label("", "soft")
        self.lines: tuple[FoldedLine, ...] = ()
        self.whole = True
        line, column = QHBoxLayout(), QVBoxLayout(self)
        line.addWidget(self.search, 1)
        line.addWidget(self.every)
        line.addWidget(self.says, 1)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(line)
        column.addWidget(self.view, 1)
        self.search.textChanged.connect(self._show)
        self.every.toggled.connect(lambda: self.refresh(frozenset()))

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        planter = None if self.every.isChecked() else self.outlook.planter
        read = self.read(history, planter, SHOWN, self.outlook.units)
        self.whole = len(read) < SHOWN
        self.lines = fold(read, self.outlook.board)
        self._show()

    def _show(self) -> None:
        words = self.search.text().casefold().split()
        shown = [line for line in self.lines if all(word in line.words for word in words)]
        self.model.show_rows(shown)
        what = "line" if self.whole else "latest line"
        self.says.setText(how_many(len(shown), what))
