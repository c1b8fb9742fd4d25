"""Proving: the proofs of a planter, the findings that came of them, and saving a new one."""

from collections.abc import Sequence

from changeover.desk.proof_edits import MakeTask, PutProof, WithdrawProof
from changeover.proof.findings import Finding, Proof
from changeover.store.opening import Store
from changeover.store.proof_values import (
    FORM,
    FindingKey,
    FindingState,
    KeptFinding,
    Readings,
    TakenProof,
)
from changeover.switch.tasks import PartCount

__all__ = [
    "FORM",
    "FindingKey",
    "FindingState",
    "KeptFinding",
    "MakeTask",
    "Proof",
    "PutProof",
    "Readings",
    "TakenProof",
    "WithdrawProof",
    "findings",
    "meter_proofs",
    "proofs",
    "save_proof",
]


def proofs(store: Store, planter: str, kind: Proof | None = None) -> tuple[TakenProof, ...]:
    """Return the proofs of a planter that stand, latest first, of one kind or of all."""
    with store.read() as work:
        return work.proofs.of(planter, kind)


def meter_proofs(store: Store, serial: str) -> tuple[TakenProof, ...]:
    """Return the proofs of all planters in which a meter ran, oldest first."""
    with store.read() as work:
        return work.proofs.with_meter(serial)


def findings(
    store: Store, planter: str, kind: Proof | None = None, *, closed: bool = False
) -> tuple[KeptFinding, ...]:
    """Return the findings of a planter that no reading has closed, work first, then by row.

    ``closed`` adds those that a later reading closed; ``kind`` keeps to one sort of proof.
    """
    with store.read() as work:
        found = work.findings.of(planter, closed=closed)
    return tuple(one for one in found if kind in (None, one.finding.proof))


def save_proof(
    proof: TakenProof,
    found: Sequence[Finding] = (),
    parts: Sequence[tuple[PartCount, ...]] = (),
    why: str = "",
) -> PutProof:
    """Return the edit that saves a proof with its findings and the parts that each needs."""
    return PutProof(proof, tuple(found), tuple(parts), why)
