"""Choosing another lot in the middle of a switch: what is there now is what work goes from."""

import pytest

from changeover.desk.do_work import tick_whole
from changeover.desk.edits import ChooseNext, CloseSwitch, NextJob, PutOwnWork, SetCells, Side
from changeover.desk.opening import Store
from changeover.desk.plan_switch import WorkView, work_view
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Refusal
from changeover.switch.own_tasks import Split
from changeover.switch.tasks import TaskKind

PENNY, FIDDLE = "Penny Twelve", "Old Fiddle 24"


def choose(store: Store, do, planter: str, lot: str, field: str) -> WorkView:
    """Choose a lot and take every proposal, as in the window."""
    from changeover.desk.board import read_board
    from changeover.desk.edits import TakeProposal

    job = work_view(store, planter).board.next_job
    do(ChooseNext(planter, NextJob(lot, field), before=job))
    board = read_board(store, planter)
    assert board.proposal is not None
    wanted = board.proposal.values()
    do(TakeProposal(planter, tuple(wanted)))
    return work_view(store, planter)


def tick_all(store: Store, do, planter: str, *, but: TaskKind | None = None) -> WorkView:
    view = work_view(store, planter)
    for task in view.worklist.tasks:
        if task.kind is not but and not view.progress.is_done(task.key):
            do(tick_whole(view, task))
    return work_view(store, planter)


@pytest.fixture
def filled_with_another(demo, do) -> WorkView:
    """Switch Penny to a lot but for its proofs, then choose a lot of another crop."""
    choose(demo, do, PENNY, "Y-208", "Far Hundred")
    tick_all(demo, do, PENNY, but=TaskKind.PROVE)
    return choose(demo, do, PENNY, "M-41", "Lantern Rise")


def test_work_after_a_new_plan_takes_off_what_is_there_now(filled_with_another) -> None:
    view = filled_with_another
    changes = {c.cell: c for t in view.worklist.tasks for c in sum(t.changes.values(), ())}
    disc = changes[Cell("disc", Place.of_row(1))]
    assert disc.before == view.board.as_found.get(disc.cell) != disc.after
    assert set(view.difference.changes) <= set(changes)


def test_seed_filled_in_for_the_plan_before_is_cleaned_out(filled_with_another) -> None:
    view = filled_with_another
    dirty = [t for t in view.worklist.tasks if t.kind is TaskKind.CLEAN]
    assert dirty
    assert all("Y-208" in task.family for task in dirty)
    assert not any(view.progress.is_done(task.key) for task in dirty)


def test_all_ticked_after_a_new_plan_is_the_target_and_can_be_signed(
    demo, do, filled_with_another
) -> None:
    view = tick_all(demo, do, PENNY)
    assert not view.difference.changes
    assert view.ready_to_sign
    do(CloseSwitch(PENNY, "after all"))


def test_a_row_set_otherwise_after_all_was_ticked_bars_signing(
    demo, do, filled_with_another
) -> None:
    view = tick_all(demo, do, PENNY)
    cell = Cell("depth", Place.of_row(2))
    was = view.board.as_found.get(cell)
    do(SetCells(PENNY, Side.AS_FOUND, {cell: 9}, {cell: was}))
    assert not work_view(demo, PENNY).ready_to_sign
    with pytest.raises(Refusal, match="cannot be signed off"):
        do(CloseSwitch(PENNY, "too early"))


def test_cleaning_done_for_a_harder_clean_out_stands_for_an_easier_one(demo, do) -> None:
    before = work_view(demo, FIDDLE)
    tanks = [t for t in before.worklist.tasks if t.key.startswith("clean_tank")]
    assert all(before.progress.is_done(task.key) for task in tanks)
    after = choose(demo, do, FIDDLE, "Y-190", "Far Hundred")
    again = [t for t in after.worklist.tasks if t.key.startswith(("clean_tank", "clean_hose"))]
    assert again
    assert all(after.progress.is_done(task.key) for task in again)


def test_a_split_stays_when_the_clean_out_becomes_another(demo, do) -> None:
    view = work_view(demo, FIDDLE)
    opened = (t for t in view.worklist.tasks if t.key.startswith("meter"))
    inside = max(opened, key=lambda task: len(task.places))
    do(PutOwnWork(FIDDLE, Split(inside.family, "Bram", frozenset(inside.places[-4:]))))
    after = choose(demo, do, FIDDLE, "Y-190", "Far Hundred")
    assert any(task.title.endswith("(Bram)") for task in after.worklist.tasks)


def test_settings_that_nothing_was_chosen_for_are_named(demo, do) -> None:
    job = work_view(demo, PENNY).board.next_job
    do(ChooseNext(PENNY, NextJob("M-41", "Lantern Rise"), before=job))
    (said,) = [text for text in work_view(demo, PENNY).worklist.cautions if "No target" in text]
    assert "disc" in said
    assert "manual" in said
