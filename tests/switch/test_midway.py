"""After a new plan midway, work and kit go from what is there now; no part is lost or made up."""

from collections import Counter

from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.machine import Planter
from changeover.planter.places import Place
from changeover.planter.setup import Cell, Setup
from changeover.switch.bags import bags
from changeover.switch.difference import difference, work_settings
from changeover.switch.kit import kit
from changeover.switch.midway import start_of
from changeover.switch.progress import progress
from changeover.switch.tasks import Kit
from tests.switch.switch_case import SETTINGS, plan, planters, setups

DISC = Cell("disc", Place.of_row(1))


@st.composite
def midways(draw: st.DrawFn) -> tuple[Planter, Setup, Setup, Setup]:
    """Draw a planter, its setup before, as found after part of a first plan, and a new plan."""
    planter = draw(planters())
    before, first, second = (draw(setups(planter)) for _ in range(3))
    changes = list(difference(planter, SETTINGS, before, first).changes.values())
    made = draw(st.sets(st.sampled_from(changes))) if changes else set()
    return planter, before, before.with_values({c.cell: c.after for c in made}), second


def kit_left(planter: Planter, before: Setup, found: Setup, target: Setup) -> Kit:
    work = plan(planter, start_of(before, found, target, SETTINGS), target)
    return kit(progress(work, (), found, SETTINGS), (), ())


def mounted(planter: Planter, setup: Setup, wanted: set[Cell]) -> Counter[str]:
    return Counter(str(setup.get(cell)) for cell in wanted if setup.get(cell) is not None)


@given(midways())
def test_parts_on_the_planter_and_in_the_kit_make_what_is_wanted(case) -> None:
    planter, before, found, target = case
    parts = {one.key for one in work_settings(planter, SETTINGS) if one.part_sort is not None}
    left = difference(planter, SETTINGS, found, target).changes
    cells = {cell for cell in left if cell.setting in parts}
    made = kit_left(planter, before, found, target)
    now = mounted(planter, found, cells)
    now.update({line.part: line.needed for line in made.lines})
    now.subtract({one.part: one.count for one in made.back})
    assert +now == mounted(planter, target, cells)
    assert not -now


@given(midways())
def test_every_cell_that_is_not_at_its_target_has_work_from_what_is_there(case) -> None:
    planter, before, found, target = case
    work = plan(planter, start_of(before, found, target, SETTINGS), target)
    done = progress(work, (), found, SETTINGS)
    left = {
        change.cell: (change.before, change.after)
        for task in work.tasks
        for place in task.places
        for change in done.changes_left(task, place)
    }
    wanted = difference(planter, SETTINGS, found, target).changes
    assert left == {cell: (one.before, one.after) for cell, one in wanted.items()}


@given(midways())
def test_the_bags_hold_what_the_kit_lays_out(case) -> None:
    planter, before, found, target = case
    work = plan(planter, start_of(before, found, target, SETTINGS), target)
    done = progress(work, (), found, SETTINGS)
    held = Counter[str]()
    for bag in bags(done):
        held.update({one.part: one.count for one in bag.parts})
    assert held == {line.part: line.needed for line in kit(done, (), ()).lines}


def test_a_part_put_on_for_an_earlier_plan_is_what_comes_off() -> None:
    before, found, target = (Setup({DISC: code}) for code in ("C30", "S56", "K20"))
    assert start_of(before, found, target, SETTINGS).get(DISC) == "S56"
    assert start_of(before, target, target, SETTINGS).get(DISC) == "C30"
    assert start_of(before, found, before, SETTINGS).get(DISC) == "S56"
    assert start_of(before, found, Setup(), SETTINGS) is before
