"""The saved setups of a planter: name, date, lot, field, and how each proved."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.desk.edits import SaveSetup, SetCells, Side, WithdrawSetup
from changeover.desk.records import SavedSetup, setups
from changeover.window.asking import Asking
from changeover.window.dates import day_text
from changeover.window.door import Door
from changeover.window.entry.list_table import Column, ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Page, Read
from changeover.window.words import button, label

EMPTY = (
    "No setup saved yet. A switch that is signed off saves one; you can also save what is found."
)


def setup_columns() -> tuple[Column[SavedSetup], ...]:
    """Return the columns of the list of setups."""
    return (
        Column("Setup", lambda one: one.name, wide=True),
        Column("Saved", lambda one: day_text(one.saved)),
        Column("By", lambda one: one.who),
        Column("Lot", lambda one: one.lot or ""),
        Column("Field", lambda one: one.field or ""),
        Column("How it proved", lambda one: one.proved or "not proved yet", wide=True),
        Column("Note", lambda one: one.note, wide=True),
    )


class SetupsView(Page):
    """The list of setups; emits ``compare_wanted`` with the name of one."""

    compare_wanted = Signal(str)

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.model: ListModel[SavedSetup] = ListModel(setup_columns(), door, outlook)
        self.view = ListView(self.model, "Saved setups")
        self.empty = label(EMPTY, "soft", wrap=True)
        self.view.opened.connect(lambda _row: self.compare())
        column, line = QVBoxLayout(self), QHBoxLayout()
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.empty)
        column.addWidget(self.view, 1)
        line.addWidget(button("Save as found under a name…", "main", self.save))
        line.addStretch()
        line.addWidget(button("Take as target", clicked=self.take))
        line.addWidget(button("Compare with now", clicked=self.compare))
        line.addWidget(button("Withdraw", clicked=self.withdraw))
        column.addLayout(line)

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        rows = self.read(setups, self.outlook.planter)
        self.model.show_rows(rows)
        self.empty.setVisible(not rows)

    def save(self) -> None:
        """Ask for a name and save what is found now."""
        name = self.asking.ask_text("Save the setup", "Name of this setup:")
        if name is not None:
            self.door.push(SaveSetup(self.outlook.planter, name))

    def take(self) -> None:
        """Make the chosen setup the target, so that the way back to it becomes work."""
        one, board = self._chosen(), self.outlook.board
        if one is not None:
            values = {c: v for c, v in one.setup.values.items() if board.target.get(c) != v}
            before = {cell: board.target.get(cell) for cell in values}
            why = f"setup “{one.name}” taken as target"
            self.door.push(SetCells(self.outlook.planter, Side.TARGET, values, before, why))

    def compare(self) -> None:
        """Ask for the comparison of the chosen setup with what is found now."""
        one = self._chosen()
        if one is not None:
            self.compare_wanted.emit(one.name)

    def withdraw(self) -> None:
        """Take the chosen setup off the list; history keeps it."""
        one = self._chosen()
        if one is not None and self.asking.confirm(
            f"Withdraw the setup “{one.name}”?", "It leaves the lists; the history keeps it."
        ):
            self.door.push(WithdrawSetup(self.outlook.planter, one.name))

    def _chosen(self) -> SavedSetup | None:
        row = self.view.chosen
        return self.model.rows[row] if row is not None and row < len(self.model.rows) else None
