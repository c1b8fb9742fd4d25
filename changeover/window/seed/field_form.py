"""The form of a field: name, area, soil texture and where it lies."""

from PySide6.QtWidgets import QLineEdit, QWidget

from changeover.desk.edits import PutField
from changeover.seed.fields import Field, Texture
from changeover.window.door import Door
from changeover.window.entry.choice_box import ChoiceBox
from changeover.window.entry.form_dialog import FormDialog
from changeover.window.entry.quantity_field import QuantityField
from changeover.window.outlook import Outlook


class FieldForm(FormDialog):
    """Adds a field, or changes one."""

    wanted = "Name and area are needed; the rest can wait."

    def __init__(self, field: Field | None, door: Door, outlook: Outlook, parent: QWidget) -> None:
        super().__init__("A new field" if field is None else f"Field {field.name}", door, parent)
        self._before = field
        self.name, self.where = QLineEdit(), QLineEdit()
        self.area = QuantityField("Area", "area", outlook.units, needed=True, hint="such as 80 ac")
        length = outlook.units
        self.altitude = QuantityField("Altitude", "row_length", length, hint="above the sea")
        self.run = QuantityField("Length of a run", "row_length", length, hint="from end to end")
        self.texture = ChoiceBox("Soil texture", [(one.value, one) for one in Texture])
        self.where.setPlaceholderText("how to find it")
        self.form.addRow("Name", self.name)
        self.form.addRow("Area", self.area)
        self.form.addRow("Soil texture", self.texture)
        self.form.addRow("Altitude", self.altitude)
        self.form.addRow("Length of a run", self.run)
        self.form.addRow("Where", self.where)
        self._fill(field)
        self.name.textChanged.connect(self.check)
        for one in (self.area, self.altitude, self.run):
            one.changed.connect(self.check)
        self.check()

    def edit(self) -> PutField:
        return PutField(self.field(), before=self._before)

    def field(self) -> Field:
        """Return the field as described. Raises Refusal."""
        return Field(
            name=self.name.text().strip(),
            area=self.area.must(),
            texture=self.texture.chosen or Texture.LOAM,
            where=self.where.text().strip(),
            altitude=self.altitude.quantity(),
            run_length=self.run.quantity(),
        )

    def _fill(self, field: Field | None) -> None:
        self.texture.choose(field.texture if field is not None else Texture.LOAM)
        if field is not None:
            self.name.setText(field.name)
            self.area.show_quantity(field.area)
            self.where.setText(field.where)
            self.altitude.show_quantity(field.altitude)
            self.run.show_quantity(field.run_length)
