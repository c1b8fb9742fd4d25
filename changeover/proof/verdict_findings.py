"""How each verdict makes findings: what fell short, the evidence, and the advice."""

from collections.abc import Iterable, Mapping

from changeover.proof.advice import Advice, Symptom, advice_for
from changeover.proof.bench import JudgedShare, RowBench, Standing
from changeover.proof.bench_report import BenchReport
from changeover.proof.cells import CellCount
from changeover.proof.depth import DepthDigs, DepthGoal, notch_change
from changeover.proof.drive_start import DriveStart
from changeover.proof.fan import Manifold, Place
from changeover.proof.findings import Finding, Proof, Weight
from changeover.proof.intervals import Interval
from changeover.proof.odd_rows import OddRow
from changeover.proof.source import ARITHMETIC, PRACTICE
from changeover.proof.spacing_limits import SpacingVerdict
from changeover.proof.wear import Kind, WearState, WearVerdict
from changeover.proof.wording import percent, said
from changeover.quantities import Quantity, how_many

METER = "meter"
DEPTH = "depth"
DRIVE = "drive"
SPACING = "spacing"


def bench_findings(report: BenchReport) -> tuple[Finding, ...]:
    """Return one finding for each row with a symptom; a short run alone is only to watch."""
    odd = {one.row: one for one in (*report.odd_skips, *report.odd_doubles) if one.odd}
    found = []
    for row in report.rows:
        symptoms = report.symptoms[row.count.row]
        if not symptoms:
            continue
        advice = tuple(a for symptom in symptoms for a in advice_for(symptom))
        weight = Weight.WATCH if symptoms == (Symptom.SHORT_RUN,) else Weight.WORK
        number = row.count.row
        evidence = _bench_evidence(row, odd.get(number), report.plan.cells)
        found.append(
            Finding(Proof.BENCH, number, METER, str(symptoms[0]), evidence, advice, weight)
        )
    return tuple(found)


def cell_findings(row: int, cells: Iterable[CellCount]) -> tuple[Finding, ...]:
    """Return a finding for each cell of a row's disc that fails at every turn."""
    return tuple(
        Finding(
            Proof.BENCH,
            row,
            f"{METER}, cell {one.cell}",
            f"cell {one.cell} of the disc fails again and again",
            f"{one.events} of {one.passes} passes (p = {one.adjusted:.2g} by Holm)",
            advice_for(Symptom.REPEATING_CELL),
        )
        for one in cells
        if one.damaged
    )


def spacing_findings(verdicts: Mapping[int, SpacingVerdict]) -> tuple[Finding, ...]:
    """Return a finding for each row whose spacing falls short of a limit beyond doubt."""
    found = []
    for row, verdict in verdicts.items():
        short = [one for one in verdict.figures if one.standing is Standing.SHORT]
        if short:
            evidence = "; ".join(
                f"{one.name} {percent(one.value)}{_between(one.interval)}, "
                f"limit {percent(one.limit or 0.0)}"
                for one in short
            )
            advice = _spacing_advice({one.name for one in short})
            what = f"spacing falls short: {', '.join(one.name for one in short)}"
            found.append(Finding(Proof.SPACING, row, SPACING, what, evidence, advice))
    return tuple(found)


def depth_findings(
    digs: Iterable[DepthDigs], goal: DepthGoal, steps: Mapping[int, Quantity]
) -> tuple[Finding, ...]:
    """Return a finding for each row planted too deep or too shallow, or too unevenly.

    ``steps`` is the depth between notches by row, which sets the notch change advised.
    """
    found = []
    for one in digs:
        poor = Standing.SHORT in (one.standing, one.share_standing)
        undecided = Standing.OPEN in (one.standing, one.share_standing)
        if not poor and not undecided:
            continue
        found.append(
            Finding(
                Proof.DEPTH,
                one.row,
                DEPTH,
                "depth off target" if poor else "depth not proved",
                _depth_evidence(one, goal),
                _depth_advice(one, goal, steps.get(one.row)),
                Weight.WORK if poor else Weight.WATCH,
            )
        )
    return tuple(found)


def start_findings(start: DriveStart, group: str = "") -> tuple[Finding, ...]:
    """Return a finding for the first unmet condition of a drive, none when there is none."""
    first = start.first_unmet
    if first is None:
        return ()
    evidence = next(one.evidence for one in start.conditions if one.condition is first)
    part = f"{DRIVE} {group}".strip()
    what = f"drive does not start: {first} – not met"
    return (Finding(Proof.DRIVE, None, part, what, evidence, start.next_steps),)


