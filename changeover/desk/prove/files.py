"""Proofs from files: spacings, bench runs, depth digs and drive starts, read and judged."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from changeover.files.drive_file import read_drive
from changeover.files.proof_readings import (
    BenchFile,
    only_rows,
    read_bench,
    read_depths,
    read_spacings,
)
from changeover.files.wear_limits import bundled_wear_limits
from changeover.proof.bench import BenchLimits
from changeover.proof.bench_report import BenchPlan, BenchReport, report_bench
from changeover.proof.bootstrap import SpacingIntervals, bootstrap_rows
from changeover.proof.cells import CellCount, count_by_cell
from changeover.proof.depth import DepthDigs, DepthGoal, judge_depths
from changeover.proof.drive_start import DriveStart, judge_start
from changeover.proof.false_alarms import Control
from changeover.proof.spacing import SpacingMeasures, all_spacings, measure_rows, measure_spacings
from changeover.proof.spacing_limits import SpacingLimits, SpacingVerdict, judge_spacing
from changeover.proof.wear import WearLimit
from changeover.quantities import Quantity, Units
from changeover.seed.calibration_line import CalibrationLine
from changeover.seed.row_line import RowDigs, fitted_line


@dataclass(frozen=True)
class SpacingProof:
    """Spacings of a file: measures and verdict by row and over all, intervals where asked for."""

    rows: Mapping[int, SpacingMeasures]
    overall: SpacingMeasures
    verdicts: Mapping[int, SpacingVerdict]
    overall_verdict: SpacingVerdict
    intervals: Mapping[int, SpacingIntervals]
    overall_intervals: SpacingIntervals | None


@dataclass(frozen=True)
class BenchProof:
    """A bench run of a file: the report, and counts by cell of the disc where they can be had."""

    report: BenchReport
    cells: Mapping[int, tuple[CellCount, ...]]


def prove_spacing(
    path: Path,
    target: Quantity,
    limits: SpacingLimits,
    *,
    rows: str | None = None,
    intervals: bool = False,
) -> SpacingProof:
    """Read and judge a file of spacings or positions; ``rows`` are those that must be there.

    Raises Refusal, naming line and column, for a file that cannot be used.
    """
    found = read_spacings(path)
    if rows is not None:
        only_rows(found, rows, path)
    measured = measure_rows(found, target)
    overall = measure_spacings(all_spacings(found), target)
    each, total = bootstrap_rows(found, target) if intervals else ({}, None)
    precision = {row: one.precision_ref for row, one in each.items()}
    return SpacingProof(
        measured,
        overall,
        {row: judge_spacing(m, limits, precision.get(row)) for row, m in measured.items()},
        judge_spacing(overall, limits, total.precision_ref if total else None),
        each,
        total,
    )


def prove_bench(
    path: Path,
    limits: BenchLimits,
    *,
    rows: str | None = None,
    passed: int | None = None,
    disc_cells: int | None = None,
    control: Control = Control.HOLM,
    plan: BenchPlan | None = None,
) -> BenchProof:
    """Read and judge a bench run of counts, events or times.

    ``passed`` is the number of cells that passed in a list of events; ``disc_cells``, the cells
    on the disc, lets a damaged cell be found. Raises Refusal, naming line and column.
    """
    run = read_bench(path, passed)
    if rows is not None:
        only_rows({one.row: one for one in run.counts}, rows, path)
    report = report_bench(run.counts, limits, control=control, plan=plan)
    return BenchProof(report, {} if disc_cells is None else _by_cell(run, disc_cells))


@dataclass(frozen=True)
class DepthFile:
    """The verdict on every row at the notch where it stands, and what its digs make of a line.

    ``lines`` holds the rows that were dug at two notches or more: the line in mm, or None, and
    why there is none.
    """

    digs: tuple[DepthDigs, ...]
    lines: Mapping[int, tuple[str, CalibrationLine | None]]


def prove_depth(
    path: Path, goal: DepthGoal | None, units: Units = Units.US, *, rows: str | None = None
) -> DepthFile:
    """Read and judge a file of depth digs; raises Refusal, naming line and column."""
    found = read_depths(path)
    if rows is not None:
        only_rows(found, rows, path)
    standing = {row: list(dug.items())[-1] for row, dug in found.items()}
    lines = {}
    for row, dug in found.items():
        notched = [(notch, depths) for notch, depths in dug.items() if notch is not None]
        if len(notched) > 1:
            lines[row] = fitted_line(RowDigs(row, *notched[-1], notched[:-1]), units)
    return DepthFile(judge_depths({row: one for row, (_, one) in standing.items()}, goal), lines)


def prove_drive_start(path: Path) -> DriveStart:
    """Read and judge a file of drive-start readings; raises Refusal, naming line and column."""
    return judge_start(*read_drive(path))


def wear_limits() -> tuple[WearLimit, ...]:
    """Return the wear limits that travel with the program, each with source and trust."""
    return bundled_wear_limits()


def _by_cell(run: BenchFile, disc_cells: int) -> dict[int, tuple[CellCount, ...]]:
    passed = {one.row: one.cells for one in run.counts}
    return {
        row: count_by_cell(events, passed[row], disc_cells) for row, events in run.events.items()
    }
