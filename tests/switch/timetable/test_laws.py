"""Laws of every timetable: no order, capacity, state or person is ever broken; nothing is lost."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from changeover.switch.timetable.solve import Limits, Person, Work, timetable, walk_of, what_if
from tests.switch.timetable_cases import works
from tests.switch.timetable_laws import broken, contiguous

QUICK = Limits(seconds=1.0, workers=1)


@settings(max_examples=30)
@given(works())
def test_nothing_is_broken(work: Work) -> None:
    plan = timetable(work, QUICK)
    assert broken(work, plan.stints) == []
    assert plan.bound <= plan.length == max(stint.end for stint in plan.stints)
    assert plan.walk_bound <= plan.walk == walk_of(work, plan.stints)


@settings(max_examples=20)
@given(works())
def test_everyone_takes_at_most_one_block_of_rows_in_a_row(work: Work) -> None:
    plan = timetable(work, QUICK)
    for activity in work.activities:
        if activity.shared_out:
            names = [stint.persons[0] for stint in plan.of(activity.key)]
            assert len(names) == len(set(names))
            assert all(contiguous(activity, stint) for stint in plan.of(activity.key))


@settings(max_examples=20)
@given(works(), st.integers(1, 12))
def test_what_is_done_stays_when_solved_again(work: Work, now: int) -> None:
    before = timetable(work, QUICK)
    done = [stint for stint in before.stints if stint.start < now]
    after = timetable(work, QUICK, done=done, now=now)
    assert broken(work, after.stints, done, now) == []
    assert after.bound <= after.length


@settings(max_examples=12)
@given(works(most=4))
def test_one_more_person_and_vacuum_never_take_longer(work: Work) -> None:
    more = what_if(work, QUICK, persons=[Person("Di", frozenset({"meters"}))], tools={"vacuum": 1})
    wider = replace(
        work, crew=(*work.crew, Person("Di", frozenset({"meters"}))), tools={"vacuum": 2}
    )
    assert broken(wider, more.then.stints) == []
    assert more.then.bound <= more.now.length


@settings(max_examples=15)
@given(works(most=3), st.integers(5, 30))
def test_hours_hold(work: Work, begin: int) -> None:
    hours = ((begin, begin + 60), (begin + 90, begin + 400))
    timed = replace(work, crew=tuple(replace(person, hours=hours) for person in work.crew))
    plan = timetable(timed, QUICK)
    assert broken(timed, plan.stints) == []
    assert all(stint.start >= begin for stint in plan.stints)
