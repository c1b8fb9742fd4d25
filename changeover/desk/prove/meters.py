"""What many bench runs tell together: which vacuum is best, and how a meter fares over years."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from changeover.desk.bench_runs import run_of
from changeover.desk.prove.proofs import TakenProof, meter_proofs
from changeover.desk.tune import Tuned, tune
from changeover.proof.trend import PastRun, Trend, trend
from changeover.quantities import Quantity, Units
from changeover.seed.bench_counts import Reading
from changeover.store.opening import Store


@dataclass(frozen=True)
class MeterHistory:
    """The bench runs of one meter over the years: skips and doubles with their trends."""

    serial: str
    skips: Trend
    doubles: Trend


def meter_history(store: Store, serial: str) -> MeterHistory | None:
    """Return the history of one meter, whatever row it sat on; None when it never ran."""
    skips, doubles = list[PastRun](), list[PastRun]()
    for proof in meter_proofs(store, serial):
        day = datetime.fromisoformat(proof.taken).date()
        if str(proof.kind) != "bench run":
            continue
        for line in run_of(proof).lines:
            if line.meter == serial:
                skips.append(PastRun(day, line.skips, line.cells))
                doubles.append(PastRun(day, line.doubles, line.cells))
    return MeterHistory(serial, trend(skips), trend(doubles)) if skips else None


def level_readings(proofs: Iterable[TakenProof], lot: str | None) -> tuple[Reading, ...]:
    """Return the counts of all runs with one lot at a known vacuum, for tuning."""
    found = []
    for proof in proofs:
        run = run_of(proof)
        if proof.lot != lot or run.vacuum is None:
            continue
        for line in run.lines:
            name = line.meter or f"row {line.row}"
            counts = line.cells, line.skips, line.doubles
            found.append(Reading(name, run.vacuum, *counts, position=run.position))
    return tuple(found)


def which_vacuum(
    proofs: Iterable[TakenProof],
    lot: str | None,
    present: Quantity | None = None,
    most: Quantity | None = None,
    units: Units = Units.US,
) -> Tuned | None:
    """Return what the runs with one lot advise on vacuum, None below two levels."""
    readings = level_readings(proofs, lot)
    levels = {round(float(one.vacuum.to("kPa").magnitude), 3) for one in readings}
    return tune(readings, present, most, units) if len(levels) > 1 else None
