"""Labels for the bags of a kit: planter, row, parts; three across, on A4 or Letter."""

from pathlib import Path
from typing import TYPE_CHECKING

from changeover.files.atomic import write_whole
from changeover.files.print_font import BOLD, PLAIN, use_fonts
from changeover.files.printed_sheet import PAPERS
from changeover.files.sheet import SheetLabel
from changeover.quantities import Refusal

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

ACROSS, DOWN = 3, 8
MARGIN, INSET = 24.0, 7.0  # points


def write_labels(labels: tuple[SheetLabel, ...], path: Path, *, paper: str = "A4") -> Path:
    """Write the labels as PDF, whole or not at all, with lines to cut along.

    Raises Refusal for another paper, for no labels, and when the folder cannot be written.
    """
    if paper not in PAPERS:
        raise Refusal(f"Paper “{paper}” is not known; choose {' or '.join(PAPERS)}.")
    if not labels:
        raise Refusal("There are no parts to lay out, so there are no labels to print.")
    return write_whole(path, lambda temporary: _draw_all(labels, temporary, paper))


def _draw_all(labels: tuple[SheetLabel, ...], path: Path, paper: str) -> None:
    from reportlab.lib import pagesizes
    from reportlab.pdfgen.canvas import Canvas

    use_fonts()
    wide, high = pagesizes.A4 if paper == "A4" else pagesizes.LETTER
    width, height = (wide - 2 * MARGIN) / ACROSS, (high - 2 * MARGIN) / DOWN
    canvas = Canvas(str(path), pagesize=(wide, high), invariant=1)
    canvas.setTitle("Labels")
    for number, label in enumerate(labels):
        if number and number % (ACROSS * DOWN) == 0:
            canvas.showPage()
        line, column = divmod(number % (ACROSS * DOWN), ACROSS)
        left, top = MARGIN + column * width, high - MARGIN - line * height
        _draw(canvas, label, left, top, (width, height))
    canvas.save()


def _draw(
    canvas: "Canvas", label: SheetLabel, left: float, top: float, size: tuple[float, float]
) -> None:
    from changeover.files.print_pages import fitted

    width, height = size
    room = width - 2 * INSET
    canvas.setLineWidth(0.3)
    canvas.setDash(2, 2)
    canvas.rect(left, top - height, width, height)
    canvas.setDash()
    x = left + INSET
    canvas.setFont(PLAIN, 8)
    head = f"{label.planter} · {label.person}" if label.person else label.planter
    canvas.drawString(x, top - 16, fitted(head, PLAIN, 8, room))
    canvas.setFont(BOLD, 20)
    canvas.drawString(x, top - 39, fitted(label.place, BOLD, 20, room))
    most = int((height - 46) // 12)
    for number, part in enumerate(label.parts[:most]):
        name = f"  {part.name}" if part.name else ""
        more = len(label.parts) - most
        last = f" and {more} more" if more > 0 and number == most - 1 else ""
        text = fitted(f"{part.text}{name}{last}", PLAIN, 9, room)
        canvas.setFont(PLAIN, 9)
        canvas.drawString(x, top - 54 - 12 * number, text)
