"""The body of the printed sheet: title, cautions, tasks with their boxes, and the kit."""

from collections.abc import Iterable
from typing import Any

from reportlab.lib.colors import Color, black, white
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Paragraph, Spacer, Table

from changeover.files.print_font import lost_note, marked_up
from changeover.files.print_styles import CAUTION, HEADING, META, SMALL, STEP, TASK, TITLE
from changeover.files.sheet import SheetKitLine, SheetPart, SheetPlace, SheetTask, WorklistSheet
from changeover.files.tick_boxes import TickBoxes, WarningSign
from changeover.quantities import how_many

META_WIDTH, BOX_WIDTH = 32 * mm, 10 * mm
GREY = Color(0.93, 0.93, 0.93)
Style = tuple[str, tuple[int, int], tuple[int, int], *tuple[Any, ...]]
TIGHT: list[Style] = [
    ("VALIGN", (0, 0), (-1, -1), "TOP"),
    ("LEFTPADDING", (0, 0), (-1, -1), 0),
    ("RIGHTPADDING", (0, 0), (-1, -1), 0),
    ("TOPPADDING", (0, 0), (-1, -1), 0),
    ("BOTTOMPADDING", (0, 0), (-1, -1), 0),
]


def whole_flow(sheet: WorklistSheet, width: float) -> list[Flowable]:
    """Return everything that is printed, in order, for a page body of a width in points."""
    flow = [*_title(sheet), *caution_box(sheet.cautions, width)]
    said = frozenset(sheet.cautions)
    for number, (name, tasks) in enumerate(sheet.sections):
        flow += _section(name, tasks, width, said if number == 0 else frozenset())
    if not sheet.tasks:
        flow.append(Paragraph("Nothing differs: there is no work to do.", TASK))
    return [*flow, *_kit(sheet, width)]


def hours(minutes: float) -> str:
    """Say a time in hours and minutes: ``2 h 10 min``."""
    whole = round(minutes)
    return f"{whole // 60} h {whole % 60:02d} min" if whole >= 60 else f"{whole} min"


def _title(sheet: WorklistSheet) -> list[Flowable]:
    texts = (
        how_many(len(sheet.tasks), "task"),
        f"{hours(sheet.minutes)} of work, all persons together",
        sheet.units,
        f"made on {sheet.made_on.isoformat()}",
    )
    return [
        Paragraph(f"Worklist: {marked_up(sheet.planter)}", TITLE),
        Paragraph(marked_up(" · ".join(texts)), SMALL),
        *(Paragraph(note, SMALL) for note in (lost_note(sheet),) if note),
        Spacer(0, 2.5 * mm),
    ]


def caution_box(cautions: Iterable[str], width: float) -> list[Flowable]:
    """Return the cautions in one bordered box, each behind its sign; nothing where none are."""
    rows = [[WarningSign(), Paragraph(marked_up(text), CAUTION)] for text in cautions]
    if not rows:
        return []
    style = [
        *TIGHT,
        ("BOX", (0, 0), (-1, -1), 1.0, black),
        ("LEFTPADDING", (0, 0), (-1, -1), 5),
        ("RIGHTPADDING", (0, 0), (-1, -1), 5),
        ("TOPPADDING", (0, 0), (-1, -1), 2.5),
        ("BOTTOMPADDING", (0, -1), (-1, -1), 4),
    ]
    return [Table(rows, [7 * mm, width - 7 * mm], style=style), Spacer(0, 2 * mm)]


def _section(
    name: str, tasks: tuple[SheetTask, ...], width: float, said: frozenset[str]
) -> list[Flowable]:
    """Return a heading, the cautions of all its tasks once, and the tasks.

    ``said`` are cautions that stand right above and are not said again.
    """
    every = dict.fromkeys(text for task in tasks for text in task.cautions)
    cautions = [text for text in every if text not in said]
    head = [
        Spacer(0, 3 * mm),
        heading_bar(name, width),
        Spacer(0, 1.5 * mm),
        *caution_box(cautions, width),
    ]
    first, *others = [_task(task, width) for task in tasks]
    return [KeepTogether([*head, first]), *(KeepTogether([task]) for task in others)]


def heading_bar(name: str, width: float) -> Flowable:
    """Return a heading on a grey bar across the page."""
    style = [*TIGHT, ("BACKGROUND", (0, 0), (-1, -1), GREY), ("LEFTPADDING", (0, 0), (0, 0), 5)]
    style += [("TOPPADDING", (0, 0), (-1, -1), 2), ("BOTTOMPADDING", (0, 0), (-1, -1), 4)]
    return Table([[Paragraph(marked_up(name), HEADING)]], [width], style=style)


