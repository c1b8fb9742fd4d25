"""The minutes of each kind of work as a list: typed over in place, or back to the standard."""

from PySide6.QtWidgets import QDialog, QHBoxLayout, QVBoxLayout, QWidget

from changeover.desk import minutes as desk
from changeover.desk.changed import Changed
from changeover.desk.minutes import KindOfWork
from changeover.window.attempts import attempt
from changeover.window.door import Door
from changeover.window.entry.list_table import Column, ListModel, ListView
from changeover.window.outlook import Outlook
from changeover.window.page import Read
from changeover.window.words import button, label

HINT = (
    "Type over the minutes that your people take: once for the whole task, and for each row, "
    "tank or fan. Worklist, timetable and season reckon with yours from then on."
)


def minutes_columns() -> tuple[Column[KindOfWork], ...]:
    """Return the columns: the minutes in force, the standard beside them, and the source."""
    return (
        Column("Kind of work", lambda kind: kind.title),
        Column("Once", lambda kind: desk.minutes_text(kind.fixed), edit=desk.set_fixed),
        Column("Each", lambda kind: desk.minutes_text(kind.each), edit=desk.set_each),
        Column("Standard", lambda kind: kind.standard_text),
        Column("Source", lambda kind: kind.source, wide=True),
    )


class MinutesDialog(QDialog):
    """Lists the minutes; each change goes through the door and can be undone."""

    def __init__(self, read: Read, door: Door, outlook: Outlook, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle("Minutes")
        self._read, self._door = read, door
        self.model: ListModel[KindOfWork] = ListModel(minutes_columns(), door, outlook)
        self.view = ListView(self.model, "Minutes of each kind of work")
        self.refusal = label(look="work-text", wrap=True)
        ends, whole = QHBoxLayout(), QVBoxLayout(self)
        ends.addWidget(button("Back to the standard", clicked=self.back_to_standard))
        ends.addWidget(self.refusal, 1)
        ends.addWidget(button("Close", "main", self.accept))
        whole.setContentsMargins(20, 18, 20, 16)
        whole.setSpacing(10)
        whole.addWidget(label("Minutes", "title"))
        whole.addWidget(label(HINT, "soft", wrap=True))
        whole.addWidget(self.view, 1)
        whole.addLayout(ends)
        self.resize(880, 560)
        door.changed.connect(self._hear)
        door.refused.connect(self.refusal.setText)
        self._show()

    def back_to_standard(self) -> None:
        """Take one's own minutes of the chosen kind of work away."""
        row = self.view.chosen
        if row is None:
            self.refusal.setText("Choose a kind of work first.")
            return
        kind = self.model.rows[row]
        edit = attempt(self._door, lambda: desk.back_to_standard(kind))
        if edit is not None:
            self._door.push(edit)

    def _hear(self, changed: frozenset[Changed]) -> None:
        self.refusal.setText("")
        if Changed.TIMES in changed:
            self._show()

    def _show(self) -> None:
        self.model.show_rows(self._read(desk.kinds_of_work))
