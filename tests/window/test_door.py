"""The door of the window: edits on the undo stack, refusals as a sentence."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from changeover.desk.changed import Changed
from changeover.desk.door import apply
from changeover.desk.edits import PutField, SetCells, Side
from changeover.desk.fields import fields
from changeover.desk.opening import Store
from changeover.desk.starting import ShortForm, new_store, put_planter
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Q
from changeover.seed.fields import Field
from changeover.window.door import Door
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


@pytest.fixture
def store_with_bar(tmp_path: Path) -> Iterator[Store]:
    store = new_store(tmp_path / "bar.sqlite")
    apply(store, put_planter(ShortForm("Bar", 4, Q(30.0, "in"), fans=1)), "tester")
    yield store
    store.close()


@pytest.fixture
def overtaken(tmp_path: Path) -> Iterator[tuple[Store, Door, PutField]]:
    """A field that somebody else changes after it was read, and an edit that does not know."""
    store = new_store(tmp_path / "two.sqlite")
    first = Field("F", Q(1.0, "acre"))
    apply(store, PutField(first), "Ada")
    apply(store, PutField(replace(first, where="Home"), before=first), "Bo")
    door = Door(lambda edit: apply(store, edit, "Ada"))  # type: ignore[arg-type]
    yield store, door, PutField(replace(first, area=Q(2.0, "acre")), before=first)
    store.close()


def test_the_later_writer_may_keep_their_own_value_and_take_it_back(
    overtaken: tuple[Store, Door, PutField],
) -> None:
    store, door, edit = overtaken
    asked = []
    door.choose = lambda conflict: not asked.append((conflict.mine, conflict.theirs))
    assert door.push(edit)
    assert asked == [("area 2 ac, where empty", "area 1 ac, where Home")]
    assert fields(store) == (edit.value,)
    door.stack.undo()
    assert fields(store)[0].where == "Home"


def test_the_later_writer_may_leave_the_other_value(
    overtaken: tuple[Store, Door, PutField], qtbot: QtBot
) -> None:
    store, door, edit = overtaken
    with qtbot.waitSignal(door.refused) as told:
        assert not door.push(edit)
    assert "changed by someone else" in told.args[0]
    assert fields(store)[0].where == "Home"


def test_a_cell_that_two_people_set_is_kept_as_the_later_one_chooses(
    store_with_bar: Store,
) -> None:
    cells = {Cell("hub_spacing", Place.of_row(row)): None for row in (1, 2)}
    mine, theirs = (dict.fromkeys(cells, Q(size, "mm")) for size in (1.0, 2.0))
    apply(store_with_bar, SetCells("Bar", Side.TARGET, theirs, cells), "Bo")
    door = Door(lambda edit: apply(store_with_bar, edit, "Ada"))  # type: ignore[arg-type]
    asked = []
    door.choose = lambda conflict: not asked.append(conflict.what)
    assert door.push(SetCells("Bar", Side.TARGET, mine, cells))
    assert asked == ["Bar, row 1, hub spacing and 1 other cell"]
    with store_with_bar.read() as work:
        assert work.cells.read("Bar", Side.TARGET).values == mine
