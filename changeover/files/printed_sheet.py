"""The switch on paper: tasks with boxes to tick, cautions in place, kit, A4 or Letter."""

from pathlib import Path

from changeover.files.atomic import write_whole
from changeover.files.print_font import printable, use_fonts
from changeover.files.sheet import WorklistSheet
from changeover.quantities import Refusal

PAPERS = ("A4", "Letter")
MARGIN, HEAD, FOOT = 13.0, 19.0, 14.0  # millimetres


def write_printed_sheet(sheet: WorklistSheet, path: Path, *, paper: str = "A4") -> Path:
    """Write the printed sheet as PDF, whole or not at all; ``paper`` is ``A4`` or ``Letter``.

    Raises Refusal for another paper, and when the folder cannot be written.
    """
    if paper not in PAPERS:
        raise Refusal(f"Paper “{paper}” is not known; choose {' or '.join(PAPERS)}.")
    return write_whole(path, lambda temporary: _build(sheet, temporary, paper))


def _build(sheet: WorklistSheet, path: Path, paper: str) -> None:
    from reportlab.lib import pagesizes
    from reportlab.lib.units import mm
    from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate

    from changeover.files.print_flow import whole_flow
    from changeover.files.print_log import log_flow
    from changeover.files.print_pages import draw_head, numbered

    use_fonts()
    wide, high = pagesizes.A4 if paper == "A4" else pagesizes.LETTER
    width, height = wide - 2 * MARGIN * mm, high - (HEAD + FOOT) * mm
    frame = Frame(MARGIN * mm, FOOT * mm, width, height, 0, 0, 0, 0)
    document = BaseDocTemplate(
        str(path),
        pagesize=(wide, high),
        title=printable(sheet.title),
        author="Changeover",
        subject="worklist",
        invariant=1,
    )
    head = draw_head(sheet, MARGIN * mm, width)
    document.addPageTemplates([PageTemplate("page", [frame], onPage=head)])
    flow = [*whole_flow(sheet, width), *log_flow(sheet, width)]
    document.build(flow, canvasmaker=numbered(MARGIN * mm))
