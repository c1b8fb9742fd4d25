"""Keeping findings: raised by a proof, made a task, and closed by a later reading alone."""

from collections.abc import Iterable

from sqlalchemy import select
from sqlalchemy.orm import Session

from changeover.proof.findings import Finding, Proof, Weight
from changeover.quantities import Refusal
from changeover.store.journal import Journal
from changeover.store.planters import Planters
from changeover.store.proof_tables import FindingRow, ProofRow
from changeover.store.proof_values import FindingState, KeptFinding
from changeover.store.proofs import standing
from changeover.store.refusals import Conflict
from changeover.switch.tasks import PartCount


class Findings:
    """The findings of the planters in a store."""

    def __init__(self, session: Session, journal: Journal | None, planters: Planters) -> None:
        self._session, self._journal, self._planters = session, journal, planters

    def of(self, planter: str, *, closed: bool = False) -> tuple[KeptFinding, ...]:
        """Return the findings that are open or a task, with ``closed`` also those closed.

        Work comes before what is only to be watched, then by row; a thing that is work already
        is not listed again to be watched.
        """
        owner = self._planters.number(planter)
        query = (
            select(FindingRow, ProofRow.taken)
            .join(ProofRow, ProofRow.id == FindingRow.proof_id)
            .where(FindingRow.planter_id == owner, FindingRow.state != FindingState.WITHDRAWN)
        )
        found = [_value(planter, row, taken) for row, taken in self._session.execute(query)]
        if not closed:
            found = [one for one in found if one.unsettled]
        found.sort(key=_order)
        return _once_each(found)

    def get(self, planter: str, number: int) -> KeptFinding:
        """Return one finding. Raises Refusal when the planter has none such."""
        row = self._row(planter, number)
        taken = self._session.scalar(select(ProofRow.taken).where(ProofRow.id == row.proof_id))
        return _value(planter, row, taken or "")

    def add(
        self, planter: str, proof: int, found: Iterable[tuple[Finding, tuple[PartCount, ...]]]
    ) -> None:
        """Add the findings of a proof, each with the parts that the work on it needs."""
        owner = self._planters.number(planter)
        for finding, parts in found:
            self._session.add(
                FindingRow(
                    planter_id=owner,
                    proof_id=proof,
                    kind=finding.proof,
                    row=finding.row,
                    part=finding.part,
                    what=finding.what,
                    evidence=finding.evidence,
                    advice=finding.advice,
                    weight=finding.weight,
                    parts=tuple([one.part, one.count] for one in parts),
                    state=FindingState.OPEN,
                    task=False,
                    closed_by=None,
                    acknowledged="",
                )
            )
        self._session.flush()

    def make_task(self, planter: str, number: int, *, task: bool) -> None:
        """Put a finding on the worklist, or take it off. Raises Refusal, Conflict."""
        row = self._row(planter, number)
        if row.state not in (FindingState.OPEN, FindingState.TASK):
            raise Refusal(f"“{row.what}” is {row.state} by now; look again.")
        if row.task is task:
            raise Conflict(f"“{row.what}”", "task" if task else "open", row.state)
        row.task = task
        self._put_state(planter, row, FindingState.TASK if task else FindingState.OPEN)

    def acknowledge(self, planter: str, number: int, words: str) -> str:
        """Keep the words with which a finding is taken note of; return those before."""
        row = self._row(planter, number)
        before, row.acknowledged = row.acknowledged, words
        self._session.flush()
        if self._journal is not None and before != words:
            self._journal.note(
                "finding", before or None, words or None, planter=planter, setting=_title(row)
            )
        return before

    def settle(self, planter: str, kind: Proof) -> None:
        """Bring the state of every finding of one kind up to the proofs that stand.

        A finding goes with the proof it came of. It is closed by the first later proof that
        settles its row and part.
        """
        owner = self._planters.number(planter)
        proofs = select(ProofRow).where(ProofRow.planter_id == owner, ProofRow.kind == kind)
        stand = standing(self._session.scalars(proofs))
        numbers = {row.id for row in stand}
        found = select(FindingRow).where(FindingRow.planter_id == owner, FindingRow.kind == kind)
        for row in self._session.scalars(found):
            closing = next((p for p in stand if p.id > row.proof_id and _settles(p, row)), None)
            row.closed_by = None if closing is None else closing.id
            if row.proof_id not in numbers:
                state = FindingState.WITHDRAWN
            elif closing is not None:
                state = FindingState.CLOSED
            else:
                state = FindingState.TASK if row.task else FindingState.OPEN
            self._put_state(planter, row, state)

    def _put_state(self, planter: str, row: FindingRow, state: FindingState) -> None:
        old, row.state = row.state, state
        self._session.flush()
        if self._journal is not None and old is not state:
            self._journal.note("finding", old, state, planter=planter, setting=_title(row))

    def _row(self, planter: str, number: int) -> FindingRow:
        row = self._session.get(FindingRow, number)
        if row is None or row.planter_id != self._planters.number(planter):
            raise Refusal(f"{planter} has no finding {number}; choose one from the list.")
        return row


def _settles(proof: ProofRow, finding: FindingRow) -> bool:
    return (finding.row, finding.part) in proof.settles


def _title(row: FindingRow) -> str:
    return f"row {row.row}: {row.what}" if row.row is not None else row.what


def _order(one: KeptFinding) -> tuple[bool, int, int]:
    return one.finding.weight is Weight.WATCH, one.finding.row or 0, one.number


def _once_each(found: list[KeptFinding]) -> tuple[KeptFinding, ...]:
    work = {one.finding.key for one in found if one.bars_signing}
    return tuple(
        one for one in found if one.bars_signing or not one.unsettled or one.finding.key not in work
    )


def _value(planter: str, row: FindingRow, taken: str) -> KeptFinding:
    return KeptFinding(
        number=row.id,
        planter=planter,
        finding=Finding(
            row.kind, row.row, row.part, row.what, row.evidence, row.advice, row.weight
        ),
        state=row.state,
        proof=row.proof_id,
        taken=taken,
        closed_by=row.closed_by,
        parts=tuple(PartCount(part, count) for part, count in row.parts),
        acknowledged=row.acknowledged,
    )
