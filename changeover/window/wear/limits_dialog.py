"""Limits of wear with their sources, and the user's own from the manual, which come first."""

from collections.abc import Sequence

from PySide6.QtWidgets import QComboBox, QDialog, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget
from typing_extensions import override

from changeover.desk.inspect_wear import WearView, parts_of
from changeover.desk.shop_edits import PutWearLimit
from changeover.proof.own_limits import OwnLimit
from changeover.proof.wear import WearLimit
from changeover.quantities import Units
from changeover.window.door import Door
from changeover.window.entry.form_dialog import FormDialog
from changeover.window.entry.kept_fields import KeptFields
from changeover.window.entry.list_table import Column, ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Read
from changeover.window.wear.words import bounds_words, source_words
from changeover.window.words import button, label

EXPLAINS = "Your manual's limits come before every other; a change counts for inspections shown."


class OwnLimitForm(FormDialog):
    """One limit of the user's own."""

    wanted = "Part, one limit at least, and where it stands in your manual are needed."

    def __init__(
        self, own: OwnLimit | None, parts: Sequence[str], units: Units, door: Door, parent: QWidget
    ) -> None:
        super().__init__("A limit from your manual", door, parent)
        self._before, self._kept = own, KeptFields(units)
        self.part, self.applies = QComboBox(), QLineEdit()
        self.low, self.high, self.new, self.note = (QLineEdit() for _ in range(4))
        self.part.setEditable(True)
        self.part.addItems(list(parts))
        lines = (
            ("Part", self.part, ""),
            ("Only for", self.applies, "a variant, such as 15 in new; empty for all"),
            ("Least", self.low, "below it, replace"),
            ("Most", self.high, "above it, replace"),
            ("When new", self.new, "if known, then the last quarter of the wear is to watch"),
            ("Where it stands", self.note, "such as page 40 of the manual"),
        )
        for words, field, hint in lines:
            self.form.addRow(words, field)
            field.setAccessibleName(words)
            if isinstance(field, QLineEdit):
                field.setPlaceholderText(hint)
                field.textChanged.connect(self.check)
        if own is not None:
            self._fill(own)
        self.part.currentTextChanged.connect(self.check)
        self.check()

    @override
    def edit(self) -> PutWearLimit:
        return PutWearLimit(self.limit(), before=self._before)

    def limit(self) -> OwnLimit:
        """Return the limit as typed. Raises Refusal."""
        low, high, new = (
            self._kept.read_if_any(field, "diameter", what)
            for field, what in ((self.low, "Least"), (self.high, "Most"), (self.new, "When new"))
        )
        part = self.part.currentText().strip().casefold()
        return OwnLimit(part, self.applies.text().strip(), low, high, new, self.note.text().strip())

    def _fill(self, own: OwnLimit) -> None:
        self.part.setCurrentText(own.part)
        self.applies.setText(own.applies)
        self.note.setText(own.note)
        pairs = ((self.low, own.low), (self.high, own.high), (self.new, own.new))
        for field, quantity in pairs:
            self._kept.fill(field, quantity, "diameter")


class WearLimitsDialog(QDialog):
    """The list of all limits; one's own can be added, changed and removed."""

    def __init__(self, read: Read, door: Door, outlook: Outlook, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle("Limits of wear")
        self._read, self._door, self._outlook = read, door, outlook
        self.model: ListModel[WearLimit] = ListModel(self._columns(), door, outlook)
        self.view = ListView(self.model, "Limits of wear")
        self._own: tuple[OwnLimit, ...] = ()
        ends, whole = QHBoxLayout(), QVBoxLayout(self)
        ends.addWidget(button("New limit…", "main", self.add))
        ends.addWidget(button("Change…", clicked=self.change))
        ends.addWidget(button("Remove", clicked=self.remove))
        ends.addStretch()
        ends.addWidget(button("Close", clicked=self.accept))
        whole.addWidget(label("Limits of wear", "title"))
        whole.addWidget(label(EXPLAINS, "soft", wrap=True))
        whole.addWidget(self.view, 1)
        whole.addLayout(ends)
        self.view.opened.connect(lambda _row: self.change())
        self.resize(980, 560)
        self.show_limits()

    def show_limits(self) -> None:
        """Read the limits again."""
        from changeover.desk.inspect_wear import wear_view

        found: WearView = self._read(wear_view, self._outlook.planter)
        self.model.show_rows(found.limits)
        self._own = found.own

    def add(self) -> OwnLimitForm:
        """Open the form of a new limit, for the part that is chosen."""
        row = self.view.chosen
        form = self._form(None)
        if row is not None:
            form.part.setCurrentText(self.model.rows[row].part)
        return form

    def change(self) -> OwnLimitForm | None:
        """Open the form of the chosen limit; a published one is the ground for one's own."""
        own = self.chosen_own()
        if own is None:
            return self.add() if self.view.chosen is not None else None
        return self._form(own)

    def remove(self) -> None:
        """Remove the chosen limit if it is one's own; published ones stay."""
        own = self.chosen_own()
        if own is None:
            self._door.refused.emit("Only a limit of your own can be removed; choose one.")
        elif self._door.push(PutWearLimit(None, before=own)):
            self.show_limits()

    def chosen_own(self) -> OwnLimit | None:
        """Return the chosen limit when it is the user's own."""
        row = self.view.chosen
        return self._own[row] if row is not None and row < len(self._own) else None

    def _form(self, own: OwnLimit | None) -> OwnLimitForm:
        parts = parts_of(self.model.rows)
        form = OwnLimitForm(own, parts, self._outlook.units, self._door, self)
        form.accepted.connect(self.show_limits)
        form.open()
        return form

    def _columns(self) -> tuple[Column[WearLimit], ...]:
        return (
            Column("Part", lambda one: one.name, wide=True),
            Column("Only for", lambda one: one.applies),
            Column("Limit", lambda one: bounds_words(one, self._outlook.units)),
            Column("Source", source_words, wide=True),
        )
