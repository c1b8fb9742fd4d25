"""What a person added to the work or split off, as a list, with the forms to add more."""

from PySide6.QtWidgets import QDialog, QHBoxLayout, QListWidget, QVBoxLayout, QWidget

from changeover.desk import own_work as desk
from changeover.desk.changed import Changed
from changeover.desk.plan_switch import WorkView, work_view
from changeover.window.door import Door
from changeover.window.outlook import Outlook
from changeover.window.page import Read
from changeover.window.words import button, label
from changeover.window.work.own_task_form import OwnTaskForm, SplitForm

HINT = (
    "Tasks of your own and splits stay with the switch when its work is planned again. Split a "
    "task to give somebody their own rows."
)


class OwnTaskList(QDialog):
    """Lists tasks of one's own and splits; each change goes through the door and can be undone."""

    def __init__(self, read: Read, door: Door, outlook: Outlook, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle("Tasks of your own")
        self._read, self._door, self._outlook = read, door, outlook
        self.there: tuple[desk.OwnWork, ...] = ()
        self.list, self.refusal = QListWidget(), label(look="work-text", wrap=True)
        self.list.setObjectName("list")
        self.list.setAccessibleName("Tasks of your own and splits")
        top, ends, whole = QHBoxLayout(), QHBoxLayout(), QVBoxLayout(self)
        top.addWidget(label("Tasks of your own", "title"), 1)
        for words, what in (
            ("Remove", self.remove),
            ("Split a task…", self.split),
            ("Add a task…", self.add),
        ):
            top.addWidget(button(words, clicked=what))
        ends.addWidget(self.refusal, 1)
        ends.addWidget(button("Close", "main", self.accept))
        whole.setContentsMargins(20, 18, 20, 16)
        whole.addLayout(top)
        whole.addWidget(label(HINT, "soft", wrap=True))
        whole.addWidget(self.list, 1)
        whole.addLayout(ends)
        self.resize(620, 360)
        door.changed.connect(self._hear)
        door.refused.connect(self.refusal.setText)
        self._show()

    def add(self) -> None:
        """Open the form for a task of one's own."""
        OwnTaskForm(self._view(), self.there, self._door, self).open()

    def split(self) -> None:
        """Open the form for a split."""
        SplitForm(self._view(), self._door, self).open()

    def remove(self) -> None:
        """Take the chosen one away."""
        row = self.list.currentRow()
        if 0 <= row < len(self.there):
            self._door.push(desk.remove(self._outlook.planter, self.there[row]))

    def _view(self) -> WorkView:
        return self._read(work_view, self._outlook.planter, self._outlook.units)

    def _hear(self, changed: frozenset[Changed]) -> None:
        self.refusal.setText("")
        if Changed.TICKS in changed:
            self._show()

    def _show(self) -> None:
        self.there = self._read(desk.own_work, self._outlook.planter)
        self.list.clear()
        self.list.addItems([desk.own_text(one) for one in self.there])
