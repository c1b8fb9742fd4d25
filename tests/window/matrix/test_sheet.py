"""The sheet: lines, columns, looks, odd ones, and what it keeps from an earlier one."""

from dataclasses import replace

import pytest

from changeover.desk.board import Board
from changeover.desk.edits import Side
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Q, Units
from changeover.window.matrix.sheet import Look, Sheet, Shown, odd_ones, unit_words
from changeover.window.standing import Standing
from tests.window.invented import ground_planter, make_board, split_planter


def sheet_of(
    board: Board, shown: Shown = Shown.BOTH, units: Units = Units.US, **more: object
) -> Sheet:
    return Sheet(board, Standing(board), units, shown, **more)  # type: ignore[arg-type]


def line_of(sheet: Sheet, key: str) -> int:
    return [setting.key for setting in sheet.lines].index(key)


def look_at(sheet: Sheet, key: str, row: int) -> Look:
    return sheet.look(line_of(sheet, key), sheet.rows.index(row))


def test_hidden_settings_and_those_that_do_not_apply_are_no_lines() -> None:
    keys = {setting.key for setting in sheet_of(make_board()).lines}
    assert "disc" in keys
    assert not keys & {"seed_left", "row_lock", "sprockets"}


def test_a_ground_drive_has_sprockets_and_a_split_planter_row_locks() -> None:
    ground, split = sheet_of(make_board(ground_planter())), sheet_of(make_board(split_planter()))
    assert "sprockets" in {setting.key for setting in ground.lines}
    assert "row_lock" in {setting.key for setting in split.lines}


def test_a_cell_that_differs_shows_both_values() -> None:
    assert look_at(sheet_of(make_board()), "depth", 14) == Look("2.00", "1.25", differs=True)
    assert look_at(sheet_of(make_board()), "depth", 2) == Look("1.25", "1.25")


def test_a_depth_is_shown_through_the_rows_own_line_and_anew_when_that_changes() -> None:
    board = make_board()
    before = sheet_of(board)
    assert look_at(before, "depth", 2).found == "1.25"
    scale = board.planter.depth.with_row(2, Q(0.5, "in"), Q(0.2, "in"))
    other = replace(board, planter=replace(board.planter, depth=scale))
    after = Sheet(other, Standing(other), Units.US, Shown.BOTH, earlier=before)
    assert look_at(after, "depth", 2).found == "1.60"
    assert look_at(after, "depth", 3).found == "1.25"


def test_units_change_what_is_shown() -> None:
    metric = sheet_of(make_board(), units=Units.METRIC)
    assert look_at(metric, "depth", 14).found == "51"
    assert look_at(metric, "vacuum", 1).target == "2.99"


def test_a_group_is_one_run_over_its_rows() -> None:
    sheet = sheet_of(make_board())
    assert sheet.runs(line_of(sheet, "vacuum")) == ((0, 12), (12, 12))
    assert sheet.runs(line_of(sheet, "disc"))[:2] == ((0, 1), (1, 1))


def test_only_rows_that_differ_leaves_the_others_out() -> None:
    sheet = sheet_of(make_board(done=9), only_differing=True)
    assert sheet.rows == tuple(range(10, 25))
    assert sheet.runs(line_of(sheet, "vacuum")) == ((0, 3), (3, 12))


def test_one_row_unlike_the_rest_is_odd() -> None:
    sheet = sheet_of(make_board(), Shown.FOUND)
    assert not look_at(sheet, "depth", 10).odd
    assert look_at(sheet_of(make_board()), "depth", 11).odd


def test_odd_ones_need_a_majority_to_be_unlike() -> None:
    cells = [Cell("depth", Place.of_row(row)) for row in range(1, 11)]
    one_off = dict(zip(cells, "aaaaaaaaab", strict=True))
    halves = dict(zip(cells, "aaaaabbbbb", strict=True))
    assert odd_ones(one_off) == {cells[-1]}
    assert odd_ones(halves) == frozenset()


@pytest.mark.parametrize(("shown", "side"), [("as found", Side.AS_FOUND), ("both", Side.TARGET)])
def test_the_side_shown_says_where_edits_go(shown: str, side: Side) -> None:
    assert sheet_of(make_board(), Shown(shown)).side is side


def test_an_edited_cell_is_looked_at_again_and_the_others_kept() -> None:
    board = make_board()
    first = sheet_of(board)
    kept = look_at(first, "disc", 14)
    cell = Cell("depth", Place.of_row(14))
    later = replace(board, target=board.target.with_values({cell: 5}))
    second = sheet_of(later, earlier=first)
    assert second.altered == {"depth"}
    assert look_at(second, "depth", 14).target == "1.50"
    assert look_at(second, "disc", 14) is kept


def test_another_planter_keeps_nothing() -> None:
    first = sheet_of(make_board())
    assert sheet_of(make_board(), earlier=first).altered is None


def test_the_words_below_a_name_are_its_unit_or_its_hint() -> None:
    names = {setting.key: setting for setting in sheet_of(make_board()).lines}
    assert unit_words(names["vacuum"], Units.US) == "inH₂O"
    assert unit_words(names["depth"], Units.METRIC) == "mm"
    assert unit_words(names["singulator"], Units.US) == "cell left open"
