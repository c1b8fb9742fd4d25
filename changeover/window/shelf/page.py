"""The Shelf page: every kind of part, how many lie where, and what all switches need."""

from collections.abc import Iterator
from typing import ClassVar

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget
from typing_extensions import override

from changeover.desk.changed import Changed
from changeover.desk.shop_edits import PutDelivery
from changeover.desk.stock import StockLine, count_text, read_count, remove_part, stock
from changeover.desk.supply_list import set_delivery
from changeover.desk.tables import crops
from changeover.planter.parts import Condition
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.door import Door
from changeover.window.entry.list_table import Column, ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Page, Read
from changeover.window.shelf.part_form import PartForm
from changeover.window.words import button, label, pill

EMPTY = "No parts yet. Enter the discs and brushes you have, and the look-up can choose among them."
HINT = "Type a count, with its bin if you like: 12 A3. Only new and good ones are laid out."


def shelf_columns() -> tuple[Column[StockLine], ...]:
    """Return the columns of the shelf."""
    counts = tuple(_count_column(condition) for condition in Condition)
    return (
        Column("Code", lambda line: line.part.code),
        Column("What", lambda line: line.part.name, wide=True),
        Column("Sort", lambda line: line.part.sort),
        Column("For", _suits, wide=True),
        Column("Cells", lambda line: str(line.part.cells or ""), number=True),
        *counts,
        Column("Needed", lambda line: str(line.needed or ""), number=True, tip=_wanted),
        Column("Short", _short, loud=lambda line: line.short > 0, tip=_wanted),
        Column("Days to deliver", _days, edit=_set_days, number=True),
        Column("Order by", lambda line: line.order_by, loud=lambda line: "!" in line.order_by),
    )


class ShelfPage(Page):
    """The parts shelf; counts are typed in place."""

    wants: ClassVar[frozenset[Changed]] = frozenset(
        {
            Changed.SHELF,
            Changed.PARTS,
            Changed.AS_FOUND,
            Changed.TARGET,
            Changed.NEXT,
            Changed.TICKS,
            Changed.PLANTERS,
        }
    )

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.model: ListModel[StockLine] = ListModel(shelf_columns(), door, outlook)
        self.view = ListView(self.model, "Parts on the shelf")
        self.view.opened.connect(self.change)
        self.lines: tuple[StockLine, ...] = ()
        self.only_short, self.empty = pill("only what is short"), label(EMPTY, "soft", wrap=True)
        self.only_short.toggled.connect(self._show_lines)
        self._lay_out()

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        self.lines = self.read(stock)
        self._show_lines()

    def add(self) -> None:
        """Open the form for a new kind of part."""
        self._form(None)

    def change(self, number: int | None = None) -> None:
        """Open the form of the chosen part."""
        line = self._chosen(number)
        if line is not None:
            self._form(line)

    def remove(self) -> None:
        """Remove the chosen kind of part, which must have none on the shelf."""
        line = self._chosen(None)
        edit = attempt(self.door, lambda: remove_part(line)) if line is not None else None
        if edit is not None:
            self.door.push(edit)

    @override
    def more_to_see(self) -> Iterator[tuple[str, QWidget]]:
        self.view.selectRow(0)
        yield from self.dialogs_to_see({"part": self.change, "new-part": self.add})

    def _form(self, line: StockLine | None) -> None:
        sorts = {one.part.sort for one in self.lines}
        form = PartForm(line.part if line else None, sorts, self.door, self.outlook, self)
        form.open()

    def _chosen(self, number: int | None) -> StockLine | None:
        row = self.view.chosen if number is None else number
        return self.model.rows[row] if row is not None and row < len(self.model.rows) else None

    def _show_lines(self) -> None:
        only = self.only_short.isChecked()
        self.model.show_rows([line for line in self.lines if line.short or not only])
        self.empty.setVisible(not self.lines)

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(8)
        head.addWidget(label("Shelf", "page-title"))
        head.addWidget(label(HINT, "soft"), 1)
        head.addWidget(self.only_short)
        head.addWidget(button("Remove", clicked=self.remove))
        head.addWidget(button("Change…", clicked=self.change))
        head.addWidget(button("New kind of part…", "main", self.add))
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 16, 24, 16)
        column.setSpacing(12)
        column.addLayout(head)
        column.addWidget(self.empty)
        column.addWidget(self.view, 1)


def _count_column(condition: Condition) -> Column[StockLine]:
    return Column(
        condition.value.capitalize(),
        lambda line: count_text(line, condition),
        edit=lambda line, text: read_count(line, condition, text),
    )


def _suits(line: StockLine) -> str:
    known = crops()
    names = sorted(
        known[key].name if key in known else key.replace("_", " ") for key in line.part.suits
    )
    return ", ".join(names) or "any"


def _days(line: StockLine) -> str:
    return "" if line.days is None else str(line.days)


def _set_days(line: StockLine, text: str) -> PutDelivery:
    return set_delivery(line.part.code, line.days, text)


def _wanted(line: StockLine) -> str:
    return line.wanted


def _short(line: StockLine) -> str:
    return f"! {line.short} short" if line.short else ""
