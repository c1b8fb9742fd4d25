"""A switch from choosing to signing off: before is kept, ticks carry as-found along."""

from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime

import pytest

from changeover.desk.board import read_board
from changeover.desk.demo.working_copy import start_again
from changeover.desk.do_work import tick_places, tick_rows, tick_whole
from changeover.desk.door import apply
from changeover.desk.edits import AbandonSwitch, ChooseNext, CloseSwitch, NextJob, TakeProposal
from changeover.desk.opening import Store, open_store
from changeover.desk.plan_switch import WorkView, work_view
from changeover.desk.records import setups
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Refusal
from changeover.store.values import SavedSetup
from changeover.switch.tasks import Task, TaskKind

BAR = "Old Fiddle 24"


def _task(view: WorkView, setting: str) -> Task:
    """Return the task that sets a setting on row 20."""
    cell = Cell(setting, Place.of_row(20))
    return next(
        task
        for task in view.worklist.tasks
        if any(change.cell == cell for change in task.changes.get(cell.place, ()))
    )


def _finish(store: Store, do) -> WorkView:
    for task in work_view(store, BAR).worklist.tasks:
        view = work_view(store, BAR)
        if view.progress.left(task):
            do(tick_whole(view, task))
    return work_view(store, BAR)


def test_ticking_a_row_sets_its_cells_and_moves_the_progress(demo, do) -> None:
    view = work_view(demo, BAR)
    task = _task(view, "depth")
    do(tick_rows(view, task, [20, 21]))
    after = work_view(demo, BAR)
    assert len(after.progress.left(task)) == len(view.progress.left(task)) - 2
    assert after.board.as_found.get(Cell("depth", Place.of_row(20))) == 5
    assert after.board.as_found.get(Cell("depth", Place.of_row(22))) == 8


def test_unticking_puts_back_what_was_there_before(demo, do) -> None:
    view = work_view(demo, BAR)
    task = _task(view, "depth")
    do(tick_rows(view, task, [3], done=False))
    after = work_view(demo, BAR)
    assert after.board.as_found.get(Cell("depth", Place.of_row(3))) == 8
    assert Place.of_row(3) in after.progress.left(task)


def test_ticking_what_is_ticked_already_and_undoing_leaves_the_old_ticks(demo, do) -> None:
    view = work_view(demo, BAR)
    task = next(
        t for t in view.worklist.tasks if t.kind is TaskKind.SAFE and view.progress.is_done(t.key)
    )
    done = do(tick_places(view, task, task.places))
    do(done.inverse)
    assert work_view(demo, BAR).progress.is_done(task.key)


def test_a_tick_says_who_and_when(demo, do) -> None:
    view = work_view(demo, BAR)
    task = next(t for t in view.worklist.tasks if t.by_tick and view.progress.left(t))
    do(tick_whole(view, task))
    tick = work_view(demo, BAR).ticks[-1]
    assert (tick.task, tick.who, tick.when[:2]) == (task.key, "Ada", "20")


def test_a_task_that_is_not_on_the_list_is_refused(demo, do) -> None:
    view = work_view(demo, BAR)
    with pytest.raises(Refusal, match="no longer on the worklist"):
        do(replace(tick_whole(view, view.worklist.tasks[0]), task="dance"))


def test_the_setup_before_is_kept_when_the_plan_changes_midway(demo, do) -> None:
    board = read_board(demo, BAR, proposal=False)
    ready = len(work_view(demo, BAR).ticks)
    do(ChooseNext(BAR, NextJob("Y-190", "Far Hundred"), before=board.next_job))
    after = work_view(demo, BAR)
    assert after.board.before == board.before
    assert len(after.ticks) == ready


def test_signing_off_with_open_safety_steps_is_refused(demo, do) -> None:
    view = _finish(demo, do)
    safe = next(task for task in view.worklist.tasks if task.kind is TaskKind.SAFE)
    do(tick_whole(view, safe, done=False))
    with pytest.raises(Refusal, match="cannot be signed off: “Safe for tanks"):
        do(CloseSwitch(BAR, "Soybean 2026"))


def test_signing_off_half_done_work_is_refused_and_names_the_row(do) -> None:
    with pytest.raises(Refusal, match="is open at row 10 and 13 more"):
        do(CloseSwitch(BAR, "Soybean 2026"))


def test_signing_off_saves_the_setup_with_lot_and_field(demo, do) -> None:
    view = _finish(demo, do)
    assert view.progress.finished
    do(CloseSwitch(BAR, "Soybean 2026", proved="bench 98 % singles"))
    saved = setups(demo, BAR)[0]
    assert isinstance(saved, SavedSetup)
    assert (saved.name, saved.crop, saved.lot, saved.field, saved.signed) == (
        "Soybean 2026",
        "soybean",
        "Y-208",
        "Otter Flat",
        True,
    )
    board = read_board(demo, BAR)
    assert (board.next_job, dict(board.target.values)) == (None, {})
    assert board.label_now.startswith("Soybean, Otter Flat · set ")


def test_signing_off_can_be_taken_back_and_done_again(demo, do) -> None:
    before = _finish(demo, do)
    closed = do(CloseSwitch(BAR, "Soybean 2026"))
    reopened = do(closed.inverse)
    assert work_view(demo, BAR).board.target == before.board.target
    assert "Soybean 2026" not in [one.name for one in setups(demo, BAR)]
    do(reopened.inverse)
    assert setups(demo, BAR)[0].name == "Soybean 2026"


def test_a_proved_setup_is_proposed_next_time(demo, do) -> None:
    _finish(demo, do)
    do(CloseSwitch(BAR, "Soybean 2026", proved="bench 98 % singles"))
    with demo.read() as work:
        assert "Soybean 2026" in [record.name for record in work.setups.records()]


def test_without_a_next_lot_there_is_nothing_to_take_or_give_up(do) -> None:
    with pytest.raises(Refusal, match="no next lot is chosen"):
        do(TakeProposal("Penny Twelve"))
    with pytest.raises(Refusal, match="no next lot is chosen"):
        do(AbandonSwitch("Penny Twelve"))


@pytest.mark.parametrize(("lot", "field"), [("none", None), ("Y-208", "Atlantis")])
def test_an_unknown_lot_or_field_is_refused(do, lot, field) -> None:
    with pytest.raises(Refusal, match="There is no"):
        do(ChooseNext("Penny Twelve", NextJob(lot, field)))


def test_taking_some_proposals_leaves_the_other_targets(demo, do) -> None:
    do(ChooseNext("Penny Twelve", NextJob("B-22", "Crow Strip")))
    cells = frozenset({Cell("closing", Place.of_row(2))})
    do(TakeProposal("Penny Twelve", cells))
    assert set(read_board(demo, "Penny Twelve").target.values) == cells


def test_what_was_signed_off_last_is_now_though_the_clock_was_set_back(tmp_path) -> None:
    long_ago = datetime(2020, 1, 1, tzinfo=UTC)
    path = start_again(tmp_path / "demo.sqlite")
    with closing(open_store(path, clock=lambda: long_ago)) as store:
        _finish(store, lambda edit: apply(store, edit, "Ada"))
        apply(store, CloseSwitch(BAR, "early"), "Ada")
        assert read_board(store, BAR).label_now.startswith("Soybean, Otter Flat")
