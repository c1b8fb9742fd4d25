"""The form of a setting of one's own: name, kind, scope, unit, choices or sort of part."""

import re

from PySide6.QtWidgets import QComboBox, QFormLayout, QLineEdit, QWidget

from changeover.planter.places import Scope
from changeover.planter.settings import Kind, Setting, WorkPlace
from changeover.quantities import MEASURES, unit_sign
from changeover.window.outlook import Outlook

KINDS = {
    Kind.INDEX: "position, counted from 1",
    Kind.CHOICE: "choice",
    Kind.QUANTITY: "figure with a unit",
    Kind.COUNT: "whole number",
    Kind.PART: "part",
}


class OwnSettingForm(QWidget):
    """Describes one setting; only the lines that its kind needs can be filled in.

    A combo box gives back the plain text of an enumeration, hence ``Kind(...)`` and the like.
    """

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self.name, self.hint = QLineEdit(), QLineEdit()
        self.kind, self.scope, self.place = QComboBox(), QComboBox(), QComboBox()
        self.measure, self.options, self.part = QComboBox(), QLineEdit(), QLineEdit()
        self.options.setPlaceholderText("such as 1, 2, 3, 4, 5")
        self.part.setPlaceholderText("such as closing wheel")
        for kind, words in KINDS.items():
            self.kind.addItem(words, kind)
        for scope in Scope:
            self.scope.addItem(scope.value, scope)
        for place in WorkPlace:
            self.place.addItem(place.value, place)
        for measure, shown in MEASURES.items():
            sign = unit_sign(shown.unit(outlook.units))
            self.measure.addItem(f"{measure.replace('_', ' ')}  {sign}".rstrip(), measure)
        self._lay_out()
        self.kind.currentIndexChanged.connect(self._follow_kind)
        self._follow_kind()

    def show_setting(self, setting: Setting | None) -> None:
        """Fill the form with a setting, or empty it."""
        self.name.setText(setting.name if setting else "")
        self.hint.setText(setting.hint if setting else "")
        self.options.setText(", ".join(setting.options) if setting else "")
        self.part.setText((setting.part_sort or "") if setting else "")
        if setting is not None:
            _choose(self.kind, setting.kind)
            _choose(self.scope, setting.scope)
            _choose(self.place, setting.work_place)
            _choose(self.measure, setting.measure)

    def setting(self, taken: frozenset[str], key: str = "") -> Setting:
        """Return the setting that the form describes, under a key not yet taken.

        Raises Refusal when something is missing.
        """
        kind = Kind(self.kind.currentData())
        options = tuple(text.strip() for text in self.options.text().split(",") if text.strip())
        return Setting(
            key or new_key(self.name.text(), taken),
            self.name.text().strip(),
            kind,
            Scope(self.scope.currentData()),
            WorkPlace(self.place.currentData()),
            measure=self.measure.currentData() if kind is Kind.QUANTITY else None,
            options=options if kind in (Kind.INDEX, Kind.CHOICE) else (),
            part_sort=self.part.text().strip() or None if kind is Kind.PART else None,
            hint=self.hint.text().strip(),
            own=True,
        )

    def _follow_kind(self) -> None:
        kind = Kind(self.kind.currentData())
        self.options.setEnabled(kind in (Kind.INDEX, Kind.CHOICE))
        self.measure.setEnabled(kind is Kind.QUANTITY)
        self.part.setEnabled(kind is Kind.PART)

    def _lay_out(self) -> None:
        form = QFormLayout(self)
        form.setContentsMargins(0, 4, 0, 4)
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        lines = (
            ("Name", self.name), ("Kind", self.kind), ("Belongs to", self.scope),
            ("Worked on at", self.place), ("Choices", self.options), ("Unit", self.measure),
            ("Sort of part", self.part), ("Note below it", self.hint),
        )  # fmt: skip
        for words, widget in lines:
            form.addRow(words, widget)


def new_key(name: str, taken: frozenset[str]) -> str:
    """Return a key for a new setting, made of its name and told apart by a number."""
    stem = "own_" + (re.sub(r"[^a-z0-9]+", "_", name.casefold()).strip("_") or "setting")
    number = 1
    key = stem
    while key in taken:
        number += 1
        key = f"{stem}_{number}"
    return key


def _choose(box: QComboBox, data: object) -> None:
    for number in range(box.count()):
        if box.itemData(number) == data:
            box.setCurrentIndex(number)
            return
