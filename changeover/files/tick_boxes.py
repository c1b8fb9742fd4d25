"""Boxes to tick on the printed sheet, drawn, so that they need no font and print sharp."""

from typing import TYPE_CHECKING

from reportlab.lib.units import mm
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.platypus import Flowable

from changeover.files.print_font import BOLD, PLAIN, printable
from changeover.files.sheet import SheetPlace

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

SIDE, PITCH, LINE = 6.3 * mm, 7.2 * mm, 8.0 * mm
LABEL_SIZE = 6.5


def draw_tick(canvas: "Canvas", x: float, y: float, side: float) -> None:
    """Draw a tick into a square whose lower left corner is at x, y."""
    canvas.setLineWidth(1.4)
    path = canvas.beginPath()
    path.moveTo(x + 0.22 * side, y + 0.45 * side)
    path.lineTo(x + 0.42 * side, y + 0.22 * side)
    path.lineTo(x + 0.80 * side, y + 0.72 * side)
    canvas.drawPath(path)


def draw_box(canvas: "Canvas", x: float, y: float, side: float, *, done: bool) -> None:
    """Draw an empty box, or one that is ticked."""
    canvas.setLineWidth(0.8)
    canvas.rect(x, y, side, side)
    if done:
        draw_tick(canvas, x, y, side)


class TickBoxes(Flowable):
    """A box for each place of a task, in as many lines as they take.

    Rows have their number in the corner of the box, other places their name beside it.
    """

    def __init__(self, places: tuple[SheetPlace, ...]) -> None:
        super().__init__()
        self.places = places
        self.spots: list[tuple[float, float]] = []

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:  # noqa: N803, ARG002
        """Lay the boxes out in the width there is."""
        x, line = 0.0, 0
        self.spots = []
        for place in self.places:
            width = self._width(place)
            if x and x + width > aW:
                x, line = 0.0, line + 1
            self.spots.append((x, float(line)))
            x += width
        self.width, self.height = aW, (line + 1) * LINE
        return self.width, self.height

    def _width(self, place: SheetPlace) -> float:
        if place.label.isdigit():
            return PITCH
        return SIDE + float(stringWidth(printable(place.label), PLAIN, 8)) + 6 * mm

    def draw(self) -> None:
        """Draw what ``wrap`` laid out."""
        for place, (x, line) in zip(self.places, self.spots, strict=True):
            y = self.height - (line + 1) * LINE + (LINE - SIDE) / 2
            draw_box(self.canv, x, y, SIDE, done=place.done)
            self._label(place, x, y)

    def _label(self, place: SheetPlace, x: float, y: float) -> None:
        text = printable(place.label)
        if text.isdigit():
            self.canv.setFont(BOLD, LABEL_SIZE)
            self.canv.drawString(x + 0.8 * mm, y + SIDE - LABEL_SIZE * 0.92, text)
        else:
            self.canv.setFont(PLAIN, 8)
            self.canv.drawString(x + SIDE + 1.6 * mm, y + 0.3 * SIDE, text)


class WarningSign(Flowable):
    """A triangle with an exclamation mark, drawn to stand before a caution."""

    def __init__(self, size: float = 9.0) -> None:
        super().__init__()
        self.width = self.height = size

    def draw(self) -> None:
        """Draw it into its square."""
        side = self.width
        self.canv.setLineWidth(0.9)
        path = self.canv.beginPath()
        path.moveTo(0, 0)
        path.lineTo(side, 0)
        path.lineTo(side / 2, side * 0.9)
        path.close()
        self.canv.drawPath(path)
        self.canv.setFont(BOLD, side * 0.62)
        self.canv.drawCentredString(side / 2, side * 0.12, "!")