def _task(task: SheetTask, width: float) -> Flowable:
    """Return a task as one table, which may break across pages where it must."""
    widths = [BOX_WIDTH, width - META_WIDTH - BOX_WIDTH, META_WIDTH]
    whole = TickBoxes((SheetPlace("", done=task.done == len(task.places)),))
    rows: list[list[Any]] = [[whole, _words(task), _meta(task)]]
    style = [
        *TIGHT,
        ("BOTTOMPADDING", (0, -1), (-1, -1), 4),
        ("LINEBELOW", (0, -1), (-1, -1), 0.4, Color(0.55, 0.55, 0.55)),
        ("TOPPADDING", (0, 0), (-1, 0), 4),
    ]
    if _has_boxes(task):
        rows.append(["", TickBoxes(task.places), ""])
        style.append(("SPAN", (1, 1), (2, 1)))
    return Table(rows, widths, style=style, splitInRow=1)


def _has_boxes(task: SheetTask) -> bool:
    return len(task.places) > 1 or (len(task.places) == 1 and task.places[0].label != "planter")


def _words(task: SheetTask) -> list[Flowable]:
    words: list[Flowable] = [Paragraph(marked_up(f"{task.number}. {task.title}"), TASK)]
    words += [Paragraph(marked_up(step), STEP, bulletText="–") for step in task.steps]
    parts = _parts_line(task)
    return [*words, Paragraph(parts, STEP)] if parts else words


def _parts_line(task: SheetTask) -> str:
    groups = (("Lay out", task.parts_in), ("Comes off", task.parts_out))
    texts = [f"<b>{name}</b> {_listed(parts)}" for name, parts in groups if parts]
    return " · ".join(texts)


def _listed(parts: Iterable[SheetPart]) -> str:
    return marked_up(", ".join(part.text for part in parts))


def _meta(task: SheetTask) -> list[Flowable]:
    people = f"{task.persons} persons" if task.persons > 1 else ""
    after = f"after {', '.join(str(number) for number in task.after)}" if task.after else ""
    texts = (hours(task.minutes), people, task.state.replace("any", ""), after, *task.tools)
    lines = [marked_up(text) for text in texts if text]
    return [Paragraph("<br/>".join([f"<b>{lines[0]}</b>", *lines[1:]]), META)]


def _kit(sheet: WorklistSheet, width: float) -> list[Flowable]:
    flow: list[Flowable] = []
    if sheet.kit:
        head = ["", "part", "name", "needed", "on the shelf", "short", "bin"]
        rows = [
            [
                TickBoxes((SheetPlace(""),)),
                *map(_cell, (line.part, line.name, line.needed, _on_shelf(line))),
                _cell(f"{line.short} short" if line.short else ""),
                _cell(line.bins),
            ]
            for line in sheet.kit
        ]
        widths = [0.06, 0.13, 0.33, 0.1, 0.13, 0.11, 0.14]
        flow.append(_table("Parts to lay out", head, rows, [width * w for w in widths], width))
    if sheet.back:
        head = ["", "part", "name", "count", "condition found"]
        rows = [
            [TickBoxes((SheetPlace(""),)), *map(_cell, (part.code, part.name, part.count, ""))]
            for part in sheet.back
        ]
        widths = [0.06, 0.13, 0.33, 0.1, 0.38]
        title = "Back to the shelf, to inspect"
        flow.append(_table(title, head, rows, [width * w for w in widths], width))
    return flow


def _on_shelf(line: SheetKitLine) -> str:
    more = f", {line.to_inspect} to inspect" if line.to_inspect else ""
    others = f"; {line.others}" if line.others else ""
    return f"{line.on_shelf}{more}{others}"


def _cell(text: object) -> Paragraph:
    return Paragraph(marked_up(str(text)), SMALL)


def _table(
    title: str, head: list[str], rows: list[list[Flowable]], widths: list[float], width: float
) -> Flowable:
    style = [
        *TIGHT,
        ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
        ("LINEBELOW", (0, 0), (-1, -1), 0.4, black),
        ("BACKGROUND", (0, 0), (-1, 0), white),
        ("BOTTOMPADDING", (0, 0), (-1, 0), 3),
    ]
    heads: list[Any] = [Paragraph(f"<b>{text}</b>", SMALL) for text in head]
    table = Table([heads, *rows], widths, style=style, repeatRows=1)
    bar = [Spacer(0, 3 * mm), heading_bar(title, width), Spacer(0, 2 * mm)]
    return KeepTogether([*bar, table])
