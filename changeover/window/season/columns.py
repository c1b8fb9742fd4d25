"""The columns of the season's jobs: what is planted where, in which window, and the plan for it."""

from changeover.desk.season import lines
from changeover.desk.season.lines import JobLine
from changeover.window.entry.list_table import Column
from changeover.window.outlook import Outlook


def job_columns(outlook: Outlook) -> tuple[Column[JobLine], ...]:
    """Return the columns of the jobs."""
    return (
        Column("Job", lambda line: line.job.name, wide=True),
        Column("Lot", lambda line: line.job.lot),
        Column("Field", lambda line: line.job.field or ""),
        Column("Area", lambda line: lines.area_text(line, outlook.units), number=True),
        Column("Window", lambda line: lines.window_text(line.job)),
        Column("A day late", _cost, number=True),
        Column("Planned", _planned, wide=True, loud=lambda line: line.late),
    )


def _cost(line: JobLine) -> str:
    cost = line.job.lateness_cost
    return "" if cost is None else lines.money_text(cost)


def _planned(line: JobLine) -> str:
    if line.job.done:
        return "planted"
    return f"{line.planned}, fixed" if line.fixed else line.planned
