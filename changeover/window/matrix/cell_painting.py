"""Painting one cell of the matrix: a value, a value that changes, or a band over its rows."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPolygonF

from changeover.window.fitting import fitted
from changeover.window.marks import Mark, paint_sign, pen
from changeover.window.matrix.sheet import Look, Shown
from changeover.window.theme import TEXT_PX, Tokens

MIDDLE = Qt.AlignmentFlag.AlignCenter
WIDE, NARROW_BAND, STACK = 84, 118, 46.0


@dataclass(frozen=True)
class CellPaint:
    """All that the paint of a cell depends on, so that equal cells are painted once.

    ``words`` stands beside a band's value, such as ``one fan, 12 rows``; empty for a row's cell.
    ``seen`` is the part of a band that is in view, as left, top, width and height, where the
    rest is scrolled out of it: the value stands in the middle of that part.
    """

    look: Look
    shown: Shown
    width: int
    height: int
    tinted: bool
    band: bool
    words: str
    tokens: Tokens
    seen: tuple[int, int, int, int] | None = None

    def paint(self, painter: QPainter) -> None:
        """Paint the cell at the painter's origin."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(0, 0, self.width, self.height)
        painter.fillRect(box, self.tokens.colour("ground" if self.tinted else "surface"))
        if self.band:
            self._paint_band(painter, box.adjusted(2.5, 4.5, -2.5, -4.5))
            return
        self._paint_edges(painter, box)
        if self.look.differs and self.shown is Shown.BOTH:
            self._paint_change(painter, box.adjusted(2, 2, -2, -2))
        else:
            self._paint_value(painter, box)
        if self.look.odd:
            self._paint_odd(painter, box)

    def _paint_edges(self, painter: QPainter, box: QRectF) -> None:
        painter.setPen(pen(self.tokens.colour("hair"), 1.0))
        x = box.right() - 0.5
        painter.drawLine(QPointF(x, 0), QPointF(x, box.bottom()))
        if self.look.up:
            step = 7
            painter.setClipRect(box)
            for start in range(-self.height, self.width, step):
                painter.drawLine(QPointF(start, self.height), QPointF(start + self.height, 0))

    def _paint_value(self, painter: QPainter, box: QRectF) -> None:
        look, marked = self.look, self.look.differs
        text = look.found if self.shown is Shown.FOUND else look.target
        untold = self.shown is Shown.BOTH and not look.target
        text = text or (look.found if self.shown is Shown.BOTH else "")
        token = "soft" if look.up or untold else "ink"
        if not text and not look.up:
            text, token = "–", "soft"
        if marked:
            wide = box.width() >= WIDE
            middle = box.center() + (QPointF(34, 0) if wide else QPointF(0, box.height() / 2 - 8))
            sign = QRectF(middle.x() - 4, middle.y() - 4, 8, 8)
            paint_sign(painter, sign, Mark.WORK, self.tokens.colour("work"))
            box = box if wide else box.adjusted(0, 0, 0, -8)
        _write(painter, box, text, self.tokens.colour(token), TEXT_PX, bold=marked)

    def _paint_change(self, painter: QPainter, box: QRectF) -> None:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.tokens.colour("work_wash"))
        painter.drawRoundedRect(box, 4, 4)
        if self.width >= WIDE:
            self._paint_in_line(painter, box)
            return
        self._paint_stacked(painter, box)

    def _paint_stacked(self, painter: QPainter, box: QRectF) -> None:
        soft, work = self.tokens.colour("soft"), self.tokens.colour("work")
        third = box.height() / 3
        upper = QRectF(box.left(), box.top() + 1, box.width(), third + 2)
        lower = QRectF(box.left(), box.bottom() - third - 5, box.width(), third + 5)
        _write(painter, upper, self.look.found or "?", soft, 10)
        _write(painter, lower, self.look.target, self.tokens.colour("ink"), TEXT_PX - 1, bold=True)
        x, y = box.center().x(), (upper.bottom() + lower.top()) / 2
        painter.setPen(pen(work, 1.5))
        painter.drawPolyline(
            QPolygonF([QPointF(x - 3.5, y - 1.8), QPointF(x, y + 1.6), QPointF(x + 3.5, y - 1.8)])
        )

    def _paint_in_line(self, painter: QPainter, box: QRectF) -> None:
        half = (box.width() - 22) / 2
        left = QRectF(box.left(), box.top(), half, box.height())
        right = QRectF(box.right() - half, box.top(), half, box.height())
        arrow = QRectF(box.center().x() - 7, box.center().y() - 7, 14, 14)
        _write(painter, left, self.look.found or "?", self.tokens.colour("soft"), TEXT_PX)
        paint_sign(painter, arrow, Mark.WORK, self.tokens.colour("work"))
        ink = self.tokens.colour("ink")
        _write(painter, right, self.look.target, ink, TEXT_PX + 1, bold=True)

    def _paint_band(self, painter: QPainter, box: QRectF) -> None:
        changes = self.look.differs
        painter.setPen(pen(self.tokens.colour("work" if changes else "hair"), 1.0))
        painter.setBrush(self.tokens.colour("work_wash" if changes else "surface"))
        painter.drawRoundedRect(box, 5, 5)
        if self.seen is not None:
            box &= QRectF(*self.seen).adjusted(4, 0, -4, 0)
        if box.width() < NARROW_BAND - 5 and changes and self.shown is Shown.BOTH:
            spare = max(0.0, (box.height() - STACK) / 2)
            self._paint_stacked(painter, box.adjusted(2, spare, -2, -spare))
        elif changes and self.shown is Shown.BOTH:
            self._paint_band_change(painter, box)
        else:
            self._paint_value(painter, box)

    def _paint_band_change(self, painter: QPainter, box: QRectF) -> None:
        roomy = box.width() >= 245
        middle = box.adjusted(0, 0, -box.width() * 0.22, 0) if roomy else box
        span = min(middle.width(), 190.0)
        line = QRectF(middle.center().x() - span / 2, box.top(), span, box.height())
        self._paint_in_line(painter, line)
        if roomy and self.words:
            start = line.right() + 2
            rest = QRectF(start, box.top(), box.right() - start - 6, box.height())
            if fitted(self.words, int(rest.width()) - 3, 11)[1] == self.words:
                _write(painter, rest, self.words, self.tokens.colour("soft"), 11, left=True)

    def _paint_odd(self, painter: QPainter, box: QRectF) -> None:
        corner = [QPointF(box.right() - 9, 1), QPointF(box.right() - 1, 1)]
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.tokens.colour("work"))
        painter.drawPolygon(QPolygonF([*corner, QPointF(box.right() - 1, 9)]))


def _write(
    painter: QPainter,
    box: QRectF,
    text: str,
    colour: QColor,
    pixels: int,
    *,
    bold: bool = False,
    left: bool = False,
) -> None:
    made, shown = fitted(text, int(box.width()) - 3, pixels, bold=bold)
    painter.setPen(colour)
    painter.setFont(made)
    side = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter if left else MIDDLE
    painter.drawText(box, int(side), shown)
