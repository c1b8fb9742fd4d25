"""A proof is saved through the door, undone by withdrawal, and its findings become tasks."""

from changeover.desk.changed import Changed
from changeover.desk.door import apply
from changeover.desk.prove.proofs import MakeTask, TakenProof, findings, proofs, save_proof
from changeover.proof.findings import Finding, Proof

FELL_SHORT = Finding(Proof.WEAR, 2, "opener disc", "opener disc: replace", "14.2 in", ())


def wear(**more) -> TakenProof:
    return TakenProof("Bar", Proof.WEAR, {"lines": [{"row": 2}]}, **more)


def test_saving_a_proof_fills_in_who_and_when_and_is_undone_by_withdrawal(small) -> None:
    told = apply(small, save_proof(wear(), [FELL_SHORT]), "Ada")
    (one,) = proofs(small, "Bar")
    assert (one.who, bool(one.taken), told.changed) == ("Ada", True, frozenset({Changed.PROOFS}))
    back = apply(small, told.inverse, "Ada")
    assert (proofs(small, "Bar"), findings(small, "Bar")) == ((), ())
    apply(small, back.inverse, "Ada")
    assert [one.finding for one in findings(small, "Bar", Proof.WEAR)] == [FELL_SHORT]
    assert findings(small, "Bar", Proof.BENCH) == ()


def test_a_finding_is_put_on_the_worklist_and_taken_off_by_undo(small) -> None:
    apply(small, save_proof(wear(), [FELL_SHORT]), "Ada")
    (found,) = findings(small, "Bar")
    told = apply(small, MakeTask("Bar", found.number), "Ada")
    assert findings(small, "Bar")[0].state == "task"
    apply(small, told.inverse, "Ada")
    assert findings(small, "Bar")[0].state == "open"
