"""A field for one quantity: read as it is typed, with the sentence of what is wrong below it."""

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from changeover.quantities import (
    MEASURES,
    Quantity,
    Refusal,
    Units,
    example,
    read_quantity,
    show,
    unit_sign,
)
from changeover.window.words import label


class QuantityField(QWidget):
    """One quantity of a measure; an empty field is None, unless the quantity is ``needed``.

    A figure without a unit is in the units that are shown. What a person typed stays as typed
    when other units are chosen: a bare figure then gets the unit it was meant in. A field filled
    by the program gives back the very quantity it was filled with. ``also`` may refuse more.
    """

    changed = Signal()

    def __init__(
        self,
        what: str,
        measure: str,
        units: Units,
        *,
        hint: str = "",
        needed: bool = False,
        also: Callable[[Quantity], None] | None = None,
    ) -> None:
        super().__init__()
        self.what, self._measure, self._units = what, measure, units
        self._needed, self._also = needed, also
        self._filled: tuple[str, Quantity] | None = None
        self.line, self.sentence = QLineEdit(), label(look="work-text", wrap=True)
        self.line.setPlaceholderText(hint)
        self.line.setAccessibleName(what)
        self.sentence.hide()
        self.setFocusProxy(self.line)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addWidget(self.line)
        column.addWidget(self.sentence)
        self.line.textChanged.connect(self._typed)

    @property
    def text(self) -> str:
        """What stands in the field."""
        return self.line.text().strip()

    def quantity(self) -> Quantity | None:
        """Return the quantity, None when the field is empty. Raises Refusal."""
        if self._filled is not None and self.line.text() == self._filled[0]:
            return self._filled[1]
        if not self.text:
            if self._needed:
                raise Refusal(f"{self.what} is missing; enter it, such as {self._example()}.")
            return None
        read = read_quantity(self.text, self._measure, self._units, self.what)
        if self._also is not None:
            self._also(read)
        return read

    def must(self) -> Quantity:
        """Return the quantity. Raises Refusal when there is none."""
        found = self.quantity()
        if found is None:
            raise Refusal(f"{self.what} is missing; enter it, such as {self._example()}.")
        return found

    def show_quantity(self, quantity: Quantity | None) -> None:
        """Fill the field with a quantity in the units shown, or empty it."""
        text = show(quantity, self._measure, self._units) if quantity is not None else ""
        self._filled = (text, quantity) if quantity is not None else None
        self.line.setText(text)
        self.check()

    def show_units(self, units: Units) -> None:
        """Take on other units; what was typed keeps its meaning."""
        if units is self._units:
            return
        filled, before, self._units = self._filled, self._units, units
        if filled is not None and self.line.text() == filled[0]:
            self.show_quantity(filled[1])
        elif self.text and _is_bare(self.text):
            sign = unit_sign(MEASURES[self._measure].unit(before))
            self.line.setText(f"{self.text} {sign}".rstrip())
        self.check()

    def check(self) -> bool:
        """Say below the field what is wrong with it; return whether nothing is."""
        try:
            self.quantity()
            says = ""
        except Refusal as refusal:
            says = str(refusal)
        self.say(says if self.text else "")
        return not says

    def say(self, sentence: str) -> None:
        """Show a sentence below the field, or none."""
        self.sentence.setText(sentence)
        self.sentence.setVisible(bool(sentence))

    def _typed(self) -> None:
        self.check()
        self.changed.emit()

    def _example(self) -> str:
        return example(self._measure, self._units)


def _is_bare(text: str) -> bool:
    """Say whether a text is a figure without a unit; signs such as ½ count as figures."""
    return not any(sign.isalpha() or sign in "%\"'°″′”’" for sign in text)
