"""Reports of proofs on paper: bench runs, spacing tests and depth digs, in one folder."""

import re
from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path

from changeover.desk.bench_runs import BenchRun
from changeover.desk.board import Board
from changeover.desk.prove.bench import BenchVerdict
from changeover.desk.prove.depth import DepthProof, RowDepth
from changeover.desk.prove.row_lines import calibration_words, taken_over
from changeover.desk.prove.spacing import JudgedSpacing, SpacingTest
from changeover.files.proof_report import write_proof_report
from changeover.files.proof_sheet import ProofReport, ReportBars, ReportPart, ReportTable
from changeover.proof.bench import JudgedShare
from changeover.proof.bootstrap import SpacingIntervals
from changeover.proof.findings import Finding
from changeover.proof.intervals import Interval
from changeover.proof.spacing import SpacingMeasures
from changeover.proof.wording import percent
from changeover.quantities import MEASURES, Quantity, Refusal, Units, how_many, show, unit_sign

PAPERS = {Units.US: "Letter", Units.METRIC: "A4"}
MANNER = (
    "Measured and reported in the manner of ISO 7256-1: spacings of seeds in the row, in classes "
    "of a tenth of the target spacing. The standard is a method of test and sets no pass mark."
)
CONVENTIONS = (
    "By spacings: shares of all spacings (Kachman & Smith 1995). By drop positions: shares of the "
    "places where a seed should lie (ISO 7256-1, from memory). The two differ; do not mix them."
)


def print_bench(
    board: Board, run: BenchRun, verdict: BenchVerdict, taken: str, folder: Path
) -> Path:
    """Print a bench run; ``taken`` is empty for one not saved yet. Raises Refusal."""
    units = board.units
    about = [*_about(board, taken, run.note)]
    if run.vacuum is not None:
        about.append(("Vacuum", show(run.vacuum, "pressure", units)))
    if run.disc_cells is not None:
        about.append(("Cells on the disc", str(run.disc_cells)))
    about.append(("Singulator", run.position or "not noted"))
    limits = run.limits
    named = (("skips", limits.skip_most), ("doubles", limits.double_most))
    said = ", ".join(f"{name} at most {percent(v)}" for name, v in named if v is not None)
    about.append(("Limits", f"{said} ({limits.source})" if said else "none set"))
    lines = tuple(
        (
            str(one.count.row),
            one.count.meter,
            str(one.count.cells),
            _share(one.single),
            _share(one.skip),
            _share(one.double),
            str(one.standing),
        )
        for one in (*verdict.report.rows, verdict.report.overall)
    )
    lines = (*lines[:-1], ("all", "", *lines[-1][2:]))
    titles = ("Row", "Meter", "Cells", "Singles", "Skips", "Doubles", "Verdict")
    plan = verdict.report.plan
    parts = (
        ReportPart("Results with 95 % Wilson intervals", tables=(ReportTable(titles, lines),)),
        ReportPart(
            "Length of the run",
            (
                (
                    f"Telling {percent(run.plan.good, 0)} of skips from {percent(run.plan.bad, 0)} "
                    f"takes {plan.cells} cells a row, alarm at {plan.alarm_at} skips; run too "
                    f"short on {how_many(len(verdict.report.too_short), 'row')}."
                ),
            ),
        ),
        _findings(verdict.findings),
    )
    report = ProofReport(f"Bench run: {board.planter.name}", tuple(about), parts)
    return _write(report, folder, board, "bench", taken)


def print_spacing(
    board: Board,
    test: SpacingTest,
    judged: JudgedSpacing,
    intervals: tuple[Mapping[int, SpacingIntervals], SpacingIntervals] | None,
    taken: str,
    folder: Path,
) -> Path:
    """Print a spacing test, with bootstrap intervals where they were reckoned. Raises Refusal."""
    report = ProofReport(
        f"Seed spacing in the furrow: {board.planter.name}",
        spacing_about(board, test, taken),
        (
            ReportPart("Method", (MANNER, CONVENTIONS)),
            _over_all(judged.overall, board.units, intervals),
            _distribution(judged.overall, board.units),
            _by_row(judged, board.units),
            _findings(judged.findings),
        ),
    )
    return _write(report, folder, board, "spacing", taken)


