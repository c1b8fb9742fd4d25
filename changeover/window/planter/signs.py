"""Signs drawn on the planter: row units, fans, tanks, hoppers, brackets and drives."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPolygonF

from changeover.window.fitting import fitted
from changeover.window.marks import Mark, mark_colour, paint_sign, pen
from changeover.window.planter.layout import Bracket, Column, Heights
from changeover.window.theme import SMALL_PX, Tokens

MIDDLE = int(Qt.AlignmentFlag.AlignCenter)
RAISED_BY = 15


def unit_box(column: Column, levels: Heights, *, narrow: bool, up: bool) -> QRectF:
    """Return the outline of a row unit; narrow rows are slimmer, raised ones hang higher."""
    width = min(column.width * (0.56 if narrow else 0.72), 24.0 if narrow else 30.0)
    top = levels.unit_top - (RAISED_BY if up else 0)
    height = levels.unit * (0.82 if narrow else 1.0)
    return QRectF(column.middle - width / 2, top, width, height)


def paint_unit(
    painter: QPainter, box: QRectF, mark: Mark, tokens: Tokens, *, chosen: bool, up: bool
) -> None:
    """Draw a row unit with its mark; a raised one is dashed."""
    colour = tokens.colour("accent") if chosen else mark_colour(mark, tokens)
    line = pen(colour, 2.0 if chosen else 1.5)
    if up:
        line.setDashPattern([2.5, 2.5])
    painter.setPen(line)
    painter.setBrush(tokens.colour("accent_wash" if chosen else "surface"))
    shoulder = box.bottom() - box.height() * 0.30
    tip = box.width() * 0.27
    painter.drawPolygon(
        QPolygonF(
            [
                box.topLeft(),
                box.topRight(),
                QPointF(box.right(), shoulder),
                QPointF(box.right() - tip, box.bottom()),
                QPointF(box.left() + tip, box.bottom()),
                QPointF(box.left(), shoulder),
            ]
        )
    )
    size = min(11.0, box.width() * 0.6)
    middle = QPointF(box.center().x(), box.top() + (shoulder - box.top()) / 2 + 2)
    sign = QRectF(middle.x() - size / 2, middle.y() - size / 2, size, size)
    paint_sign(painter, sign, mark, mark_colour(mark, tokens))


def paint_fan(painter: QPainter, middle: QPointF, tokens: Tokens) -> None:
    """Draw a fan: a ring with three blades."""
    accent = tokens.colour("accent")
    painter.setPen(pen(accent))
    painter.setBrush(tokens.colour("surface"))
    painter.drawEllipse(middle, 9, 9)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for turn in (0, 120, 240):
        painter.save()
        painter.translate(middle)
        painter.rotate(turn)
        blade = QPainterPath(QPointF(0, 0))
        blade.cubicTo(QPointF(-4.5, -1.5), QPointF(-4.0, -7.0), QPointF(0.5, -7.0))
        blade.cubicTo(QPointF(2.0, -4.5), QPointF(1.5, -2.0), QPointF(0, 0))
        painter.drawPath(blade)
        painter.restore()


def paint_bracket(
    painter: QPainter, bracket: Bracket, level: float, tokens: Tokens, *, ink: str, foot: float
) -> None:
    """Draw a bracket with short feet towards its rows; ``foot`` is their length, down or up."""
    painter.setPen(pen(tokens.colour(ink), 1.4))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for left, right in bracket.runs:
        a, b = left + 3, right - 3
        points = [(a, level + foot), (a, level), (b, level), (b, level + foot)]
        painter.drawPolyline(QPolygonF([QPointF(x, y) for x, y in points]))
    if len(bracket.runs) > 1:
        between = pen(tokens.colour(ink), 0.8)
        between.setStyle(Qt.PenStyle.DotLine)
        painter.setPen(between)
        painter.drawLine(QPointF(bracket.left + 3, level), QPointF(bracket.right - 3, level))


def paint_tank(
    painter: QPainter, box: QRectF, name: str, holds: str, tokens: Tokens, *, differs: bool
) -> None:
    """Draw a tank seen from behind with its name and what is in it."""
    painter.setPen(pen(tokens.colour("soft"), 1.2))
    painter.setBrush(tokens.colour("rail"))
    slope = min(16.0, box.width() * 0.1)
    painter.drawPolygon(
        QPolygonF(
            [
                box.topLeft(),
                box.topRight(),
                QPointF(box.right() - slope, box.bottom()),
                QPointF(box.left() + slope, box.bottom()),
            ]
        )
    )
    half = box.height() / 2
    upper = QRectF(box.left() + slope, box.top() + 3, box.width() - 2 * slope, half - 3)
    lower = upper.translated(0, half - 5)
    text(painter, upper, name, tokens, "soft")
    text(painter, lower, holds or "empty", tokens, "work" if differs else "soft")


def paint_hopper(
    painter: QPainter, column: Column, levels: Heights, tokens: Tokens, *, differs: bool
) -> None:
    """Draw the small hopper that a row has where there are no tanks."""
    width = min(column.width - 6, 26.0)
    top, foot = levels.tank_foot - 18, levels.tank_foot
    painter.setPen(pen(tokens.colour("work" if differs else "soft"), 1.2))
    painter.setBrush(tokens.colour("rail"))
    left, right = column.middle - width / 2, column.middle + width / 2
    corners = [(left, top), (right, top), (right - 5, foot), (left + 5, foot)]
    painter.drawPolygon(QPolygonF([QPointF(x, y) for x, y in corners]))


def text(
    painter: QPainter,
    box: QRectF,
    words: str,
    tokens: Tokens,
    token: str,
    *,
    bold: bool = False,
    pixels: int = SMALL_PX,
    side: int = MIDDLE,
) -> None:
    """Write words into a box, narrower or smaller where they must be."""
    made, shown = fitted(words, int(box.width()), pixels, bold=bold)
    painter.setFont(made)
    painter.setPen(tokens.colour(token))
    painter.drawText(box, side, shown)
