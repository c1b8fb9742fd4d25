"""The body of a printed proof: head, numbered parts, tables and the drawn distribution."""

from collections.abc import Sequence
from typing import Any

from reportlab.lib.colors import Color, black
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Paragraph, Spacer, Table

from changeover.files.print_flow import heading_bar
from changeover.files.print_font import PLAIN, marked_up
from changeover.files.print_styles import SMALL, STEP, TITLE
from changeover.files.proof_sheet import ProofReport, ReportBars, ReportPart, ReportTable

GREY, PALE = Color(0.45, 0.45, 0.45), Color(0.86, 0.86, 0.86)
HIGH = 52 * mm


def report_flow(report: ProofReport, width: float) -> list[Flowable]:
    """Return everything that is printed, in order, for a page body of a width in points."""
    flow: list[Flowable] = [
        Paragraph(marked_up(report.title), TITLE),
        Spacer(0, 2 * mm),
        _about(report.about, width),
    ]
    for number, part in enumerate(report.parts, start=1):
        flow += _part(number, part, width)
    return flow


def _about(about: Sequence[tuple[str, str]], width: float) -> Flowable:
    rows = [
        [Paragraph(marked_up(name), SMALL), Paragraph(marked_up(value), STEP)]
        for name, value in about
    ]
    return Table(rows, [38 * mm, width - 38 * mm], style=_style(lines=False))


def _part(number: int, part: ReportPart, width: float) -> list[Flowable]:
    head: list[Flowable] = [
        Spacer(0, 4 * mm),
        heading_bar(f"{number}  {part.heading}", width),
        Spacer(0, 1.5 * mm),
    ]
    body: list[Flowable] = [Paragraph(marked_up(text), STEP) for text in part.sentences]
    if part.bars is not None:
        body.append(Bars(part.bars, width))
    if body:
        return [KeepTogether([*head, *body]), *(_table(one, width) for one in part.tables)]
    first, *rest = [_table(one, width) for one in part.tables]
    return [*head, first, *rest]


def _table(table: ReportTable, width: float) -> Flowable:
    rows: list[list[Any]] = [[Paragraph(f"<b>{marked_up(t)}</b>", SMALL) for t in table.titles]]
    rows += [[Paragraph(marked_up(text), SMALL) for text in line] for line in table.lines]
    each = width / max(1, len(table.titles))
    return Table(rows, [each] * len(table.titles), style=_style(lines=True), repeatRows=1)


def _style(*, lines: bool) -> list[Any]:
    style: list[Any] = [
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LEFTPADDING", (0, 0), (-1, -1), 2),
        ("RIGHTPADDING", (0, 0), (-1, -1), 2),
        ("TOPPADDING", (0, 0), (-1, -1), 1.5),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 2),
    ]
    if lines:
        style.append(("LINEBELOW", (0, 0), (-1, -1), 0.3, PALE))
        style.append(("LINEBELOW", (0, 0), (-1, 0), 0.8, black))
    return style


class Bars(Flowable):
    """A histogram with its target line and dashed zone ends."""

    def __init__(self, bars: ReportBars, width: float) -> None:
        super().__init__()
        self.bars, self.width, self.height = bars, width, HIGH

    def draw(self) -> None:
        bars, canvas = self.bars, self.canv
        foot, top = 10 * mm, self.height - 5 * mm
        most, last = max(*bars.counts, 1), bars.ends[-1]

        def x_of(value: float) -> float:
            return float(self.width * value / last)

        canvas.setFont(PLAIN, 7)
        canvas.setStrokeColor(GREY)
        canvas.setFillColor(PALE)
        starts = (0.0, *bars.ends[:-1])
        for count, start, end in zip(bars.counts, starts, bars.ends, strict=True):
            high = (top - foot) * count / most
            canvas.rect(x_of(start), foot, x_of(end) - x_of(start), high, stroke=1, fill=1)
        canvas.setDash(2, 2)
        for zone in bars.zones:
            canvas.line(x_of(zone), foot, x_of(zone), top)
        canvas.setDash()
        canvas.setStrokeColor(black)
        canvas.setLineWidth(1.2)
        canvas.line(x_of(bars.target), foot, x_of(bars.target), top + 2 * mm)
        canvas.setLineWidth(0.6)
        canvas.line(0, foot, self.width, foot)
        canvas.setFillColor(black)
        for mark in range(0, len(bars.ends), 5):
            value = bars.ends[mark - 1] if mark else 0.0
            canvas.drawCentredString(max(6.0, x_of(value)), foot - 9, f"{value:.3g}")
        canvas.drawString(0, 1 * mm, bars.axis)