def print_depth(
    board: Board, proof: DepthProof, rows: tuple[RowDepth, ...], taken: str, folder: Path
) -> Path:
    """Print depth digs. Raises Refusal when the folder cannot be written."""
    units, goal = board.units, proof.goal
    about = [*_about(board, taken, proof.note)]
    if goal is not None:
        wanted = f"{show(goal.target, 'depth', units)} ± {show(goal.tolerance, 'depth', units)}"
        about.append(("Target", wanted))
    unit = MEASURES["depth"].unit(units)
    lines = tuple(
        (
            str(one.digs.row),
            str(one.digs.n),
            show(one.digs.mean, "depth", units),
            "–" if one.digs.sd is None else show(one.digs.sd, "depth", units),
            _span(one.digs.interval, one.digs.mean, unit),
            "–" if one.digs.in_tolerance is None else percent(one.digs.in_tolerance, 0),
            "–" if one.notch is None else str(one.notch),
            "–" if one.notch_to is None else str(one.notch_to),
            taken_over(one.calibration, units),
            str(one.digs.standing),
        )
        for one in rows
    )
    titles = (
        "Row",
        "Digs",
        "Mean",
        "SD",
        "95 %",
        "In tol.",
        "Notch",
        "Go to",
        "Its line",
        "Verdict",
    )
    found = (one.calibration for one in rows if one.calibration is not None)
    tables = (ReportTable(titles, lines),)
    part = ReportPart("Depth by row", calibration_words(found), tables)
    report = ProofReport(f"Depth digs: {board.planter.name}", tuple(about), (part,))
    return _write(report, folder, board, "depth", taken)


def spacing_about(board: Board, test: SpacingTest, taken: str) -> tuple[tuple[str, str], ...]:
    """Return what a spacing test is of: planter, seed, field, speed, target."""
    target = "" if test.target is None else show(test.target, "spacing", board.units)
    job = board.next_job
    speed = "" if job is None else show(job.speed, "speed", board.units)
    return (*_about(board, taken, test.note), ("Target spacing", target), ("Work speed", speed))


def _about(board: Board, taken: str, note: str) -> tuple[tuple[str, str], ...]:
    lot, job = board.lot, board.next_job
    day = datetime.fromisoformat(taken) if taken else datetime.now(UTC)
    seed = "not chosen" if lot is None else f"{lot.name}, lot {lot.number}"
    return (
        ("Planter", f"{board.planter.name}, {how_many(board.planter.rows, 'row')}"),
        ("Seed", seed),
        ("Field", (job.field if job is not None else None) or "not noted"),
        ("Taken", f"{day:%d %B %Y}"),
        ("Note", note or "none"),
    )


def _over_all(
    one: SpacingMeasures,
    units: Units,
    intervals: tuple[Mapping[int, SpacingIntervals], SpacingIntervals] | None,
) -> ReportPart:
    spacings, positions, found = one.by_spacings, one.by_positions, None
    if intervals is not None:
        found = intervals[1]
    shares = tuple(
        (
            name.replace("_", " "),
            f"{percent(getattr(spacings, name))}{_bounds(found, f'{name}_by_spacings')}",
            f"{percent(getattr(positions, name))}{_bounds(found, f'{name}_by_positions')}"
            if positions.meaningful
            else "not meaningful",
        )
        for name in ("quality_of_feed", "multiples", "misses")
    )
    titles = ("", f"By spacings (N = {spacings.of})", f"By drop positions (N′ = {positions.of})")
    short = one.shortage
    sentences = (
        f"Mean {show(one.mean, 'spacing', units)}"
        + ("" if one.sd is None else f", SD {show(one.sd, 'spacing', units)}")
        + f"; rate achieved {percent(one.rate_share)} of the target.",
        (
            f"Precision over the target {_or_dash(one.precision_ref)}"
            f"{_bounds(found, 'precision_ref')}, over the mean {_or_dash(one.precision_mean)}"
            f"{_bounds(found, 'precision_mean')}; CP3 {percent(one.cp3_target)} about the target, "
            f"{percent(one.cp3_mode)} about the mode."
        ),
        (
            f"Seeds missing against the target {percent(short.total)}: "
            f"skips {percent(short.skips)}, doubles {percent(short.doubles)}, "
            f"spread {percent(short.spread)}."
        ),
    )
    return ReportPart("All rows", sentences, (ReportTable(titles, shares),))


