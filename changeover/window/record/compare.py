"""Two setups side by side: every setting in which they differ, with rows and both values."""

from dataclasses import dataclass

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QVBoxLayout
from typing_extensions import override

from changeover.desk.board import Board
from changeover.desk.changed import Changed
from changeover.desk.records import NOW, Compared, compare, setups
from changeover.planter.entry import show_value
from changeover.planter.places import Place
from changeover.planter.settings import Setting
from changeover.planter.setup import Value
from changeover.quantities import how_many
from changeover.switch.wording import places_text
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.door import Door
from changeover.window.entry.list_table import Column, ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Page, Read
from changeover.window.words import label


@dataclass(frozen=True)
class DifferingLine:
    """One setting with the places that go from the same value to the same other one."""

    setting: str
    where: str
    one: str
    other: str


COLUMNS: tuple[Column[DifferingLine], ...] = (
    Column("Setting", lambda line: line.setting),
    Column("Where", lambda line: line.where, wide=True),
    Column("First", lambda line: line.one, wide=True),
    Column("Second", lambda line: line.other, wide=True),
)


def differing_lines(board: Board, compared: Compared) -> tuple[DifferingLine, ...]:
    """Return the lines of a comparison: alike places of a setting stand together."""
    by_key = {setting.key: setting for setting in board.settings}
    grouped: dict[tuple[str, str, str], list[Place]] = {}
    for cell, change in compared.difference.changes.items():
        setting = by_key[cell.setting]
        pair = (_text(board, setting, cell.place, v) for v in (change.before, change.after))
        one, other = pair
        grouped.setdefault((setting.name, one, other), []).append(cell.place)
    return tuple(
        DifferingLine(name, places_text(places), one, other)
        for (name, one, other), places in grouped.items()
    )


def _text(board: Board, setting: Setting, place: Place, value: Value | None) -> str:
    if value is None:
        return "not known"
    return show_value(setting, board.planter, place, value, board.units, sign=True)


class CompareView(Page):
    """Chooses two setups and lists what differs between them."""

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.one, self.other = QComboBox(), QComboBox()
        self.one.setAccessibleName("First setup")
        self.other.setAccessibleName("Second setup")
        self.model: ListModel[DifferingLine] = ListModel(COLUMNS, door, outlook)
        self.view, self.says = ListView(self.model, "What differs"), label("", "soft")
        line, column = QHBoxLayout(), QVBoxLayout(self)
        line.addWidget(self.one, 1)
        line.addWidget(label("against", "soft"))
        line.addWidget(self.other, 1)
        line.addWidget(self.says, 2)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(line)
        column.addWidget(self.view, 1)
        for box in (self.one, self.other):
            box.currentIndexChanged.connect(self._show)

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        names = (NOW, *(one.name for one in self.read(setups, self.outlook.planter)))
        for box, first in ((self.one, len(names) > 1), (self.other, False)):
            kept = box.currentText()
            with QSignalBlocker(box):
                box.clear()
                box.addItems(list(names))
                box.setCurrentIndex(names.index(kept) if kept in names else int(first))
        self._show()

    def choose(self, name: str) -> None:
        """Compare the setup of a name with what is found now."""
        self.one.setCurrentText(name)
        self.other.setCurrentText(NOW)

    def _show(self) -> None:
        names = self.one.currentText(), self.other.currentText()
        compared = attempt(
            self.door, lambda: self.read(compare, self.outlook.planter, names[0], names[1])
        )
        lines = differing_lines(self.outlook.board, compared) if compared else ()
        self.model.show_rows(lines)
        count = len(compared.difference.changes) if compared else 0
        said = how_many(count, "value differs", "values differ")
        self.says.setText(said if count else "Nothing differs.")
