"""Line edits that give back the very quantity they were filled with, until somebody types."""

from PySide6.QtWidgets import QLineEdit

from changeover.quantities import Quantity, Units, read_quantity, show


class KeptFields:
    """Fills fields with quantities and reads them; an untouched one loses nothing to rounding."""

    def __init__(self, units: Units) -> None:
        self._units = units
        self._filled: dict[QLineEdit, tuple[str, Quantity]] = {}

    def fill(self, field: QLineEdit, quantity: Quantity | None, measure: str) -> None:
        """Show a quantity in a field, or nothing."""
        text = show(quantity, measure, self._units) if quantity is not None else ""
        field.setText(text)
        if quantity is not None:
            self._filled[field] = (text, quantity)

    def read(self, field: QLineEdit, measure: str, what: str) -> Quantity:
        """Return the quantity in a field. Raises Refusal when there is none."""
        text, quantity = self._filled.get(field, ("", None))
        if quantity is not None and field.text() == text:
            return quantity
        return read_quantity(field.text(), measure, self._units, what)

    def read_if_any(self, field: QLineEdit, measure: str, what: str) -> Quantity | None:
        """Return the quantity in a field, None when it is empty. Raises Refusal."""
        return self.read(field, measure, what) if field.text().strip() else None
