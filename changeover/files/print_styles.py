"""The paragraph styles of the printed sheet: legible in black and white, at arm's length."""

from reportlab.lib.enums import TA_RIGHT
from reportlab.lib.styles import ParagraphStyle

from changeover.files.print_font import BOLD, PLAIN

TITLE = ParagraphStyle("title", fontName=BOLD, fontSize=16, leading=20)
HEADING = ParagraphStyle("heading", fontName=BOLD, fontSize=11.5, leading=14)
TASK = ParagraphStyle("task", fontName=BOLD, fontSize=10, leading=13, spaceAfter=2)
STEP = ParagraphStyle(
    "step", fontName=PLAIN, fontSize=8.5, leading=10.8, leftIndent=9, bulletIndent=0
)
CAUTION = ParagraphStyle("caution", fontName=PLAIN, fontSize=8.5, leading=10.8)
SMALL = ParagraphStyle("small", fontName=PLAIN, fontSize=8.5, leading=11)
META = ParagraphStyle("meta", fontName=PLAIN, fontSize=8, leading=10.2, alignment=TA_RIGHT)
