"""The Planters page: the fleet of this store, and the meters mounted on the planter in view."""

from collections.abc import Iterator
from typing import ClassVar

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.desk.edits import PutPlanter
from changeover.desk.fleet import PlanterLine, planter_lines
from changeover.quantities import show
from changeover.window.asking import Asking
from changeover.window.door import Door
from changeover.window.entry.list_table import Column, ListModel, ListView
from changeover.window.meters_list import MetersList
from changeover.window.outlook import Outlook
from changeover.window.page import EVERYTHING, Page, Read
from changeover.window.planter.form import PlanterForm
from changeover.window.words import button, label

EMPTY = "No planter yet. Describe the first one: rows, spacing, groups and steps take a minute."

RETIRES = "It leaves the lists; its history stays. Undo brings it back."


class PlantersPage(Page):
    """Lists, adds, changes and retires planters; Enter or a double click looks at one."""

    wants: ClassVar[frozenset[Changed]] = EVERYTHING

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.model: ListModel[PlanterLine] = ListModel(self._columns(), door, outlook)
        self.view, self.empty = ListView(self.model, "Planters"), label(EMPTY, wrap=True)
        self.view.opened.connect(self.look_at)
        self.meters = MetersList(read, door, outlook, asking)
        self._lay_out()

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        lines = self.read(planter_lines, self.outlook.units)
        self.model.show_rows(lines)
        self.empty.setVisible(not lines)
        self.view.setVisible(bool(lines))
        self.change_button.setEnabled(bool(lines))
        self.retire_button.setEnabled(bool(lines))
        if self.outlook.planter:
            self.meters.refresh(changed)
        self.meters.setVisible(bool(self.outlook.planter))

    def look_at(self, number: int) -> None:
        """Look at the planter of a line."""
        self.outlook.show_planter(self.model.rows[number].name)

    def add(self) -> PlanterForm:
        """Open the form of a new planter; when it is taken over, look at that planter."""
        return self._open(PlanterForm(None, self.door, self.outlook, self))

    def change(self) -> PlanterForm | None:
        """Open the form of the chosen planter."""
        line = self._chosen()
        if line is None:
            return None
        if line.name != self.outlook.planter:
            self.outlook.show_planter(line.name)
        return self._open(PlanterForm(self.outlook.board.planter, self.door, self.outlook, self))

    def retire(self) -> None:
        """Take the chosen planter out of the store; undo brings it back."""
        from changeover.desk.board import read_board

        line = self._chosen()
        if line is None or not self.asking.confirm(
            f"Retire {line.name}?", f"{_under_way(line)}{RETIRES}", "Retire"
        ):
            return
        planter = self.read(read_board, line.name, self.outlook.units, proposal=False).planter
        here = self.outlook.planter
        if here == line.name:  # nothing may look at a planter that is gone
            left = (one.name for one in self.model.rows if one.name != line.name)
            self.outlook.show_planter(next(left, ""))
        if not self.door.push(PutPlanter(None, before=planter)):
            self.outlook.show_planter(here)

    @override
    def more_to_see(self) -> Iterator[tuple[str, QWidget]]:
        yield from self.dialogs_to_see({"form": self.change, "new": self.add})

    def _open(self, form: PlanterForm) -> PlanterForm:
        form.accepted.connect(lambda: self.outlook.show_planter(form.name.text().strip()))
        form.open()
        return form

    def _chosen(self) -> PlanterLine | None:
        row = self.view.chosen
        if row is not None and row < len(self.model.rows):
            return self.model.rows[row]
        here = (line for line in self.model.rows if line.name == self.outlook.planter)
        return next(here, None)

    def _columns(self) -> tuple[Column[PlanterLine], ...]:
        return (
            Column("Planter", lambda line: line.name, wide=True),
            Column("Rows", lambda line: str(line.rows), number=True),
            Column("Spacing", self._spacing),
            Column("Now", lambda line: line.now, wide=True),
            Column("Next", lambda line: line.next or "not chosen", wide=True),
            Column("Rows ready", _ready),
        )

    def _spacing(self, line: PlanterLine) -> str:
        return show(line.row_spacing, "row_spacing", self.outlook.units)

    def _lay_out(self) -> None:
        self.change_button = button("Change…", clicked=self.change)
        self.retire_button = button("Retire", clicked=self.retire)
        head = QHBoxLayout()
        head.setSpacing(8)
        head.addWidget(label("Planters", "page-title"))
        head.addWidget(label("Enter or double click looks at one.", "soft"), 1)
        head.addWidget(self.retire_button)
        head.addWidget(self.change_button)
        head.addWidget(button("New planter…", "main", self.add))
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 16, 24, 16)
        column.setSpacing(12)
        column.addLayout(head)
        column.addWidget(self.empty)
        column.addWidget(self.view, 1)
        column.addWidget(self.meters, 2)
        column.addStretch()


def _under_way(line: PlanterLine) -> str:
    """Say which switch is open on a planter and how far it is; nothing when none is."""
    if line.rows_ready is None:
        return ""
    return f"Its switch is not signed off: {line.next}, {_ready(line)} rows ready. "


def _ready(line: PlanterLine) -> str:
    return (
        "no switch open" if line.rows_ready is None else f"{line.rows_ready} of {line.rows_in_use}"
    )
