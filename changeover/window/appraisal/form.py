"""Beside the rows of an appraisal: day, inspection, prices, the dealer's values and note."""

import re
from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QFormLayout, QLineEdit, QPlainTextEdit, QWidget
from typing_extensions import override

from changeover.desk.appraise import KeptAppraisal, PriceBook
from changeover.desk.inspect_wear import Inspection
from changeover.proof.money import money
from changeover.quantities import Refusal
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.day_field import DayField
from changeover.window.wear.words import day_words
from changeover.window.words import label

LATEST = "the latest by then"
AMOUNT = re.compile(r"(?:[0-9]{1,12}|[0-9]{1,3}(?:,[0-9]{3})+)(?:\.[0-9]{1,2})?")


class NoteField(QPlainTextEdit):
    """A few lines of text; ``left`` follows when the keyboard leaves it."""

    left = Signal()

    @override
    def focusOutEvent(self, event: object) -> None:
        super().focusOutEvent(event)  # type: ignore[arg-type]
        self.left.emit()


class AppraisalForm(QWidget):
    """Edits what a dealer types; ``edited`` carries the appraisal as it is wanted."""

    edited = Signal(object)
    refused = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self._kept: KeptAppraisal | None = None
        self.day = DayField("Day of the appraisal")
        self.inspection: ChoiceBox[int | None] = ChoiceBox("Inspection")
        self.prices: ChoiceBox[str] = ChoiceBox("Price list")
        self.currency, self.as_found, self.reconditioned = (QLineEdit() for _ in range(3))
        self.note = NoteField()
        self.note.setMaximumHeight(64)
        self.note.setTabChangesFocus(True)
        self.fields = {
            "Day": self.day,
            "Inspection": self.inspection,
            "Price list": self.prices,
            "Currency": self.currency,
            "As found": self.as_found,
            "Reconditioned": self.reconditioned,
            "Note": self.note,
        }
        form = QFormLayout(self)
        form.setContentsMargins(0, 0, 0, 0)
        form.setVerticalSpacing(6)
        for name, field in self.fields.items():
            form.addRow(label(name, "soft"), field)
            field.setAccessibleName(name)
        self.as_found.setPlaceholderText("your value, such as 41000")
        self.reconditioned.setPlaceholderText("your value when mended")
        for line in (self.day.line, self.currency, self.as_found, self.reconditioned):
            line.editingFinished.connect(self.push)
        self.note.left.connect(self.push)
        for box in (self.inspection, self.prices):
            box.currentIndexChanged.connect(lambda _n: self.push())

    def show_kept(
        self,
        kept: KeptAppraisal,
        inspections: Sequence[Inspection],
        books: Sequence[PriceBook],
    ) -> None:
        """Fill the fields from an appraisal."""
        self._kept = kept
        self.day.show_day(kept.on)
        past = [(day_words(one), one.number) for one in inspections]
        names = [(one.name, one.name) for one in books]
        with QSignalBlocker(self.inspection), QSignalBlocker(self.prices):
            self.inspection.offer([(LATEST, None), *past])
            self.inspection.setCurrentIndex(_place(self.inspection.values, kept.inspection))
            self.prices.offer([("none chosen", ""), *names])
            self.prices.setCurrentIndex(_place(self.prices.values, kept.prices))
        self.currency.setText(kept.currency)
        self.as_found.setText(_typed(kept.as_found))
        self.reconditioned.setText(_typed(kept.reconditioned))
        if self.note.toPlainText() != kept.note:
            self.note.setPlainText(kept.note)

    def push(self) -> None:
        """Tell what is wanted when it differs from what is kept, or why it cannot be."""
        if self._kept is None:
            return
        try:
            wanted = self.typed(self._kept)
        except Refusal as refusal:
            self.refused.emit(str(refusal))
            return
        if wanted != self._kept:
            self.edited.emit(wanted)

    def typed(self, kept: KeptAppraisal) -> KeptAppraisal:
        """Return the appraisal as typed. Raises Refusal."""
        day = self.day.day()
        if day is None:
            raise Refusal("The day of the appraisal is missing; enter it.")
        return replace(
            kept,
            on=day,
            inspection=self.inspection.chosen,
            prices=self.prices.chosen or "",
            currency=self.currency.text().strip().upper(),
            as_found=_amount(self.as_found, "As found", kept.as_found),
            reconditioned=_amount(self.reconditioned, "Reconditioned", kept.reconditioned),
            note=self.note.toPlainText().strip(),
        )


def _place(values: Sequence[object], wanted: object) -> int:
    return list(values).index(wanted) if wanted in values else 0


def _typed(amount: Decimal | None) -> str:
    return "" if amount is None else money(amount)


def _amount(field: QLineEdit, what: str, before: Decimal | None) -> Decimal | None:
    """Return the amount in a field; one that was not touched keeps its digits. Raises Refusal."""
    text = field.text().strip()
    if text == _typed(before):
        return before
    if not text:
        return None
    plain = "".join(text.split())
    if AMOUNT.fullmatch(plain) is None:
        raise Refusal(f"{what}: “{text[:30]}” is not an amount; write it like 41000 or 41000.50.")
    return Decimal(plain.replace(",", ""))
