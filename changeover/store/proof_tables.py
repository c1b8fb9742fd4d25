"""Tables of proofs, whose lines are only ever added, and of the findings that came of them."""

from typing import Any

from sqlalchemy import ForeignKey, Index
from sqlalchemy.orm import Mapped, mapped_column

from changeover.proof.findings import Proof, Weight
from changeover.store.base import Base
from changeover.store.machine_tables import OfPlanter
from changeover.store.proof_types import AdviceType, KeysType, ReadingsType
from changeover.store.proof_values import FindingState
from changeover.store.sqltypes import ChoiceType, TupleType


class ProofRow(OfPlanter, Base):
    """One proof as it was taken; ``withdraws`` makes it the withdrawal of an earlier line.

    ``form`` is the version of the readings, ``settles`` what the reading decides.
    """

    __tablename__ = "proof"
    __table_args__ = (Index("ix_proof_planter_id_kind", "planter_id", "kind"),)

    kind: Mapped[Proof] = mapped_column(ChoiceType(Proof))
    taken: Mapped[str]
    who: Mapped[str]
    note: Mapped[str]
    lot: Mapped[str | None]
    meters: Mapped[dict[str, Any]] = mapped_column(ReadingsType)
    form: Mapped[int]
    readings: Mapped[dict[str, Any]] = mapped_column(ReadingsType)
    settles: Mapped[tuple[Any, ...]] = mapped_column(KeysType)
    withdraws: Mapped[int | None] = mapped_column(ForeignKey("proof.id"))


class FindingRow(OfPlanter, Base):
    """One finding; ``state`` follows from the proofs that stand and from ``task``."""

    __tablename__ = "finding"
    __table_args__ = (Index("ix_finding_planter_id_state", "planter_id", "state"),)

    proof_id: Mapped[int] = mapped_column(ForeignKey("proof.id"))
    kind: Mapped[Proof] = mapped_column(ChoiceType(Proof))
    row: Mapped[int | None]
    part: Mapped[str]
    what: Mapped[str]
    evidence: Mapped[str]
    advice: Mapped[tuple[Any, ...]] = mapped_column(AdviceType)
    weight: Mapped[Weight] = mapped_column(ChoiceType(Weight))
    parts: Mapped[tuple[Any, ...]] = mapped_column(TupleType)
    state: Mapped[FindingState] = mapped_column(ChoiceType(FindingState))
    task: Mapped[bool]
    closed_by: Mapped[int | None] = mapped_column(ForeignKey("proof.id"))
    acknowledged: Mapped[str]
