"""Entering spacings by keyboard: target and limits once, then one row of figures after another."""

from dataclasses import replace

from PySide6.QtWidgets import QComboBox, QVBoxLayout, QWidget

from changeover.desk.prove.spacing import SpacingTest, judge_test, read_figures
from changeover.proof.spacing_limits import PROVINCIAL, SpacingLimits
from changeover.proof.wording import percent
from changeover.quantities import MEASURES, Refusal, Units, read_quantity, show
from changeover.window.outlook import Outlook
from changeover.window.proof.bench_entry import read_share
from changeover.window.proof.draft import Draft
from changeover.window.proof.fields import FieldLine, ProofField
from changeover.window.words import button, label

HOW = "Type or paste the figures of one row, apart by blanks; Enter takes the row."
SORTS = ("spacings", "places on the tape")
UNITS = {Units.US: ("in", "ft", "cm", "mm"), Units.METRIC: ("cm", "mm", "m", "in")}


class SpacingEntry(QWidget):
    """The strips of fields, and what they say of the row that is being typed."""

    def __init__(self, draft: Draft[SpacingTest], outlook: Outlook) -> None:
        super().__init__()
        self._draft, self._outlook = draft, outlook
        self.target = ProofField("target spacing", 84)
        self.quality = ProofField("least quality of feed", 60, "none")
        self.multiples = ProofField("most multiples", 60, "none")
        self.misses = ProofField("most misses", 60, "none")
        self.precision = ProofField("most precision", 60, "none")
        self.row = ProofField("row", 44)
        self.figures = ProofField("figures of the row", 0, "6.4 6.7 13.1 …")
        self.sort, self.unit = QComboBox(), QComboBox()
        self.sort.addItems(SORTS)
        self.sort.setAccessibleName("What the figures are")
        self.unit.setAccessibleName("Unit of the figures")
        self.says = label(HOW, "soft", wrap=True)
        self.says.setMinimumHeight(30)
        named = (
            ("target", self.target),
            ("your limits: feed at least", self.quality),
            ("multiples", self.multiples),
            ("misses", self.misses),
            ("precision", self.precision),
        )
        self.conditions = FieldLine(named, self.start)
        self.conditions.line.addWidget(button("DB32/T 1023", "quiet", self.take_provincial))
        self.conditions.line.addStretch()
        self.strip = FieldLine((("row", self.row), ("", self.figures)), self.take)
        self.strip.line.insertWidget(2, self.sort)
        self.strip.line.insertWidget(3, self.unit)
        for field in self.conditions.fields:
            field.editingFinished.connect(self.take_conditions)
        self.figures.textEdited.connect(self._live)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        for widget in (self.conditions, self.strip, self.says):
            column.addWidget(widget)

    def show_test(self) -> None:
        """Show the draft's target and limits, and the units of the window."""
        test, units = self._draft.value, self._outlook.units
        limits = test.limits
        texts = (
            "" if test.target is None else show(test.target, "spacing", units),
            *(
                "" if one is None else f"{100 * one:g} %"
                for one in (
                    limits.quality_least,
                    limits.multiples_most,
                    limits.misses_most,
                    limits.precision_most,
                )
            ),
        )
        for field, text in zip(self.conditions.fields, texts, strict=True):
            if not field.hasFocus():
                field.setText(text)
        if self.unit.itemText(0) != UNITS[units][0]:
            self.unit.clear()
            self.unit.addItems(UNITS[units])

    def start(self) -> None:
        """Put the keyboard where the next row is typed."""
        rows = self._outlook.board.planter.row_numbers
        free = next((row for row in rows if row not in self._draft.value.rows), rows[0])
        self.row.setText(str(free))
        self.figures.clear()
        self.strip.start(1)

    def take(self) -> None:
        """Take the typed row over and go on to the next; say what is wrong with it."""
        try:
            test = self._typed()
            said = _says(test, int(self.row.text()))
        except Refusal as refusal:
            self._say(str(refusal), wrong=True)
            return
        if self._draft.push(test):
            self.start()
            self._say(said)

    def take_conditions(self) -> None:
        """Take target and limits over when they were changed."""
        if not any(field.isModified() for field in self.conditions.fields):
            return
        try:
            test = self._with_conditions()
        except Refusal as refusal:
            self._say(str(refusal), wrong=True)
            return
        for field in self.conditions.fields:
            field.setModified(False)
        if test != self._draft.value:
            self._draft.push(test)

    def take_provincial(self) -> None:
        """Take the limits of the one provincial standard over."""
        self._draft.push(replace(self._draft.value, limits=PROVINCIAL))

    def _typed(self) -> SpacingTest:
        text, rows = self.row.text().strip(), self._outlook.board.planter.row_numbers
        if not text.isdecimal() or int(text) not in rows:
            raise Refusal(f"“{text}” is no row of this planter; enter 1 to {rows[-1]}.")
        found = read_figures(
            self.figures.text(),
            self.unit.currentText(),
            positions=self.sort.currentIndex() == 1,
            row=int(text),
        )
        return self._draft.value.with_row(int(text), found)

    def _live(self) -> None:
        try:
            self._say(_says(self._typed(), int(self.row.text())))
        except Refusal:
            self._say(HOW)

    def _with_conditions(self) -> SpacingTest:
        test, units = self._draft.value, self._outlook.units
        text = self.target.text().strip()
        kept = test.target is not None and text == show(test.target, "spacing", units)
        target = read_quantity(text, "spacing", units, "Target spacing") if text else None
        if target is not None and not 0 < target.to("in").magnitude <= 1000:
            unit = MEASURES["spacing"].unit(units)
            raise Refusal(f"A target spacing of {text} is not possible; enter it in {unit}.")
        fields = (self.quality, self.multiples, self.misses, self.precision)
        names = ("Quality of feed", "Multiples", "Misses", "Precision")
        feed, many, gaps, spread = (
            read_share(f.text(), name) for f, name in zip(fields, names, strict=True)
        )
        entered = SpacingLimits(feed, many, gaps, spread)
        same = replace(test.limits, source=entered.source) == entered
        limits = test.limits if same else entered
        return replace(test, target=test.target if kept else target, limits=limits)

    def _say(self, words: str, *, wrong: bool = False) -> None:
        self.says.setProperty("look", "work-text" if wrong else "soft")
        self.says.style().polish(self.says)
        self.says.setText(words)


def _says(test: SpacingTest, row: int) -> str:
    judged = judge_test(test)
    one = judged.rows[row].by_spacings
    return (
        f"Row {row}: {one.of} spacings, {percent(one.quality_of_feed)} single, "
        f"{percent(one.multiples)} multiples, {percent(one.misses)} misses; "
        f"{judged.verdicts[row].standing}."
    )
