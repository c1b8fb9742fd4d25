"""Each row's own depth line in the form of a planter: typed over, or taken back to the scale's."""

from dataclasses import dataclass

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from changeover.desk.changed import Changed
from changeover.planter.scales import DepthScale, step_text
from changeover.quantities import Q, Quantity, how_many, read_quantity, show
from changeover.window.door import Door, Edit
from changeover.window.entry.list_table import Column, ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.words import button, label

HINT = (
    "A row that plants as the scale says stands empty. What digs gave it is kept until you type "
    "over it; then it stands as entered by you, without an interval."
)


@dataclass(frozen=True)
class RowDepth:
    """One row on the planter's scale."""

    row: int
    scale: DepthScale


@dataclass(frozen=True)
class Typed:
    """What typing over a row did: no kind of data of the store changed."""

    inverse: DepthScale
    changed: frozenset[Changed] = frozenset()


class RowDepths(QWidget):
    """A table of rows with how much deeper each plants at notch 1, and its own step.

    ``scale`` is the scale as it stands; ``changed`` tells that a row was typed over.
    """

    changed = Signal()

    def __init__(self, outlook: Outlook) -> None:
        super().__init__()
        self._units, self._rows = outlook.units, 0
        self.scale = DepthScale(Q(0.5, "in"), Q(0.25, "in"), 13)
        self.door = Door(self._take, self)
        self.model: ListModel[RowDepth] = ListModel(self._columns(), self.door, outlook)
        self.view = ListView(self.model, "Depth by row")
        self.view.horizontalHeader().setStretchLastSection(True)
        self.view.setMinimumHeight(170)
        self.refused = label(look="work-text", wrap=True)
        self.door.refused.connect(self.refused.setText)
        self.back = button("As the scale says", clicked=self.take_back)
        foot, column = QHBoxLayout(), QVBoxLayout(self)
        foot.addWidget(self.refused, 1)
        foot.addWidget(self.back)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(label(HINT, "soft", wrap=True))
        column.addWidget(self.view, 1)
        column.addLayout(foot)

    def show_scale(self, scale: DepthScale, rows: int) -> None:
        """Show the rows of a planter on a scale; rows that it does not have are left out."""
        self.scale, self._rows = scale, rows
        self.model.show_rows([RowDepth(row, scale) for row in range(1, rows + 1)])

    def on_scale(self, first: Quantity, step: Quantity, count: int, rows: int) -> DepthScale:
        """Return another scale with the lines of the rows that are there. Raises Refusal."""
        new = DepthScale(first, step, count)
        for row in range(1, rows + 1):
            if row in self.scale.offsets:
                own = self.scale
                new = new.with_row(row, own.offsets[row], own.steps.get(row), own.digs.get(row))
        return new

    def take_back(self) -> None:
        """Take the chosen row back to the scale's own depths."""
        chosen = self.view.chosen
        if chosen is not None:
            self.door.push(self.scale.with_row(chosen + 1, None))

    def _take(self, scale: Edit) -> Typed:
        before = self.scale
        self.show_scale(scale, self._rows)  # type: ignore[arg-type]
        self.refused.setText("")
        self.changed.emit()
        return Typed(before)

    def _columns(self) -> tuple[Column[RowDepth], ...]:
        return (
            Column("Row", lambda one: str(one.row), number=True),
            Column("Deeper at notch 1", self._offset, self._with_offset, number=True),
            Column("A notch", self._step, self._with_step, number=True),
            Column("Plants", self._reach, number=True),
            Column("By", _whence),
        )

    def _offset(self, one: RowDepth) -> str:
        offset = one.scale.offsets.get(one.row)
        return "" if offset is None else step_text(offset, self._units)

    def _step(self, one: RowDepth) -> str:
        step = one.scale.steps.get(one.row)
        return "" if step is None else step_text(step, self._units)

    def _reach(self, one: RowDepth) -> str:
        ends = (one.scale.depth(notch, one.row) for notch in (1, one.scale.count))
        low, high = (show(depth, "depth", self._units) for depth in ends)
        return f"{low.partition(' ')[0]} to {high}"

    def _with_offset(self, one: RowDepth, text: str) -> DepthScale:
        step = self.scale.steps.get(one.row)
        offset = self._read(one.row, text)
        if offset is None and step is not None:
            offset = Q(0.0, step.units)
        return self.scale.with_row(one.row, offset, step)

    def _with_step(self, one: RowDepth, text: str) -> DepthScale:
        step = self._read(one.row, text)
        offset = self.scale.offsets.get(one.row)
        if offset is None and step is not None:
            offset = Q(0.0, step.units)
        return self.scale.with_row(one.row, offset, step)

    def _read(self, row: int, text: str) -> Quantity | None:
        if not text.strip():
            return None
        return read_quantity(text, "depth_step", self._units, f"Row {row}")


def _whence(one: RowDepth) -> str:
    if one.row not in one.scale.offsets:
        return ""
    dug = one.scale.digs.get(one.row)
    return "entered" if dug is None else how_many(dug.digs, "dig")
