"""Beside the vacuum plot: one panel for each fan, the fans beside each other, and the fan laws."""

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QFormLayout, QVBoxLayout, QWidget

from changeover.desk.gauge import FanJudged, Gauges
from changeover.planter.groups import Group
from changeover.proof.fan import FansCompared, Manifold, speed_factor
from changeover.proof.wording import percent
from changeover.quantities import Quantity, Refusal, Units, show
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.quantity_field import QuantityField
from changeover.window.words import label, rule


class FanPanel(QWidget):
    """One fan: its set value, the row it feeds, and how its rows hold."""

    changed = Signal()

    def __init__(self, group: Group, units: Units) -> None:
        super().__init__()
        self.group = group
        self.set_value = QuantityField(f"{group.name}, set value", "pressure", units)
        self.near: ChoiceBox[int] = ChoiceBox(
            f"{group.name} feeds row", [(f"row {row}", row) for row in group.rows]
        )
        self.verdict, self.says = label(look="strong", wrap=True), label(wrap=True)
        form = QFormLayout(self)
        form.setContentsMargins(0, 0, 0, 0)
        form.setVerticalSpacing(6)
        form.addRow(label(group.name, "title"))
        form.addRow("Set value", self.set_value)
        form.addRow("Feeds at", self.near)
        form.addRow(self.verdict)
        form.addRow(self.says)
        self.set_value.changed.connect(self.changed)
        self.near.currentIndexChanged.connect(lambda _n: self.changed.emit())

    def show_gauges(self, gauges: Gauges, units: Units, *, editable: bool) -> None:
        """Fill the fields from readings."""
        with QSignalBlocker(self):
            self.set_value.show_units(units)
            self.set_value.show_quantity(gauges.set_values.get(self.group.name))
            self.near.choose(gauges.near.get(self.group.name))
        self.set_value.setEnabled(editable)
        self.near.setEnabled(editable)

    def wanted(self) -> Quantity | None:
        """Return the set value; None while it is missing or cannot be read."""
        try:
            return self.set_value.quantity()
        except Refusal:
            return None

    def show_judged(self, found: FanJudged, units: Units) -> None:
        """Show the verdict, or what is missing for one."""
        if found.whole is None:
            self.verdict.setText("")
            self.says.setText(found.says)
            return
        holds = all(branch.far_ok for branch in found.branches)
        marks = "✓ the far row holds" if holds else "! the far row lacks vacuum"
        self.verdict.setText(marks)
        lines = [_branch_words(branch, units) for branch in found.branches]
        advice = dict.fromkeys(one.text for branch in found.branches for one in branch.advice)
        self.says.setText("\n".join([*lines, *advice]))


def _branch_words(branch: Manifold, units: Units) -> str:
    far = branch.rows[-1]
    way = "falls" if branch.loss >= 0 else "rises"
    held = f"{show(far.vacuum, 'pressure', units)}, {percent(far.share, 0)} of set"
    return f"Row {far.row}: {held}; {way} {percent(abs(branch.loss), 0)} from the fan on."


def fans_words(pairs: Sequence[FansCompared], found: Sequence[FanJudged], units: Units) -> str:
    """Say how the fans compare by the mean of their rows."""
    means = {one.fan: one.whole.mean for one in found if one.whole is not None}
    lines = [f"{fan}: mean {show(mean, 'pressure', units)}" for fan, mean in means.items()]
    for one in pairs:
        word = "alike" if one.alike else "not alike: see what differs in drive, intake or hoses"
        lines.append(f"{one.first} and {one.second} differ by {percent(one.difference)}: {word}.")
    return "\n".join(lines)


class FanLaws(QWidget):
    """How much faster a fan must turn for another vacuum: √(wanted / now)."""

    def __init__(self, units: Units) -> None:
        super().__init__()
        self.now = QuantityField("Vacuum now", "pressure", units)
        self.wanted = QuantityField("Vacuum wanted", "pressure", units)
        self.speed = QuantityField("Fan speed now", "disc_speed", units, hint="if known")
        self.says = label(wrap=True)
        form = QFormLayout(self)
        form.setContentsMargins(0, 0, 0, 0)
        form.setVerticalSpacing(6)
        form.addRow(label("Another vacuum?", "title"))
        for words, field in (("Now", self.now), ("Wanted", self.wanted), ("Speed", self.speed)):
            form.addRow(words, field)
            field.changed.connect(self.reckon)
        form.addRow(self.says)

    def show_units(self, units: Units) -> None:
        for field in (self.now, self.wanted, self.speed):
            field.show_units(units)

    def reckon(self) -> None:
        """Say the factor on the fan's speed, and the speed where the present one is entered."""
        try:
            now, wanted = self.now.quantity(), self.wanted.quantity()
            if now is None or wanted is None:
                self.says.setText("")
                return
            factor = speed_factor(now, wanted)
            speed = self.speed.quantity()
        except Refusal as refusal:
            self.says.setText(str(refusal))
            return
        turns = "" if speed is None else f": {float(speed.to('rpm').magnitude) * factor:.0f} rpm"
        self.says.setText(
            f"Fan speed × {factor:.3f}{turns}. Vacuum goes with the square of the speed (fan laws);"
            " stay below the fan's limit in your manual."
        )


class VacuumPanels(QWidget):
    """All panels, one below the other."""

    changed = Signal()

    def __init__(self, units: Units) -> None:
        super().__init__()
        self.setObjectName("side")
        self.fans: tuple[FanPanel, ...] = ()
        self.beside, self.laws = label(wrap=True), FanLaws(units)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(16, 14, 14, 14)
        self._column.setSpacing(10)
        self._column.addWidget(rule())
        self._column.addWidget(self.beside)
        self._column.addWidget(rule())
        self._column.addWidget(self.laws)
        self._column.addStretch()

    def show_fans(self, groups: Sequence[Group], units: Units) -> None:
        """Make a panel for each fan; those that are there already stay."""
        self.laws.show_units(units)
        if [one.group for one in self.fans] == list(groups):
            return
        for old in self.fans:
            self._column.removeWidget(old)
            old.hide()
            old.deleteLater()
        self.fans = tuple(FanPanel(group, units) for group in groups)
        for place, made in enumerate(self.fans):
            self._column.insertWidget(place, made)
            made.changed.connect(self.changed)
