"""Bench runs as a person types or pastes them: rows of texts, read into counts."""

import csv
import io
from collections.abc import Iterable, Sequence

from changeover.quantities import MEASURES, Refusal, Units, read_quantity, show, unit_sign
from changeover.seed.bench_counts import Reading

COLUMNS = ("Row or meter", "Vacuum", "Cells", "Skips", "Doubles", "Singulator")
HEADINGS = ("Row or\nmeter", "Vacuum", "Cells", "Skips", "Doubles", "Singulator\nif varied")
NEEDED = 5
Texts = tuple[str, ...]


def headings(units: Units) -> Texts:
    """Return the headings of the columns; that of the vacuum carries its unit."""
    sign = unit_sign(MEASURES["pressure"].unit(units))
    return tuple(f"{name}\n{sign}" if name == "Vacuum" else name for name in HEADINGS)


def pasted(text: str) -> tuple[Texts, ...]:
    """Split pasted text into rows of cells, at tabs, else semicolons, else commas.

    A heading row and empty rows are left out.
    """
    lines = [line for line in text.splitlines() if line.strip()]
    mark = next((mark for mark in "\t;," if any(mark in line for line in lines)), "\t")
    rows = [tuple(cell.strip() for cell in row) for row in csv.reader(lines, delimiter=mark)]
    return tuple(row for row in rows if any(row) and not _is_heading(row))


def copied(rows: Iterable[Texts]) -> str:
    """Return rows as tab-separated text for a spreadsheet."""
    out = io.StringIO()
    csv.writer(out, delimiter="\t", lineterminator="\n").writerows(rows)
    return out.getvalue()


def is_empty(row: Texts) -> bool:
    """Say whether nothing is typed in a row."""
    return not any(cell.strip() for cell in row)


def read_runs_typed(rows: Sequence[Texts], units: Units) -> tuple[Reading, ...]:
    """Return the runs of the rows that are filled in. Raises Refusal that names the line."""
    filled = [(line, row) for line, row in enumerate(rows, start=1) if not is_empty(row)]
    if not filled:
        raise Refusal("No bench runs yet: type or paste counts at two or more levels of vacuum.")
    return tuple(read_run(row, line, units) for line, row in filled)


def read_run(row: Texts, line: int, units: Units) -> Reading:
    """Return one run. Raises Refusal that names the line."""
    for name, cell in zip(COLUMNS[:NEEDED], row, strict=False):
        if not cell.strip():
            raise Refusal(f"Line {line}: {name.lower()} is missing; enter it.")
    vacuum = read_quantity(row[1], "pressure", units, f"Line {line}, vacuum")
    if not float(vacuum.magnitude) > 0:
        raise Refusal(f"Line {line}: a vacuum of {row[1]} is none; enter one above zero.")
    cells, skips, doubles = (_whole(row[n], line, COLUMNS[n].lower()) for n in (2, 3, 4))
    position = row[5].strip() if len(row) > NEEDED else ""
    return Reading(row[0].strip(), vacuum, cells, skips, doubles, position, f"Line {line}")


def rows_of(runs: Iterable[Reading], units: Units) -> tuple[Texts, ...]:
    """Return runs as rows of texts, the vacuum in the units shown."""
    return tuple(
        (
            run.meter,
            show(run.vacuum, "pressure", units, sign=False),
            str(run.cells),
            str(run.skips),
            str(run.doubles),
            run.position,
        )
        for run in runs
    )


def _whole(text: str, line: int, name: str) -> int:
    plain = text.strip().replace("\u202f", "").replace(" ", "")
    if not plain.isdecimal():
        raise Refusal(f"Line {line}: “{text.strip()[:20]}” {name} is no whole number; count them.")
    return int(plain)


def _is_heading(row: Texts) -> bool:
    """Say whether a row holds no figure in any of its counts."""
    counts = row[1:NEEDED]
    return bool(counts) and not any(sign.isdigit() for cell in counts for sign in _figure(cell))


def _figure(cell: str) -> str:
    """Return a cell without unit signs that hold a digit."""
    return cell.replace("H2O", "").replace("h2o", "")
