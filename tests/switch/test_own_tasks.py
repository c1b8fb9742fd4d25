"""Tasks added and split by a person survive a new plan, and circles are named."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.machine import Planter
from changeover.planter.places import Place
from changeover.planter.settings import WorkPlace
from changeover.planter.setup import Setup
from changeover.quantities import Q, Refusal
from changeover.switch.own_tasks import OwnTask, Split, with_own_tasks
from changeover.switch.progress import progress
from changeover.switch.tasks import Tick
from tests.switch.switch_case import BEAN, LONG_ACRE, SETTINGS, bean, corn, plan, rows, switches

WORK = plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE), BEAN)
GREASE = OwnTask(
    "grease",
    "Grease the arms",
    WorkPlace.ROW_UNIT,
    rows(1, 2),
    minutes_each=Q(2, "min"),
    after=("set_depth",),
    before=("fill",),
)
BEN = Split("set_depth", "Ben", frozenset(rows(9, 10, 11, 12)))


def test_an_own_task_stands_after_what_it_follows_and_before_what_waits() -> None:
    keys = [task.key for task in with_own_tasks(WORK, [GREASE]).tasks]
    assert keys.index("set_depth") < keys.index("own.grease") < keys.index("fill/S-114")


def test_an_own_task_is_done_when_ticked() -> None:
    work = with_own_tasks(WORK, [GREASE])
    made = [Tick("own.grease", place, "Ana", "") for place in rows(1, 2)]
    assert progress(work, made, corn(LONG_ACRE), SETTINGS).is_done("own.grease")
    assert not progress(work, made[:1], corn(LONG_ACRE), SETTINGS).is_done("own.grease")
    assert work.task("own.grease").minutes == Q(4, "min")


def test_own_tasks_survive_a_plan_that_lacks_what_they_follow() -> None:
    other = plan(LONG_ACRE, corn(LONG_ACRE), corn(LONG_ACRE))
    (task,) = with_own_tasks(other, [GREASE], [BEN]).tasks
    assert (task.key, task.needs) == ("own.grease", ())


def test_a_split_task_keeps_its_family_and_shares_its_places_out() -> None:
    work = with_own_tasks(WORK, splits=[BEN])
    rest, apart = [task for task in work.tasks if task.family == "set_depth"]
    assert apart.title == "Depth notch 8 → 5 (Ben)"
    assert apart.places == rows(9, 10, 11, 12)
    assert set(rest.places) | set(apart.places) == set(WORK.task("set_depth").places)
    assert set(rest.changes) == set(rest.places)


def test_what_waited_for_a_split_task_waits_for_both_parts() -> None:
    work = with_own_tasks(WORK, splits=[BEN])
    keys = {task.key for task in work.tasks if task.family == "set_depth"}
    dig = next(task for task in work.tasks if task.key.startswith("prove_depth"))
    assert keys <= set(dig.needs)


def test_parts_are_shared_out_with_the_rows() -> None:
    (meter,) = [task for task in WORK.tasks if task.family.startswith("meter")]
    work = with_own_tasks(WORK, splits=[Split(meter.family, "Ben", frozenset(rows(1, 2, 3)))])
    counts = [
        [part.count for part in task.parts_in] for task in work.tasks if task.family == meter.family
    ]
    assert counts == [[21, 21], [3, 3]]


@given(switches(), st.sets(st.integers(1, 9), min_size=1))
def test_splitting_every_task_loses_no_change(
    case: tuple[Planter, Setup, Setup], apart: set[int]
) -> None:
    planter, before, target = case
    work = plan(planter, before, target, BEAN)
    places = frozenset(Place.of_row(row) for row in apart)
    families = dict.fromkeys(task.family for task in work.tasks)
    cut = with_own_tasks(work, splits=[Split(family, "x", places) for family in families])
    assert len({task.key for task in cut.tasks}) == len(cut.tasks)
    assert {(t.family, p) for t in cut.tasks for p in t.places} == {
        (t.family, p) for t in work.tasks for p in t.places
    }
    assert sum(p.count for t in cut.tasks for p in t.parts_in) == sum(
        p.count for t in work.tasks for p in t.parts_in
    )


def test_own_tasks_that_wait_in_a_circle_are_named() -> None:
    dry = OwnTask("dry", "Dry", WorkPlace.CAB, after=("sand",))
    sand = OwnTask("sand", "Sand", WorkPlace.CAB, after=("dry",))
    with pytest.raises(Refusal, match="“Dry” and “Sand” wait for each other; take one"):
        with_own_tasks(WORK, [dry, sand])


def test_an_own_task_against_the_order_of_the_work_is_refused() -> None:
    paint = OwnTask("paint", "Paint", WorkPlace.CAB, after=("fill",), before=("clean_tank",))
    with pytest.raises(Refusal, match="wait for each other"):
        with_own_tasks(WORK, [paint])


@pytest.mark.parametrize(
    ("fields", "sentence"),
    [
        ({"name": "a/b"}, "cannot be named “a/b”"),
        ({"title": " "}, "says nothing"),
        ({"places": ()}, "needs places"),
        ({"minutes_each": Q(-1, "min")}, "less than no time"),
        ({"persons": 0}, "at least one person"),
    ],
)
def test_an_own_task_that_cannot_be_is_refused(fields: dict[str, object], sentence: str) -> None:
    with pytest.raises(Refusal, match=sentence):
        OwnTask(**{"name": "a", "title": "b", "work_place": WorkPlace.CAB, **fields})  # type: ignore[arg-type]


def test_two_own_tasks_cannot_share_a_name() -> None:
    with pytest.raises(Refusal, match="Two own tasks are named “grease”"):
        with_own_tasks(WORK, [GREASE, GREASE])
