"""A dialog around a form: the sentence of what is wrong stands below it while it is typed."""

from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFormLayout,
    QHBoxLayout,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from changeover.quantities import Refusal
from changeover.window.door import Door
from changeover.window.entry.quantity_field import QuantityField
from changeover.window.words import button, label


class FormDialog(QDialog):
    """The base of forms: ``edit`` returns the edit to push, or raises Refusal.

    Nothing can be taken over while the form is refused. Until something is typed, or the form is
    to be taken over as it is, it says what is ``wanted`` rather than what is wrong.
    """

    wanted = "Fill in what is missing; it is checked while you type."

    def __init__(self, title: str, door: Door, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self._door = door
        self._begun: tuple[str, ...] | None = None
        self._touched = False
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
        fresh = self._is_fresh()
        try:
            self.edit()
            self._say("", fresh=False)
        except Refusal as refusal:
            said = {field.sentence.text() for field in self.findChildren(QuantityField)}
            wrong = "" if str(refusal) in said else str(refusal)
            self._say(self.wanted if fresh else wrong, fresh=fresh)
            self.take.setEnabled(fresh)
        else:
            self.take.setEnabled(True)

    def _is_fresh(self) -> bool:
        """Say whether nothing was typed since the form was checked first, and nobody took it."""
        lines = (line.text() for line in self.findChildren(QLineEdit))
        boxes = (box.currentText() for box in self.findChildren(QComboBox))
        typed = (*lines, *boxes)
        if self._begun is None:
            self._begun = typed
        self._touched = self._touched or typed != self._begun
        return not self._touched

    def _say(self, sentence: str, *, fresh: bool) -> None:
        look = "soft" if fresh else "work-text"
        if self.refusal.property("look") != look:
            self.refusal.setProperty("look", look)
            self.refusal.style().polish(self.refusal)
        self.refusal.setText(sentence)

    def accept(self) -> None:
        """Push the edit; the dialog stays open when it is refused."""
        self._touched = True
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
