"""What must be done by somebody else is, in every timetable, or refused by name."""

import pytest

from changeover.quantities import Refusal
from changeover.switch.timetable.apart import cases, kept_apart
from changeover.switch.timetable.greedy import first_timetable
from changeover.switch.timetable.model import Activity, Mode, Person, Stint, Work
from changeover.switch.timetable.rest import rest_of
from changeover.switch.timetable.solve import timetable

ROWS = tuple(range(1, 13))
CLEAN = Activity("clean", (Mode(minutes_per_row=2),), ROWS)
LOOK = Activity("look over", (Mode(5),), after=("clean",), not_by=("clean",))
ANN, BO, CY = Person("Ann"), Person("Bo"), Person("Cy")


def test_one_of_two_cleans_so_that_the_other_can_look() -> None:
    plan = timetable(Work((CLEAN, LOOK), (ANN, BO)))
    assert (plan.length, plan.bound) == (29, 29)
    assert set(plan.who["clean"]).isdisjoint(plan.who["look over"])


def test_two_of_three_clean_at_once() -> None:
    plan = timetable(Work((CLEAN, LOOK), (ANN, BO, CY)))
    assert (plan.length, plan.bound) == (17, 17)


def test_persons_who_differ_are_tried_one_by_one() -> None:
    able = Person("Di", frozenset({"sign"}))
    signed = Activity("sign", (Mode(5),), skill="sign", after=("clean",), not_by=("clean",))
    plan = timetable(Work((CLEAN, signed), (ANN, able)))
    assert (plan.who["sign"], plan.who["clean"]) == (("Di",), ("Ann",))


def test_persons_alike_make_one_case_and_others_one_each() -> None:
    todo = (CLEAN, LOOK)
    assert len(cases((ANN, BO, CY), todo)) == 1
    assert len(cases((ANN, BO, Person("Di", hours=((0, 60),))), todo)) == 2
    assert cases((ANN,), todo) == []


def test_who_has_cleaned_already_does_not_look() -> None:
    work = Work((CLEAN, LOOK), (ANN, BO))
    plan = timetable(work, done=[Stint("clean", 0, 24, ("Ann",), ROWS)], now=24)
    assert plan.who["look over"] == ("Bo",)
    halves = [Stint("clean", 0, 12, ("Ann",), ROWS[:6]), Stint("clean", 0, 12, ("Bo",), ROWS[6:])]
    with pytest.raises(Refusal, match="“look over” must be done by nobody who does “clean”"):
        timetable(work, done=halves, now=24)


def test_a_crew_of_one_is_refused_by_name() -> None:
    with pytest.raises(Refusal, match="not enough persons for that; add a person"):
        timetable(Work((CLEAN, LOOK), (ANN,)))


def test_a_first_timetable_leaves_somebody_to_look() -> None:
    found = first_timetable(rest_of(Work((CLEAN, LOOK), (ANN, BO, CY)), (), 0))
    assert found is not None
    assert kept_apart((CLEAN, LOOK), found)


def test_what_is_not_other_work_is_refused() -> None:
    itself = Activity("look over", (Mode(5),), not_by=("look over",))
    with pytest.raises(Refusal, match="must be done by somebody else than “look over”"):
        timetable(Work((itself,), (ANN, BO)))
