"""The proven least length against trying every division, person, way and order of small work."""

import pytest
from hypothesis import given, settings

from changeover.switch.timetable.solve import Limits, SearchStatus, Work, timetable
from tests.switch.timetable_cases import least_by_trying, works

THOROUGH = Limits(seconds=20.0, workers=2)


@pytest.mark.slow
@settings(max_examples=60)
@given(works(most=3, rows=3))
def test_the_least_length_is_the_least_of_all(work: Work) -> None:
    plan = timetable(work, THOROUGH)
    assert plan.status is SearchStatus.OPTIMAL
    assert plan.length == plan.bound == least_by_trying(work)
