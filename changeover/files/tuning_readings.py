"""Bench runs at several levels of vacuum, from a table of comma-separated text."""

from pathlib import Path

from changeover.files.reading_table import Column, Line, read_table
from changeover.quantities import Q, Refusal
from changeover.seed.bench_counts import Reading


def read_tuning_runs(path: Path) -> tuple[Reading, ...]:
    """Read bench runs: columns ``row`` or ``meter``, ``vacuum (inH2O)``, ``cells``, ``skips``,
    ``doubles``, and ``singulator`` where its position was varied.

    The unit of the vacuum stands in the header. Raises Refusal with line and column for a
    missing column or unit, a figure that is none, or counts that exceed the cells.
    """
    table = read_table(path)
    meter = table.need("row", "meter")
    vacuum = table.need("vacuum")
    unit = table.need_unit(vacuum, "inH2O")
    counts = tuple(table.need(name) for name in ("cells", "skips", "doubles"))
    position = table.find("singulator", "singulator position", "position")
    return tuple(_reading(line, meter, vacuum, unit, counts, position) for line in table.lines)


def _reading(
    line: Line,
    meter: Column,
    vacuum: Column,
    unit: str,
    counts: tuple[Column, ...],
    position: Column | None,
) -> Reading:
    name = line.text(meter)
    if not name:
        raise Refusal(f"{meter.where(line.number)}: the {meter.name} is missing; enter it.")
    cells, skips, doubles = (line.whole(column, column.name) for column in counts)
    level = line.number_in(vacuum, "vacuum")
    if level <= 0:
        where = vacuum.where(line.number)
        raise Refusal(f"{where}: a vacuum of {level:g} {unit} is none; enter one above zero.")
    return Reading(
        name,
        Q(level, unit),
        cells,
        skips,
        doubles,
        line.text(position) if position else "",
        f"line {line.number}",
    )
