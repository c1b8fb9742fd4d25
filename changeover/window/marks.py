"""The marks of state, so that no state is told by colour alone."""

from enum import StrEnum

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from changeover.window.theme import Tokens, font


class Mark(StrEnum):
    """One state; the value is the word that goes with it."""

    READY = "ready"
    WORK = "work to do"
    UNKNOWN = "not known"
    LOCKED = "locked up"
    HERE = "open now"
    OPEN = "not begun"
    ATTENTION = "look here"


_COLOURS = {
    Mark.READY: "done",
    Mark.WORK: "work",
    Mark.UNKNOWN: "soft",
    Mark.LOCKED: "soft",
    Mark.HERE: "accent",
    Mark.OPEN: "soft",
    Mark.ATTENTION: "work",
}


def mark_colour(mark: Mark, tokens: Tokens) -> QColor:
    """Return the colour that goes with a mark."""
    return tokens.colour(_COLOURS[mark])


def pen(colour: QColor, width: float = 1.4) -> QPen:
    """Return a pen with round ends, in which all marks are drawn."""
    return QPen(
        colour, width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin
    )


def paint_sign(painter: QPainter, box: QRectF, mark: Mark, colour: QColor) -> None:
    """Draw the bare sign of a state, without a ring, into the middle of a box."""
    painter.setPen(pen(colour, 1.6))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    middle, size = box.center(), min(box.width(), box.height()) / 2
    if mark is Mark.READY:
        _line(painter, middle, size, (-0.8, 0.05), (-0.2, 0.6), (0.8, -0.6))
    elif mark is Mark.WORK:
        _line(painter, middle, size, (-0.8, 0.0), (0.8, 0.0))
        _line(painter, middle, size, (0.15, -0.55), (0.8, 0.0), (0.15, 0.55))
    elif mark is Mark.LOCKED:
        _line(painter, middle, size, (0.0, 0.8), (0.0, -0.5))
        _line(painter, middle, size, (-0.55, 0.0), (0.0, -0.55), (0.55, 0.0))
        _line(painter, middle, size, (-0.7, -0.85), (0.7, -0.85))
    elif mark is Mark.UNKNOWN:
        painter.setFont(font(max(8, int(size * 2)), bold=True))
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, "?")


def paint_mark(painter: QPainter, box: QRectF, mark: Mark, tokens: Tokens) -> None:
    """Draw a mark with its ring, dot or triangle into a square box."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    colour = mark_colour(mark, tokens)
    painter.setPen(pen(colour))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if mark is Mark.ATTENTION:
        _triangle(painter, box, colour)
    elif mark is Mark.HERE:
        painter.setBrush(colour)
        painter.drawEllipse(box.adjusted(1, 1, -1, -1))
    else:
        painter.drawEllipse(box.adjusted(1, 1, -1, -1))
        if mark is not Mark.OPEN:
            inset = box.width() * 0.28
            paint_sign(painter, box.adjusted(inset, inset, -inset, -inset), mark, colour)
    painter.restore()


def _line(painter: QPainter, middle: QPointF, size: float, *points: tuple[float, float]) -> None:
    painter.drawPolyline(QPolygonF([middle + QPointF(x * size, y * size) for x, y in points]))


def _triangle(painter: QPainter, box: QRectF, colour: QColor) -> None:
    top = QPointF(box.center().x(), box.top() + 1)
    left = QPointF(box.left() + 0.5, box.bottom() - 1.5)
    right = QPointF(box.right() - 0.5, box.bottom() - 1.5)
    painter.drawPolygon(QPolygonF([top, right, left]))
    painter.setPen(pen(colour, 1.6))
    x, high, low = (
        box.center().x(),
        box.top() + box.height() * 0.40,
        box.top() + box.height() * 0.64,
    )
    painter.drawLine(QPointF(x, high), QPointF(x, low))
    painter.drawPoint(QPointF(x, box.top() + box.height() * 0.80))
