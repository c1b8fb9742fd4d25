"""What the reason panel says of one cell."""

from dataclasses import replace

from changeover.desk.board import Board
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell
from changeover.quantities import Units
from changeover.seed.reasons import Proposal, Proposed
from changeover.window.matrix.sheet import Sheet, Shown
from changeover.window.reason.words import cells_to_take, full_text, reason_words
from changeover.window.standing import Standing
from tests.window.invented import REASON, make_board, split_planter

DEPTH = Cell("depth", Place.of_row(14))
VACUUM = Cell("vacuum", Place(Scope.FAN, "fan 1"))


def sheet_of(board: Board, units: Units = Units.US) -> Sheet:
    return Sheet(board, Standing(board), units, Shown.BOTH)


def test_a_cell_that_differs_says_now_and_wanted_with_their_notches() -> None:
    words = reason_words(sheet_of(make_board()), DEPTH)
    assert words.title == "Depth, row 14"
    assert words.value == "2.00 in (notch 7) now → 1.25 in (notch 4)"
    assert words.differs
    assert words.can_keep


def test_a_cell_at_its_target_says_so() -> None:
    words = reason_words(sheet_of(make_board()), Cell("disc", Place.of_row(2)))
    assert (words.value, words.differs, words.can_keep) == ("S56, as wanted", False, False)


def test_units_are_those_chosen() -> None:
    assert reason_words(sheet_of(make_board(), Units.METRIC), VACUUM).value == (
        "4.48 kPa now → 2.99 kPa"
    )


def test_the_band_that_is_as_good_is_told() -> None:
    assert reason_words(sheet_of(make_board()), VACUUM).proposed == "band 6.0 to 24.0 inH₂O"


def test_why_how_source_and_cautions_come_from_the_reason() -> None:
    words = reason_words(sheet_of(make_board()), DEPTH)
    assert words.why == REASON.why
    assert words.how.splitlines()[-1] == "From soil: moist silt loam."
    assert words.source == "an invented bulletin, 2012 · published"
    assert words.cautions == REASON.cautions


def test_the_ladder_names_every_rung_and_the_one_used() -> None:
    rungs = reason_words(sheet_of(make_board()), DEPTH).rungs
    assert rungs[0].words == "your manual — no value entered"
    assert [rung.used for rung in rungs] == [False, False, True, False]


def test_the_cells_to_take_are_those_whose_target_is_not_proposed() -> None:
    board = make_board()
    other = {Cell("depth", Place.of_row(row)): 9 for row in (3, 4)}
    sheet = sheet_of(replace(board, target=board.target.with_values(other)))
    assert cells_to_take(sheet, DEPTH) == set(other)
    words = reason_words(sheet, Cell("depth", Place.of_row(3)))
    assert words.use == "Use for all 2"
    assert words.proposed == "proposed: 1.25 in (notch 4)"


def test_without_ground_there_is_no_proposal() -> None:
    one = Proposed(DEPTH, None, replace(REASON, why="No proposal: enter it from your manual."))
    board = replace(make_board(), proposal=Proposal(cells={DEPTH: one}))
    words = reason_words(sheet_of(board), DEPTH)
    assert words.use == "No proposal"
    assert words.why == "No proposal: enter it from your manual."
    assert words.source == REASON.source


def test_before_the_look_up_is_done_it_says_so() -> None:
    words = reason_words(sheet_of(replace(make_board(), proposal=None)), DEPTH)
    assert words.why == "The proposal is being looked up."


def test_a_setting_that_nobody_proposes_is_the_users() -> None:
    words = reason_words(sheet_of(make_board()), Cell("own_cleaner", Place.of_row(2)))
    assert "the value is yours" in words.why


def test_a_row_that_stays_up_says_why_nothing_is_to_be_done() -> None:
    board = make_board(split_planter())
    up = {Cell("row_lock", Place.of_row(14)): "locked up"}
    board = replace(board, target=board.target.with_values(up))
    assert reason_words(sheet_of(board), DEPTH).value == "2.00 in (notch 7); the row is locked up"


def test_the_full_text_carries_the_unit() -> None:
    sheet = sheet_of(make_board())
    assert full_text(sheet, VACUUM, sheet.board.target.get(VACUUM)) == "12.0 inH₂O"
    assert full_text(sheet, DEPTH, None) == ""
