"""A whole bench run: every row judged, the odd ones out, and whether it was long enough."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from changeover.proof.advice import Symptom
from changeover.proof.bench import BenchCount, BenchLimits, RowBench, Standing, judge_row, pooled
from changeover.proof.exact import Side
from changeover.proof.false_alarms import Control
from changeover.proof.odd_rows import Against, OddRow, RowEvents, odd_rows
from changeover.proof.power import RunPlan, plan_run

MOST_ROWS = 0.5  # a fault on more than half of the rows counts as one of all rows
ROWS_TO_TELL = 3  # with fewer, a fault is that of its row


@dataclass(frozen=True)
class BenchPlan:
    """What the run should be able to tell: a bad meter's share of skips from a good one's."""

    good: float = 0.02
    bad: float = 0.05
    power: float = 0.8
    false_alarm: float = 0.05


@dataclass(frozen=True)
class BenchReport:
    """The verdict on a bench run.

    ``rows`` in order of row, replicates added; ``overall`` all cells together as row 0;
    ``odd_skips`` and ``odd_doubles`` each row against the rest; ``plan`` the run that the power
    wanted needs, and ``too_short`` the rows that passed fewer cells; ``symptoms`` by row.
    """

    rows: tuple[RowBench, ...]
    overall: RowBench
    odd_skips: tuple[OddRow, ...]
    odd_doubles: tuple[OddRow, ...]
    plan: RunPlan
    too_short: tuple[int, ...]
    symptoms: Mapping[int, tuple[Symptom, ...]]


def report_bench(
    counts: Sequence[BenchCount],
    limits: BenchLimits | None = None,
    *,
    level: float = 0.95,
    control: Control = Control.HOLM,
    against: Against = Against.FISHER,
    plan: BenchPlan | None = None,
) -> BenchReport:
    """Return the verdict on all rows of a bench run.

    Several counts of one row are its replicates and are added. The plan is for skips; its
    defaults, 2 % against 5 %, are a farm's common aim and no standard. Raises Refusal without
    counts, or when a row carries two meters.
    """
    limits, plan = limits or BenchLimits(), plan or BenchPlan()
    each = pooled(counts)
    rows = tuple(judge_row(one, limits, level) for one in each)
    alarm = 1 - level
    skips, doubles = (
        odd_rows(events, level=alarm, side=Side.MORE, control=control, against=against)
        for events in (
            [RowEvents(one.row, one.skips, one.cells) for one in each],
            [RowEvents(one.row, one.doubles, one.cells) for one in each],
        )
    )
    run = plan_run(plan.good, plan.bad, len(each), plan.power, plan.false_alarm)
    short = tuple(one.row for one in each if one.cells < run.cells)
    return BenchReport(
        rows=rows,
        overall=judge_row(_total(each), limits, level),
        odd_skips=skips,
        odd_doubles=doubles,
        plan=run,
        too_short=short,
        symptoms=_symptoms(rows, skips, doubles, short),
    )


def _total(counts: Sequence[BenchCount]) -> BenchCount:
    cells, skips, doubles = (
        sum(getattr(one, name) for one in counts) for name in ("cells", "skips", "doubles")
    )
    return BenchCount(0, cells, skips, doubles)


def _symptoms(
    rows: Sequence[RowBench],
    skips: Sequence[OddRow],
    doubles: Sequence[OddRow],
    short: Sequence[int],
) -> dict[int, tuple[Symptom, ...]]:
    odd_skips = {one.row for one in skips if one.odd}
    odd_doubles = {one.row for one in doubles if one.odd}
    over_skips = {one.count.row for one in rows if one.skip.standing is Standing.SHORT}
    over_doubles = {one.count.row for one in rows if one.double.standing is Standing.SHORT}
    many = MOST_ROWS * len(rows) if len(rows) >= ROWS_TO_TELL else len(rows)
    found: dict[int, tuple[Symptom, ...]] = {}
    for row in (one.count.row for one in rows):
        skip, double = row in odd_skips | over_skips, row in odd_doubles | over_doubles
        symptoms = [Symptom.SKIPS_AND_DOUBLES] if skip and double else []
        if skip:
            all_rows = len(over_skips) > many and row not in odd_skips
            symptoms.append(Symptom.SKIPS_ALL if all_rows else Symptom.SKIPS_ODD)
        if double:
            all_rows = len(over_doubles) > many and row not in odd_doubles
            symptoms.append(Symptom.DOUBLES_ALL if all_rows else Symptom.DOUBLES_ODD)
        if row in short:
            symptoms.append(Symptom.SHORT_RUN)
        found[row] = tuple(symptoms)
    return found
