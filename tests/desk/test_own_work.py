"""Tasks of one's own and splits are kept with the switch and survive a new plan."""

from dataclasses import replace

import pytest

from changeover.desk.do_work import tick_whole
from changeover.desk.edits import (
    AbandonSwitch,
    ChooseNext,
    CloseSwitch,
    Conflict,
    NextJob,
    PutOwnWork,
)
from changeover.desk.opening import Store
from changeover.desk.plan_switch import work_view
from changeover.desk.records import history
from changeover.planter.places import Place
from changeover.planter.settings import WorkPlace
from changeover.quantities import Q, Refusal
from changeover.switch.own_tasks import OwnTask, Split

BAR = "Old Fiddle 24"
GREASE = OwnTask(
    "grease", "Grease the opener arms", WorkPlace.ROW_UNIT, minutes_fixed=Q(9.0, "min")
)
BACK = Split("set_closing", "Bram", frozenset(Place.of_row(row) for row in range(13, 25)))


def _keys(store: Store) -> list[str]:
    return [task.key for task in work_view(store, BAR).worklist.tasks]


def test_an_own_task_is_on_the_list_and_can_be_ticked(demo, do) -> None:
    do(PutOwnWork(BAR, GREASE))
    view = work_view(demo, BAR)
    do(tick_whole(view, view.worklist.task("own.grease")))
    assert work_view(demo, BAR).progress.is_done("own.grease")


def test_a_split_task_stands_twice_and_keeps_its_ticks(demo, do) -> None:
    before = work_view(demo, BAR).progress
    do(PutOwnWork(BAR, BACK))
    after = work_view(demo, BAR).progress
    parts = [task for task in after.worklist.tasks if task.family == "set_closing"]
    assert [len(task.places) for task in parts] == [12, 12]
    assert after.rows_ready(range(1, 25)) == before.rows_ready(range(1, 25))


def test_own_work_survives_a_new_plan(demo, do) -> None:
    do(PutOwnWork(BAR, GREASE))
    job = work_view(demo, BAR).board.next_job
    do(ChooseNext(BAR, NextJob("Y-190", "Far Hundred"), before=job))
    assert "own.grease" in _keys(demo)


@pytest.mark.parametrize("work", [GREASE, BACK], ids=["task", "split"])
def test_own_work_comes_back_as_it_was_and_undo_takes_it_out(demo, do, work) -> None:
    before = _keys(demo)
    done = do(PutOwnWork(BAR, work))
    with demo.read() as unit:
        assert (*unit.own_work.tasks(BAR), *unit.own_work.splits(BAR)) == (work,)
    do(done.inverse)
    assert _keys(demo) == before


def test_own_work_comes_back_with_a_switch_that_was_given_up(demo, do) -> None:
    do(PutOwnWork(BAR, GREASE))
    given_up = do(AbandonSwitch(BAR))
    do(given_up.inverse)
    assert "own.grease" in _keys(demo)


def test_the_later_writer_of_an_own_task_is_refused(do) -> None:
    do(PutOwnWork(BAR, GREASE))
    do(PutOwnWork(BAR, replace(GREASE, persons=2), before=GREASE))
    with pytest.raises(Conflict, match="Task grease"):
        do(PutOwnWork(BAR, replace(GREASE, title="Oil"), before=GREASE))


def test_a_second_task_of_the_same_name_and_a_circle_are_refused(demo, do) -> None:
    do(PutOwnWork(BAR, replace(GREASE, after=("own.grease2",))))
    with pytest.raises(Refusal, match="“grease” is there already"):
        do(PutOwnWork(BAR, GREASE))


def test_an_open_own_task_holds_the_signing_off(demo, do) -> None:
    for task in work_view(demo, BAR).worklist.tasks:
        do(tick_whole(work_view(demo, BAR), task))
    do(PutOwnWork(BAR, GREASE))
    with pytest.raises(Refusal, match="“Grease the opener arms” is open"):
        do(CloseSwitch(BAR, "Soybean 2026"))


def test_without_an_open_switch_there_is_nothing_to_add_to(do) -> None:
    with pytest.raises(Refusal, match="no next lot is chosen"):
        do(PutOwnWork("Penny Twelve", GREASE))


def test_a_split_stands_in_the_history_in_words(demo, do) -> None:
    do(PutOwnWork(BAR, BACK))
    line = history(demo, BAR, 1)[0]
    assert line.what == f"work at set closing split off for {BACK.name}"
    assert line.new == "rows 13–24"
