"""The door of the window: edits on the undo stack, refusals as a sentence."""

from pytestqt.qtbot import QtBot

from changeover.desk.changed import Changed
from changeover.desk.edits import SetCells, Side
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from tests.window.invented import MemoryDesk

DEPTH = Cell("depth", Place.of_row(3))


def edit(value: int = 6) -> SetCells:
    return SetCells("Long Acre", Side.TARGET, {DEPTH: value}, {DEPTH: 4}, "tried out")


def test_an_edit_reaches_the_desk_and_says_what_changed(desk: MemoryDesk, qtbot: QtBot) -> None:
    door = desk.door()
    with qtbot.waitSignal(door.changed) as told:
        assert door.push(edit())
    assert told.args == [frozenset({Changed.TARGET})]
    assert desk.board.target.get(DEPTH) == 6
    assert door.latest == edit()


def test_undo_and_redo_swap_the_edit_for_its_inverse(desk: MemoryDesk, qtbot: QtBot) -> None:
    door = desk.door()
    door.push(edit())
    door.stack.undo()
    assert desk.board.target.get(DEPTH) == 4
    door.stack.redo()
    assert desk.board.target.get(DEPTH) == 6


def test_a_refused_edit_leaves_no_trace_on_the_stack(desk: MemoryDesk, qtbot: QtBot) -> None:
    door, desk.refuse = desk.door(), "Depth, row 3: the planter says no."
    with qtbot.waitSignal(door.refused) as told:
        assert not door.push(edit())
    assert told.args == ["Depth, row 3: the planter says no."]
    assert door.stack.count() == 0


def test_an_undo_that_is_refused_is_taken_off_the_stack(desk: MemoryDesk, qtbot: QtBot) -> None:
    door = desk.door()
    door.push(edit())
    desk.refuse = "Somebody else has set it to 2.00 in meanwhile."
    door.stack.undo()
    assert door.stack.count() == 0
    assert desk.board.target.get(DEPTH) == 6
