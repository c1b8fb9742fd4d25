"""The form of a value from the machine's own manual, which wins over all other grounds."""

from PySide6.QtWidgets import QLineEdit, QWidget

from changeover.desk.edits import PutManual
from changeover.desk.look_up import Known
from changeover.planter.entry import options_of, read_value, show_value
from changeover.planter.parts import Part
from changeover.planter.places import Place
from changeover.planter.settings import Kind, Setting
from changeover.planter.setup import Value, cells_of
from changeover.quantities import Refusal, is_quantity, read_quantity, show
from changeover.seed.manual import WITHOUT_DISC, ManualValue
from changeover.window.door import Door
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.form_dialog import FormDialog
from changeover.window.outlook import Outlook
from changeover.window.seed.lot_words import crop_name
from changeover.window.words import button, label

HOLDS = "It holds for this crop, and wins over records, print and common practice."


class ManualForm(FormDialog):
    """Enters, changes or removes the manual's value of one setting for one crop."""

    wanted = "Enter the value as your manual prints it, and where it stands there."

    def __init__(
        self,
        setting: Setting,
        crop: str,
        disc: str | None,
        known: Known,
        door: Door,
        outlook: Outlook,
        parent: QWidget,
    ) -> None:
        super().__init__(f"{setting.name} for {crop_name(crop)}, from your manual", door, parent)
        self._setting, self._crop, self._known, self._units = setting, crop, known, outlook.units
        planter = known.planter
        self.place: Place = cells_of(planter, setting)[0].place
        self.typed = QLineEdit()
        self.typed.setAccessibleName(setting.name)
        self.choice = ChoiceBox(setting.name, [("choose", ""), *((o, o) for o in self._options())])
        self.holds_for: ChoiceBox[str | None] = ChoiceBox(
            "Planter", [(f"{planter.name} only", planter.name), ("every planter", None)]
        )
        discs: list[tuple[str, str | None]] = [("any disc", None)]
        if disc is not None and setting.key not in WITHOUT_DISC:
            discs.insert(0, (f"disc {disc} only", disc))
        self.disc = ChoiceBox("Disc", discs)
        self.note, self.remove = QLineEdit(), button("Remove it", clicked=self.take_away)
        self._lay_out()
        self._show_stored()
        self._listen()

    @property
    def stored(self) -> ManualValue | None:
        """The value that the store has for the same crop, setting, planter and disc."""
        key = (self._crop, self._setting.key, self.holds_for.chosen, self.disc.chosen)
        return next((v for v in self._known.manual if _key(v) == key), None)

    def edit(self) -> PutManual:
        value = ManualValue(
            self._crop,
            self._setting.key,
            self._value(),
            self.note.text().strip(),
            planter=self.holds_for.chosen,
            part=self.disc.chosen,
        )
        return PutManual(value, before=self.stored)

    def take_away(self) -> None:
        """Remove the stored value."""
        stored = self.stored
        if stored is not None and self._door.push(PutManual(None, before=stored)):
            self.reject()

    def _options(self) -> tuple[str, ...]:
        setting = self._setting
        if setting.kind is Kind.PART:
            return tuple(part.code for part in self._known.parts if _suits(part, setting))
        return options_of(setting, self._known.planter, self.place)

    def _value(self) -> Value:
        setting, planter = self._setting, self._known.planter
        text = (self.choice.chosen if self._options() else self.typed.text().strip()) or ""
        if not text:
            raise Refusal(f"{setting.name}: enter what your manual says.")
        if setting.key == "depth" and text[0] not in "nN#":
            depth = read_quantity(text, "depth", self._units, setting.name)
            planter.depth.notch(depth, self.place.row or 1, self._units)
            return depth
        value = read_value(setting, planter, self.place, text, self._units)
        if value is None:
            raise Refusal(f"{setting.name}: enter what your manual says.")
        return value

    def _show_stored(self) -> None:
        stored = self.stored
        self.remove.setVisible(stored is not None)
        if stored is not None:
            text = self._text(stored.value)
            self.choice.choose(text)
            self.typed.setText(text)
            self.note.setText(stored.note)
        self.check()

    def _text(self, value: Value) -> str:
        if self._setting.key == "depth":
            return show(value, "depth", self._units) if is_quantity(value) else f"n{value}"
        planter = self._known.planter
        return show_value(self._setting, planter, self.place, value, self._units, sign=True)

    def _listen(self) -> None:
        for line in (self.typed, self.note):
            line.textChanged.connect(self.check)
        self.choice.currentIndexChanged.connect(self.check)
        for box in (self.holds_for, self.disc):
            box.currentIndexChanged.connect(self._show_stored)

    def _lay_out(self) -> None:
        chosen = bool(self._options())
        depth = "a depth such as 1.75 in, or a notch such as n5"
        self.typed.setPlaceholderText(depth if self._setting.key == "depth" else "as printed there")
        self.note.setPlaceholderText("where it stands, such as the page")
        self.form.addRow(self._setting.name, self.choice if chosen else self.typed)
        self.form.addRow("Holds for", self.holds_for)
        self.form.addRow("With", self.disc)
        self.form.setRowVisible(self.disc, len(self.disc.values) > 1)
        self.form.addRow("Where", self.note)
        self.form.addRow("", label(HOLDS, "soft", wrap=True))
        self.form.addRow("", self.remove)


def _key(value: ManualValue) -> tuple[str, str, str | None, str | None]:
    return value.crop, value.setting, value.planter, value.part


def _suits(part: Part, setting: Setting) -> bool:
    return part.sort == setting.part_sort
