"""What passed since a switch began, in one line, as the setup's record of how it proved."""

from collections.abc import Iterable
from datetime import datetime

from changeover.desk.bench_runs import run_of
from changeover.desk.prove.bench import judge_run
from changeover.desk.prove.depth import depth_of
from changeover.desk.prove.proofs import Proof, TakenProof
from changeover.desk.prove.spacing import judge_test, spacing_of
from changeover.proof.depth import judge_depths
from changeover.proof.wording import percent
from changeover.quantities import Units, how_many, show


def how_it_proved(proofs: Iterable[TakenProof], since: str, units: Units) -> str:
    """Return a line on the latest bench run, spacing test and digs since a moment, empty for none.

    ``since`` is ISO 8601 text; ``proofs`` come latest first.
    """
    begun = datetime.fromisoformat(since)
    seen: dict[Proof, TakenProof] = {}
    for one in proofs:
        if datetime.fromisoformat(one.taken) >= begun and not one.readings.get("to_tune"):
            seen.setdefault(one.kind, one)
    said = (_SAY[kind](seen[kind], units) for kind in _SAY if kind in seen)
    return "; ".join(said)


def _bench(proof: TakenProof, _units: Units) -> str:
    whole = judge_run(run_of(proof)).report.overall
    return f"{percent(whole.single.share)} singles of {whole.count.cells} cells on the bench"


def _spacing(proof: TakenProof, _units: Units) -> str:
    whole = judge_test(spacing_of(proof)).overall
    return f"{percent(whole.by_spacings.quality_of_feed)} of {whole.n} spacings single"


def _depth(proof: TakenProof, units: Units) -> str:
    digs = judge_depths(depth_of(proof).rows)
    n = sum(one.n for one in digs)
    mean = sum(one.mean.to("mm") * one.n for one in digs) / n
    return f"{show(mean, 'depth', units)} deep in {how_many(n, 'dig')}"


_SAY = {Proof.BENCH: _bench, Proof.SPACING: _spacing, Proof.DEPTH: _depth}
