"""The tables of a sheet, one definition for workbook and CSV: columns, widths and rows."""

from collections.abc import Iterable
from dataclasses import dataclass

from changeover.files.sheet import SheetPart, SheetTask, Shown, WorklistSheet


@dataclass(frozen=True)
class Column:
    """One column: its heading, its width in characters, and whether long text wraps in it."""

    name: str
    width: float
    wraps: bool = False


@dataclass(frozen=True)
class Table:
    """Named columns and their rows; figures are numbers, dates dates, the rest text."""

    name: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Shown | bool, ...], ...]


TASKS = (
    Column("No.", 5),
    Column("Part of the work", 15),
    Column("Task", 46, wraps=True),
    Column("Where", 20, wraps=True),
    Column("Places", 8),
    Column("Done", 7),
    Column("Minutes", 9),
    Column("Persons", 8),
    Column("Planter is", 13, wraps=True),
    Column("After No.", 10, wraps=True),
    Column("Parts on", 18, wraps=True),
    Column("Parts off", 18, wraps=True),
    Column("Tools", 20, wraps=True),
    Column("Steps", 60, wraps=True),
    Column("Cautions", 60, wraps=True),
)


def tasks_table(sheet: WorklistSheet) -> Table:
    """Return the tasks, one row each."""
    return Table("Tasks", TASKS, tuple(_task(task) for task in sheet.tasks))


def _task(task: SheetTask) -> tuple[Shown | bool, ...]:
    return (
        task.number,
        task.section,
        task.title,
        task.where,
        len(task.places),
        task.done,
        round(task.minutes, 1),
        task.persons,
        task.state,
        ", ".join(str(number) for number in task.after),
        _parts(task.parts_in),
        _parts(task.parts_out),
        ", ".join(task.tools),
        "\n".join(task.steps),
        "\n".join(task.cautions),
    )


def _parts(parts: Iterable[SheetPart]) -> str:
    return ", ".join(part.text for part in parts)


KIT = (
    Column("Part", 14),
    Column("Name", 34, wraps=True),
    Column("To do", 16),
    Column("Needed", 9),
    Column("On the shelf", 12),
    Column("Short", 8),
    Column("Bin", 16, wraps=True),
    Column("On the shelf, to inspect", 22),
    Column("Comes off, to inspect", 20),
    Column("Other planters", 30, wraps=True),
)


def kit_table(sheet: WorklistSheet) -> Table:
    """Return the parts to lay out, then those that only come back."""
    out: list[tuple[Shown | bool, ...]] = [
        (
            line.part,
            line.name,
            "lay out",
            line.needed,
            line.on_shelf,
            line.short,
            line.bins,
            line.to_inspect,
            line.released,
            line.others,
        )
        for line in sheet.kit
    ]
    laid = {line.part for line in sheet.kit}
    back: list[tuple[Shown | bool, ...]] = [
        (part.code, part.name, "comes back", None, None, None, "", None, part.count, "")
        for part in sheet.back
        if part.code not in laid
    ]
    return Table("Kit", KIT, (*out, *back))


SETTINGS = (
    Column("Place", 14),
    Column("Setting", 18),
    Column("As found", 14),
    Column("Target", 14),
    Column("Unit", 10),
    Column("Differs", 9),
)


def settings_table(sheet: WorklistSheet) -> Table:
    """Return every setting of every place before and after."""
    rows = tuple(
        (row.place, row.setting, row.before, row.after, row.unit, row.differs)
        for row in sheet.settings
    )
    return Table("Settings", SETTINGS, rows)


LOG = (
    Column("When", 20),
    Column("By", 16),
    Column("Done or inspected", 12),
    Column("Where", 22, wraps=True),
    Column("What", 34, wraps=True),
    Column("Lot before", 26, wraps=True),
    Column("Lot after", 26, wraps=True),
    Column("Steps", 60, wraps=True),
    Column("Seed recovered into", 26, wraps=True),
)


def log_table(sheet: WorklistSheet) -> Table:
    """Return the clean-out log, then what is missing in it."""
    rows: list[tuple[Shown | bool, ...]] = [
        (
            line.when,
            line.who,
            "inspected" if line.inspection else "done",
            line.where,
            line.what,
            line.lot_before,
            line.lot_after,
            "\n".join(line.steps),
            line.into,
        )
        for line in sheet.log
    ]
    rows += [("", "", "not done", "", text, "", "", "", "") for text in sheet.log_missing]
    return Table("Clean-out log", LOG, tuple(rows))


CAUTIONS = (Column("Where", 34, wraps=True), Column("Caution", 90, wraps=True))


def cautions_table(sheet: WorklistSheet) -> Table:
    """Return the cautions for all of the work, then those of each task."""
    rows: list[tuple[Shown | bool, ...]] = [("all of the work", text) for text in sheet.cautions]
    rows += [(f"{t.number}. {t.title}", text) for t in sheet.tasks for text in t.cautions]
    return Table("Cautions", CAUTIONS, tuple(rows))
