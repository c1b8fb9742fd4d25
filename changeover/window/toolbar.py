"""The bar between drawing and matrix: which side is shown, which rows, which way round."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QMenu, QWidget

from changeover.desk.edits import Side
from changeover.window.matrix.sheet import Shown
from changeover.window.matrix.sheet_header import NAMES_WIDTH
from changeover.window.matrix.view import MatrixView
from changeover.window.words import button, label, pill

TOOLBAR_HEIGHT = 40
EDITS = {Side.AS_FOUND: "edits set what is found", Side.TARGET: "edits set the target"}


class Toolbar(QWidget):
    """Emits ``changed`` when another view of the matrix is chosen."""

    changed = Signal()
    settings_wanted = Signal()
    set_all_wanted = Signal()

    def __init__(self, shown: Shown) -> None:
        super().__init__()
        self.setFixedHeight(TOOLBAR_HEIGHT)
        self.settings = button("Settings ▾", "quiet", self.settings_wanted.emit)
        self.settings.setObjectName("settings")
        self.settings.setToolTip("Show, hide, reorder and add settings (Alt+S)")
        self.settings.setShortcut("Alt+S")
        self.sides = {side: pill(side.value) for side in Shown}
        self._group = QButtonGroup(self)
        for number, (side, one) in enumerate(self.sides.items(), start=1):
            self._group.addButton(one)
            one.setShortcut(f"Alt+{number}")
            one.setChecked(side is shown)
            one.clicked.connect(self._change)
        self.edits = label(look="soft")
        self.differing = pill("only rows that differ")
        self.differing.setShortcut("Alt+F")
        self.differing.toggled.connect(self._change)
        self.edit_menu = QMenu(self)
        self.edit = button("Edit ▾", "quiet")
        self.edit.setMenu(self.edit_menu)
        self.way = button("rows across", "quiet", self._turn)
        self.way.setToolTip("Rows across or rows down (Alt+R)")
        self.way.setShortcut("Alt+R")
        self.across = True
        self._lay_out()
        self._say_edits()

    @property
    def shown(self) -> Shown:
        return next(side for side, one in self.sides.items() if one.isChecked())

    @property
    def only_differing(self) -> bool:
        return self.differing.isChecked()

    def give_jobs(self, view: MatrixView) -> None:
        """Fill the menu of edits, which is the matrix's context menu too."""
        jobs = (
            ("Set all selected…", "Ctrl+Return", self.set_all_wanted.emit),
            ("Fill from the first", "Ctrl+D", view.fill),
            ("Keep every other row selected", "Ctrl+E", view.every_other),
            ("Empty", "Del", view.clear_selected),
            ("Copy", "Ctrl+C", view.copy),
            ("Paste", "Ctrl+V", view.paste),
        )
        for words, keys, job in jobs:
            action = QAction(f"{words}\t{keys}", self.edit_menu)
            action.triggered.connect(lambda _on=False, job=job: job())
            self.edit_menu.addAction(action)
        view.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        view.customContextMenuRequested.connect(
            lambda at: self.edit_menu.popup(view.viewport().mapToGlobal(at))
        )

    def _change(self, _on: bool = False) -> None:
        self._say_edits()
        self.changed.emit()

    def _turn(self) -> None:
        self.across = not self.across
        self.way.setText("rows across" if self.across else "rows down")
        self.changed.emit()

    def _say_edits(self) -> None:
        self.edits.setText(EDITS[self.shown.edits])

    def _lay_out(self) -> None:
        line = QHBoxLayout(self)
        line.setContentsMargins(11, 0, 10, 0)
        line.setSpacing(5)
        self.settings.setFixedWidth(NAMES_WIDTH - 16)
        line.addWidget(self.settings)
        for one in self.sides.values():
            line.addWidget(one)
        line.addSpacing(4)
        line.addWidget(self.edits)
        line.addSpacing(8)
        line.addWidget(self.differing)
        line.addStretch()
        line.addWidget(self.edit)
        line.addWidget(self.way)
