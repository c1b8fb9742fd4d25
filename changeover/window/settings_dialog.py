"""Show, hide, reorder, rename and add settings; taken over as one edit."""

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QDialog,
    QHBoxLayout,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from changeover.desk.board import Board
from changeover.desk.edits import PutSettings
from changeover.planter.settings import ALWAYS_THERE, Setting
from changeover.quantities import Refusal
from changeover.window.door import Door
from changeover.window.outlook import Outlook
from changeover.window.own_setting_form import OwnSettingForm
from changeover.window.words import button, label

INTRO = (
    "Ticked settings are shown, in this order. The program’s own can be hidden and moved; yours "
    "can be renamed and removed too. Hidden settings make no work."
)


class SettingsDialog(QDialog):
    """The list of settings on the left, the form of one of your own on the right."""

    def __init__(self, board: Board, door: Door, outlook: Outlook, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle("Settings")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self._before, self._door = board.settings, door
        self.list = QListWidget()
        self.list.setDragDropMode(QAbstractItemView.DragDropMode.InternalMove)
        self.list.setAccessibleName("Settings in order")
        self.form, self.refusal = OwnSettingForm(outlook), label(look="work-text", wrap=True)
        for setting in board.settings:
            self.list.addItem(_item(setting))
        self._lay_out()
        self.list.currentRowChanged.connect(self._show_current)
        self.list.setCurrentRow(0)

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The settings as the list has them now."""
        items = (self.list.item(row) for row in range(self.list.count()))
        return tuple(_setting(item) for item in items)

    def shift(self, way: int) -> None:
        """Move the chosen setting up (-1) or down (1)."""
        row = self.list.currentRow()
        if 0 <= row + way < self.list.count():
            item = self.list.takeItem(row)
            self.list.insertItem(row + way, item)
            self.list.setCurrentRow(row + way)

    def add(self) -> None:
        """Add the setting that the form describes."""
        self._try(lambda: self._add(self.form.setting(taken=self._keys())))

    def change(self) -> None:
        """Change the chosen setting of your own to what the form describes."""
        self._try(self._change)

    def remove(self) -> None:
        """Take a setting of your own off the list."""
        if self._current().own:
            self.list.takeItem(self.list.currentRow())

    def accept(self) -> None:
        """Push the list as one edit, when it is another."""
        if self.settings == self._before or self._door.push(
            PutSettings(self.settings, self._before, "settings arranged")
        ):
            super().accept()

    def _add(self, setting: Setting) -> None:
        self.list.addItem(_item(setting))
        self.list.setCurrentRow(self.list.count() - 1)

    def _change(self) -> None:
        key = self._current().key
        changed = self.form.setting(taken=self._keys() - {key}, key=key)
        item = self.list.currentItem()
        item.setData(Qt.ItemDataRole.UserRole, changed)
        item.setText(_words(changed))

    def _keys(self) -> frozenset[str]:
        return frozenset(setting.key for setting in self.settings)

    def _current(self) -> Setting:
        return _setting(self.list.currentItem())

    def _show_current(self, row: int) -> None:
        setting = _setting(self.list.item(row)) if row >= 0 else None
        own = setting is not None and setting.own
        self.form.show_setting(setting if own else None)
        self.change_button.setEnabled(own)
        self.remove_button.setEnabled(own)

    def _try(self, job: Callable[[], None]) -> None:
        self.refusal.setText("")
        try:
            job()
        except Refusal as refusal:
            self.refusal.setText(str(refusal))

    def _lay_out(self) -> None:
        self.change_button = button("Change it", clicked=self.change)
        self.remove_button = button("Remove it", clicked=self.remove)
        left, right, both = QVBoxLayout(), QVBoxLayout(), QHBoxLayout()
        left.addWidget(self.list, 1)
        moves = QHBoxLayout()
        moves.addWidget(button("Up", clicked=lambda: self.shift(-1)))
        moves.addWidget(button("Down", clicked=lambda: self.shift(1)))
        left.addLayout(moves)
        right.addWidget(label("A setting of your own", "title"))
        right.addWidget(self.form)
        own = QHBoxLayout()
        for one in (button("Add it", clicked=self.add), self.change_button, self.remove_button):
            own.addWidget(one)
        right.addLayout(own)
        right.addWidget(self.refusal)
        right.addStretch()
        both.setSpacing(24)
        both.addLayout(left, 1)
        both.addLayout(right, 1)
        ends = QHBoxLayout()
        ends.addStretch()
        ends.addWidget(button("Cancel", clicked=self.reject))
        ends.addWidget(button("Take over", "main", self.accept))
        whole = QVBoxLayout(self)
        whole.setContentsMargins(20, 18, 20, 16)
        whole.setSpacing(12)
        intro = label(INTRO, "soft", wrap=True)
        whole.addWidget(intro)
        whole.addLayout(both, 1)
        whole.addLayout(ends)
        self.resize(720, 520)


def _words(setting: Setting) -> str:
    own = "yours" if setting.own else "always there" if setting.key in ALWAYS_THERE else ""
    about = ", ".join(word for word in (setting.scope.value, own) if word)
    return f"{setting.name}  ({about})"


def _item(setting: Setting) -> QListWidgetItem:
    item = QListWidgetItem(_words(setting))
    item.setData(Qt.ItemDataRole.UserRole, setting)
    shown = Qt.CheckState.Unchecked if setting.hidden else Qt.CheckState.Checked
    item.setCheckState(shown)
    return item


def _setting(item: QListWidgetItem) -> Setting:
    setting: Setting = item.data(Qt.ItemDataRole.UserRole)
    return replace(setting, hidden=item.checkState() is not Qt.CheckState.Checked)
