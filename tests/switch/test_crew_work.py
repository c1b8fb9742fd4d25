"""What is left of a worklist becomes a timetable's work, whole and in the right order."""

from dataclasses import replace

import pytest

from changeover.planter.places import Place
from changeover.quantities import Refusal
from changeover.switch.crew import CrewMember, SharedTool
from changeover.switch.crew_work import CrewWork, crew_work
from changeover.switch.progress import Progress, progress
from changeover.switch.tasks import Tick
from changeover.switch.timetable.solve import Limits, timetable
from tests.switch.switch_case import LONG_ACRE, SETTINGS, bean, corn, plan

ANN, BO = CrewMember("Ann"), CrewMember("Bo")
VACUUM = SharedTool("seed vacuum", 1)


def switch(*ticks: Tick) -> Progress:
    worklist = plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE))
    return progress(worklist, ticks, corn(LONG_ACRE), SETTINGS)


def work_of(done: Progress, crew: tuple[CrewMember, ...] = (ANN, BO), begin: int = 420) -> CrewWork:
    return crew_work(LONG_ACRE, done, crew, (VACUUM,), begin)


def test_every_place_that_is_left_is_in_the_work_once() -> None:
    done = switch()
    work = work_of(done)
    for task in done.worklist.tasks:
        assert set(work.places[task.key].values()) == set(done.left(task))


def test_what_is_done_is_left_out_and_not_waited_for() -> None:
    first = switch().worklist.tasks[0]
    done = switch(*(Tick(first.key, place, "Ann", "") for place in first.places))
    work = work_of(done).work
    keys = {activity.key for activity in work.activities}
    assert first.key not in keys
    assert all({*each.after, *each.after_by_row} <= keys for each in work.activities)


def test_work_at_rows_waits_only_for_the_same_rows() -> None:
    work = work_of(switch()).work
    tubes = next(each for each in work.activities if each.key.startswith("clean_tube"))
    assert any(key.startswith("meter.") for key in tubes.after_by_row)
    assert any(key.startswith("safe_raised") for key in tubes.after)


def test_a_shared_tool_is_held_and_others_are_not_waited_for() -> None:
    for activity in work_of(switch()).work.activities:
        assert set(activity.modes[0].uses) <= {"seed vacuum"}


def test_a_timetable_covers_every_place_that_was_left() -> None:
    done = switch()
    work = work_of(done)
    found = timetable(work.work, Limits(seconds=1.0, workers=1))
    for task in done.worklist.tasks:
        reached = [p for stint in found.of(task.key) for p in work.places_of(stint)]
        assert sorted(reached, key=str) == sorted(done.left(task), key=str)


def test_two_places_with_one_row_in_their_middle_are_kept_apart() -> None:
    task = replace(
        switch().worklist.tasks[0],
        key="own",
        places=(Place.of_row(13), LONG_ACRE.groups[0].place),
        needs=(),
    )
    done = Progress(replace(switch().worklist, tasks=(task,)), {"own": frozenset()})
    assert len(work_of(done).places["own"]) == 2


def test_hours_count_from_the_beginning_and_those_over_are_left_out() -> None:
    ann = CrewMember("Ann", hours=((360, 480), (540, 600)))
    work = work_of(switch(), (ann,), begin=450).work
    assert work.crew[0].hours == ((0, 30), (90, 150))


@pytest.mark.parametrize(
    ("crew", "words"),
    [
        ((), "Nobody of the crew is here"),
        ((CrewMember("Ann", here=False),), "Nobody of the crew is here"),
        ((CrewMember("Ann", hours=((0, 60),)),), "hours of Ann are over"),
    ],
)
def test_a_crew_that_is_not_there_is_refused(crew: tuple[CrewMember, ...], words: str) -> None:
    with pytest.raises(Refusal, match=words):
        work_of(switch(), crew)


def test_a_skill_that_nobody_has_is_refused_by_name() -> None:
    work = work_of(switch(), (CrewMember("Ann", frozenset({"Tanks"})),)).work
    with pytest.raises(Refusal, match="add a person to the crew or the skill"):
        timetable(work, Limits(seconds=1.0, workers=1))
