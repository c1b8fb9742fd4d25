"""Edits of proofs and findings, carried out through the one door like all others."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from changeover.proof.findings import Finding
    from changeover.store.proof_values import TakenProof
    from changeover.switch.tasks import PartCount


@dataclass(frozen=True)
class PutProof:
    """Save a proof with the findings that came of it; each may need parts, by its place.

    Whatever the proof settles closes the findings before it. The inverse withdraws it.
    """

    says = "Save the proof"

    proof: TakenProof
    findings: tuple[Finding, ...] = ()
    parts: tuple[tuple[PartCount, ...], ...] = ()
    why: str = ""


@dataclass(frozen=True)
class WithdrawProof:
    """Withdraw a proof by a later entry, or (``withdrawn`` False) let it stand again."""

    says = "Withdraw the proof"

    planter: str
    number: int
    withdrawn: bool = True
    why: str = ""


@dataclass(frozen=True)
class MakeTask:
    """Put a finding on the worklist, or (``task`` False) take it off."""

    says = "Make it a task"

    planter: str
    finding: int
    task: bool = True
    why: str = ""
