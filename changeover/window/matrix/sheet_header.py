"""The headers of the matrix: setting names with their unit, and row numbers with their mark."""

from PySide6.QtCore import QRect, QRectF, QSize, Qt
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QHeaderView, QWidget

from changeover.planter.settings import Setting
from changeover.window.fitting import fitted
from changeover.window.marks import mark_colour, paint_sign
from changeover.window.matrix.model import MatrixModel
from changeover.window.matrix.sheet import unit_words
from changeover.window.outlook import Outlook
from changeover.window.theme import SMALL_PX, TEXT_PX

NAMES_WIDTH, NAMES_HEIGHT, NUMBERS_WIDTH, WIDE_HEADING = 126, 52, 62, 110
LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter


class SheetHeader(QHeaderView):
    """Stays in view while the cells scroll; which of the two it shows follows the model."""

    def __init__(
        self, orientation: Qt.Orientation, model: MatrixModel, outlook: Outlook, parent: QWidget
    ) -> None:
        super().__init__(orientation, parent)
        self._model, self._outlook = model, outlook
        self.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setMinimumSectionSize(20)
        self.setSectionsClickable(True)
        self.setHighlightSections(False)

    @property
    def shows_names(self) -> bool:
        return (self.orientation() == Qt.Orientation.Vertical) is self._model.across

    def sizeHint(self) -> QSize:
        width = NAMES_WIDTH if self.shows_names else NUMBERS_WIDTH
        return QSize(width, NAMES_HEIGHT)

    def paintSection(self, painter: QPainter, rect: QRect, section: int) -> None:
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        tinted = section % 2 == 0 and self._model.across
        tokens = self._outlook.tokens
        painter.fillRect(rect, tokens.colour("ground" if tinted else "surface"))
        if self.shows_names:
            self._paint_name(painter, rect, section)
        else:
            self._paint_number(painter, rect, section)
        painter.restore()

    def _paint_name(self, painter: QPainter, rect: QRect, section: int) -> None:
        sheet, tokens = self._model.sheet, self._outlook.tokens
        setting = sheet.lines[section]
        upright = self.orientation() == Qt.Orientation.Vertical
        if not upright:
            self._paint_heading(painter, rect, setting)
            return
        inside = QRectF(rect).adjusted(18, 0, -3, 0)
        small = unit_words(setting, sheet.units)
        middle = inside.center().y()
        top = QRectF(inside.left(), middle - 17, inside.width(), 18)
        made, text = fitted(setting.name, int(inside.width()), TEXT_PX, bold=True)
        painter.setFont(made)
        painter.setPen(tokens.colour("ink"))
        painter.drawText(top if small else inside, int(LEFT), text)
        made, text = fitted(small, int(inside.width()), SMALL_PX)
        painter.setFont(made)
        painter.setPen(tokens.colour("soft"))
        painter.drawText(QRectF(inside.left(), middle, inside.width(), 15), int(LEFT), text)

    def _paint_heading(self, painter: QPainter, rect: QRect, setting: Setting) -> None:
        """Paint a name over a narrow column, in two lines where it has two words."""
        tokens, box = self._outlook.tokens, QRectF(rect).adjusted(2, 4, -2, -2)
        lines = setting.name.split(maxsplit=1) if box.width() < WIDE_HEADING else [setting.name]
        painter.setPen(tokens.colour("ink"))
        for number, line in enumerate(lines):
            made, text = fitted(line, int(box.width()), TEXT_PX, bold=True)
            painter.setFont(made)
            place = QRectF(box.left(), box.top() + 15 * number, box.width(), 16)
            painter.drawText(place, int(Qt.AlignmentFlag.AlignCenter), text)
        unit = unit_words(setting, self._model.sheet.units) if setting.measure else ""
        made, text = fitted(unit, int(box.width()), SMALL_PX)
        painter.setFont(made)
        painter.setPen(tokens.colour("soft"))
        foot = QRectF(box.left(), box.bottom() - 15, box.width(), 14)
        painter.drawText(foot, int(Qt.AlignmentFlag.AlignCenter), text)

    def _paint_number(self, painter: QPainter, rect: QRect, section: int) -> None:
        sheet, tokens = self._model.sheet, self._outlook.tokens
        row = sheet.rows[section]
        mark = sheet.standing.marks[row]
        box = QRectF(rect.left() + 12, rect.center().y() - 5, 11, 11)
        paint_sign(painter, box, mark, mark_colour(mark, tokens))
        made, text = fitted(str(row), rect.width() - 32, TEXT_PX, bold=True)
        painter.setFont(made)
        painter.setPen(tokens.colour("ink"))
        painter.drawText(rect.adjusted(30, 0, -4, 0), int(LEFT), text)
