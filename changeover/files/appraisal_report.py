"""An appraisal on paper for a customer: values, work row by row, photos; A4 or Letter."""

from io import BytesIO
from pathlib import Path
from typing import Any

from changeover.files.appraisal_sheet import AppraisalSheet
from changeover.files.atomic import write_whole
from changeover.files.print_font import printable, use_fonts
from changeover.files.printed_sheet import FOOT, HEAD, MARGIN, PAPERS
from changeover.quantities import Refusal


def write_appraisal(sheet: AppraisalSheet, path: Path, *, paper: str = "A4") -> Path:
    """Write the report as PDF, whole or not at all; ``paper`` is ``A4`` or ``Letter``.

    Raises Refusal for another paper, for a photo that cannot be read, and when the folder cannot
    be written.
    """
    if paper not in PAPERS:
        raise Refusal(f"Paper “{paper}” is not known; choose {' or '.join(PAPERS)}.")
    _check_photos(sheet)
    return write_whole(path, lambda temporary: _build(sheet, temporary, paper))


def _build(sheet: AppraisalSheet, path: Path, paper: str) -> None:
    from reportlab.lib import pagesizes
    from reportlab.lib.units import mm
    from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate

    from changeover.files.appraisal_flow import appraisal_flow
    from changeover.files.print_pages import numbered

    use_fonts()
    wide, high = pagesizes.A4 if paper == "A4" else pagesizes.LETTER
    width, height = wide - 2 * MARGIN * mm, high - (HEAD + FOOT) * mm
    frame = Frame(MARGIN * mm, FOOT * mm, width, height, 0, 0, 0, 0)
    document = BaseDocTemplate(
        str(path),
        pagesize=(wide, high),
        title=printable(f"Appraisal of {sheet.planter}"),
        author="Changeover",
        subject="appraisal",
        invariant=1,
    )
    document.addPageTemplates([PageTemplate("page", [frame], onPage=_head(sheet, MARGIN * mm))])
    document.build(appraisal_flow(sheet, width), canvasmaker=numbered(MARGIN * mm, ""))


def _head(sheet: AppraisalSheet, left: float) -> Any:
    from reportlab.lib.units import mm

    from changeover.files.print_font import BOLD, PLAIN
    from changeover.files.print_pages import TOP, fitted

    def draw(canvas: Any, document: Any) -> None:
        wide, high = document.pagesize
        y, width = high - TOP, wide - 2 * left
        canvas.setFont(BOLD, 9.5)
        canvas.drawString(left, y, fitted(sheet.planter, BOLD, 9.5, width * 0.7))
        canvas.setFont(PLAIN, 8.5)
        canvas.drawRightString(left + width, y, sheet.appraised_on.isoformat())
        canvas.setLineWidth(0.8)
        canvas.line(left, y - 2 * mm, left + width, y - 2 * mm)

    return draw


def _check_photos(sheet: AppraisalSheet) -> None:
    """Refuse a photo before anything is written; the reader raises many kinds of errors."""
    from reportlab.lib.utils import ImageReader

    for number, photo in enumerate(sheet.photos, start=1):
        try:
            ImageReader(BytesIO(photo.content)).getRGBData()  # type: ignore[no-untyped-call]
        except Exception as error:
            raise Refusal(
                f"Photo {number} ({photo.caption}) cannot be read; take it out and attach it again."
            ) from error
