"""Bounds hold where activities have not the same rows, and one timetable stands for all alike."""

from hypothesis import given

from changeover.switch.timetable.earliest import Earliest
from changeover.switch.timetable.greedy import first_timetable
from changeover.switch.timetable.model import Activity, Mode, Person, Work
from changeover.switch.timetable.reach import reach, reach_any
from changeover.switch.timetable.rest import rest_of
from changeover.switch.timetable.runs import least_changes
from changeover.switch.timetable.solve import timetable
from changeover.switch.timetable.symmetry import one_of_alike
from tests.switch.timetable_cases import works
from tests.switch.timetable_laws import broken

TEN = tuple(range(1, 11))
ANN, BO = Person("Ann"), Person("Bo")


def test_rows_that_wait_for_nothing_may_begin_at_once() -> None:
    first = Activity("first", (Mode(10),), rows=(1,))
    then = Activity("then", (Mode(0, 1),), rows=TEN, after_by_row=("first",))
    plan = timetable(Work((first, then), (ANN, BO)))
    assert (plan.length, plan.bound) == (11, 11)


def test_rows_that_nothing_waits_for_may_be_last() -> None:
    first = Activity("first", (Mode(0, 1),), rows=TEN)
    then = Activity("then", (Mode(10),), rows=(1,), after_by_row=("first",))
    plan = timetable(Work((first, then), (ANN, BO)))
    assert (plan.length, plan.bound) == (11, 11)


def test_changes_of_state_count_only_along_rows_that_are_held() -> None:
    def state_of(key: str, rows: tuple[int, ...], state: str, *after: str) -> Activity:
        return Activity(key, (Mode(1),), rows, after_by_row=after, state=state)

    chain = (
        state_of("a", (1,), "off"),
        state_of("b", (1, 2), "raised", "a"),
        state_of("c", (2, 3), "off", "b"),
        state_of("d", (3,), "raised", "c"),
    )
    work = Work(chain, (ANN, BO), state_minutes=5)
    assert least_changes(rest_of(work, (), 0)) <= 2
    assert timetable(work).length == 3 + 2 * 5


def test_a_break_of_one_slows_the_group_and_a_break_of_all_stops_it() -> None:
    away = Person("Cy", hours=((0, 10), (20, 60)))
    assert reach((ANN, away), 0, 30) == 20
    assert reach((away,), 5, 10) == 25
    assert reach_any((ANN, away), 5, 10) == 15
    assert reach_any((away,), 5, 10) == 25


def test_work_after_work_waits_for_those_who_can_do_it() -> None:
    able = Person("Di", frozenset({"proof"}), hours=((0, 12), (42, 400)))
    wash = Activity("wash", (Mode(10),))
    dig = Activity("dig", (Mode(0, 2),), rows=TEN, after=("wash",), skill="proof")
    earliest = Earliest(rest_of(Work((wash, dig), (ANN, able)), (), 0), {})
    assert (earliest.head("dig"), earliest.tail("wash"), earliest.end) == (10, 20, 60)


@given(works())
def test_names_and_sides_exchanged_leave_a_right_timetable(work: Work) -> None:
    rest = rest_of(work, (), 0)
    found = first_timetable(rest)
    assert found is not None
    assert broken(work, one_of_alike(rest, found)) == []
