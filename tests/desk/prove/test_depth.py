"""Depth digs: verdict by row, and the calibration taken over into the planter and the target."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta

import numpy as np
import pytest

from changeover.desk.board import Board, read_board
from changeover.desk.prove.depth import (
    DepthProof,
    accept_calibration,
    depth_of,
    earlier_digs,
    import_digs,
    judge_digs,
    notches_as_found,
    read_digs,
    save_digs,
)
from changeover.desk.prove.proofs import Proof, TakenProof, findings, proofs
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
    assert one.calibration.offset.to("in").magnitude == pytest.approx(-0.498)
    assert one.calibration.why.startswith("Only the offset. 5 digs at notch 6")


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


def two_notches(board) -> DepthProof:
    """Return digs of row 2 at notches 4 and 8, where it stands now: 0.2 in a notch."""
    first = replace(digs(board), rows={}, notches={})
    shallow = first.with_digs(2, 4, Q(np.array([1.58, 1.6, 1.62]), "in"))
    return shallow.with_digs(2, 8, Q(np.array([2.35, 2.4, 2.45]), "in"))


def test_digs_at_two_notches_are_taken_over_as_the_rows_own_line(demo, do, board) -> None:
    (one,) = judge_digs(board, two_notches(board))
    assert (one.digs.n, one.notch, one.notch_to) == (3, 8, 5)
    told = do(accept_calibration(board, (one,)))
    after = read_board(demo, BAR, proposal=False)
    scale = after.planter.depth
    assert scale.step_of(2).to("in").magnitude == pytest.approx(0.2)
    assert (scale.digs[2].digs, after.target.get(Cell("depth", Place.of_row(2)))) == (6, 5)
    with demo.read() as work:
        lines = [one for one in work.history.latest(BAR, 9) if one.setting == "depth"]
    assert any("a notch, by 6 digs" in line.new for line in lines)
    do(told.inverse)
    assert read_board(demo, BAR, proposal=False).planter == board.planter


def test_the_entry_of_the_history_says_how_many_lines_were_taken(board) -> None:
    edit = accept_calibration(board, judge_digs(board, two_notches(board)))
    assert edit.why == "depth digs on 1 row, 1 with a line of its own"


def test_digs_of_the_same_notch_give_way_and_those_of_another_stay(board) -> None:
    proof = two_notches(board)
    again = proof.with_digs(2, 8, Q(np.array([2.5]), "in"))
    assert sorted(again.dug(2)) == [4, 8]
    assert again.dug(2)[8].magnitude.tolist() == [2.5]
    back = again.with_digs(2, 4, Q(np.array([1.5]), "in"))
    assert (back.notches[2], list(back.dug(2))) == (4, [8, 4])


def test_digs_taken_out_let_those_before_them_come_forward(board) -> None:
    proof = two_notches(board)
    left = proof.without_digs(2, 8)
    assert (left.notches[2], left.rows[2].magnitude.tolist()) == (4, [1.58, 1.6, 1.62])
    assert proof.without_digs(2, 4).dug(2).keys() == {8}
    assert proof.without_digs(2, 4).without_digs(2, 8).rows == {}


def test_digs_at_further_notches_are_kept_with_the_proof(demo, do, board) -> None:
    proof = two_notches(board)
    do(save_digs(board, proof))
    kept = depth_of(proofs(demo, BAR)[0])
    assert [depths.tolist() for depths in (kept.dug(2)[n].magnitude for n in (4, 8))] == [
        [1.58, 1.6, 1.62],
        [2.35, 2.4, 2.45],
    ]


def saved_and_now(demo, do, board) -> tuple[Sequence[TakenProof], date, DepthProof]:
    """Save digs of row 2 at notch 6; return what is saved, that day, and digs at notch 8."""
    do(save_digs(board, digs(board, 1.58, 1.6, 1.62)))
    saved = proofs(demo, BAR, Proof.DEPTH)
    empty = replace(digs(board), rows={}, notches={})
    now = empty.with_digs(2, 8, Q(np.array([2.05, 2.1, 2.15]), "in"))
    return saved, datetime.fromisoformat(saved[0].taken).date(), now


@pytest.mark.parametrize(("past", "counted"), [(3, True), (365, True), (366, False), (-1, False)])
def test_digs_of_earlier_days_count_for_the_line_for_a_year(demo, do, board, past, counted) -> None:
    saved, day, now = saved_and_now(demo, do, board)
    (one,) = judge_digs(board, now, earlier_digs(saved, day + timedelta(days=past)))
    assert one.calibration.own_line is counted
    assert one.digs.n == 3


@pytest.mark.parametrize(("past", "cautioned"), [(0, False), (3, True)])
def test_digs_of_another_day_bring_a_caution(demo, do, board, past, cautioned) -> None:
    saved, day, now = saved_and_now(demo, do, board)
    (one,) = judge_digs(board, now, earlier_digs(saved, day + timedelta(days=past)))
    assert any("dug on 2 days" in words for words in one.calibration.cautions) is cautioned


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
    found = import_digs(path, DepthProof(), range(1, 13), 13)
    assert found.rows[4].to("mm").magnitude.tolist() == [44, 46]
    with pytest.raises(Refusal, match="row 4 is not on this planter"):
        import_digs(path, DepthProof(), range(1, 4), 13)


def test_imported_digs_stand_at_the_notches_of_the_file(tmp_path) -> None:
    path = tmp_path / "digs.csv"
    path.write_text("row,notch,depth (in)\n4,5,1.6\n4,8,2.4\n4,5,1.7\n", encoding="utf-8")
    found = import_digs(path, DepthProof(), range(1, 13), 13)
    assert (found.notches[4], found.rows[4].magnitude.tolist()) == (5, [1.6, 1.7])
    assert found.dug(4)[8].magnitude.tolist() == [2.4]
    with pytest.raises(Refusal, match="row 4, notch 8: there are 1 to 7"):
        import_digs(path, DepthProof(), range(1, 13), 7)
