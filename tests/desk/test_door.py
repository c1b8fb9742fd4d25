"""The one door: one transaction, one history entry, and an inverse that restores."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from changeover.desk.board import read_board
from changeover.desk.changed import Changed
from changeover.desk.demo.working_copy import working_copy
from changeover.desk.do_work import tick_whole
from changeover.desk.door import apply
from changeover.desk.edits import (
    AbandonSwitch,
    ChooseNext,
    Conflict,
    Edit,
    NextJob,
    PutField,
    PutLot,
    PutMeters,
    PutPlanter,
    PutSettings,
    SaveSetup,
    SetCells,
    SetShelf,
    Several,
    Side,
    TakeProposal,
)
from changeover.desk.opening import Store, open_store
from changeover.desk.plan_switch import work_view
from changeover.desk.records import history
from changeover.planter.parts import Condition, ShelfCount
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell
from changeover.quantities import Q, Refusal
from changeover.seed.fields import Field
from changeover.seed.lots import SeedLot

BAR = "Old Fiddle 24"


def _state(store: Store) -> tuple[object, ...]:
    """Return all that a person could see of the store, history aside."""
    with store.read() as work:
        planters = work.planters.names()
        sides = [work.cells.read(name, side).values for name in planters for side in Side]
        return (
            [work.planters.get(name) for name in planters],
            [dict(side) for side in sides],
            [_without_when(work.switches.open(name)) for name in planters],
            [[one.name for one in work.setups.of(name)] for name in planters],
            work.settings.all(),
            work.lots.all(),
            work.fields.all(),
            work.parts.all(),
            work.shelf.all(),
            work.meters.all(),
        )


def _without_when(switch: object) -> object:
    return switch if switch is None else (switch.job, dict(switch.before.values), switch.ticks)


@st.composite
def row_edits(draw) -> SetCells:
    side = draw(st.sampled_from(Side))
    rows = draw(st.sets(st.integers(1, 24), min_size=1, max_size=6))
    depth = st.one_of(st.none(), st.integers(1, 14))
    values = {Cell("depth", Place.of_row(row)): draw(depth) for row in rows}
    fan = Cell("vacuum", Place(Scope.FAN, "fan 2"))
    if draw(st.booleans()):
        values[fan] = draw(st.one_of(st.none(), st.floats(1, 30).map(lambda x: Q(x, "inH2O"))))
    return SetCells(BAR, side, values, {})


@pytest.fixture(scope="module")
def shared(tmp_path_factory) -> Store:
    store = open_store(working_copy(tmp_path_factory.mktemp("demo")))
    yield store
    store.close()


@settings(max_examples=25)
@given(st.lists(row_edits(), min_size=1, max_size=4))
def test_undo_restores_and_redo_repeats(shared, edits) -> None:
    before = _state(shared)
    inverses = []
    for edit in edits:
        board = read_board(shared, BAR, proposal=False)
        standing = board.as_found if edit.side is Side.AS_FOUND else board.target
        known = replace(edit, before={cell: standing.get(cell) for cell in edit.values})
        inverses.append(apply(shared, known, "Ada").inverse)
    after = _state(shared)
    again = [apply(shared, inverse, "Ada").inverse for inverse in reversed(inverses)]
    assert _state(shared) == before
    back = [apply(shared, edit, "Ada").inverse for edit in reversed(again)]
    assert _state(shared) == after
    for inverse in reversed(back):
        apply(shared, inverse, "Ada")


def _edits(store: Store) -> list[Edit]:
    board = read_board(store, BAR)
    view = work_view(store, BAR)
    task = next(task for task in view.worklist.tasks if view.progress.left(task))
    lot, corn = SeedLot("NEW-1", "corn"), NextJob("M-41", "Lantern Rise")
    meters = board.meters[:2]
    swapped = (replace(meters[0], row=meters[1].row), replace(meters[1], row=meters[0].row))
    counted = board.shelf[0]
    return [
        tick_whole(view, task),
        Several((ChooseNext(BAR, corn, before=board.next_job), TakeProposal(BAR))),
        ChooseNext(BAR, corn, before=board.next_job),
        ChooseNext("Penny Twelve", NextJob("B-22", "Crow Strip")),
        AbandonSwitch(BAR),
        PutLot(lot),
        PutLot(replace(board.lot, germination=0.5), before=board.lot),
        PutField(Field("New", Q(3.0, "acre"))),
        PutPlanter(replace(board.planter, fan_limit=None), before=board.planter),
        PutPlanter(replace(board.planter, name="Renamed"), before=board.planter),
        PutSettings(board.settings[::-1], before=board.settings),
        PutMeters(swapped, before=meters),
        SetShelf(replace(counted, count=counted.count + 4), before=counted),
        SetShelf(ShelfCount("seal R", Condition.WORN, 2)),
        SaveSetup(BAR, "as it stands"),
    ]


@pytest.mark.parametrize("number", range(15))
def test_every_edit_changes_something_and_its_inverse_restores(demo, do, number) -> None:
    edit = _edits(demo)[number]
    before = _state(demo)
    done = do(edit)
    after = _state(demo)
    assert (after != before, bool(done.changed), done.entry > 0) == (True, True, True)
    undone = do(done.inverse)
    assert (_state(demo), undone.changed) == (before, done.changed)
    do(undone.inverse)
    if not isinstance(edit, SaveSetup | TakeProposal):
        assert _state(demo)[:2] == after[:2]


def test_undo_writes_a_new_entry(demo, do) -> None:
    cell = Cell("closing", Place.of_row(20))
    done = do(SetCells(BAR, Side.AS_FOUND, {cell: 1}, {cell: 4}, why="seen"))
    undone = do(done.inverse)
    lines = history(demo, BAR, 2)
    assert [(line.old, line.new) for line in lines] == [("float", "3"), ("3", "float")]
    assert undone.entry == done.entry + 1


def test_the_later_writer_is_refused_with_both_values_and_nothing_is_lost(demo, do) -> None:
    cell = Cell("closing", Place.of_row(20))
    apply(demo, SetCells(BAR, Side.AS_FOUND, {cell: 2}, {cell: 4}), "Bo")
    with pytest.raises(Conflict) as refusal:
        do(SetCells(BAR, Side.AS_FOUND, {cell: 3}, {cell: 4}))
    assert (refusal.value.mine, refusal.value.theirs) == ("2", "1")
    assert read_board(demo, BAR, proposal=False).as_found.get(cell) == 2


def test_what_somebody_else_chose_next_is_not_overwritten_unseen(demo, do) -> None:
    apply(demo, ChooseNext("Penny Twelve", NextJob("G-31")), "Bo")
    with pytest.raises(Conflict, match="What comes next on Penny Twelve"):
        do(ChooseNext("Penny Twelve", NextJob("B-22")))


@pytest.mark.parametrize(
    ("cell", "value", "match"),
    [
        (Cell("depth", Place.of_row(3)), 40, "position 40 does not exist"),
        (Cell("depth", Place.of_row(99)), 4, "has no row 99"),
        (Cell("vacuum", Place(Scope.FAN, "fan 1")), Q(60.0, "inH2O"), "above the fan limit"),
        (Cell("wheels", Place.of_row(1)), 1, "no setting “wheels”"),
    ],
)
def test_nothing_invalid_reaches_the_store(demo, do, cell, value, match) -> None:
    before = _state(demo)
    with pytest.raises(Refusal, match=match):
        do(SetCells(BAR, Side.TARGET, {cell: value}, {cell: None}))
    assert _state(demo) == before


def test_a_record_of_what_is_there_cannot_be_a_target(do) -> None:
    cell = Cell("seed_left", Place(Scope.TANK, "tank 1"))
    with pytest.raises(Refusal, match="cannot be a target"):
        do(SetCells(BAR, Side.TARGET, {cell: Q(40.0, "lb")}, {cell: None}))


def test_the_kinds_of_data_that_changed_are_named(do) -> None:
    cell = Cell("closing", Place.of_row(20))
    done = do(SetCells(BAR, Side.AS_FOUND, {cell: 1}, {cell: 4}))
    assert done.changed == frozenset({Changed.AS_FOUND})
