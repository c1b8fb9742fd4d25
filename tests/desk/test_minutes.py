"""Minutes of kinds of work: the user's own beside the standard, also of whole tasks."""

from collections.abc import Callable

import pytest

from changeover.desk.door import Outcome
from changeover.desk.edits import Edit, PutTime
from changeover.desk.minutes import KindOfWork, back_to_standard, kinds_of_work, set_each, set_fixed
from changeover.desk.plan_switch import work_view
from changeover.quantities import Q, Refusal
from changeover.store.opening import Store
from changeover.switch.tasks import StandardTime

Do = Callable[[Edit], Outcome]


def kind(store: Store, name: str) -> KindOfWork:
    return next(one for one in kinds_of_work(store) if one.name == name)


def test_both_minutes_can_be_set_one_after_the_other(demo: Store, do: Do) -> None:
    do(set_fixed(kind(demo, "dig"), "7.5"))
    do(set_each(kind(demo, "dig"), "1/2 h"))
    found = kind(demo, "dig")
    assert (found.fixed, found.each, found.standard.fixed) == (7.5, 30.0, 10.0)
    do(back_to_standard(found))
    assert kind(demo, "dig").own is None


def test_own_minutes_of_a_whole_task_are_listed_and_can_go(demo: Store, do: Do) -> None:
    task = work_view(demo, "Old Fiddle 24").worklist.tasks[0]
    do(PutTime(StandardTime(task.key, Q(9.0, "min"), Q(0.0, "min"))))
    found = kind(demo, task.key)
    assert (found.standard, found.standard_text, found.fixed) == (None, "", 9.0)
    do(back_to_standard(found))
    assert task.key not in {one.name for one in kinds_of_work(demo)}


def test_minutes_beyond_a_day_are_refused(demo: Store) -> None:
    with pytest.raises(Refusal, match="a day at most"):
        set_fixed(kind(demo, "dig"), "25 h")
