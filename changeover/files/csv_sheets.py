"""A switch as comma-separated text: one file each for tasks, kit, settings and log."""

import csv
import io
from collections.abc import Iterable
from pathlib import Path

from changeover.files.atomic import write_bytes
from changeover.files.formula_guard import guarded
from changeover.files.sheet import Shown, WorklistSheet
from changeover.files.tables import Table, kit_table, log_table, settings_table, tasks_table


def write_csv_sheets(sheet: WorklistSheet, folder: Path, stem: str) -> tuple[Path, ...]:
    """Write ``stem-tasks.csv``, ``-kit.csv``, ``-settings.csv`` and any ``-clean-out-log.csv``.

    UTF-8 with a byte-order mark, so that spreadsheets read it right; figures plain, with a
    point. Raises Refusal when the folder cannot be written.
    """
    tables = [tasks_table(sheet), kit_table(sheet), settings_table(sheet)]
    if sheet.log or sheet.log_missing:
        tables.append(log_table(sheet))
    return tuple(
        write_bytes(folder / f"{stem}-{table.name.lower().replace(' ', '-')}.csv", csv_bytes(table))
        for table in tables
    )


def csv_bytes(table: Table) -> bytes:
    """Return a table as the bytes of a CSV file."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(_row(column.name for column in table.columns))
    writer.writerows(_row(row) for row in table.rows)
    return text.getvalue().encode("utf-8-sig")


def _row(values: Iterable[Shown | bool]) -> list[str | int | float]:
    return [_cell(value) for value in values]


def _cell(value: Shown | bool) -> str | int | float:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return guarded(value) if isinstance(value, str) else value
