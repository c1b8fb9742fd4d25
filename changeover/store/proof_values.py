"""Proofs and findings as the store keeps them, as plain values."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Any, TypeAlias

from changeover.proof.findings import Finding, Proof, Weight
from changeover.quantities import Refusal
from changeover.switch.tasks import PartCount

FindingKey: TypeAlias = tuple[int | None, str]
Readings: TypeAlias = Mapping[str, Any]
FORM = 1  # the version in which readings are written today


class FindingState(StrEnum):
    """How a finding stands: open, on the worklist, closed by a reading, or gone with its proof."""

    OPEN = "open"
    TASK = "task"
    CLOSED = "closed"
    WITHDRAWN = "withdrawn"


@dataclass(frozen=True)
class TakenProof:
    """One proof of a planter: what was read, when, by whom, with which lot and meters.

    ``readings`` is a mapping of texts to figures, texts, quantities, and lists and mappings of
    them. ``meters`` names the serial of the meter on a row. ``settles`` holds the row (None for
    no single row) and the part of all that this reading decides: a finding on one of them is
    closed, or found anew. ``taken`` is ISO 8601 text in UTC; empty, like ``who``, it is filled
    in when the proof is put. ``number`` is the store's own, 0 until then.
    """

    planter: str
    kind: Proof
    readings: Readings
    taken: str = ""
    who: str = ""
    note: str = ""
    lot: str | None = None
    meters: Mapping[int, str] = field(default_factory=dict)
    settles: frozenset[FindingKey] = frozenset()
    form: int = FORM
    number: int = 0

    def __post_init__(self) -> None:
        if not self.readings:
            raise Refusal(f"The {self.kind} has no readings; enter at least one.")


@dataclass(frozen=True)
class KeptFinding:
    """A finding in the store: how it stands, the proof it came of, and the one that closed it.

    ``parts`` are those that the work on it needs; ``acknowledged`` holds the words with which a
    switch was signed off in spite of it.
    """

    number: int
    planter: str
    finding: Finding
    state: FindingState
    proof: int
    taken: str
    closed_by: int | None = None
    parts: tuple[PartCount, ...] = ()
    acknowledged: str = ""

    @property
    def unsettled(self) -> bool:
        """Whether no reading has closed it yet."""
        return self.state in (FindingState.OPEN, FindingState.TASK)

    @property
    def bars_signing(self) -> bool:
        """Whether it must be acknowledged before a switch is signed off."""
        return self.unsettled and self.finding.weight is Weight.WORK
