"""The worklist: every change in one task, clean-out first, rows already right left alone."""

from collections import Counter
from dataclasses import replace

from hypothesis import given

from changeover.planter.machine import Planter
from changeover.planter.places import PLANTER, Place, Scope
from changeover.planter.settings import LOCKED_UP, WorkPlace
from changeover.planter.setup import Cell, Setup
from changeover.quantities import Q, Units
from changeover.switch.difference import difference
from changeover.switch.tasks import MachineState, StandardTime, Task, TaskKind, Worklist
from tests.switch.switch_case import (
    BEAN,
    CORN,
    LONG_ACRE,
    RULES,
    SETTINGS,
    SPLIT,
    bean,
    corn,
    groups,
    plan,
    row_setup,
    rows,
    switches,
)

WHOLE = plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE), BEAN)


def family(work: Worklist, name: str) -> list[Task]:
    return [task for task in work.tasks if task.family.partition(".")[0] == name]


@given(switches())
def test_every_change_stands_in_exactly_one_task(case: tuple[Planter, Setup, Setup]) -> None:
    planter, before, target = case
    work = plan(planter, before, target, BEAN)
    found = Counter(
        change.cell
        for task in work.tasks
        for changes in task.changes.values()
        for change in changes
    )
    assert found == Counter(list(difference(planter, SETTINGS, before, target).changes))


@given(switches())
def test_a_plan_is_sound(case: tuple[Planter, Setup, Setup]) -> None:
    planter, before, target = case
    tasks = plan(planter, before, target, BEAN).tasks
    keys = [task.key for task in tasks]
    assert len(set(keys)) == len(keys)
    for number, task in enumerate(tasks):
        assert set(task.needs) <= set(keys[:number])
        assert len(set(task.places)) == len(task.places) > 0
        assert set(task.changes) <= set(task.places)
        assert task.title
        assert task.minutes.to("min").magnitude > 0


@given(switches())
def test_a_family_never_has_two_tasks_at_one_place(case: tuple[Planter, Setup, Setup]) -> None:
    planter, before, target = case
    work = plan(planter, before, target, BEAN)
    spots = Counter((task.family, place) for task in work.tasks for place in task.places)
    assert set(spots.values()) <= {1}


@given(switches())
def test_parts_on_match_the_places_and_parts_off_what_was_known(
    case: tuple[Planter, Setup, Setup],
) -> None:
    planter, before, target = case
    for task in plan(planter, before, target, BEAN).tasks:
        swaps = [c for changes in task.changes.values() for c in changes if c.part]
        assert sum(part.count for part in task.parts_in) == len(swaps)
        known = [change for change in swaps if change.before is not None]
        assert sum(part.count for part in task.parts_out) == len(known)


@given(switches())
def test_every_changed_thing_is_proved(case: tuple[Planter, Setup, Setup]) -> None:
    planter, before, target = case
    work = plan(planter, before, target, BEAN)
    proved = {cell for task in work.tasks for cell in task.proves}
    changed = set(difference(planter, SETTINGS, before, target).changes)
    assert {cell for cell in changed if cell.setting != "seed"} == proved


@given(switches())
def test_planning_from_the_target_leaves_nothing_to_set(
    case: tuple[Planter, Setup, Setup],
) -> None:
    planter, _, target = case
    assert not plan(planter, target, target).tasks


def test_one_opening_of_a_meter_covers_all_work_in_it() -> None:
    (meter,) = family(WHOLE, "meter")
    assert meter.title == (
        "Open meter, vacuum out, disc C30 → S56, brush tall → low, singulator 1/2 → open, close"
    )
    assert meter.places == rows(*range(1, 25))
    assert len(meter.changes[Place.of_row(7)]) == 3


def test_rows_already_right_are_only_cleaned() -> None:
    right = {
        Cell(key, Place.of_row(9)): bean(LONG_ACRE).get(Cell(key, Place.of_row(9)))
        for key in ("disc", "brush", "singulator", "depth")
    }
    work = plan(LONG_ACRE, corn(LONG_ACRE).with_values(right), bean(LONG_ACRE), BEAN)
    swap, clean = family(work, "meter")
    assert Place.of_row(9) not in swap.places
    assert (clean.title, clean.places) == ("Open meter, vacuum out, close", rows(9))
    assert Place.of_row(9) not in work.task("set_depth").places


def test_rows_already_right_have_no_task_when_the_lot_stays() -> None:
    target = corn(LONG_ACRE).with_values({Cell("disc", Place.of_row(9)): "K20"})
    work = plan(LONG_ACRE, corn(LONG_ACRE), target, CORN)
    (meter,) = family(work, "meter")
    assert (meter.title, meter.places) == ("Open meter, disc C30 → K20, close", rows(9))


