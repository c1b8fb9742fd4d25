"""What the bench runs in a store have shown of a planter's rows, for the look-up."""

from collections.abc import Iterator

from changeover.desk.bench_runs import run_of
from changeover.planter.machine import Planter
from changeover.proof.findings import Proof
from changeover.quantities import Refusal
from changeover.seed.bench_run import BenchSeen
from changeover.store.proof_values import TakenProof
from changeover.store.unit_of_work import UnitOfWork


def bench_seen(work: UnitOfWork, planter: Planter) -> tuple[BenchSeen, ...]:
    """Return each row's part of the bench runs of a planter that name their lot, latest first."""
    proofs = work.proofs.of(planter.name, Proof.BENCH)
    return tuple(one for proof in proofs if proof.lot for one in _of(planter, proof))


def _of(planter: Planter, proof: TakenProof) -> Iterator[BenchSeen]:
    """Give the rows of one run; a run that a newer program saved tells nothing here."""
    try:
        run = run_of(proof)
    except Refusal:
        return
    names = [one.name for one in planter.singulator.positions]
    position = names.index(run.position) + 1 if run.position in names else None
    said = f"bench run of {proof.taken[:10]}".removesuffix(" of ")
    for line in run.lines:
        yield BenchSeen(
            line.row,
            proof.lot or "",
            line.cells,
            line.skips,
            line.doubles,
            run.vacuum,
            position,
            run.disc_cells,
            said,
        )
