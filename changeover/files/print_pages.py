"""What stands on every page of the printed sheet: the switch at the top, page numbers below."""

from collections.abc import Callable
from typing import Any

from reportlab.lib.units import mm
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import BaseDocTemplate

from changeover.files.print_font import BOLD, PLAIN, printable
from changeover.files.sheet import WorklistSheet

TOP, LINE, BOTTOM = 10 * mm, 4 * mm, 8 * mm
HEAD_TEXT = 8.5
SIGN_HERE = "done by ____________________   date ____________"


def fitted(text: str, font: str, size: float, width: float) -> str:
    """Return a printable text cut to a width, which an ellipsis shows."""
    plain = printable(text)
    if stringWidth(plain, font, size) <= width:
        return plain
    while plain and stringWidth(plain + "…", font, size) > width:
        plain = plain[:-1]
    return plain + "…"


def draw_head(
    sheet: WorklistSheet, left: float, width: float
) -> Callable[[Canvas, BaseDocTemplate], None]:
    """Return what draws the head of a page: planter and field, then the lots, and a rule below."""

    def draw(canvas: Canvas, document: BaseDocTemplate) -> None:
        y = document.pagesize[1] - TOP
        canvas.setFont(BOLD, 9.5)
        canvas.drawString(left, y, fitted(sheet.planter, BOLD, 9.5, width * 0.6))
        canvas.setFont(PLAIN, HEAD_TEXT)
        canvas.drawRightString(left + width, y, fitted(sheet.field, PLAIN, HEAD_TEXT, width * 0.38))
        canvas.drawString(left, y - LINE, way_line(sheet, width))
        canvas.setLineWidth(0.8)
        canvas.line(left, y - LINE - 2 * mm, left + width, y - LINE - 2 * mm)

    return draw


def way_line(sheet: WorklistSheet, width: float) -> str:
    """Return what is in the planter and what comes next; the next lot is cut last of all."""
    if not sheet.now:
        return fitted(sheet.next, PLAIN, HEAD_TEXT, width)
    onward = fitted(f" → {sheet.next}", PLAIN, HEAD_TEXT, width * 0.75)
    room = width - stringWidth(onward, PLAIN, HEAD_TEXT)
    return fitted(sheet.now, PLAIN, HEAD_TEXT, room) + onward


class _Numbered(Canvas):
    """A canvas that writes “page 2 of 5”: it holds the pages back until their number is known."""

    margin = 0.0
    foot_words = SIGN_HERE

    def __init__(self, *args: Any, **options: Any) -> None:
        super().__init__(*args, **options)
        self._pages: list[dict[str, object]] = []

    def showPage(self) -> None:
        """Hold the page back."""
        self._pages.append(dict(self.__dict__))
        self._startPage()  # type: ignore[attr-defined]

    def save(self) -> None:
        """Write every page with its number."""
        for number, page in enumerate(self._pages, start=1):
            self.__dict__.update(page)
            self._foot(number, len(self._pages))
            super().showPage()
        super().save()

    def _foot(self, number: int, count: int) -> None:
        wide = float(self._pagesize[0])  # type: ignore[attr-defined]
        self.setFont(PLAIN, 8)
        self.drawRightString(wide - self.margin, BOTTOM, f"page {number} of {count}")
        self.drawString(self.margin, BOTTOM, self.foot_words)


def numbered(margin_width: float, foot: str = SIGN_HERE) -> type[Canvas]:
    """Return the canvas that numbers its pages, with the page's side margins and foot."""

    class Numbered(_Numbered):
        margin = margin_width
        foot_words = foot

    return Numbered
