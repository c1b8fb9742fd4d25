"""Prerequisites that follow from others already hold in every right timetable."""

from dataclasses import replace

from hypothesis import given

from changeover.switch.timetable.closure import with_all_before
from changeover.switch.timetable.greedy import first_timetable
from changeover.switch.timetable.model import Activity, Mode, Work
from changeover.switch.timetable.rest import rest_of
from tests.switch.timetable_cases import works
from tests.switch.timetable_laws import broken

ONE = (Mode(1),)


@given(works())
def test_no_right_timetable_is_lost(work: Work) -> None:
    found = first_timetable(rest_of(work, (), 0))
    assert found is not None
    assert broken(work, found) == []
    assert broken(replace(work, activities=with_all_before(work.activities)), found) == []


def test_fewer_rows_before_a_whole_one_are_wholly_before_what_follows() -> None:
    meters = Activity("meters", ONE, rows=(2, 3))
    tubes = Activity("tubes", ONE, rows=(1, 2, 3), after_by_row=("meters",))
    floor = Activity("floor", ONE, after=("tubes",))
    assert set(with_all_before((meters, tubes, floor))[2].after) == {"tubes", "meters"}


def test_rows_that_nothing_holds_are_not_joined() -> None:
    meters = Activity("meters", ONE, rows=(2, 3, 4))
    tubes = Activity("tubes", ONE, rows=(1, 2, 3), after_by_row=("meters",))
    floor = Activity("floor", ONE, after=("tubes",))
    assert with_all_before((meters, tubes, floor))[2].after == ("tubes",)
