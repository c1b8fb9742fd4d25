"""Other lots by rows, for a planter with many hoppers: a line for each lot, with its rows."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from changeover.planter.hopper_text import read_hoppers, show_hoppers
from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.quantities import Refusal
from changeover.seed.lots import SeedLot
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.seed.lot_words import lot_line
from changeover.window.words import button, label

WHAT = "Rows with another lot"
Pairs = tuple[tuple[Place, str], ...]


class HopperLine(QWidget):
    """One lot and the rows that take it."""

    changed = Signal()
    gone = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.rows, self.lot = QLineEdit(), ChoiceBox[str]("Their lot")
        self.rows.setPlaceholderText("rows, 1-6")
        self.rows.setAccessibleName(WHAT)
        self.rows.setFixedWidth(84)
        self.remove = button("✕", "small", self.gone.emit)
        self.remove.setAccessibleName("Let these rows take the same lot")
        self.remove.setToolTip("Let these rows take the same lot as the others")
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(6)
        for widget, stretch in ((self.rows, 0), (self.lot, 1), (self.remove, 0)):
            line.addWidget(widget, stretch)
        self.rows.textChanged.connect(self.changed)
        self.lot.currentIndexChanged.connect(self.changed)

    @property
    def empty(self) -> bool:
        """Whether neither rows nor lot are entered."""
        return not self.rows.text().strip() and not self.lot.chosen

    def pairs(self, planter: Planter) -> Pairs:
        """Return the hoppers of its rows, each with the lot; none while empty. Raises Refusal."""
        if self.empty:
            return ()
        places = read_hoppers(planter, self.rows.text(), WHAT)
        lot = self.lot.chosen
        if not lot:
            raise Refusal(f"{WHAT}: choose the lot that rows {self.rows.text().strip()} take.")
        return tuple((place, lot) for place in places)


class HopperLots(QWidget):
    """Lines of other lots; ``changed`` follows every key, and what is wrong stands below."""

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.lines: list[HopperLine] = []
        self._planter: Planter | None = None
        self._kept: Pairs = ()
        self._offered: list[tuple[str, str]] = []
        self.sentence = label(look="work-text", wrap=True)
        self.more = button("Another lot in some rows…", "small", self._add_and_go)
        self._column, whole, end = QVBoxLayout(), QVBoxLayout(self), QHBoxLayout()
        self._column.setSpacing(5)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(5)
        whole.addLayout(self._column)
        whole.addWidget(self.sentence)
        end.addWidget(self.more)
        end.addStretch()
        whole.addLayout(end)
        self.sentence.hide()

    @property
    def says_something(self) -> bool:
        """Whether any line is filled in."""
        return any(not line.empty for line in self.lines)

    def show_planter(self, planter: Planter, lots: Sequence[SeedLot]) -> None:
        """Offer lots for the rows of a planter; another planter begins without lines."""
        if self._planter is not None and planter.name != self._planter.name:
            self._clear()
        self._planter = planter
        self._offered = [("choose a lot", ""), *((lot_line(lot), lot.number) for lot in lots)]
        for line in self.lines:
            line.lot.offer(self._offered)

    def show_pairs(self, pairs: Pairs) -> None:
        """Fill in a line for each lot, with its rows; hoppers that are no more are left out.

        While no planter is known, the hoppers are kept as they are.
        """
        self._clear()
        self._kept = pairs
        if self._planter is None:
            return
        there = self._planter.places(Scope.TANK)
        by_lot: dict[str, list[Place]] = {}
        for place, number in pairs:
            if place in there:
                by_lot.setdefault(number, []).append(place)
        for number, places in by_lot.items():
            line = self._add()
            line.rows.setText(show_hoppers(self._planter, places))
            line.lot.choose(number)

    def pairs(self) -> Pairs:
        """Return each hopper that takes another lot, with its number. Raises Refusal."""
        if self._planter is None:
            return self._kept
        found: dict[Place, str] = {}
        for line in self.lines:
            for place, lot in line.pairs(self._planter):
                if place in found:
                    raise Refusal(f"{WHAT}: {place.label} is given two lots; leave one of them.")
                found[place] = lot
        return tuple(found.items())

    def _add_and_go(self) -> None:
        self._add().rows.setFocus()

    def _add(self) -> HopperLine:
        line = HopperLine()
        line.lot.offer(self._offered)
        line.changed.connect(self._change)
        line.gone.connect(lambda: self._remove(line))
        self.lines.append(line)
        self._column.addWidget(line)
        return line

    def _remove(self, line: HopperLine) -> None:
        self._take_out(line)
        self._change()

    def _clear(self) -> None:
        for line in list(self.lines):
            self._take_out(line)
        self.sentence.hide()

    def _take_out(self, line: HopperLine) -> None:
        self.lines.remove(line)
        self._column.removeWidget(line)
        line.hide()
        line.deleteLater()

    def _change(self) -> None:
        try:
            self.pairs()
            says = ""
        except Refusal as refusal:
            says = str(refusal)
        self.sentence.setText(says)
        self.sentence.setVisible(bool(says))
        self.changed.emit()
