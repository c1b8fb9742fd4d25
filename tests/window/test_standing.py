"""How a board stands: marks of rows and counts."""

from dataclasses import replace

from changeover.planter.places import Place
from changeover.planter.setup import Cell, Setup
from changeover.window.marks import Mark
from changeover.window.standing import Standing
from tests.window.invented import make_board, split_planter


def test_rows_at_their_target_are_ready_and_the_others_have_work() -> None:
    standing = Standing(make_board(done=9))
    assert (standing.ready, standing.to_do) == (9, 15)
    assert standing.marks[9] is Mark.READY
    assert standing.marks[10] is Mark.WORK


def test_a_row_locked_up_now_is_told_from_one_that_is_ready() -> None:
    board = make_board(split_planter(), chosen=False)
    up = {Cell("row_lock", Place.of_row(2)): "locked up"}
    standing = Standing(replace(board, as_found=board.as_found.with_values(up)))
    assert standing.marks[2] is Mark.LOCKED
    assert standing.marks[3] is Mark.READY


def test_a_row_of_which_nothing_is_known_is_marked_so() -> None:
    standing = Standing(replace(make_board(chosen=False), as_found=Setup()))
    assert set(standing.marks.values()) == {Mark.UNKNOWN}
    assert not standing.rows_known
