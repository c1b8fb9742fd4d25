"""Findings stay open until they are read again."""

from changeover.proof.bench_events import CellEvent, EventKind
from changeover.proof.cells import count_by_cell
from changeover.proof.findings import Finding, Proof, still_open
from changeover.proof.verdict_findings import cell_findings


def finding(row: int, proof: Proof = Proof.BENCH, what: str = "skips") -> Finding:
    return Finding(proof, row, "meter", what, "5 %", ())


def test_only_a_new_reading_closes_a_finding() -> None:
    before = [finding(1), finding(2)]
    assert still_open(before, [], []) == tuple(before)
    assert still_open(before, [], [before[0].key]) == (before[1],)


def test_a_row_that_fails_again_is_listed_once_and_anew() -> None:
    again = finding(1, what="doubles")
    assert still_open([finding(1)], [again], [again.key]) == (again,)


def test_another_proof_of_the_row_closes_nothing() -> None:
    before = [finding(1)]
    assert still_open(before, [], [(Proof.DEPTH, 1, "meter")]) == tuple(before)


def test_a_damaged_cell_becomes_a_finding() -> None:
    events = [CellEvent(cell, EventKind.SKIP) for cell in range(7, 500, 30)]
    (found,) = cell_findings(4, count_by_cell(events, 500, 30))
    assert found.row == 4
    assert found.part == "meter, cell 7"
    assert "17 of 17 passes" in found.evidence
