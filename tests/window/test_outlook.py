"""The outlook: planter, units and colours in view, and a board that keeps up with edits."""

from dataclasses import replace

import pytest
from pytestqt.qtbot import QtBot

from changeover.desk.board import Board
from changeover.desk.changed import Changed
from changeover.desk.edits import SetCells, Side
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Refusal, Units
from changeover.window.outlook import Outlook
from changeover.window.theme import DARK
from tests.window.invented import MemoryDesk, make_board

DEPTH = Cell("depth", Place.of_row(3))
TARGET_ONLY = frozenset({Changed.TARGET})


class CountingDesk(MemoryDesk):
    """Counts how often the board is read, with and without the look-up."""

    reads: tuple[bool, ...] = ()

    def read_board(self, planter: str, units: Units, *, proposal: bool) -> Board:
        self.reads = (*self.reads, proposal)
        board = replace(self.board, units=units)
        return board if proposal else replace(board, proposal=None)


def test_the_board_comes_first_and_its_proposal_a_moment_later(qtbot: QtBot) -> None:
    desk = CountingDesk(make_board())
    outlook = desk.outlook()
    with qtbot.waitSignal(outlook.looked_up):
        assert outlook.board.proposal is None
    assert outlook.board.proposal is desk.board.proposal
    assert desk.reads == (False, True)


def test_set_cells_of_the_target_are_put_in_without_reading(qtbot: QtBot) -> None:
    desk = CountingDesk(make_board())
    outlook = desk.outlook()
    outlook.look_up()
    edit = SetCells(outlook.planter, Side.TARGET, {DEPTH: 9}, {DEPTH: 4})
    outlook.note(TARGET_ONLY, edit)
    assert outlook.board.target.get(DEPTH) == 9
    assert desk.reads == (True,)


def test_set_cells_as_found_are_put_in_and_looked_up_again(qtbot: QtBot) -> None:
    desk = CountingDesk(make_board())
    outlook = desk.outlook()
    outlook.look_up()
    edit = SetCells(outlook.planter, Side.AS_FOUND, {DEPTH: 9}, {DEPTH: 4})
    with qtbot.waitSignal(outlook.looked_up):
        outlook.note(frozenset({Changed.AS_FOUND}), edit)
        assert outlook.board.as_found.get(DEPTH) == 9
    assert desk.reads == (True, True)


def test_an_edit_of_another_planter_is_read_not_put_in(qtbot: QtBot) -> None:
    desk = CountingDesk(make_board())
    outlook = desk.outlook()
    outlook.look_up()
    outlook.note(TARGET_ONLY, SetCells("Other", Side.TARGET, {DEPTH: 9}, {DEPTH: 4}))
    assert outlook.board.target.get(DEPTH) == 4


def test_other_changes_read_the_board_anew(qtbot: QtBot) -> None:
    desk = CountingDesk(make_board())
    outlook = desk.outlook()
    before = outlook.board
    outlook.note(frozenset({Changed.PLANTERS}))
    assert outlook.board is not before


def test_a_refused_look_up_is_said_and_the_board_stays(qtbot: QtBot) -> None:
    def read(_planter: str, _units: Units, *, proposal: bool) -> Board:
        if proposal:
            raise Refusal("Lot S-114: no such crop.")
        return replace(make_board(), proposal=None)

    outlook = Outlook(read, "Long Acre")
    with qtbot.waitSignal(outlook.refused) as told:
        assert outlook.board.proposal is None
    assert told.args == ["Lot S-114: no such crop."]
    assert outlook.board.planter.name == "Long Acre"


@pytest.mark.parametrize("again", [False, True])
def test_another_planter_or_other_units_move_the_outlook_once(again: bool, qtbot: QtBot) -> None:
    outlook = MemoryDesk(make_board()).outlook()
    moves: list[int] = []
    outlook.moved.connect(lambda: moves.append(1))
    outlook.show_planter(outlook.planter)
    outlook.show_units(Units.METRIC)
    if again:
        outlook.show_units(Units.METRIC)
    assert len(moves) == 1
    assert outlook.board.units is Units.METRIC


def test_turning_the_lights_changes_the_tokens(qtbot: QtBot) -> None:
    outlook = MemoryDesk(make_board()).outlook()
    with qtbot.waitSignal(outlook.recoloured):
        outlook.turn_lights()
    assert outlook.tokens is DARK


def test_a_look_up_that_a_change_has_overtaken_is_dropped(qtbot: QtBot) -> None:
    desk = CountingDesk(make_board())
    outlook, heard = desk.outlook(), list[str]()
    outlook.looked_up.connect(lambda: heard.append(outlook.planter))
    assert outlook.board.proposal is None
    outlook._look_up_behind()
    outlook.show_planter("Other Acre")
    with qtbot.waitSignal(outlook.looked_up):
        assert outlook.board.proposal is None
    assert heard == ["Other Acre"]
    assert outlook.board.proposal is desk.board.proposal
