"""Keeping proofs, which are only ever added: a withdrawal is a later line that names another."""

from collections.abc import Iterable

from sqlalchemy import select
from sqlalchemy.orm import Session

from changeover.proof.findings import Proof
from changeover.quantities import Refusal
from changeover.store.journal import Journal
from changeover.store.machine_tables import PlanterRow
from changeover.store.planters import Planters
from changeover.store.proof_tables import ProofRow
from changeover.store.proof_values import TakenProof


class Proofs:
    """The proofs of the planters in a store."""

    def __init__(self, session: Session, journal: Journal | None, planters: Planters) -> None:
        self._session, self._journal, self._planters = session, journal, planters

    def of(self, planter: str, kind: Proof | None = None) -> tuple[TakenProof, ...]:
        """Return the proofs of a planter that stand, latest first, of one kind or of all."""
        lines = [row for row in self._lines(planter) if kind in (None, row.kind)]
        found = [_value(planter, row) for row in standing(lines)]
        return tuple(sorted(found, key=lambda one: (one.taken, one.number), reverse=True))

    def get(self, planter: str, number: int) -> TakenProof:
        """Return one proof, standing or not. Raises Refusal when the planter has none such."""
        return _value(planter, self._row(planter, number))

    def add(self, proof: TakenProof) -> int:
        """Add a proof and return the number it was given. Raises Refusal without a planter."""
        row = ProofRow(
            planter_id=self._planters.number(proof.planter),
            kind=proof.kind,
            taken=proof.taken,
            who=proof.who,
            note=proof.note,
            lot=proof.lot,
            meters={str(row): serial for row, serial in proof.meters.items()},
            form=proof.form,
            readings=dict(proof.readings),
            settles=tuple(proof.settles),
            withdraws=None,
        )
        self._session.add(row)
        self._session.flush()
        self._note(proof.planter, proof.kind, row.id, "taken")
        return row.id

    def withdraw(self, planter: str, number: int, *, who: str, when: str, withdrawn: bool) -> Proof:
        """Withdraw a proof by a later line, or withdraw that line; return the kind of proof.

        Raises Refusal when the proof does not stand (or stands already), or is not known.
        """
        row = self._row(planter, number)
        lines = [one for one in self._lines(planter) if one.kind is row.kind]
        stands = number in {one.id for one in standing(lines)}
        if stands is not withdrawn:
            word = "withdrawn" if withdrawn else "standing"
            raise Refusal(f"{planter}: this {row.kind} is {word} already; look again.")
        target = number if withdrawn else _withdrawal(lines, number)
        line = ProofRow(
            planter_id=row.planter_id,
            kind=row.kind,
            taken=when,
            who=who,
            note="",
            lot=None,
            meters={},
            form=row.form,
            readings={},
            settles=(),
            withdraws=target,
        )
        self._session.add(line)
        self._session.flush()
        self._note(planter, row.kind, number, "withdrawn" if withdrawn else "taken")
        return row.kind

    def with_meter(self, serial: str) -> tuple[TakenProof, ...]:
        """Return the proofs that stand, of all planters, in which a meter ran, oldest first."""
        query = (
            select(ProofRow, PlanterRow.name)
            .join(PlanterRow, PlanterRow.id == ProofRow.planter_id)
            .order_by(ProofRow.id)
        )
        names = {line[0]: line[1] for line in self._session.execute(query)}
        found = [_value(names[row], row) for row in standing(names)]
        ran = [one for one in found if serial in one.meters.values()]
        return tuple(sorted(ran, key=lambda one: (one.taken, one.number)))

    def _lines(self, planter: str) -> list[ProofRow]:
        owner = self._planters.number(planter)
        query = select(ProofRow).where(ProofRow.planter_id == owner).order_by(ProofRow.id)
        return list(self._session.scalars(query))

    def _row(self, planter: str, number: int) -> ProofRow:
        row = self._session.get(ProofRow, number)
        owner = self._planters.number(planter)
        if row is None or row.planter_id != owner or row.withdraws is not None:
            raise Refusal(f"{planter} has no proof {number}; choose one from the list.")
        return row

    def _note(self, planter: str, kind: Proof, number: int, state: str) -> None:
        if self._journal is not None:
            old = "taken" if state == "withdrawn" else None
            self._journal.note("proof", old, state, planter=planter, setting=f"{kind} {number}")


def standing(lines: Iterable[ProofRow]) -> list[ProofRow]:
    """Return the lines that stand, oldest first; a withdrawal that is withdrawn has no effect."""
    gone: set[int] = set()
    found: list[ProofRow] = []
    for row in sorted(lines, key=lambda one: one.id, reverse=True):
        if row.id in gone:
            continue
        if row.withdraws is not None:
            gone.add(row.withdraws)
        else:
            found.append(row)
    return found[::-1]


def _withdrawal(lines: Iterable[ProofRow], number: int) -> int:
    """Return the latest line that withdraws a proof."""
    return max(row.id for row in lines if row.withdraws == number)


def _value(planter: str, row: ProofRow) -> TakenProof:
    return TakenProof(
        planter=planter,
        kind=row.kind,
        readings=row.readings,
        taken=row.taken,
        who=row.who,
        note=row.note,
        lot=row.lot,
        meters={int(number): serial for number, serial in row.meters.items()},
        settles=frozenset(row.settles),
        form=row.form,
        number=row.id,
    )
