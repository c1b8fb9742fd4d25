"""Gauge readings are judged along each fan's manifold and saved with what falls short."""

from dataclasses import replace
from datetime import date

import pytest

from changeover.desk.board import Board, read_board
from changeover.desk.door import apply
from changeover.desk.gauge import (
    Gauges,
    branches_of,
    compared,
    fans,
    findings_of,
    first_gauges,
    gauges_taken,
    judge,
    save,
)
from changeover.desk.opening import Store
from changeover.desk.prove.proofs import Proof, findings
from changeover.planter.groups import Group
from changeover.planter.places import Scope
from changeover.quantities import Q, Refusal

DAY = date(2026, 3, 1)
FIDDLE = "Old Fiddle 24"


@pytest.fixture
def board(demo: Store) -> Board:
    return read_board(demo, FIDDLE, proposal=False)


def even(board: Board, **other: float) -> Gauges:
    """Readings at the set value but for the rows named, such as ``r9=10.0``."""
    start = first_gauges(board, DAY)
    sizes = dict.fromkeys(range(1, 25), 18.0) | {int(k[1:]): v for k, v in other.items()}
    values = {one.name: Q(18.0, "inH2O") for one in fans(board)}
    return replace(start, cells={row: Q(v, "inH2O") for row, v in sizes.items()}, set_values=values)


def test_a_fan_in_the_middle_has_two_branches() -> None:
    group = Group(Scope.FAN, "fan 1", (1, 2, 3, 4, 5))
    assert branches_of(group, 3) == (
        ("fan 1 to the left", (3, 2, 1)),
        ("fan 1 to the right", (3, 4, 5)),
    )
    assert branches_of(group, 1) == (("fan 1", (1, 2, 3, 4, 5)),)
    assert branches_of(group, 5) == (("fan 1", (5, 4, 3, 2, 1)),)


def test_an_even_planter_has_no_findings_and_like_fans(board: Board) -> None:
    found = judge(board, even(board))
    assert all(branch.far_ok for one in found for branch in one.branches)
    assert findings_of(found) == ()
    (pair,) = compared(found)
    assert (pair.difference, pair.alike) == (0.0, True)


def test_a_leak_is_a_finding_of_its_row_under_its_fan(board: Board) -> None:
    (found,) = findings_of(judge(board, even(board, r9=12.0)))
    assert (found.row, found.part) == (9, "vacuum, fan 1")
    assert "12" in found.evidence


def test_the_row_that_a_fan_feeds_is_named_once(board: Board) -> None:
    near = first_gauges(board, DAY).near["fan 1"]
    found = findings_of(judge(board, even(board, **{f"r{near}": 12.0})))
    assert [one.row for one in found] == [near]


def test_a_weak_fan_is_seen_beside_the_other(board: Board) -> None:
    weak = {f"r{row}": 16.0 for row in range(13, 25)}
    (pair,) = compared(judge(board, even(board, **weak)))
    assert not pair.alike
    assert pair.difference == pytest.approx(2 / 18)


def test_findings_are_closed_by_the_next_readings(demo: Store, board: Board) -> None:
    apply(demo, save(board, even(board, r9=12.0)), "Ada")
    assert [one.finding.row for one in findings(demo, FIDDLE, Proof.VACUUM)] == [9]
    apply(demo, save(board, even(board)), "Ada")
    assert findings(demo, FIDDLE, Proof.VACUUM) == ()


def test_readings_come_back_and_the_fan_stays_where_it_was(demo: Store, board: Board) -> None:
    taken = replace(even(board), near={"fan 1": 12, "fan 2": 13})
    apply(demo, save(board, taken), "Ada")
    (found,) = gauges_taken(demo, FIDDLE)
    assert replace(found, number=0) == taken
    assert first_gauges(board, DAY, found).near == {"fan 1": 12, "fan 2": 13}


def test_nothing_is_saved_while_a_row_is_missing(demo: Store, board: Board) -> None:
    gauges = even(board)
    cells = {row: one for row, one in gauges.cells.items() if row != 7}
    with pytest.raises(Refusal, match="Row 7 of fan 1 has no gauge reading"):
        save(board, replace(gauges, cells=cells))
    with pytest.raises(Refusal, match="enter the set value"):
        save(board, replace(gauges, set_values={}))
    assert gauges_taken(demo, FIDDLE) == ()
