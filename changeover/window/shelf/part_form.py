"""The form of one kind of part: code, sort, crops it suits, and a disc's cells and holes."""

from collections.abc import Iterable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QLineEdit, QListWidget, QListWidgetItem, QWidget

from changeover.desk.edits import PutPart
from changeover.desk.tables import crops
from changeover.planter.parts import Part
from changeover.quantities import Quantity, Refusal
from changeover.window.door import Door
from changeover.window.entry.form_dialog import FormDialog
from changeover.window.entry.kept_fields import KeptFields
from changeover.window.outlook import Outlook

COMMON_SORTS = ("disc", "brush", "singulator", "seal", "wiper", "closing wheel", "seed tube")


class PartForm(FormDialog):
    """Adds a kind of part, or changes one."""

    wanted = "Code and name are needed; a disc needs its cells too."

    def __init__(
        self, part: Part | None, sorts: Iterable[str], door: Door, outlook: Outlook, parent: QWidget
    ) -> None:
        super().__init__("A kind of part" if part is None else f"Part {part.code}", door, parent)
        self._before, self._kept = part, KeptFields(outlook.units)
        self.code, self.name, self.note = QLineEdit(), QLineEdit(), QLineEdit()
        self.sort, self.suits = QComboBox(), QListWidget()
        self.cells, self.hole, self.circle = QLineEdit(), QLineEdit(), QLineEdit()
        self.low, self.high = QLineEdit(), QLineEdit()
        self.sort.setEditable(True)
        self.sort.addItems(sorted({*COMMON_SORTS, *sorts}))
        self._list_crops()
        self._lay_out()
        self._fill(part)
        for field in (
            self.code,
            self.name,
            self.cells,
            self.hole,
            self.circle,
            self.low,
            self.high,
        ):
            field.textChanged.connect(self.check)
        self.sort.currentTextChanged.connect(self._follow_sort)
        self._follow_sort(self.sort.currentText())

    def edit(self) -> PutPart:
        return PutPart(self.part(), before=self._before)

    def part(self) -> Part:
        """Return the part as described. Raises Refusal."""
        disc = self.sort.currentText().strip() == "disc"
        if not self.sort.currentText().strip():
            raise Refusal("Choose or type the sort of part, such as disc.")
        return Part(
            code=self.code.text().strip(),
            name=self.name.text().strip(),
            sort=self.sort.currentText().strip(),
            suits=frozenset(item.data(Qt.ItemDataRole.UserRole) for item in self._ticked()),
            cells=self._whole(self.cells) if disc else None,
            hole=self._kept.read_if_any(self.hole, "seed_size", "Hole") if disc else None,
            cell_circle=self._kept.read_if_any(self.circle, "diameter", "Circle") if disc else None,
            seed_from=self._kept.read_if_any(self.low, "seed_size", "Seed from") if disc else None,
            seed_to=self._kept.read_if_any(self.high, "seed_size", "Seed to") if disc else None,
            note=self.note.text().strip(),
        )

    def _fill(self, part: Part | None) -> None:
        if part is None:
            self.check()
            return
        self.code.setText(part.code)
        self.name.setText(part.name)
        self.sort.setCurrentText(part.sort)
        self.note.setText(part.note)
        self.cells.setText(str(part.cells or ""))
        sizes: tuple[tuple[QLineEdit, Quantity | None, str], ...] = (
            (self.hole, part.hole, "seed_size"),
            (self.circle, part.cell_circle, "diameter"),
            (self.low, part.seed_from, "seed_size"),
            (self.high, part.seed_to, "seed_size"),
        )
        for field, size, measure in sizes:
            self._kept.fill(field, size, measure)
        for row in range(self.suits.count()):
            item = self.suits.item(row)
            held = item.data(Qt.ItemDataRole.UserRole) in part.suits
            item.setCheckState(Qt.CheckState.Checked if held else Qt.CheckState.Unchecked)

    def _list_crops(self) -> None:
        self.suits.setMinimumHeight(106)
        self.suits.setMaximumHeight(132)
        names = {key: crop.name for key, crop in crops().items()}
        others = set(self._before.suits if self._before else ()) - set(names)
        names |= {key: key.replace("_", " ").capitalize() for key in sorted(others)}
        for key, name in names.items():
            item = QListWidgetItem(name)
            item.setData(Qt.ItemDataRole.UserRole, key)
            item.setCheckState(Qt.CheckState.Unchecked)
            self.suits.addItem(item)

    def _ticked(self) -> Iterable[QListWidgetItem]:
        items = (self.suits.item(row) for row in range(self.suits.count()))
        return [item for item in items if item.checkState() is Qt.CheckState.Checked]

    def _follow_sort(self, sort: str) -> None:
        for field in (self.cells, self.hole, self.circle, self.low, self.high):
            self.form.setRowVisible(field, sort.strip() == "disc")
        self.check()

    def _whole(self, field: QLineEdit) -> int | None:
        text = field.text().strip()
        if text and not text.isdigit():
            raise Refusal(f"Cells: “{text}” is not a whole number; write it like 30.")
        return int(text) if text else None

    def _lay_out(self) -> None:
        lines: tuple[tuple[str, QWidget, str], ...] = (
            ("Code", self.code, "the mark stamped on it, or your own"),
            ("Name", self.name, "what people call it"),
            ("Sort", self.sort, ""),
            ("Suits", self.suits, ""),
            ("Cells", self.cells, "how many cells the disc has"),
            ("Hole", self.hole, "diameter, such as 4.5 mm"),
            ("Circle of cells", self.circle, "diameter of the circle the cells stand on"),
            ("Seed from", self.low, "smallest mean diameter it is meant for"),
            ("Seed to", self.high, "largest mean diameter it is meant for"),
            ("Note", self.note, ""),
        )
        for words, widget, hint in lines:
            self.form.addRow(words, widget)
            if isinstance(widget, QLineEdit):
                widget.setPlaceholderText(hint)
        self.suits.setToolTip("Crops it is for; tick none when it is for any")
