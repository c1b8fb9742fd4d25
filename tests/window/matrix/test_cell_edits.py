"""From typed, pasted and filled texts to one edit; all or nothing, with one sentence."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.desk.edits import Side
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell, Setup, Value
from changeover.quantities import Q, Refusal, Units
from changeover.window.matrix import cell_edits
from changeover.window.matrix.sheet import Sheet, Shown
from changeover.window.standing import Standing
from tests.window.invented import make_board


def sheet(shown: Shown = Shown.BOTH, units: Units = Units.US) -> Sheet:
    board = make_board()
    return Sheet(board, Standing(board), units, shown)


def line(key: str) -> int:
    return [setting.key for setting in sheet().lines].index(key)


def row_cell(key: str, row: int) -> Cell:
    return Cell(key, Place.of_row(row))


def test_a_typed_depth_becomes_the_notch_of_every_chosen_row() -> None:
    spots = [(line("depth"), column) for column in range(3)]
    edit = cell_edits.typed(sheet(), spots, "1.75 in")
    assert edit.values == {row_cell("depth", row): 6 for row in (1, 2, 3)}
    assert edit.before == {row_cell("depth", row): 4 for row in (1, 2, 3)}
    assert edit.side is Side.TARGET


def test_in_as_found_the_edit_goes_to_as_found() -> None:
    edit = cell_edits.typed(sheet(Shown.FOUND), [(line("disc"), 20)], "S56")
    assert edit.side is Side.AS_FOUND
    assert edit.before == {row_cell("disc", 21): "C30"}


def test_a_group_is_set_once_for_all_its_rows() -> None:
    edit = cell_edits.typed(sheet(), [(line("vacuum"), 0), (line("vacuum"), 5)], "14")
    assert list(edit.values) == [Cell("vacuum", Place(Scope.FAN, "fan 1"))]


@pytest.mark.parametrize("text", ["deep", "99 in", "1.5 lb"])
def test_a_text_that_cannot_be_is_refused_with_its_place(text: str) -> None:
    with pytest.raises(Refusal, match=r"ow 3"):
        cell_edits.typed(sheet(), [(line("depth"), 2)], text)


@pytest.mark.parametrize("block", [[["S65"]], [["S56", "S65"]]])
def test_a_part_that_is_not_entered_is_refused_typed_or_pasted(block: list[list[str]]) -> None:
    with pytest.raises(Refusal, match=r"Disc, row \d: there is no disc “S65”; choose S56"):
        cell_edits.pasted(sheet(), [(line("disc"), 2)], block)


def test_a_part_of_another_sort_is_refused_and_capitals_are_set_right() -> None:
    with pytest.raises(Refusal, match="is a brush and no disc"):
        cell_edits.typed(sheet(), [(line("disc"), 2)], "tall")
    edit = cell_edits.typed(sheet(), [(line("disc"), 2)], "s56")
    assert edit.values == {row_cell("disc", 3): "S56"}


def test_clearing_empties_the_chosen_cells() -> None:
    edit = cell_edits.cleared(sheet(), [(line("disc"), 0), (line("disc"), 1)])
    assert edit.values == {row_cell("disc", 1): None, row_cell("disc", 2): None}


def test_filling_gives_the_first_of_each_setting_to_the_others() -> None:
    spots = [(line(key), column) for key in ("disc", "depth") for column in (10, 11, 12)]
    edit = cell_edits.filled(sheet(Shown.FOUND), spots)
    assert {edit.values[row_cell("depth", row)] for row in (11, 12, 13)} == {8}
    assert {edit.values[row_cell("disc", row)] for row in (11, 12, 13)} == {"C30"}


def test_every_other_keeps_the_first_column_and_each_second_after_it() -> None:
    spots = [(2, column) for column in range(4, 9)]
    assert cell_edits.every_other(spots) == [(2, 4), (2, 6), (2, 8)]


def test_a_block_goes_to_a_spreadsheet_with_tabs_between_cells() -> None:
    spots = [(line(key), column) for key in ("disc", "brush") for column in (8, 9)]
    assert cell_edits.copied(sheet(Shown.FOUND), spots) == "S56\tC30\nlow\ttall"
    assert cell_edits.copied(sheet(Shown.FOUND), spots, across=False) == "S56\tlow\nC30\ttall"


def test_a_block_from_a_spreadsheet_is_set_at_the_first_spot() -> None:
    block = cell_edits.block_of("C30\tS56\r\ntall\tlow\r\n")
    edit = cell_edits.pasted(sheet(), [(line("disc"), 0)], block)
    assert edit.values == {
        row_cell("disc", 1): "C30",
        row_cell("disc", 2): "S56",
        row_cell("brush", 1): "tall",
        row_cell("brush", 2): "low",
    }


def test_one_text_is_pasted_into_every_chosen_cell() -> None:
    spots = [(line("closing"), column) for column in range(4)]
    assert set(cell_edits.pasted(sheet(), spots, [["float"]]).values.values()) == {1}


def test_a_block_turned_with_the_rows_down() -> None:
    block = cell_edits.block_of("C30\ttall\nS56\tlow")
    edit = cell_edits.pasted(sheet(), [(line("disc"), 0)], block, across=False)
    assert edit.values[row_cell("brush", 2)] == "low"


def test_one_bad_cell_refuses_the_whole_block() -> None:
    block = cell_edits.block_of("1.5\t1.25\tdeep")
    with pytest.raises(Refusal, match="row 3"):
        cell_edits.pasted(sheet(), [(line("depth"), 0)], block)


@pytest.mark.parametrize(
    ("key", "column", "says"), [("disc", 23, "last row, 24"), ("own_pressure", 0, "last setting")]
)
def test_a_block_that_reaches_past_the_edge_is_refused(key: str, column: int, says: str) -> None:
    with pytest.raises(Refusal, match=says):
        cell_edits.pasted(sheet(), [(line(key), column)], [["150", "150"], ["150", "150"]])


def test_a_group_that_would_get_two_values_is_refused() -> None:
    with pytest.raises(Refusal, match="fan 1: its rows share one value"):
        cell_edits.pasted(sheet(), [(line("vacuum"), 0)], [["12", "14"]])


@given(st.lists(st.integers(1, 13), min_size=1, max_size=24), st.sampled_from(list(Units)))
def test_what_is_copied_is_pasted_back_the_same(notches: list[int], units: Units) -> None:
    spots = [(line("depth"), column) for column in range(len(notches))]
    one = sheet(Shown.TARGET, units)
    cells = [one.cells[n][c] for n, c in spots]
    texts = [one.text(cell, notch) for cell, notch in zip(cells, notches, strict=True)]
    edit = cell_edits.pasted(one, spots, cell_edits.block_of("\t".join(texts)))
    assert [edit.values[cell] for cell in cells] == notches


AWKWARD: dict[str, Value] = {
    "hub_spacing": Q(1.1, "mm"),
    "vacuum": Q(3.333, "kPa"),
    "seed_rate": Q(79_013.0, "seed/hectare"),
    "own_pressure": Q(777.0, "N"),
}


def awkward_sheet(shown: Shown, units: Units) -> Sheet:
    """Return a sheet whose quantities are round in neither system."""
    board = make_board()

    def fill(setup: Setup) -> Setup:
        odd = {cell: AWKWARD.get(cell.setting, value) for cell, value in setup.values.items()}
        return replace(setup, values=odd)

    board = replace(board, as_found=fill(board.as_found), target=fill(board.target))
    return Sheet(board, Standing(board), units, shown)


@pytest.mark.parametrize("units", list(Units))
@pytest.mark.parametrize("shown", list(Shown))
@pytest.mark.parametrize("across", [True, False])
def test_all_copied_and_pasted_in_place_is_no_edit(
    shown: Shown, units: Units, across: bool
) -> None:
    one = awkward_sheet(shown, units)
    spots = [(n, column) for n, cells in enumerate(one.cells) for column in range(len(cells))]
    block = cell_edits.block_of(cell_edits.copied(one, spots, across=across))
    edit = cell_edits.pasted(one, spots, block, across=across)
    assert len(edit.values) > 150
    assert edit.values == edit.before


def test_a_text_that_a_cell_shows_already_leaves_it_and_changes_the_others() -> None:
    one = awkward_sheet(Shown.FOUND, Units.US)
    first = row_cell("hub_spacing", 1)
    board = replace(one.board, as_found=one.board.as_found.with_values({first: Q(2.0, "mm")}))
    two = Sheet(board, Standing(board), Units.US, Shown.FOUND)
    edit = cell_edits.typed(two, [(line("hub_spacing"), 0), (line("hub_spacing"), 1)], " 0.043 ")
    assert edit.values[first] == Q(0.043, "in")
    assert edit.values[row_cell("hub_spacing", 2)] == Q(1.1, "mm")


def test_a_depth_that_no_notch_gives_is_taken_and_said() -> None:
    spots = [(line("depth"), column) for column in range(3)]
    edit = cell_edits.typed(sheet(), spots, "1.6")
    assert edit.values == {row_cell("depth", row): 5 for row in (1, 2, 3)}
    assert edit.note == (
        "Depth, rows 1–3: no notch gives this; taken to the nearest, 1.60 in to 1.50 in."
    )


@pytest.mark.parametrize("text", ["1.5", "1.75 in", "n5", "", "1 1/2"])
def test_a_depth_that_a_notch_gives_needs_no_word(text: str) -> None:
    assert cell_edits.typed(sheet(), [(line("depth"), 2)], text).note == ""


def test_pasted_depths_are_said_together() -> None:
    edit = cell_edits.pasted(sheet(), [(line("depth"), 0)], [["1.6", "1.75", "1.9"]])
    assert [edit.values[row_cell("depth", row)] for row in (1, 2, 3)] == [5, 6, 7]
    assert edit.note == (
        "Depth, rows 1 and 3: no notch gives this; taken to the nearest, such as 1.60 in to "
        "1.50 in."
    )
