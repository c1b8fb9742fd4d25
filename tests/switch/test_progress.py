"""How far a worklist is: as found for what is set, ticks for what is cleaned or proved."""

from dataclasses import replace

from hypothesis import given

from changeover.planter.machine import Planter
from changeover.planter.places import PLANTER, Place
from changeover.planter.setup import Cell, Setup
from changeover.quantities import Q
from changeover.seed.lots import Treatment
from changeover.switch.difference import apply_difference, difference
from changeover.switch.progress import Progress, progress
from changeover.switch.tasks import Tick, Worklist
from tests.switch.switch_case import (
    BEAN,
    LONG_ACRE,
    SETTINGS,
    bean,
    corn,
    plan,
    rows,
    switches,
)

BEFORE, TARGET = corn(LONG_ACRE), bean(LONG_ACRE)
WORK = plan(LONG_ACRE, BEFORE, TARGET, BEAN)


def ticks(work: Worklist, *keys: str) -> list[Tick]:
    wanted = keys or tuple(task.key for task in work.tasks)
    return [Tick(key, place, "Ana", "") for key in wanted for place in work.task(key).places]


def at(as_found: Setup, made: list[Tick] | None = None, work: Worklist = WORK) -> Progress:
    return progress(work, made or [], as_found, SETTINGS)


def test_at_the_start_nothing_is_done_and_all_minutes_are_left() -> None:
    start = at(BEFORE)
    assert (start.tasks_done, start.tasks_total) == (0, len(WORK.tasks))
    whole = sum(task.minutes.to("min").magnitude * task.persons for task in WORK.tasks)
    assert start.minutes_left.to("min").magnitude == whole
    assert start.rows_ready(LONG_ACRE.row_numbers) == ()


@given(switches())
def test_all_ticked_and_all_at_target_is_finished(case: tuple[Planter, Setup, Setup]) -> None:
    planter, before, target = case
    work = plan(planter, before, target, BEAN)
    there = apply_difference(before, difference(planter, SETTINGS, before, target))
    done = at(there, ticks(work), work)
    assert done.finished
    assert done.minutes_left == Q(0, "min")
    assert done.next_task is None


def test_a_setting_is_done_where_the_as_found_is_at_target() -> None:
    found = BEFORE.with_values({Cell("depth", Place.of_row(row)): 5 for row in (1, 2, 3)})
    done = at(found)
    assert done.done["set_depth"] == frozenset(rows(1, 2, 3))
    assert done.left(WORK.task("set_depth"))[0] == Place.of_row(4)


def test_a_meter_that_is_cleaned_is_done_only_when_ticked_and_at_target() -> None:
    (meter,) = [task for task in WORK.tasks if task.key.startswith("meter")]
    made = ticks(WORK, meter.key)
    assert not at(TARGET).done[meter.key]
    assert not at(BEFORE, made).done[meter.key]
    assert at(TARGET, made).is_done(meter.key)


def test_a_tick_survives_a_plan_that_groups_the_rows_otherwise() -> None:
    other = TARGET.with_values({Cell("hub_spacing", Place.of_row(3)): Q(0.6, "mm")})
    again = plan(LONG_ACRE, BEFORE, other, BEAN)
    (meter,) = [task for task in WORK.tasks if task.key.startswith("meter")]
    split = [task for task in again.tasks if task.key.startswith("meter")]
    done = at(TARGET, ticks(WORK, meter.key), again)
    assert [len(done.done[task.key]) for task in split] == [23, 0]


def test_ticks_of_a_lighter_clean_out_do_not_stand_for_a_harder_one() -> None:
    untreated = replace(BEAN, treatment=Treatment.NONE)
    harder = plan(LONG_ACRE, BEFORE, TARGET, untreated)
    (tank,) = [task for task in WORK.tasks if task.key.startswith("clean_tank")]
    (again,) = [task for task in harder.tasks if task.key.startswith("clean_tank")]
    made = ticks(WORK, tank.key)
    assert at(BEFORE, made).is_done(tank.key)
    assert not at(BEFORE, made, harder).done[again.key]


def test_rows_are_ready_when_meter_and_row_unit_are_done() -> None:
    row_work = [task.key for task in WORK.tasks if task.key.startswith(("meter", "clean_tube"))]
    made = [Tick(key, Place.of_row(3), "Ana", "") for key in row_work]
    three = {cell: value for cell, value in TARGET.values.items() if cell.place == Place.of_row(3)}
    assert at(BEFORE.with_values(three), made).rows_ready(LONG_ACRE.row_numbers) == (3,)


def test_the_next_task_waits_for_nothing() -> None:
    start = at(BEFORE)
    assert start.next_task is not None
    assert start.next_task.key == "safe_stopped"
    (tank,) = [task for task in WORK.tasks if task.key.startswith("clean_tank")]
    assert [task.key for task in start.waits_for(tank)] == ["safe_stopped"]
    assert at(BEFORE, ticks(WORK, "safe_stopped")).next_task == tank


def test_open_safety_steps_are_named_until_ticked() -> None:
    assert [task.key for task in at(BEFORE).open_safety] == ["safe_stopped", "safe_raised"]
    made = [Tick("safe_raised", PLANTER, "Ana", "")]
    assert [task.key for task in at(BEFORE, made).open_safety] == ["safe_stopped"]