def test_exceptions_stand_in_the_line_of_the_task() -> None:
    deeper = {Cell("depth", Place.of_row(row)): 9 for row in (11, 14)}
    work = plan(LONG_ACRE, corn(LONG_ACRE).with_values(deeper), bean(LONG_ACRE), BEAN)
    depth = work.task("set_depth")
    assert depth.title == "Depth notch 8 → 5; rows 11 and 14: 9 → 5"
    assert "Notch 5 plants 1.50 in deep on rows 1–24" in depth.steps


def test_a_row_with_its_own_depth_line_is_told_apart_at_the_notch_and_at_the_dig() -> None:
    own = LONG_ACRE.depth.with_row(11, Q(0.1, "in"), Q(0.2, "in"))
    machine = replace(LONG_ACRE, depth=own)
    work = plan(machine, corn(machine), bean(machine), BEAN)
    steps = " ".join(work.task("set_depth").steps)
    assert "Notch 5 plants 1.40 in deep on row 11" in steps
    (dig,) = family(work, "prove_depth")
    assert dig.title == "Dig: seed at 1.50 in, 1.40 in on row 11"
    assert Place.of_row(11) in dig.places
    assert "1.40 in on row 11" in dig.steps


def test_rows_of_another_depth_or_behind_a_tire_are_among_those_dug() -> None:
    own = LONG_ACRE.depth.with_row(11, Q(-0.15, "in")).with_row(14, Q(-0.13, "in"))
    machine = replace(LONG_ACRE, depth=own, wheel_track_rows=frozenset({9, 16}))
    work = plan(machine, corn(machine), bean(machine), BEAN)
    (dig,) = family(work, "prove_depth")
    assert dig.title == "Dig: seed at 1.50 in, 1.35 in on row 11, 1.37 in on row 14"
    dug = {place.row for place in dig.places}
    assert {1, 24, 11, 14, 9, 16} <= dug
    assert len(dug) == 9
    assert "Behind a tire: rows 9 and 16" in dig.steps
    (furrow,) = family(work, "prove_closing")
    assert {9, 16} <= {place.row for place in furrow.places}


def test_where_many_rows_differ_a_spread_of_them_is_dug() -> None:
    own = LONG_ACRE.depth
    for row in range(1, 11):
        own = own.with_row(row, Q(0.1, "in"))
    machine = replace(LONG_ACRE, depth=own)
    (dig,) = family(plan(machine, corn(machine), bean(machine), BEAN), "prove_depth")
    dug = [place.row for place in dig.places]
    assert len([row for row in dug if row <= 10]) >= 5
    assert {1, 10, 24} <= set(dug)
    assert len(dug) < 12


def test_fans_are_read_at_the_first_and_last_row_of_each() -> None:
    fans = WHOLE.task("set_vacuum")
    assert fans.title == "Vacuum 18.0 → 12.0 inH₂O, read at rows 1, 12, 13, 24"
    assert fans.state is MachineState.FAN_RUNNING


def test_a_fan_is_not_read_at_a_row_that_is_locked_up() -> None:
    planter = Planter("Two", 3, Q(30, "in"), groups(3, fan=1), split_rows=frozenset({3}))
    up = {Cell("row_lock", Place.of_row(3)): LOCKED_UP}
    work = plan(planter, corn(planter).with_values(up), bean(planter).with_values(up))
    assert work.task("set_vacuum").title.endswith("read at rows 1, 2")


def test_texts_follow_the_units_on_the_screen() -> None:
    metric = plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE), BEAN, units=Units.METRIC)
    assert "4.48 → 2.99 kPa" in metric.task("set_vacuum").title
    assert "38 mm deep" in metric.task("set_depth").steps[-1]


def test_clean_out_comes_before_the_swaps_and_filling_after() -> None:
    keys = [task.family.partition(".")[0] for task in WHOLE.tasks]
    order = ["safe_stopped", "clean_tank", "clean_hose", "meter", "fill", "set_vacuum"]
    assert sorted(order, key=keys.index) == order


def test_rows_let_down_are_let_down_first_and_rows_locked_up_are_cleaned_first() -> None:
    up = {Cell("row_lock", Place.of_row(2)): LOCKED_UP, Cell("row_lock", Place.of_row(4)): "down"}
    now = {Cell("row_lock", Place.of_row(2)): "down", Cell("row_lock", Place.of_row(4)): LOCKED_UP}
    work = plan(SPLIT, corn(SPLIT).with_values(now), bean(SPLIT).with_values(up), BEAN)
    keys = [task.key for task in work.tasks]
    tubes = next(key for key in keys if key.startswith("clean_tube"))
    assert keys.index("row_lock/down") < keys.index("set_depth")
    assert keys.index(tubes) < keys.index("row_lock/up")
    assert work.task("row_lock/up").title == "Lock up row 2"


