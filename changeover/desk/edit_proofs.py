"""Editing proofs: saving one, withdrawing it, and putting its findings on the worklist."""

from dataclasses import replace

from changeover.desk.changed import Changed
from changeover.desk.effects import Effect, effect
from changeover.desk.proof_edits import MakeTask, PutProof, WithdrawProof
from changeover.store.unit_of_work import UnitOfWork


def put(work: UnitOfWork, edit: PutProof) -> Effect:
    """Save a proof and its findings; the moment and the person are filled in. Raises Refusal."""
    proof = edit.proof
    proof = replace(proof, taken=proof.taken or work.when, who=proof.who or work.who)
    if proof.lot is not None:
        work.lots.get(proof.lot)
    number = work.proofs.add(proof)
    parts = (*edit.parts, *[()] * len(edit.findings))
    found = zip(edit.findings, parts, strict=False)
    work.findings.add(proof.planter, number, found)
    work.findings.settle(proof.planter, proof.kind)
    return effect(WithdrawProof(proof.planter, number), Changed.PROOFS)


def withdraw(work: UnitOfWork, edit: WithdrawProof) -> Effect:
    """Withdraw a proof or let it stand again; findings follow. Raises Refusal."""
    kind = work.proofs.withdraw(
        edit.planter, edit.number, who=work.who, when=work.when, withdrawn=edit.withdrawn
    )
    work.findings.settle(edit.planter, kind)
    inverse = WithdrawProof(edit.planter, edit.number, withdrawn=not edit.withdrawn)
    return effect(inverse, Changed.PROOFS)


def make_task(work: UnitOfWork, edit: MakeTask) -> Effect:
    """Put a finding on the worklist or take it off. Raises Refusal, Conflict."""
    work.findings.make_task(edit.planter, edit.finding, task=edit.task)
    return effect(MakeTask(edit.planter, edit.finding, task=not edit.task), Changed.PROOFS)
