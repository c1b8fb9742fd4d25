"""Two appraised planters side by side: rows by condition, and what the work costs."""

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget
from typing_extensions import override

from changeover.desk.appraise import KeptAppraisal, appraisals, beside, two_views
from changeover.desk.changed import Changed
from changeover.desk.print_appraisal import PAPERS, beside_lines, write_report
from changeover.proof.appraisal_pair import SideBySide
from changeover.quantities import Refusal
from changeover.window.asking import Asking
from changeover.window.attempts import attempt
from changeover.window.door import Door
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.list_table import Column, ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Page, Read
from changeover.window.words import button, label

Line = tuple[str, str, str]
Key = tuple[str, str]
EMPTY = (
    "Two appraisals are needed to set planters side by side, and {there}. Choose a planter above, "
    "then begin an appraisal of it under appraisal."
)


def columns(heads: Line) -> tuple[Column[Line], ...]:
    """Return the columns under the names of two planters."""
    return (
        Column(heads[0], lambda one: one[0], wide=True),
        Column(heads[1], lambda one: one[1], number=True, wide=True),
        Column(heads[2], lambda one: one[2], number=True, wide=True),
    )


class BesideView(Page):
    """Chooses two appraisals of any planters and sets them side by side."""

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.one: ChoiceBox[Key] = ChoiceBox("First appraisal")
        self.other: ChoiceBox[Key] = ChoiceBox("Second appraisal")
        self.kept: dict[Key, KeptAppraisal] = {}
        self.model: ListModel[Line] = ListModel(columns(("", "First", "Second")), door, outlook)
        self.view, self.says = ListView(self.model, "Side by side"), label(wrap=True)
        self.choices, column = QWidget(), QVBoxLayout(self)
        line = QHBoxLayout(self.choices)
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(self.one, 1)
        line.addWidget(label("beside", "soft"))
        line.addWidget(self.other, 1)
        self.print_button = button("Print both…", "main", self.print_both)
        line.addWidget(self.print_button)
        column.setContentsMargins(0, 0, 24, 16)
        column.setSpacing(10)
        column.addWidget(self.choices)
        column.addWidget(self.says)
        column.addWidget(self.view, 1)
        column.addStretch(0)
        for box in (self.one, self.other):
            box.currentIndexChanged.connect(lambda _n: self.show_pair())

    @override
    def refresh(self, changed: frozenset[Changed]) -> None:
        self.kept = {(one.planter, one.name): one for one in self.read(appraisals)}
        choices = [
            (f"{one.planter}: {one.name}, {one.on.isoformat()}", key)
            for key, one in self.kept.items()
        ]
        for box in (self.one, self.other):
            box.offer(choices)
        if self.one.chosen == self.other.chosen:
            self._choose_two()
        self.show_pair()

    def print_both(self) -> None:
        """Print the report of the first with the second beside it, on A4 and on Letter."""
        one, other = self.one.chosen, self.other.chosen
        if one is None or other is None:
            return
        views = attempt(self.door, lambda: self.read(two_views, self.kept[one], self.kept[other]))
        folder = self.asking.choose_folder("Folder for the report") if views else None
        if views is None or folder is None:
            return
        units = self.outlook.units
        written = attempt(
            self.door,
            lambda: [
                self.read(write_report, views[0], folder, paper, units, views[1])
                for paper in PAPERS
            ],
        )
        if written is not None:
            names = " and ".join(path.name for path in written)
            self.asking.tell(f"The report is written: {names}", str(folder))

    def _choose_two(self) -> None:
        """Choose one of the planter in view, and one of another planter where there is one."""
        here = [key for key in self.kept if key[0] == self.outlook.planter]
        first = here[0] if here else next(iter(self.kept), None)
        others = [key for key in self.kept if key != first]
        others.sort(key=lambda key: first is not None and key[0] == first[0])
        with QSignalBlocker(self.one), QSignalBlocker(self.other):
            self.one.choose(first)
            self.other.choose(others[0] if others else None)

    def _there(self) -> str:
        """Say how many appraisals there are, fewer than two."""
        only = next(iter(self.kept), None)
        return "there is none yet" if only is None else f"there is one: {only[0]}, {only[1]}"

    def show_pair(self) -> None:
        """Show the two that are chosen, or say why they cannot be compared."""
        one, other = self.one.chosen, self.other.chosen
        enough = one is not None and other is not None and len(self.kept) > 1
        for shown in (self.choices, self.view):
            shown.setVisible(enough)
        self.print_button.setEnabled(enough)
        if one is None or other is None or not enough:
            self.model.show_rows(())
            self.says.setText(EMPTY.format(there=self._there()))
            return
        try:
            views = self.read(two_views, self.kept[one], self.kept[other])
        except Refusal as refusal:
            self.model.show_rows(())
            self.says.setText(str(refusal))
            return
        heads, *lines = beside_lines(*views)
        self.model.columns = columns(heads)
        self.model.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, 2)
        self.model.show_rows(lines)
        self.says.setText(dearer_words(beside(*views)))


def dearer_words(pair: SideBySide) -> str:
    """Say whose work costs more, by currency."""
    if not pair.fair:
        return "Prices are missing for one of them, so the sums cannot be compared."
    said = [
        f"{name} takes more work in {code}." if name else f"Both take the same work in {code}."
        for code, name in pair.dearer.items()
    ]
    return " ".join(said) or "Neither needs any work."