def vacuum_findings(manifold: Manifold) -> tuple[Finding, ...]:
    """Return a finding for each row that stands out, and one when the far row runs short."""
    found = [
        Finding(
            Proof.VACUUM,
            one.row,
            f"vacuum, {manifold.fan}",
            f"vacuum {one.place}",
            f"{said(one.vacuum)}, {percent(one.share)} of the set value",
            manifold.advice,
        )
        for one in manifold.rows
        if one.place is not Place.FINE
    ]
    if not manifold.far_ok:
        far = manifold.rows[-1]
        evidence = f"row {far.row}: {said(far.vacuum)} of {said(manifold.set_value)} set"
        part = f"vacuum, {manifold.fan}"
        what = "the far row lacks vacuum"
        found.append(Finding(Proof.VACUUM, None, part, what, evidence, manifold.advice))
    return tuple(found)


def wear_findings(verdicts: Iterable[WearVerdict]) -> tuple[Finding, ...]:
    """Return a finding for each part to replace or to watch, with the limit's source."""
    found = []
    for one in verdicts:
        if one.limit is None or one.condition not in (WearState.REPLACE, WearState.WATCH):
            continue
        worn = one.condition is WearState.REPLACE
        looked = one.limit.kind is Kind.LOOK
        named = one.reading.part[:1].upper() + one.reading.part[1:] if looked else one.limit.name
        what = f"{named}: {one.condition}"
        advice = (Advice(one.limit.action, one.limit.source, JACK),)
        found.append(
            Finding(
                Proof.WEAR,
                one.reading.row,
                one.reading.part,
                what,
                one.says.rstrip("."),
                advice,
                Weight.WORK if worn else Weight.WATCH,
            )
        )
    return tuple(found)


JACK = "Lower the planter, or lock its cylinders and set stands, before anyone goes under."


def _bench_evidence(row: RowBench, odd: OddRow | None, needed: int) -> str:
    parts = [f"{_judged('skips', row.skip)}", f"{_judged('doubles', row.double)}"]
    parts.append(f"{row.count.cells} cells (plan {needed})")
    if odd is not None:
        parts.append(f"rest at {percent(odd.rest)}, p = {odd.adjusted:.2g}")
    return "; ".join(parts)


def _judged(name: str, one: JudgedShare) -> str:
    limit = "" if one.limit is None else f", limit {percent(one.limit)}"
    return f"{name} {percent(one.share)}{_between(one.interval)}{limit}"


def _between(interval: Interval | None) -> str:
    if interval is None:
        return ""
    return f" ({percent(interval.low)} to {percent(interval.high)})"


def _spacing_advice(names: set[str]) -> tuple[Advice, ...]:
    advice: list[Advice] = []
    if "misses" in names:
        advice.extend(advice_for(Symptom.SKIPS_ODD))
    if "multiples" in names:
        advice.extend(advice_for(Symptom.DOUBLES_ODD))
    advice.append(Advice("Check the seed tube for wear, and drive slower.", PRACTICE))
    advice.append(Advice("Run this meter on the bench: is it the meter or the way down?", PRACTICE))
    return tuple(advice)


def _depth_evidence(one: DepthDigs, goal: DepthGoal) -> str:
    span = ""
    if one.interval is not None:
        span = f" ({one.interval.low:.2f} to {one.interval.high:.2f})"
    return (
        f"mean {said(one.mean)}{span} of {how_many(one.n, 'dig')}, target {said(goal.target)} "
        f"± {said(goal.tolerance)}; {percent(one.in_tolerance or 0.0, 0)} in tolerance"
    )


def _depth_advice(one: DepthDigs, goal: DepthGoal, step: Quantity | None) -> tuple[Advice, ...]:
    advice = []
    change = None if step is None else notch_change(one, goal.target, step)
    if change:
        way = "deeper" if change > 0 else "shallower"
        text = f"Set the depth {abs(change)} notch{'es' if abs(change) > 1 else ''} {way}."
        advice.append(Advice(text, ARITHMETIC, JACK))
    if one.digs_needed:
        advice.append(Advice(f"Dig {one.digs_needed} more to fix the mean to ⅛ in.", ARITHMETIC))
    if one.share_standing is Standing.SHORT:
        text = "Uneven depth: check down pressure, gauge-wheel arms and speed."
        advice.append(Advice(text, PRACTICE, JACK))
    return tuple(advice)
