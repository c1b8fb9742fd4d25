"""The crew's timetable on paper: an overview of who does what, then one sheet for each person."""

from pathlib import Path
from typing import TYPE_CHECKING

from changeover.files.atomic import write_whole
from changeover.files.print_font import printable, use_fonts
from changeover.files.printed_sheet import FOOT, HEAD, MARGIN, PAPERS
from changeover.files.timetable_lines import TimetableSheet
from changeover.quantities import Refusal

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas
    from reportlab.platypus import BaseDocTemplate


def write_timetable_sheet(sheet: TimetableSheet, path: Path, *, paper: str = "A4") -> Path:
    """Write the timetable as PDF, whole or not at all; ``paper`` is ``A4`` or ``Letter``.

    Raises Refusal for another paper, a timetable without work, and when the folder cannot be
    written.
    """
    if paper not in PAPERS:
        raise Refusal(f"Paper “{paper}” is not known; choose {' or '.join(PAPERS)}.")
    if not any(person.stints for person in sheet.persons):
        raise Refusal("The timetable is empty: there is no work to print.")
    return write_whole(path, lambda temporary: _build(sheet, temporary, paper))


def _build(sheet: TimetableSheet, path: Path, paper: str) -> None:
    from reportlab.lib import pagesizes
    from reportlab.lib.units import mm
    from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate

    from changeover.files.print_pages import numbered
    from changeover.files.timetable_flow import timetable_flow

    use_fonts()
    wide, high = pagesizes.A4 if paper == "A4" else pagesizes.LETTER
    width, height = wide - 2 * MARGIN * mm, high - (HEAD + FOOT) * mm
    frame = Frame(MARGIN * mm, FOOT * mm, width, height, 0, 0, 0, 0)
    document = BaseDocTemplate(
        str(path),
        pagesize=(wide, high),
        title=printable(f"Timetable: {sheet.planter}"),
        author="Changeover",
        subject="timetable",
        invariant=1,
    )

    def head(canvas: "Canvas", _document: "BaseDocTemplate") -> None:
        _draw_head(canvas, sheet, (MARGIN * mm, high - 12 * mm), width)

    document.addPageTemplates([PageTemplate("page", [frame], onPage=head)])
    document.build(timetable_flow(sheet, width), canvasmaker=numbered(MARGIN * mm))


def _draw_head(
    canvas: "Canvas", sheet: TimetableSheet, corner: tuple[float, float], width: float
) -> None:
    from changeover.files.print_font import BOLD, PLAIN
    from changeover.files.print_pages import fitted

    left, y = corner
    canvas.setFont(BOLD, 9.5)
    canvas.drawString(left, y, fitted(sheet.planter, BOLD, 9.5, width * 0.45))
    canvas.setFont(PLAIN, 8.5)
    canvas.drawRightString(left + width, y, fitted(sheet.about, PLAIN, 8.5, width * 0.53))
    canvas.setLineWidth(0.8)
    canvas.line(left, y - 5, left + width, y - 5)
