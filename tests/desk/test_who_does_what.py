"""The crew is kept, and what is left of a switch is shared out among those who are here."""

from collections.abc import Callable

import pytest

from changeover.desk import crew as desk_crew
from changeover.desk.crew import crew
from changeover.desk.door import Outcome
from changeover.desk.edits import Edit
from changeover.desk.plan_switch import work_view
from changeover.desk.shop_edits import PutMember, PutTool
from changeover.desk.who_does_what import (
    CrewPlan,
    done_at,
    length_text,
    proof_text,
    question,
    saved_text,
    solve,
    tools_waited_for,
    walk_text,
    with_more,
)
from changeover.quantities import Refusal
from changeover.store.opening import Store
from changeover.switch.crew import CrewMember, SharedTool
from changeover.switch.search import Limits
from changeover.switch.timetable.model import SearchStatus, Timetable

PLANTER = "Old Fiddle 24"
QUICK = Limits(seconds=1.0, workers=1)
Do = Callable[[Edit], Outcome]


@pytest.fixture
def asked(demo: Store) -> CrewPlan:
    return solve(question(demo, PLANTER, begin=420, names=("Ann", "Bo")), QUICK)


def test_the_crew_is_kept_and_an_edit_is_taken_back(demo: Store, do: Do) -> None:
    before = crew(demo)
    back = do(PutMember(CrewMember("Zoe", frozenset({"Meters"}), ((420, 720),)))).inverse
    assert crew(demo).members[-1].hours == ((420, 720),)
    do(back)
    assert crew(demo) == before


def test_typed_texts_become_edits(demo: Store, do: Do) -> None:
    do(PutMember(CrewMember("Zoe")))
    zoe = crew(demo).members[-1]
    do(desk_crew.set_skills(zoe, "row units, tank"))
    do(desk_crew.set_hours(crew(demo).members[-1], "7-12"))
    do(desk_crew.turn_here(crew(demo).members[-1]))
    zoe = crew(demo).members[-1]
    assert (desk_crew.skills_text(zoe), desk_crew.day_text(zoe)) == (
        "tanks, row units",
        "7:00-12:00",
    )
    assert desk_crew.here_text(zoe) == "away"


@pytest.mark.parametrize(
    "make",
    [
        lambda: desk_crew.set_skills(CrewMember("Zoe"), "milking"),
        lambda: desk_crew.set_skills(CrewMember("Zoe"), "m"),
        lambda: desk_crew.set_here(CrewMember("Zoe"), "perhaps"),
        lambda: desk_crew.set_count(SharedTool("jack"), "many"),
        lambda: desk_crew.set_count(SharedTool("jack"), "-1"),
        lambda: desk_crew.add_member("  "),
    ],
)
def test_what_cannot_be_is_refused(make: Callable[[], Edit]) -> None:
    with pytest.raises(Refusal):
        make()


def test_a_plan_covers_what_is_left_and_says_who(demo: Store, asked: CrewPlan) -> None:
    view = work_view(demo, PLANTER)
    whose = asked.whose()
    for task in view.worklist.tasks:
        assert all(whose(task.key, place) in ("Ann", "Bo") for place in view.progress.left(task))
        assert not any(whose(task.key, place) for place in view.progress.done[task.key])


def test_a_stint_is_done_when_all_its_places_are_ticked(asked: CrewPlan) -> None:
    stint = asked.timetable.stints[0]
    places = asked.question.crew_work.places_of(stint)
    assert not done_at(asked, {}, stint)
    assert done_at(asked, {stint.activity: frozenset(places)}, stint)


def test_one_more_tool_and_person_are_in_the_wider_question(demo: Store, do: Do) -> None:
    for tool in crew(demo).tools:
        do(PutTool(None, before=tool))
    do(PutTool(SharedTool("seed vacuum", 1)))
    asked = question(demo, PLANTER, begin=420, names=("Ann", "Bo"))
    assert tools_waited_for(asked) == ("seed vacuum",)
    wider = with_more(asked, persons=2, tool="seed vacuum").crew_work.work
    assert (len(wider.crew), wider.tools) == (4, {"seed vacuum": 2})


def test_a_planter_without_work_is_refused(demo: Store) -> None:
    with pytest.raises(Refusal, match="no work is left to share out"):
        question(demo, "Penny Twelve", names=("Ann",))


def test_what_is_proved_is_said() -> None:
    def made(length: int, bound: int, status: SearchStatus) -> Timetable:
        return Timetable((), length, bound, 0, 0, status)

    best = made(204, 204, SearchStatus.OPTIMAL)
    assert proof_text(best) == "shortest possible: 3 h 24 min, proven"
    near = made(200, 196, SearchStatus.FEASIBLE)
    assert proof_text(near) == "3 h 20 min, within 2 % of the bound"
    assert saved_text(best, near, "One more") == "One more: 4 min sooner, done in 3 h 20 min"
    assert saved_text(best, best, "One more") == "One more: no sooner"
    assert [length_text(m) for m in (5, 60, 61)] == ["5 min", "1 h", "1 h 1 min"]


@pytest.mark.parametrize(
    ("walk", "bound", "said"),
    [
        (12, 12, "12 row widths, the least possible in that time"),
        (12, 7, "12 row widths, the least found; under 7 cannot be"),
        (1, 0, "1 row width, the least found; less may be possible"),
    ],
)
def test_of_the_walk_no_more_is_said_than_is_proved(walk: int, bound: int, said: str) -> None:
    assert walk_text(Timetable((), 60, 60, walk, bound, SearchStatus.OPTIMAL)) == said


def test_a_crew_of_one_is_told_of_the_second_look(demo: Store) -> None:
    alone = solve(question(demo, PLANTER, begin=420, names=("Ann",)), QUICK)
    assert alone.names == ("Ann", "somebody else")
    assert alone.says.endswith("under whose name it is ticked off.")


def test_work_that_nobody_can_do_is_named_as_on_the_worklist(demo: Store, do: Do) -> None:
    for one in crew(demo).members:
        do(PutMember(None, before=one))
    do(PutMember(CrewMember("Cy", frozenset({"Tanks"}))))
    with pytest.raises(Refusal, match=r"“.+” needs 1 person with the skill") as refused:
        solve(question(demo, PLANTER, begin=420), QUICK)
    titles = {task.title.split(", ")[0] for task in work_view(demo, PLANTER).worklist.tasks}
    assert str(refused.value).split("“")[1].split("”")[0] in titles
