"""What bench runs of this lot have shown: it moves the singulator and tunes the vacuum."""

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache
from math import sqrt

from changeover.planter.parts import Part
from changeover.planter.places import Place
from changeover.quantities import Quantity, Refusal, Units
from changeover.seed.bench_counts import Reading, counts_by_meter
from changeover.seed.bench_run import BenchSeen
from changeover.seed.case import Case
from changeover.seed.reasons import Input, Trust
from changeover.seed.singulator import moved_by_bench
from changeover.seed.trust_order import Answer, reasoned
from changeover.seed.tuning_advice import Advice, Verdict, advise_together

BY_BENCH = "vacuum tuned by bench runs"
_SURE = 1.96  # standard deviations by which skips and doubles must differ: 95 % two-sided


def seen_of(
    runs: Sequence[BenchSeen], case: Case, rows: Sequence[int], disc: Part | None
) -> tuple[BenchSeen, ...]:
    """Return the runs of a case's lot on some rows, with the same count of cells on the disc."""
    cells = disc.cells if disc is not None else None
    return tuple(
        one
        for one in runs
        if one.lot == case.lot.number
        and one.row in rows
        and (one.disc_cells is None or cells is None or one.disc_cells == cells)
    )


def singulator_by_bench(case: Case, place: Place, disc: Part | None) -> Answer | None:
    """Return the position that the latest bench run of a row asks for, None without a run.

    It stays where skips and doubles differ by less than chance makes likely.
    """
    row, index = place.row, case.planter.singulator
    if row is None:
        return None
    ran = [one for one in seen_of(case.bench, case, (row,), disc) if one.position is not None]
    if not ran or ran[0].position is None:
        return None
    run, here = ran[0], ran[0].position
    skips, doubles = run.skips / run.cells, run.doubles / run.cells
    try:
        moved = moved_by_bench(index, here, skips, doubles)
    except Refusal:
        return None
    if abs(run.skips - run.doubles) < _SURE * sqrt(run.skips + run.doubles):
        moved = here
    counted = f"{run.skips} skips and {run.doubles} doubles in {run.cells} cells"
    why = f"Row {row} had {counted} at “{index.name(here)}”: {_move(run, here, moved)}."
    reason = reasoned(
        "singulator moved by the bench run",
        why,
        run.said,
        Trust.RECORD,
        how="more doubles than skips: a step more cover; more skips: a step less; never beyond "
        "the index, and none where the two differ by less than 1.96 · √(skips + doubles)",
        inputs=(Input("bench run", run.said), Input("counted", counted)),
        cautions=("Run the bench again at the new position.",) if moved != here else (),
    )
    return Answer(moved, reason)


def _move(run: BenchSeen, here: int, moved: int) -> str:
    if moved == here:
        return "leave it there"
    return "cover more" if run.doubles > run.skips else "cover less"


def vacuum_by_bench(case: Case, place: Place, disc: Part | None, own: Answer) -> Answer:
    """Return the vacuum that bench runs at several levels found; else ``own`` with what they say.

    The runs are those of this lot on the rows of the fan, at the singulator position run last.
    """
    rows = set(case.planter.rows_of(place)) & set(case.rows)
    ran = seen_of(case.bench, case, tuple(rows), disc)
    ran = tuple(one for one in ran if one.vacuum is not None and one.position == ran[0].position)
    if len({one.vacuum for one in ran}) < 2:
        return own
    try:
        advice = _advised(_readings(ran), case.planter.fan_limit, case.units, place.label)
    except Refusal as refused:
        cautions = (str(refused), *own.reason.cautions)
        return replace(own, reason=replace(own.reason, cautions=cautions))
    if advice.verdict is not Verdict.FOUND or advice.best is None:
        cautions = (advice.says, *own.reason.cautions)
        return replace(own, reason=replace(own.reason, cautions=cautions))
    said = "; ".join(dict.fromkeys(one.said for one in ran))
    reason = reasoned(
        BY_BENCH,
        advice.says,
        said,
        Trust.RECORD,
        how=f"{len(ran)} counts at {len({one.vacuum for one in ran})} levels; skips that fall and "
        "doubles that rise are fitted, and the level of least total error is taken",
        inputs=(Input("bench runs", said),),
        says={rung.trust: rung.says for rung in own.reason.evidence if rung.used},
    )
    return Answer(advice.best, reason, advice.low, advice.high)


def _readings(ran: Sequence[BenchSeen]) -> tuple[Reading, ...]:
    """Return the runs as readings by row. Raises Refusal for a vacuum out of bounds."""
    return tuple(
        Reading(f"row {one.row}", one.vacuum, one.cells, one.skips, one.doubles)
        for one in ran
        if one.vacuum is not None
    )


@lru_cache(maxsize=32)
def _advised(
    readings: tuple[Reading, ...], most: Quantity | None, units: Units, name: str
) -> Advice:
    """Fit the runs; kept, as a proposal forms many times over the same runs. Raises Refusal."""
    return advise_together(counts_by_meter(readings), None, most, units, name.capitalize())
