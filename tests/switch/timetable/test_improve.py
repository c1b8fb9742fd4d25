"""Changes at random never break a timetable and never make the one that is kept longer."""

from hypothesis import given, settings

from changeover.switch.search import Clock, Limits
from changeover.switch.timetable.greedy import first_timetable
from changeover.switch.timetable.improve import Improver
from changeover.switch.timetable.model import Work
from changeover.switch.timetable.rest import rest_of
from tests.switch.timetable_cases import with_breaks, works
from tests.switch.timetable_laws import broken


@settings(max_examples=40)
@given(works().flatmap(with_breaks))
def test_what_is_kept_is_right_and_no_longer(work: Work) -> None:
    rest = rest_of(work, (), 0)
    first = first_timetable(rest)
    assert first is not None
    clock = Clock(Limits(seconds=0.05))
    improver = Improver(rest, first, clock, 0.05)
    improver.work(0.05, 0)
    assert broken(work, improver.best) == []
    assert improver.length == max(stint.end for stint in improver.best)
    assert improver.length <= max(stint.end for stint in first)


@given(works())
def test_a_longer_one_on_offer_is_not_taken(work: Work) -> None:
    rest = rest_of(work, (), 0)
    first = first_timetable(rest)
    assert first is not None
    improver = Improver(rest, first, Clock(Limits()), 1.0)
    before = improver.best
    late = [type(s)(s.activity, s.start + 5, s.end + 5, s.persons, s.rows, s.mode) for s in first]
    improver.offer(late)
    assert improver.best == before
