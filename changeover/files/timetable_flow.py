"""The body of the printed timetable: bars for everybody, then each person's stints with boxes."""

from typing import Any

from reportlab.lib.colors import Color, black, white
from reportlab.lib.units import mm
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.platypus import Flowable, KeepTogether, PageBreak, Paragraph, Spacer, Table

from changeover.files.print_flow import TIGHT, caution_box, heading_bar
from changeover.files.print_font import BOLD, PLAIN, lost_note, marked_up, printable
from changeover.files.print_pages import fitted
from changeover.files.print_styles import SMALL, STEP, TASK, TITLE
from changeover.files.tick_boxes import TickBoxes
from changeover.files.timetable_lines import PersonSheet, StintLine, TimetableSheet

LANE, BAR, AXIS, NAME = 11 * mm, 7.5 * mm, 6 * mm, 26 * mm
WHEN, BAR_TEXT = 27 * mm, 7
GREY, PALE = Color(0.55, 0.55, 0.55), Color(0.95, 0.95, 0.95)
STEPS = (15, 30, 60, 120, 240)


def timetable_flow(sheet: TimetableSheet, width: float) -> list[Flowable]:
    """Return everything that is printed, in order, for a page body of a width in points."""
    bars = Bars(sheet, width)
    flow: list[Flowable] = [
        Paragraph("Who does what", TITLE),
        Paragraph(marked_up(f"{sheet.says} · made on {sheet.made_on.isoformat()}"), SMALL),
        *(Paragraph(note, SMALL) for note in (lost_note(sheet),) if note),
        Spacer(0, 3 * mm),
        *caution_box(sheet.cautions, width),
        bars,
        Spacer(0, 2 * mm),
        *(Paragraph(marked_up(line), SMALL) for line in bars.legend()),
    ]
    for person in sheet.persons:
        if person.stints:
            flow += [PageBreak(), *_person(person, sheet.cautions, width)]
    return flow


class Bars(Flowable):
    """A lane for each person with a bar for each stint, over the hours of the day.

    A bar too short for its words bears the number of its task; ``legend`` writes these out.
    """

    def __init__(self, sheet: TimetableSheet, width: float) -> None:
        super().__init__()
        self.sheet, self.width = sheet, width
        self.height = AXIS + LANE * len(sheet.persons)

    def wrap(self, aW: float, aH: float) -> tuple[float, float]:  # noqa: N803, ARG002
        """Return the room it takes."""
        return self.width, self.height

    @property
    def _scale(self) -> float:
        """Points a minute."""
        begin, end = self.sheet.span
        return (self.width - NAME) / max(1, end - begin)

    def legend(self) -> tuple[str, ...]:
        """Return a line for each person with bars that bear numbers."""
        lines = []
        for person in self.sheet.persons:
            told = [_entry(one) for one in person.stints if not self._fits(one)]
            if told:
                lines.append(f"{person.name}: {' · '.join(told)}")
        return tuple(lines)

    def _fits(self, stint: StintLine) -> bool:
        room = (stint.end - stint.begin) * self._scale - 4
        return fitted(stint.short, PLAIN, BAR_TEXT, room) == printable(stint.short)

    def draw(self) -> None:
        """Draw the hours, the lanes and the bars."""
        begin, end = self.sheet.span
        scale = self._scale
        step = next((one for one in STEPS if one * scale >= 14 * mm), STEPS[-1])
        self.canv.setFont(PLAIN, 7)
        self.canv.setLineWidth(0.3)
        self.canv.setStrokeColor(GREY)
        for minute in range(-(-begin // step) * step, end + 1, step):
            x = NAME + (minute - begin) * scale
            self.canv.line(x, 0, x, self.height - AXIS)
            text = f"{minute // 60 % 24}:{minute % 60:02d}"
            self.canv.drawCentredString(x, self.height - AXIS + 3, text)
        for number, person in enumerate(self.sheet.persons):
            self._lane(person, self.height - AXIS - LANE * (number + 1), begin, scale)

    def _lane(self, person: PersonSheet, y: float, begin: int, scale: float) -> None:
        self.canv.setFont(BOLD, 9)
        self.canv.drawString(0, y + LANE / 2 - 3, fitted(person.name, BOLD, 9, NAME - 6))
        self.canv.setStrokeColor(black)
        self.canv.setLineWidth(0.6)
        for stint in person.stints:
            left, wide = NAME + (stint.begin - begin) * scale, (stint.end - stint.begin) * scale
            self.canv.setFillColor(PALE)
            self.canv.roundRect(left, y + (LANE - BAR) / 2, wide, BAR, 2, fill=1)
            self.canv.setFillColor(black)
            self.canv.setFont(PLAIN, BAR_TEXT)
            if self._fits(stint):
                self.canv.drawString(left + 2, y + LANE / 2 - 2.5, printable(stint.short))
            elif stint.number is not None:
                self._number(str(stint.number), left, wide, y)

    def _number(self, number: str, left: float, wide: float, y: float) -> None:
        """Write a number in the middle of its bar, or below where the bar is too short for it."""
        within = stringWidth(number, PLAIN, BAR_TEXT) <= wide - 1
        self.canv.drawCentredString(left + wide / 2, y + (LANE / 2 - 2.5 if within else -3), number)


def _entry(stint: StintLine) -> str:
    number = "" if stint.number is None else f"{stint.number} "
    return f"{number}{stint.short}".replace(" ", "\u00a0")


def _person(person: PersonSheet, cautions: tuple[str, ...], width: float) -> list[Flowable]:
    head = [Paragraph(marked_up(person.name), TITLE), Spacer(0, 2 * mm)]
    head += [*caution_box(cautions, width), Spacer(0, 1 * mm)]
    spans = f"{person.stints[0].when.split('-')[0]} to {person.stints[-1].when.split('-')[-1]}"
    bar = [heading_bar(spans, width), Spacer(0, 1.5 * mm)]
    return [*head, *bar, *(KeepTogether([_stint(one, width)]) for one in person.stints)]


def _stint(stint: StintLine, width: float) -> Flowable:
    words: list[Flowable] = [Paragraph(marked_up(stint.title), TASK)]
    if stint.about:
        words.append(Paragraph(marked_up(stint.about), STEP))
    words += [Paragraph(marked_up(step), STEP, bulletText="–") for step in stint.steps]
    rows: list[list[Any]] = [[Paragraph(f"<b>{stint.when}</b>", SMALL), words]]
    rows.append(["", TickBoxes(stint.places)])
    style = [
        *TIGHT,
        ("TOPPADDING", (0, 0), (-1, 0), 4),
        ("BOTTOMPADDING", (0, -1), (-1, -1), 4),
        ("LINEBELOW", (0, -1), (-1, -1), 0.4, GREY),
        ("BACKGROUND", (0, 0), (-1, -1), white),
    ]
    return Table(rows, [WHEN, width - WHEN], style=style, splitInRow=1)