def test_a_row_to_be_locked_up_is_cleaned_but_not_set() -> None:
    up = {Cell("row_lock", Place.of_row(2)): LOCKED_UP}
    work = plan(SPLIT, corn(SPLIT), bean(SPLIT).with_values(up), BEAN)
    cleaned = {place for task in family(work, "clean_tube") for place in task.places}
    assert Place.of_row(2) in cleaned
    assert Place.of_row(2) not in work.task("set_depth").places


def test_the_cab_is_told_the_row_spacing_when_rows_are_locked_up() -> None:
    up = {Cell("row_lock", Place.of_row(row)): LOCKED_UP for row in (2, 4)}
    work = plan(SPLIT, corn(SPLIT), bean(SPLIT).with_values(up), BEAN)
    spacing = work.task("cab_spacing")
    assert spacing.title == "Cab: row spacing 15.0 in → 30.0 in, 3 rows"
    assert (spacing.places, spacing.by_tick) == ((PLANTER,), True)


def test_the_first_pass_says_how_many_seeds_to_find() -> None:
    (count,) = family(WHOLE, "prove_rate")
    assert count.title == "First pass: count seeds, 140 in 17.4 ft of row"


def test_a_proof_is_another_one_when_its_target_changes() -> None:
    deeper = bean(LONG_ACRE).with_values(row_setup(LONG_ACRE, depth=6))
    other = plan(LONG_ACRE, corn(LONG_ACRE), deeper, BEAN)
    (first,), (second,) = family(WHOLE, "prove_depth"), family(other, "prove_depth")
    assert first.family != second.family
    assert WHOLE.task("set_depth").family == other.task("set_depth").family


def test_a_lot_that_is_not_on_record_is_cleaned_for_as_another_crop() -> None:
    target = Setup(row_setup(LONG_ACRE, seed="unheard-of"))
    work = plan(LONG_ACRE, corn(LONG_ACRE), target)
    assert family(work, "clean_tank")[0].key == "clean_tank.H-9/different_crop+treated_to_untreated"


def test_without_a_next_lot_nothing_is_cleaned() -> None:
    work = plan(LONG_ACRE, corn(LONG_ACRE), Setup(row_setup(LONG_ACRE, depth=5)))
    assert not [task for task in work.tasks if task.kind is TaskKind.CLEAN]


def test_the_users_own_minutes_win_for_a_task_and_for_an_element() -> None:
    own = (
        StandardTime("set_depth", Q(0, "min"), Q(30, "s")),
        StandardTime("swap_part", Q(0, "min"), Q(5, "min")),
    )
    work = plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE), BEAN, own)
    assert work.task("set_depth").minutes == Q(12, "min")
    (before,), (after,) = family(WHOLE, "meter"), family(work, "meter")
    assert (after.minutes_each - before.minutes_each).to("min").magnitude == 8


def test_row_hoppers_are_emptied_row_by_row_where_there_are_no_tanks() -> None:
    plain = Planter("Plain", 6, Q(30, "in"))
    work = plan(plain, corn(plain), bean(plain), BEAN)
    (tank,) = family(work, "clean_tank")
    assert tank.title.startswith("Empty row hoppers into container “H-9”")
    assert tank.places == rows(*range(1, 7))
    assert not family(work, "clean_hose")


def test_tasks_carry_the_cautions_of_their_place_and_the_list_defers_to_the_manual() -> None:
    cautions = RULES.cautions
    assert set(cautions.texts(["raised", "pinch"])) <= set(WHOLE.task("set_depth").cautions)
    assert cautions.by_key["fan"].text in WHOLE.task("set_vacuum").cautions
    assert cautions.by_key["treated_left"].text in family(WHOLE, "clean_tank")[0].cautions
    assert WHOLE.cautions[-1] == cautions.deference


def test_oil_is_cautioned_of_at_a_down_pressure_circuit() -> None:
    planter = Planter("Oil", 4, Q(30, "in"))
    work = plan(planter, Setup(), Setup(row_setup(planter, down_pressure=Q(150, "lbf"))))
    task = work.task("set_down_pressure")
    assert RULES.cautions.by_key["oil"].text in task.cautions
    assert task.work_place is WorkPlace.ROW_UNIT
    assert task.places == (Place(Scope.PLANTER),)
