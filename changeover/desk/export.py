"""Exporting the worklist of a switch: workbook, CSV and printed sheets, in one folder."""

import re
from dataclasses import replace
from datetime import date
from pathlib import Path

from changeover.desk.flush import log_lines
from changeover.desk.open_kits import shared_work_view
from changeover.desk.plan_switch import WorkView
from changeover.desk.tables import switch_rules
from changeover.files.csv_sheets import write_csv_sheets
from changeover.files.filling import fill_sheet
from changeover.files.print_font import lost_words
from changeover.files.printed_sheet import write_printed_sheet
from changeover.files.sheet import WorklistSheet
from changeover.files.workbook import write_workbook
from changeover.planter.setup import Setup
from changeover.quantities import Refusal, Units
from changeover.store.opening import Store
from changeover.switch.clean_log import INSPECTION, CleanLog, clean_log

PAPERS = ("A4", "Letter")


def write_worklist(
    store: Store,
    planter_name: str,
    folder: Path,
    units: Units = Units.US,
    papers: tuple[str, ...] = PAPERS,
) -> tuple[Path, ...]:
    """Write the worklist of a planter's switch and return the files: xlsx, csv, one PDF a paper.

    Raises Refusal when nothing is chosen or wanted, or the folder cannot be written.
    """
    return write_view(shared_work_view(store, planter_name, units), folder, papers)


def write_view(
    view: WorkView, folder: Path, papers: tuple[str, ...] = PAPERS, made_on: date | None = None
) -> tuple[Path, ...]:
    """Write a worklist that need not be saved. Raises Refusal as ``write_worklist`` does."""
    if not view.worklist.tasks:
        raise Refusal(
            f"{view.board.planter.name}: there is no work to write down; choose the next lot and "
            "take its proposal first."
        )
    sheet = sheet_of(view, made_on)
    stem = _stem(view)
    first = papers[0] if papers else PAPERS[0]
    return (
        write_workbook(sheet, folder / f"{stem}.xlsx", paper=first),
        *write_csv_sheets(sheet, folder, stem),
        *(
            write_printed_sheet(sheet, folder / f"{stem}-{paper.lower()}.pdf", paper=paper)
            for paper in papers
        ),
    )


def print_note(view: WorkView) -> str:
    """Say which signs of the names cannot be printed; empty when all can."""
    return lost_words(sheet_of(view))


def sheet_of(view: WorkView, made_on: date | None = None) -> WorklistSheet:
    """Return the sheet of a worklist, as it goes on paper; ``made_on`` is today when not given."""
    board = view.board
    job = board.next_job
    return fill_sheet(
        planter=board.planter,
        settings=board.settings,
        worklist=view.worklist,
        done=view.progress,
        kit=view.kit,
        parts=board.parts,
        before=view.start,
        target=board.target,
        now=board.label_now,
        next_lot=board.label_next.partition(" → ")[0],
        field=job.field or "" if job is not None else "",
        made_on=made_on if made_on is not None else date.today(),  # noqa: DTZ011
        units=board.units,
        log=log_of(view, view.start),
    )


def log_of(view: WorkView, before: Setup) -> CleanLog | None:
    """Return the clean-out log so far, None when neither certifier nor contract asks for one."""
    if not any(task.family.startswith(INSPECTION) for task in view.worklist.tasks):
        return None
    board = view.board
    log = clean_log(
        board.planter, view.worklist, view.ticks, before, board.target, view.lots, switch_rules()
    )
    if not view.flushes:
        return log
    flushed = log_lines(view.flushes, _old_lots(before), board.units)
    return replace(log, lines=tuple(sorted((*log.lines, *flushed), key=lambda line: line.when)))


def _old_lots(before: Setup) -> str:
    held = (str(value) for cell, value in before.values.items() if cell.setting == "seed")
    return ", ".join(dict.fromkeys(held))


def _stem(view: WorkView) -> str:
    """Return a file name that any system takes: planter and lot, letters and figures only."""
    lot = view.board.lot.number if view.board.lot is not None else "target"
    return f"worklist-{_words(view.board.planter.name) or 'planter'}-{_words(lot) or 'lot'}"


def _words(name: str) -> str:
    """Return a name in lower case as words for a file name, cut to what a file system takes."""
    return "-".join(re.findall(r"\w+", name.lower()))[:30].strip("-")
