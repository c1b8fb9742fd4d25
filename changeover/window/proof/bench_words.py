"""A bench run as a plot, as lines of a table, and in words."""

from collections.abc import Callable

from changeover.desk.bench_runs import BenchLine, BenchRun
from changeover.desk.board import Board
from changeover.desk.prove.bench import BenchVerdict
from changeover.desk.prove.bench_entry import events_text, meter_on, read_line
from changeover.desk.prove.proofs import KeptFinding, TakenProof
from changeover.desk.prove.tasks import place_of
from changeover.proof.bench import JudgedShare, Standing, cells_to_settle
from changeover.proof.power import plan_run
from changeover.proof.wording import percent
from changeover.quantities import Refusal, Units, grouped, show
from changeover.window.dates import day_text
from changeover.window.entry.list_table import Column
from changeover.window.proof.plot_layout import Level, RowPlot, Series, Shape, Spot

HUNDRED = 100.0


def bench_plot(board: Board, verdict: BenchVerdict | None, run: BenchRun) -> RowPlot:
    """Return skips and doubles by row with their intervals and the user's limits."""
    rows = tuple(board.planter.row_numbers)
    if verdict is None:
        return RowPlot(rows, (), _limits(run), "%", factor=HUNDRED)
    report = verdict.report
    odd_skips = {one.row for one in report.odd_skips if one.odd}
    odd_doubles = {one.row for one in report.odd_doubles if one.odd}
    by_row = {one.count.row: one for one in report.rows}
    return RowPlot(
        rows,
        (
            Series(
                "skips",
                Shape.RING,
                {row: _spot(one.skip, odd=row in odd_skips) for row, one in by_row.items()},
            ),
            Series(
                "doubles",
                Shape.SQUARE,
                {row: _spot(one.double, odd=row in odd_doubles) for row, one in by_row.items()},
            ),
        ),
        _limits(run),
        "%",
        attention=frozenset(one.row for one in verdict.findings if one.row is not None),
        factor=HUNDRED,
    )


def _spot(judged: JudgedShare, *, odd: bool) -> Spot:
    loud = odd or judged.standing is Standing.SHORT
    return Spot(judged.share, judged.interval.low, judged.interval.high, loud)


def _limits(run: BenchRun) -> tuple[Level, ...]:
    skip, double = run.limits.skip_most, run.limits.double_most
    if skip is not None and skip == double:
        return (Level(skip, "your limit"),)
    named = ((skip, "skips, limit"), (double, "doubles, limit"))
    return tuple(Level(value, name) for value, name in named if value is not None)


def run_about(proof: TakenProof, run: BenchRun, units: Units) -> str:
    """Say what a saved run is: ``bench run, 2 May 2026, 12.0 inH₂O, 56 cells, 24 rows``."""
    parts = ["bench run", day_text(proof.taken)]
    if run.vacuum is not None:
        parts.append(show(run.vacuum, "pressure", units))
    if run.disc_cells is not None:
        parts.append(f"{run.disc_cells} cells")
    parts.append(f"{len({line.row for line in run.lines})} rows")
    return ", ".join(parts)


def row_says(verdict: BenchVerdict, row: int) -> str:
    """Say how one row stands: shares with their intervals, the verdict, cells still needed."""
    one = verdict.row(row)
    odd = any(
        o.row == row and o.odd for o in (*verdict.report.odd_skips, *verdict.report.odd_doubles)
    )
    said = [
        f"Row {row} {one.standing}",
        f"skips {_share(one.skip)}",
        f"doubles {_share(one.double)}",
    ]
    if odd:
        said.append("stands out from the other rows")
    more = cells_to_settle(one.skip)
    if one.standing is Standing.OPEN and more:
        said.append(f"{grouped(more, 0)} more cells would settle it")
    return "; ".join(said) + "."


def _share(one: JudgedShare) -> str:
    return f"{percent(one.share)} ({percent(one.interval.low)} to {percent(one.interval.high)})"


def whole_says(verdict: BenchVerdict) -> str:
    """Say how all rows together stand."""
    whole = verdict.report.overall
    return (
        f"All: {percent(whole.single.share)} single of {grouped(whole.count.cells, 0)} cells, "
        f"skips {percent(whole.skip.share)}, doubles {percent(whole.double.share)}; "
        f"{whole.standing}."
    )


def enough_says(verdict: BenchVerdict, run: BenchRun) -> str:
    """Say whether the cells that passed can tell a bad meter from a good one."""
    report, plan = verdict.report, run.plan
    least = min(one.count.cells for one in report.rows)
    rows = len(report.rows)
    need = (
        f"To tell {percent(plan.good, 0)} from {percent(plan.bad, 0)} on {rows} "
        f"row{'s' if rows > 1 else ''}: {grouped(report.plan.cells, 0)} a row."
    )
    if not report.too_short:
        return f"{grouped(least, 0)} a row are enough. {need}"
    told = _told_apart(least, rows, plan.good)
    can = f"{grouped(least, 0)} a row tell {percent(plan.good, 0)} from {told}." if told else ""
    return f"{can} {need}".strip()


def _told_apart(cells: int, rows: int, good: float) -> str:
    """Return the least bad share, in whole percent, that so many cells tell from a good one."""
    for bad in range(round(good * HUNDRED) + 1, 51):
        try:
            if plan_run(good, bad / HUNDRED, rows).cells <= cells:
                return f"{bad} %"
        except Refusal:
            continue
    return ""


def where_of(board: Board, kept: KeptFinding) -> str:
    """Say where a finding is: ``Row 11, meter 07``."""
    place = place_of(board.planter, kept).label.capitalize()
    row = kept.finding.row
    serial = meter_on(board, row) if row is not None else ""
    return f"{place}, meter {serial}" if serial and kept.finding.part.startswith("meter") else place


def bench_columns(
    read_board: Callable[[], Board],
    run: Callable[[], BenchRun],
    verdict: Callable[[], BenchVerdict | None],
) -> tuple[Column[int], ...]:
    """Return the columns of the lines being entered; a row of the table is a line's number."""

    def change(at: int, place: int, text: str) -> BenchRun:
        line = run().lines[at]
        typed = [str(line.row), str(line.cells), str(line.skips), str(line.doubles)]
        typed.append(events_text(line.events))
        typed[place] = text
        return run().with_line(read_line(read_board(), typed), at)

    def line_of(at: int) -> BenchLine:
        return run().lines[at]

    def standing(at: int) -> str:
        judged = verdict()
        return "" if judged is None else str(judged.row(line_of(at).row).standing)

    return (
        Column("Row", lambda at: str(line_of(at).row), lambda at, t: change(at, 0, t), number=True),
        Column("Meter", lambda at: line_of(at).meter),
        Column(
            "Cells", lambda at: str(line_of(at).cells), lambda at, t: change(at, 1, t), number=True
        ),
        Column(
            "Skips", lambda at: str(line_of(at).skips), lambda at, t: change(at, 2, t), number=True
        ),
        Column(
            "Doubles",
            lambda at: str(line_of(at).doubles),
            lambda at, t: change(at, 3, t),
            number=True,
        ),
        Column(
            "Events",
            lambda at: events_text(line_of(at).events),
            lambda at, t: change(at, 4, t),
            wide=True,
        ),
        Column("Verdict", standing, loud=lambda at: standing(at) == Standing.SHORT),
    )
