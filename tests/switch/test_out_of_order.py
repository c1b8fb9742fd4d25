"""Ticking out of order is asked about: what comes first, at the rows in question only."""

from dataclasses import replace

from changeover.planter.places import PLANTER, Place
from changeover.switch.out_of_order import comes_first, question
from changeover.switch.progress import Progress, progress
from changeover.switch.tasks import Task, TaskKind, Tick
from tests.switch.switch_case import BEAN, LONG_ACRE, SETTINGS, bean, corn, plan

WORK = plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE), BEAN)
ROW_1, ROW_24 = Place.of_row(1), Place.of_row(24)


def done(*heads: str, places: tuple[Place, ...] = ()) -> Progress:
    ticks = [
        Tick(one.key, place, "Ana", "")
        for one in WORK.tasks
        if heads and one.key.startswith(heads)
        for place in (places or one.places)
    ]
    return progress(WORK, ticks, corn(LONG_ACRE), SETTINGS)


def task(head: str) -> Task:
    return next(one for one in WORK.tasks if one.key.startswith(head))


def test_the_first_task_asks_nothing() -> None:
    first = task("safe_stopped")
    assert comes_first(done(), LONG_ACRE, first, (PLANTER,)) == ()
    assert question(first, ()) is None


def test_work_on_a_planter_not_made_safe_is_asked_about() -> None:
    tanks = task("clean_tank")
    first = comes_first(done(), LONG_ACRE, tanks, tanks.places[:1])
    assert [one.key for one in first] == ["safe_stopped"]
    asked = question(tanks, first)
    assert asked is not None
    assert asked.text.startswith("The planter is not ticked as made safe")
    assert first[0].title in asked.detail


def test_only_open_work_at_the_same_rows_counts() -> None:
    hoses = task("clean_hose")
    tank_1 = task("clean_tank").places[0]
    half = done("safe", "clean_tank", places=(PLANTER, tank_1))
    assert comes_first(half, LONG_ACRE, hoses, (ROW_1,)) == ()
    first = comes_first(half, LONG_ACRE, hoses, (ROW_24,))
    assert [one.key for one in first] == [task("clean_tank").key]
    asked = question(hoses, first)
    assert asked is not None
    assert asked.text == f"“{hoses.title}” comes after “{first[0].title}”."


def test_filling_before_the_inspection_is_asked_in_the_strongest_words() -> None:
    fill, hoses = task("fill"), task("clean_hose")
    inspection = replace(hoses, key="inspect_clean.treated", kind=TaskKind.PROVE)
    asked = question(fill, (inspection,))
    assert asked is not None
    assert asked.text.startswith("Stop: the clean-out is not inspected")
    assert asked.yes == "Filled without inspection"
    dirty = question(fill, (hoses,))
    assert dirty is not None
    assert dirty.text.startswith("Stop: the clean-out is not done")
    other = question(fill, (task("cab_enter"),))
    assert other is not None
    assert other.text.startswith("Fill comes after “")
