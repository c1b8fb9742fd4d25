"""The body of the appraisal's report: values, work by row, what it rests on, and photos."""

from collections.abc import Sequence
from io import BytesIO
from typing import Any

from reportlab.lib.colors import black
from reportlab.lib.enums import TA_RIGHT
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Image, KeepTogether, Paragraph, Spacer, Table

from changeover.files.appraisal_sheet import AppraisalSheet, SheetPhoto, SheetRow
from changeover.files.print_flow import TIGHT, Style, caution_box, heading_bar
from changeover.files.print_font import marked_up
from changeover.files.print_styles import SMALL, TITLE

FIGURE = ParagraphStyle("figure", parent=SMALL, alignment=TA_RIGHT)
ROW_HEADS = ("row", "condition", "what brings it to standard", "price", "labour", "sum with tax")
ROW_SHARES = (0.08, 0.13, 0.38, 0.15, 0.11, 0.15)
PHOTO_HIGH = 70 * mm


def appraisal_flow(sheet: AppraisalSheet, width: float) -> list[Flowable]:
    """Return everything that is printed, in order, for a page body of a width in points."""
    flow = [
        Paragraph(f"Appraisal: {marked_up(sheet.planter)}", TITLE),
        Spacer(0, 1.5 * mm),
        _pairs(sheet.machine, width),
    ]
    if sheet.note:
        flow += [Spacer(0, 2 * mm), _text(sheet.note)]
    flow += _block("Value", [_pairs(sheet.values, width, money=True)], width)
    flow += _block("Work to bring it to standard", _totals(sheet, width), width)
    flow += _rows(sheet.rows, width)
    if sheet.beside:
        flow += _block("Beside another planter", [_beside(sheet.beside, width)], width)
    flow += _block("What this rests on", [_text(f"– {line}") for line in sheet.basis], width)
    flow += _photos(sheet.photos, width)
    return [*flow, _signatures(width)]


def _block(name: str, inside: Sequence[Flowable], width: float) -> list[Flowable]:
    head = [Spacer(0, 4 * mm), heading_bar(name, width), Spacer(0, 1.5 * mm)]
    return [KeepTogether([*head, *inside])]


def _totals(sheet: AppraisalSheet, width: float) -> list[Flowable]:
    missing = [f"No price was given for {one}; it is not in the sums." for one in sheet.unpriced]
    return [*caution_box(missing, width), _pairs(sheet.totals, width, money=True)]


def _pairs(pairs: Sequence[tuple[str, str]], width: float, *, money: bool = False) -> Flowable:
    if not pairs:
        return _text("Nothing to state.")
    style: list[Style] = [*TIGHT, ("TOPPADDING", (0, 0), (-1, -1), 2)]
    widths = [0.3 * width, 0.22 * width if money else 0.7 * width]
    rows = [[_text(name), _text(value, FIGURE if money else SMALL)] for name, value in pairs]
    return Table(rows, widths, style=style, hAlign="LEFT")


def _rows(rows: Sequence[SheetRow], width: float) -> list[Flowable]:
    style: list[Style] = [
        *TIGHT,
        ("LINEBELOW", (0, 0), (-1, -1), 0.4, black),
        ("RIGHTPADDING", (0, 0), (-2, -1), 4),
        ("TOPPADDING", (0, 0), (-1, -1), 2),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 3),
    ]
    heads: list[Any] = [Paragraph(f"<b>{text}</b>", SMALL) for text in ROW_HEADS]
    table = Table(
        [heads, *(_row(one) for one in rows)],
        [width * share for share in ROW_SHARES],
        style=style,
        repeatRows=1,
        splitInRow=1,
    )
    return [Spacer(0, 4 * mm), heading_bar("Row by row", width), Spacer(0, 1.5 * mm), table]


def _row(one: SheetRow) -> list[Any]:
    whats = [f"<b>{marked_up(r.what)}</b><br/>{marked_up(r.why)}" for r in one.repairs]
    return [
        _text(one.name),
        _text(f"{one.mark} {one.condition}"),
        [Paragraph(text, SMALL) for text in whats] or _text("nothing"),
        [_text(f"{r.count} × {r.price}" if r.price else "no price") for r in one.repairs] or "",
        [_text(r.labour) for r in one.repairs] or "",
        _text(one.total, FIGURE),
    ]


def _beside(lines: Sequence[tuple[str, str, str]], width: float) -> Flowable:
    style: list[Style] = [
        *TIGHT,
        ("LINEBELOW", (0, 0), (-1, 0), 0.4, black),
        ("TOPPADDING", (0, 0), (-1, -1), 2),
    ]
    rows = [[_text(name), _text(one, FIGURE), _text(two, FIGURE)] for name, one, two in lines]
    return Table(rows, [0.4 * width, 0.3 * width, 0.3 * width], style=style)


def _photos(photos: Sequence[SheetPhoto], width: float) -> list[Flowable]:
    if not photos:
        return []
    half = (width - 6 * mm) / 2
    cells = [[_image(one, half), Spacer(0, 1 * mm), _text(one.caption)] for one in photos]
    pairs: list[list[Any]] = [[*cells[at : at + 2], ""][:2] for at in range(0, len(cells), 2)]
    style: list[Style] = [*TIGHT, ("BOTTOMPADDING", (0, 0), (-1, -1), 8)]
    first, *others = [Table([pair], [width / 2, width / 2], style=style) for pair in pairs]
    return [*_block("Photos", [first], width), *others]


def _image(photo: SheetPhoto, width: float) -> Image:
    made = Image(BytesIO(photo.content))
    scale = min(width / made.imageWidth, PHOTO_HIGH / made.imageHeight)
    made.drawWidth, made.drawHeight = made.imageWidth * scale, made.imageHeight * scale
    made.hAlign = "LEFT"
    return made


def _signatures(width: float) -> Flowable:
    style: list[Style] = [
        *TIGHT,
        ("LINEBELOW", (1, 0), (1, -1), 0.4, black),
        ("LINEBELOW", (3, 0), (3, -1), 0.4, black),
        ("TOPPADDING", (0, 0), (-1, -1), 16),
    ]
    rows = [[_text(who), "", _text("date"), ""] for who in ("Appraised by", "Seen by the customer")]
    return KeepTogether(
        [Table(rows, [0.22 * width, 0.4 * width, 0.1 * width, 0.28 * width], style=style)]
    )


def _text(text: str, style: ParagraphStyle = SMALL) -> Paragraph:
    return Paragraph(marked_up(text), style)
