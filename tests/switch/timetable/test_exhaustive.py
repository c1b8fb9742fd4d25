"""The proven least length against trying every division, person, way and order of small work."""

import pytest
from hypothesis import given, settings

from changeover.switch.timetable.earliest import Earliest
from changeover.switch.timetable.rest import rest_of
from changeover.switch.timetable.solve import Limits, SearchStatus, Work, timetable
from tests.switch.timetable_cases import least_by_trying, with_breaks, works

THOROUGH = Limits(seconds=20.0, workers=2)
SMALL = works(most=3, rows=3)


@pytest.mark.slow
@settings(max_examples=60)
@given(SMALL)
def test_the_least_length_is_the_least_of_all(work: Work) -> None:
    plan = timetable(work, THOROUGH)
    assert plan.status is SearchStatus.OPTIMAL
    assert plan.length == plan.bound == least_by_trying(work)


@pytest.mark.slow
@settings(max_examples=60)
@given(SMALL.flatmap(with_breaks))
def test_the_least_length_with_breaks_is_the_least_of_all(work: Work) -> None:
    plan = timetable(work, THOROUGH)
    assert plan.status is SearchStatus.OPTIMAL
    assert plan.length == plan.bound == least_by_trying(work)


@settings(max_examples=150)
@given(SMALL.flatmap(with_breaks))
def test_nothing_ends_before_the_earliest_end(work: Work) -> None:
    assert Earliest(rest_of(work, (), 0), {}).end <= least_by_trying(work)
