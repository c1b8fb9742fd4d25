"""Depth digs: verdict by row, and the calibration taken over into the planter and the target."""

import numpy as np
import pytest

from changeover.desk.board import Board, read_board
from changeover.desk.prove.depth import (
    DepthProof,
    accept_calibration,
    depth_of,
    import_digs,
    judge_digs,
    notches_as_found,
    read_digs,
    save_digs,
)
from changeover.desk.prove.proofs import findings, proofs
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.proof.depth import DepthGoal
from changeover.quantities import Q, Refusal

BAR = "Penny Twelve"
GOAL = DepthGoal(Q(1.75, "in"), Q(0.25, "in"))


@pytest.fixture
def board(demo) -> Board:
    return read_board(demo, BAR, proposal=False)


def digs(board, *depths: float, row: int = 2) -> DepthProof:
    return DepthProof({row: Q(np.array(depths), "in")}, GOAL, notches_as_found(board))


def test_a_shallow_row_is_found_and_two_notches_deeper_proposed(board) -> None:
    (one,) = judge_digs(board, digs(board, 1.24, 1.26, 1.25, 1.25, 1.26))
    assert (one.notch, one.notch_to) == (6, 8)
    assert one.offset.to("in").magnitude == pytest.approx(-0.498)


def test_accepting_moves_the_offset_and_sets_the_target_in_one_undo(demo, do, board) -> None:
    rows = judge_digs(board, digs(board, 1.24, 1.26, 1.25, 1.25, 1.26))
    told = do(accept_calibration(board, rows))
    after = read_board(demo, BAR, proposal=False)
    cell = Cell("depth", Place.of_row(2))
    assert after.planter.depth.depth(6, 2).to("in").magnitude == pytest.approx(1.252)
    assert after.target.get(cell) == 8
    do(told.inverse)
    back = read_board(demo, BAR, proposal=False)
    assert (back.planter, back.target.get(cell)) == (board.planter, board.target.get(cell))


def test_scattered_digs_propose_no_notch(board) -> None:
    (one,) = judge_digs(board, digs(board, 0.5, 3.9))
    assert one.notch_to is None


def test_nothing_is_accepted_without_a_known_notch(board) -> None:
    rows = judge_digs(board, DepthProof({2: Q(np.array([1.2, 1.3]), "in")}, GOAL))
    with pytest.raises(Refusal, match="known notch"):
        accept_calibration(board, rows)


def test_digs_are_kept_and_a_good_row_closes_the_finding(demo, do, board) -> None:
    proof = digs(board, 1.24, 1.26, 1.25, 1.25, 1.26)
    do(save_digs(board, proof))
    kept = depth_of(proofs(demo, BAR)[0])
    assert (kept.goal, dict(kept.notches)) == (GOAL, dict(proof.notches))
    assert [one.finding.row for one in findings(demo, BAR)] == [2]
    do(save_digs(board, digs(board, 1.74, 1.76, 1.75, 1.75, 1.76)))
    assert findings(demo, BAR) == ()


def test_digs_are_typed_and_imported(tmp_path) -> None:
    assert read_digs("1.5 1,75", "in", 4).magnitude.tolist() == [1.5, 1.75]
    path = tmp_path / "digs.csv"
    path.write_text("row,depth (mm)\n4,44\n4,46\n", encoding="utf-8")
    found = import_digs(path, DepthProof(), range(1, 13))
    assert found.rows[4].to("mm").magnitude.tolist() == [44, 46]
    with pytest.raises(Refusal, match="row 4 is not on this planter"):
        import_digs(path, DepthProof(), range(1, 4))
