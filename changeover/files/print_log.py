"""The clean-out log on paper: what was done, what is missing, and room to sign."""

from typing import Any

from reportlab.lib.colors import black
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Paragraph, Spacer, Table

from changeover.files.print_flow import TIGHT, Style, heading_bar
from changeover.files.print_font import marked_up
from changeover.files.print_styles import SMALL
from changeover.files.sheet import SheetLogLine, WorklistSheet

HEADS = ("when", "by", "where and what", "lot before → after", "how, and where the seed went")
SHARES = (0.13, 0.1, 0.25, 0.2, 0.32)
SIGNED = ("Log closed by", "Inspected by", "For the certifier")


def log_flow(sheet: WorklistSheet, width: float) -> list[Flowable]:
    """Return the log, nothing where nobody asks for one."""
    if not (sheet.log or sheet.log_missing):
        return []
    style: list[Style] = [
        *TIGHT,
        ("LINEBELOW", (0, 0), (-1, -1), 0.4, black),
        ("RIGHTPADDING", (0, 0), (-1, -1), 4),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 3),
    ]
    heads: list[Any] = [Paragraph(f"<b>{text}</b>", SMALL) for text in HEADS]
    table = Table(
        [heads, *(_row(line) for line in sheet.log)],
        [width * share for share in SHARES],
        style=style,
        repeatRows=1,
        splitInRow=1,
    )
    missing = [_text(f"Not done: {text}") for text in sheet.log_missing]
    return [
        Spacer(0, 3 * mm),
        KeepTogether([heading_bar("Clean-out log", width), Spacer(0, 2 * mm)]),
        table,
        Spacer(0, 2 * mm),
        *missing,
        _signatures(width),
    ]


def _row(line: SheetLogLine) -> list[Paragraph]:
    done = "inspected, " if line.inspection else ""
    steps = "; ".join(line.steps) + (f"; seed into “{line.into}”" if line.into else "")
    return [
        _text(line.when),
        _text(line.who),
        _text(f"{done}{line.where}: {line.what}"),
        _text(f"{line.lot_before} → {line.lot_after}"),
        _text(steps),
    ]


def _text(text: str) -> Paragraph:
    return Paragraph(marked_up(text), SMALL)


def _signatures(width: float) -> Flowable:
    rows = [[_text(who), "", _text("date"), ""] for who in SIGNED]
    style: list[Style] = [
        *TIGHT,
        ("LINEBELOW", (1, 0), (1, -1), 0.4, black),
        ("LINEBELOW", (3, 0), (3, -1), 0.4, black),
        ("TOPPADDING", (0, 0), (-1, -1), 14),
    ]
    widths = [0.2 * width, 0.4 * width, 0.1 * width, 0.3 * width]
    return KeepTogether([Table(rows, widths, style=style)])
