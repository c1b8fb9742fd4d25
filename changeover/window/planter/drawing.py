"""The planter drawn from behind: bar, row units, tanks, fans and drives above the matrix."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QHelpEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QToolTip, QWidget

from changeover.planter.places import Place, Scope
from changeover.window.marks import mark_colour, paint_sign, pen
from changeover.window.matrix.sheet import Sheet
from changeover.window.matrix.sheet_header import NAMES_WIDTH
from changeover.window.outlook import Outlook
from changeover.window.planter.layout import Bracket, Column, Heights, brackets, heights
from changeover.window.planter.signs import (
    paint_bracket,
    paint_fan,
    paint_hopper,
    paint_tank,
    paint_unit,
    text,
    unit_box,
)
from changeover.window.planter.words import holding, hopper_runs, mark_counts, row_words
from changeover.window.theme import SMALL_PX, TEXT_PX

LEFT = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)


class PlanterDrawing(QWidget):
    """Draws the sheet's planter over given columns; a click chooses a row or a group's rows."""

    row_chosen = Signal(int, bool)
    group_chosen = Signal(object)

    def __init__(self, sheet: Sheet, outlook: Outlook) -> None:
        super().__init__()
        self._sheet, self._outlook = sheet, outlook
        self._columns: tuple[Column, ...] = ()
        self._chosen: frozenset[int] = frozenset()
        self.setMouseTracking(True)
        self.setAccessibleName("The planter seen from behind")

    def show_sheet(self, sheet: Sheet) -> None:
        self._sheet = sheet
        self.update()

    def show_columns(self, columns: Sequence[Column]) -> None:
        """Draw the rows over these columns, in this widget's own pixels."""
        self._columns = tuple(columns)
        self.update()

    def show_chosen(self, rows: frozenset[int]) -> None:
        """Highlight rows."""
        if rows != self._chosen:
            self._chosen = rows
            self.update()

    @property
    def columns(self) -> tuple[Column, ...]:
        return self._columns

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), self._outlook.tokens.colour("surface"))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        levels = heights(self.height())
        self._paint_legend(painter)
        painter.setClipRect(NAMES_WIDTH - 14, 0, self.width(), self.height())
        if not self._columns:
            return
        self._paint_seed(painter, levels)
        self._paint_fans(painter, levels)
        self._paint_bar(painter, levels)
        for column in self._columns:
            self._paint_row(painter, levels, column)
        self._paint_drives(painter, levels)

    def _paint_legend(self, painter: QPainter) -> None:
        tokens = self._outlook.tokens
        text(painter, QRectF(18, 8, 100, 16), "from behind", tokens, "soft", side=LEFT)
        for number, (mark, count) in enumerate(mark_counts(self._sheet)):
            y = 32 + number * 18
            sign = QRectF(19, y + 3, 9, 9)
            paint_sign(painter, sign, mark, mark_colour(mark, tokens))
            words = f"{count} {mark.value}"
            text(painter, QRectF(35, y, 76, 15), words, tokens, "soft", side=LEFT)

    def _paint_seed(self, painter: QPainter, levels: Heights) -> None:
        tanks = brackets(self._sheet.board.planter, Scope.TANK, self._columns)
        for tank in tanks:
            here = holding(self._sheet, tank.group.place)
            tokens, box = self._outlook.tokens, self._tank_box(tank, levels)
            paint_tank(painter, box, tank.words, here.words, tokens, differs=here.differs)
        if not tanks:
            self._paint_hoppers(painter, levels)

    def _tank_box(self, tank: Bracket, levels: Heights) -> QRectF:
        width = min(max((tank.right - tank.left) * 0.62, 92.0), 260.0, tank.right - tank.left)
        top = levels.tank_top
        return QRectF(tank.middle - width / 2, top, width, levels.tank_foot - top)

    def _paint_hoppers(self, painter: QPainter, levels: Heights) -> None:
        tokens = self._outlook.tokens
        at = {column.row: column for column in self._columns}
        for row, column in at.items():
            differs = holding(self._sheet, Place.of_row(row)).differs
            paint_hopper(painter, column, levels, tokens, differs=differs)
        for first, last, here in hopper_runs(self._sheet):
            if first not in at or last not in at:
                continue
            box = QRectF(at[first].left, levels.tank_top, at[last].right - at[first].left, 18)
            token = "work" if here.differs else "soft"
            text(painter, box, here.words or "empty", tokens, token)

    def _paint_fans(self, painter: QPainter, levels: Heights) -> None:
        tokens = self._outlook.tokens
        for fan in brackets(self._sheet.board.planter, Scope.FAN, self._columns):
            paint_bracket(painter, fan, levels.fan, tokens, ink="accent", foot=8)
            x = fan.left + min(54.0, (fan.right - fan.left) / 4)
            paint_fan(painter, QPointF(x, levels.fan), tokens)
            box = QRectF(x + 14, levels.fan - 16, 90, 14)
            text(painter, box, fan.words, tokens, "accent", side=LEFT)

    def _paint_bar(self, painter: QPainter, levels: Heights) -> None:
        tokens = self._outlook.tokens
        left, right = self._columns[0].left - 8, self._columns[-1].right + 4
        painter.setPen(pen(tokens.colour("soft"), 1.2))
        painter.setBrush(tokens.colour("band"))
        bar = QRectF(left, levels.bar_top, right - left, levels.bar_foot - levels.bar_top)
        painter.drawRoundedRect(bar, 4, 4)
        ground = levels.unit_top + levels.unit + 1.5
        painter.setPen(pen(tokens.colour("hair"), 1.0))
        painter.drawLine(QPointF(left, ground), QPointF(right, ground))

    def _paint_row(self, painter: QPainter, levels: Heights, column: Column) -> None:
        sheet, tokens = self._sheet, self._outlook.tokens
        mark, chosen = sheet.standing.marks[column.row], column.row in self._chosen
        box = self._unit(column, levels)
        up = column.row in sheet.standing.locked_now
        painter.setPen(pen(tokens.colour("soft"), 1.6))
        if box.top() > levels.bar_foot:
            painter.drawLine(
                QPointF(column.middle, levels.bar_foot), QPointF(column.middle, box.top())
            )
        paint_unit(painter, box, mark, tokens, chosen=chosen, up=up)
        number = QRectF(column.left, levels.numbers - 9, column.width, 16)
        token = "accent" if chosen else "ink"
        text(painter, number, str(column.row), tokens, token, bold=chosen, pixels=TEXT_PX - 1)

    def _unit(self, column: Column, levels: Heights) -> QRectF:
        narrow = column.row in self._sheet.board.planter.split_rows
        up = column.row in self._sheet.standing.locked_now
        return unit_box(column, levels, narrow=narrow, up=up)

    def _paint_drives(self, painter: QPainter, levels: Heights) -> None:
        if levels.drives + 16 > levels.whole:
            return
        tokens = self._outlook.tokens
        for drive in brackets(self._sheet.board.planter, Scope.DRIVE, self._columns):
            paint_bracket(painter, drive, levels.drives, tokens, ink="hair", foot=-4)
            box = QRectF(drive.left, levels.drives + 1, drive.right - drive.left, 14)
            text(painter, box, drive.words, tokens, "soft", pixels=SMALL_PX)

    def row_at(self, x: float) -> int | None:
        """Return the row whose column holds a place across the drawing."""
        for column in self._columns:
            if column.left <= x < column.right:
                return column.row
        return None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        at, levels = event.position(), heights(self.height())
        row = self.row_at(at.x())
        if row is None:
            return
        sort = self._sort_at(at.y(), levels)
        if sort is None:
            extend = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self.row_chosen.emit(row, extend)
        else:
            place: Place = self._sheet.board.planter.place(sort, row)
            self.group_chosen.emit(place)

    def _sort_at(self, y: float, levels: Heights) -> Scope | None:
        if y < levels.tank_foot:
            return Scope.TANK
        if y < levels.bar_top:
            return Scope.FAN
        return Scope.DRIVE if y > levels.numbers + 9 else None

    def event(self, event: QEvent) -> bool:
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip:
            row = self.row_at(event.pos().x())
            QToolTip.showText(event.globalPos(), row_words(self._sheet, row) if row else "", self)
            return True
        return super().event(event)
