"""The workbench: the planter over the matrix, with the reason of the cell in view beside them."""

from collections.abc import Iterator
from typing import ClassVar

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QDialog, QHBoxLayout, QVBoxLayout, QWidget

from changeover.desk.changed import Changed
from changeover.desk.edits import TakeProposal
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import how_many
from changeover.window.asking import Asking
from changeover.window.door import Door
from changeover.window.matrix import cell_edits
from changeover.window.matrix.cell_edits import Spot
from changeover.window.matrix.model import MatrixModel
from changeover.window.matrix.sheet import Sheet, Shown
from changeover.window.matrix.sheet_header import NAMES_WIDTH
from changeover.window.matrix.view import MatrixView
from changeover.window.outlook import Outlook
from changeover.window.page import Page, Read
from changeover.window.planter.drawing import PlanterDrawing
from changeover.window.planter.layout import Column
from changeover.window.reason.panel import ReasonPanel
from changeover.window.toolbar import EDITS, Toolbar
from changeover.window.words import Elided, rule

LOW_DRAWING, TALL_DRAWING, TALL_WINDOW = 168, 200, 740


class Workbench(Page):
    """Planter, matrix and reason of one planter; the two pages differ in the side they open on."""

    wants: ClassVar[frozenset[Changed]] = frozenset(
        {
            Changed.PLANTERS,
            Changed.SETTINGS,
            Changed.AS_FOUND,
            Changed.TARGET,
            Changed.NEXT,
            Changed.TICKS,
            Changed.LOTS,
            Changed.PARTS,
            Changed.MANUAL,
        }
    )
    first_shown: ClassVar[Shown] = Shown.BOTH

    def __init__(self, read: Read, door: Door, outlook: Outlook, asking: Asking) -> None:
        super().__init__(read, door, outlook, asking)
        self.toolbar = Toolbar(self.first_shown)
        sheet = self._sheet(None)
        self.model = MatrixModel(sheet, door, self)
        self.view = MatrixView(self.model, door, outlook)
        self.drawing = PlanterDrawing(sheet, outlook)
        self.panel, self.status = ReasonPanel(outlook), Elided("", "soft")
        self._lay_out()
        self._listen()
        self._show_spots()

    def refresh(self, _changed: frozenset[Changed]) -> None:
        """Show the board of the outlook, whatever has changed: all of it is quick."""
        self._show_sheet(self._sheet(self.model.sheet))

    def stops(self) -> tuple[QWidget, ...]:
        return (self.view, self.panel.area)

    def recolour(self) -> None:
        self.view.viewport().update()
        super().recolour()

    def _sheet(self, earlier: Sheet | None) -> Sheet:
        outlook, toolbar = self.outlook, self.toolbar
        return Sheet(
            outlook.board,
            outlook.standing,
            outlook.units,
            toolbar.shown,
            only_differing=toolbar.only_differing,
            earlier=earlier,
        )

    def _show_sheet(self, sheet: Sheet) -> None:
        self.view.show_sheet(sheet, across=self.toolbar.across)
        self.drawing.show_sheet(sheet)
        self._show_spots()

    def _lay_out(self) -> None:
        middle = QVBoxLayout()
        middle.setContentsMargins(0, 0, 0, 0)
        middle.setSpacing(0)
        self.status.setContentsMargins(18, 0, 8, 0)
        self.status.setFixedHeight(24)
        for widget in (self.drawing, rule(), self.toolbar, self.view, rule(), self.status):
            middle.addWidget(widget, 1 if widget is self.view else 0)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addLayout(middle, 1)
        whole.addWidget(self.panel)

    def _listen(self) -> None:
        view, toolbar = self.view, self.toolbar
        view.spots_changed.connect(self._show_spots)
        view.laid_out.connect(self._line_up)
        view.horizontalScrollBar().valueChanged.connect(self._line_up)
        self.drawing.row_chosen.connect(lambda row, extend: view.select_row(row, extend=extend))
        self.drawing.group_chosen.connect(self._choose_group)
        toolbar.changed.connect(lambda: self._show_sheet(self._sheet(self.model.sheet)))
        toolbar.settings_wanted.connect(lambda: self.settings_dialog().open())
        toolbar.give_jobs(view)
        toolbar.set_all_wanted.connect(self._ask_and_set)
        self.panel.use.connect(self._take)
        self.panel.keep.connect(self._keep)

    def _first_spot(self) -> list[Spot]:
        """Return the first cell of a row that differs, else the first cell there is."""
        sheet = self.model.sheet
        spots = [(n, c) for n, cells in enumerate(sheet.cells) for c in range(len(cells))]
        own = (s for s in spots if sheet.cells[s[0]][s[1]].place.row)
        differing = (s for s in own if sheet.look(*s).differs)
        return [next(differing, spots[0])] if spots else []

    def _line_up(self) -> None:
        """Put the row units of the drawing over the columns of the matrix."""
        rows = self.model.sheet.rows
        if self.model.across:
            header = self.view.horizontalHeader()
            left = self.view.viewport().x() + self.view.x() - self.drawing.x()
            width = header.defaultSectionSize()
            at = [left + header.sectionViewportPosition(n) + width / 2 for n in range(len(rows))]
        else:
            width = max(12, (self.drawing.width() - NAMES_WIDTH - 12) // max(1, len(rows)))
            at = [NAMES_WIDTH + width * (n + 0.5) for n in range(len(rows))]
        columns = [Column(row, x, width) for row, x in zip(rows, at, strict=True)]
        self.drawing.show_columns(columns)

    def _show_spots(self) -> None:
        """Follow the selection: highlight its rows, give its reason, say where it is."""
        sheet, index = self.model.sheet, self.view.currentIndex()
        columns = {column for _, column in self.view.spots()}
        self.drawing.show_chosen(frozenset(sheet.rows[column] for column in columns))
        if index.isValid() and columns:
            cell = self.model.cell(index)
            self.panel.show_cell(sheet, cell)
            self.status.setText(f"{self._where(cell)} {self._edits()}")
        else:
            self.panel.show_nothing()
            self.status.setText(self._edits())

    def _where(self, cell: Cell) -> str:
        planter, row = self.outlook.board.planter, cell.place.row
        if row is None:
            rows = planter.rows_of(cell.place)
            return f"{cell.place.label.capitalize()}, {how_many(len(rows), 'row')}."
        groups = [group.name for group in planter.groups if row in group.rows]
        return f"Row {row} of {', '.join(groups)}." if groups else f"Row {row}."

    def _edits(self) -> str:
        words = EDITS[self.model.sheet.side].capitalize()
        return f"{words}: type a value, Ctrl+D fills the selected rows, F1 shows all keys."

    def _choose_group(self, place: Place) -> None:
        sheet = self.model.sheet
        spots = [
            (line, column)
            for line, cells in enumerate(sheet.cells)
            for column, cell in enumerate(cells)
            if cell.place == place
        ]
        rows = sheet.board.planter.rows_of(place)
        columns = [n for n, row in enumerate(sheet.rows) if row in rows]
        self.view.select(spots or [(n, c) for n in range(len(sheet.lines)) for c in columns])

    def _take(self, cells: frozenset[Cell]) -> None:
        self.door.push(TakeProposal(self.outlook.planter, cells, self.outlook.units))

    def _keep(self) -> None:
        """Make what is there now the target of the selected cells that differ."""
        sheet = self.model.sheet
        chosen = {sheet.cells[line][column] for line, column in self.view.spots()}
        found = sheet.board.as_found
        values = {c: found.get(c) for c in chosen & sheet.standing.differing}
        self.door.push(cell_edits.set_target(sheet, values, "kept as found"))

    def _ask_and_set(self) -> None:
        text = self.asking.ask_text("Set all selected", "Value for every selected cell")
        if text is not None:
            self.view.set_all(text)

    def settings_dialog(self) -> QDialog:
        """Return the dialog that arranges the settings, not yet open."""
        from changeover.window.settings_dialog import SettingsDialog

        return SettingsDialog(self.outlook.board, self.door, self.outlook, self)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        tall = self.height() >= TALL_WINDOW
        self.drawing.setFixedHeight(TALL_DRAWING if tall else LOW_DRAWING)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        QTimer.singleShot(0, self, self._line_up)
        if not self.view.currentIndex().isValid():
            self.view.setFocus(Qt.FocusReason.OtherFocusReason)
            self.view.select(self._first_spot())


class RowsPage(Workbench):
    """What every row is set to now."""

    first_shown: ClassVar[Shown] = Shown.FOUND


class SwitchPage(Workbench):
    """What every row is set to now, and what the next crop needs."""

    first_shown: ClassVar[Shown] = Shown.BOTH

    def more_to_see(self) -> Iterator[tuple[str, QWidget]]:
        self.toolbar.way.click()
        yield "rows-down", self.window()
        self.toolbar.way.click()
        dialog = self.settings_dialog()
        dialog.show()
        yield "settings", dialog
        dialog.close()