def _distribution(one: SpacingMeasures, units: Units) -> ReportPart:
    unit = MEASURES["spacing"].unit(units)
    target = float(one.target.to(unit).magnitude)
    ends = tuple(target * (number + 1) / 10 for number in range(len(one.histogram)))
    zones = tuple(target * edge for edge in (0.5, 1.5, 2.5, 3.5))
    axis = f"spacing, {unit_sign(unit)}; line: target; dashed: ½, 1½, 2½, 3½ targets; last open"
    bars = ReportBars(one.histogram, ends, target, zones, axis)
    first, second, third, fourth, fifth = one.counts
    counts = f"Divisions I to V: {first}, {second}, {third}, {fourth}, {fifth} spacings."
    return ReportPart("Distribution in classes of a tenth of the target", (counts,), bars=bars)


def _by_row(judged: JudgedSpacing, units: Units) -> ReportPart:
    titles = ("Row", "N", "Mean", "Feed", "Multiples", "Misses", "Precision", "CP3", "Rate", "")
    lines = tuple(
        (
            str(row),
            str(one.n),
            show(one.mean, "spacing", units),
            percent(one.by_spacings.quality_of_feed),
            percent(one.by_spacings.multiples),
            percent(one.by_spacings.misses),
            _or_dash(one.precision_ref),
            percent(one.cp3_target),
            percent(one.rate_share),
            str(judged.verdicts[row].standing),
        )
        for row, one in judged.rows.items()
    )
    return ReportPart("By row, shares of spacings", tables=(ReportTable(titles, lines),))


def _findings(found: tuple[Finding, ...]) -> ReportPart:
    said = tuple(
        f"{'' if one.row is None else f'Row {one.row}: '}{one.what}: {one.evidence}. "
        + " ".join(advice.text for advice in one.advice[:2])
        for one in found
    )
    return ReportPart("Findings", said or ("Nothing fell short.",))


def _bounds(found: SpacingIntervals | None, name: str) -> str:
    one: Interval | None = None if found is None else getattr(found, name)
    return "" if one is None else f" ({percent(one.low)} to {percent(one.high)})"


def _share(one: JudgedShare) -> str:
    return f"{percent(one.share)} ({percent(one.interval.low)} to {percent(one.interval.high)})"


def _or_dash(share: float | None) -> str:
    return "–" if share is None else percent(share)


def _span(interval: Interval | None, like: Quantity, unit: str) -> str:
    if interval is None:
        return "–"
    factor = float((like.units * 1).to(unit).magnitude)
    return f"{interval.low * factor:.2f} to {interval.high * factor:.2f}"


def _write(report: ProofReport, folder: Path, board: Board, kind: str, taken: str) -> Path:
    if not folder.is_dir():
        raise Refusal(f"The folder {folder} is missing; choose another.")
    plain = re.sub(r"[^\w-]+", "-", board.planter.name).strip("-").lower()
    day = (taken or datetime.now(UTC).isoformat())[:10]
    path = folder / f"{kind}-{plain}-{day}.pdf"
    return write_proof_report(report, path, paper=PAPERS[board.units])
