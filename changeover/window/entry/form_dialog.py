"""A dialog around a form: the sentence of what is wrong stands below it while it is typed."""

from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QDialog, QFormLayout, QHBoxLayout, QVBoxLayout, QWidget

from changeover.quantities import Refusal
from changeover.window.door import Door
from changeover.window.entry.quantity_field import QuantityField
from changeover.window.words import button, label


class FormDialog(QDialog):
    """The base of forms: ``edit`` returns the edit to push, or raises Refusal.

    Nothing can be taken over while the form is refused.
    """

    def __init__(self, title: str, door: Door, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self._door = door
        self.form = QFormLayout()
        self.form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        self.form.setHorizontalSpacing(16)
        self.form.setVerticalSpacing(8)
        self.refusal = label(look="work-text", wrap=True)
        self.refusal.setMinimumHeight(36)
        self.take = button("Take over", "main", self.accept)
        ends, whole = QHBoxLayout(), QVBoxLayout(self)
        ends.addStretch()
        self.cancel = button("Cancel", clicked=self.reject)
        self.take.setDefault(True)
        ends.addWidget(self.cancel)
        ends.addWidget(self.take)
        whole.setContentsMargins(20, 18, 20, 16)
        whole.setSpacing(10)
        whole.addWidget(label(title, "title"))
        whole.addLayout(self.form)
        whole.addStretch()
        whole.addWidget(self.refusal)
        whole.addLayout(ends)
        self.setMinimumWidth(520)

    def showEvent(self, event: QShowEvent) -> None:
        """Begin at the first field; the Tab key comes to the buttons after the last."""
        super().showEvent(event)
        fields = [field for field in self.findChildren(QWidget) if self._is_field(field)]
        if fields:
            QWidget.setTabOrder(fields[-1], self.cancel)
            QWidget.setTabOrder(self.cancel, self.take)
            fields[0].setFocus(Qt.FocusReason.TabFocusReason)

    def _is_field(self, widget: QWidget) -> bool:
        stops = bool(widget.focusPolicy() & Qt.FocusPolicy.TabFocus)
        proxied = widget.focusProxy() is not None
        inside = widget.window() is self  # and not in the list that a box drops down
        return stops and inside and not proxied and widget not in (self.cancel, self.take)

    def edit(self) -> Any:
        """Return the edit that the form describes. Raises Refusal."""
        raise NotImplementedError

    def check(self) -> None:
        """Say what is wrong with the form as it stands, unless a field says it already."""
        try:
            self.edit()
            self.refusal.setText("")
            self.take.setEnabled(True)
        except Refusal as refusal:
            said = {field.sentence.text() for field in self.findChildren(QuantityField)}
            self.refusal.setText("" if str(refusal) in said else str(refusal))
            self.take.setEnabled(False)

    def accept(self) -> None:
        """Push the edit; the dialog stays open when it is refused."""
        self.check()
        if not self.take.isEnabled():
            return
        refused: list[str] = []
        self._door.refused.connect(refused.append)
        try:
            taken = self._door.push(self.edit())
        finally:
            self._door.refused.disconnect(refused.append)
        if taken:
            super().accept()
        else:
            self.refusal.setText(refused[-1] if refused else "")
