"""A tick of cleaning counts for the same seed, as far as it went, until that seed is back."""

from dataclasses import replace

import pytest

from changeover.planter.places import PLANTER
from changeover.planter.setup import Setup
from changeover.seed.lots import Purity, SeedLot, Treatment
from changeover.switch.clean_ticks import clean_key, lot_word
from changeover.switch.midway import start_of
from changeover.switch.own_tasks import Split, with_own_tasks
from changeover.switch.progress import Progress, progress
from changeover.switch.tasks import Task, TaskKind, Tick, Worklist
from tests.switch.switch_case import (
    BEAN,
    CORN,
    LONG_ACRE,
    SETTINGS,
    bean,
    corn,
    plan,
    row_setup,
    rows,
)

MAIZE = replace(CORN, number="M-3", name="Low Meadow")
WORK = plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE), BEAN)


def cleaning(work: Worklist) -> list[Task]:
    return [task for task in work.tasks if task.kind is TaskKind.CLEAN or task.cleans]


def ticked(work: Worklist, when: str = "2026-05-04T08:00:00Z") -> list[Tick]:
    return [Tick(t.key, place, "Ana", when) for t in cleaning(work) for place in t.places]


def next_plan(lot: SeedLot, ticks: list[Tick], found: Setup | None = None) -> Progress:
    """Plan another lot after the one of ``WORK``; ``found`` is what the planter is set to now."""
    now = corn(LONG_ACRE) if found is None else found
    target = bean(LONG_ACRE).with_values(row_setup(LONG_ACRE, seed=lot.number))
    start = start_of(corn(LONG_ACRE), now, target, SETTINGS)
    work = plan(LONG_ACRE, start, target, lot)
    return progress(work, ticks, now, SETTINGS)


def open_cleaning(done: Progress) -> set[str]:
    return {t.key.partition(".")[0] for t in cleaning(done.worklist) if done.left(t) and t.cleans}


def test_a_harder_clean_out_covers_a_lighter_one_of_the_same_seed() -> None:
    certified = replace(BEAN, purity=Purity.CERTIFIED)
    hard = plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE), certified)
    done = next_plan(MAIZE, ticked(hard))
    assert not open_cleaning(done) - {"meter"}
    assert all(
        done.changes_left(task, place)
        for task in done.worklist.tasks
        if task.family.startswith("meter.")
        for place in done.left(task)
    )


def test_a_lighter_one_leaves_the_rest_of_a_harder_one_open() -> None:
    untreated = replace(BEAN, number="S-115", treatment=Treatment.NONE)
    assert "clean_tank" in open_cleaning(next_plan(untreated, ticked(WORK)))


def test_seed_that_was_filled_in_meanwhile_is_cleaned_out_whatever_was_cleaned_before() -> None:
    filled = bean(LONG_ACRE)
    done = next_plan(MAIZE, ticked(WORK), filled)
    heads = {task.key.partition(".")[0] for task in cleaning(done.worklist)}
    assert {"clean_tank", "clean_hose", "meter", "clean_tube", "clean_floor"} <= heads
    assert all(task.family.endswith(BEAN.number) for task in cleaning(done.worklist))
    assert heads <= open_cleaning(done)


@pytest.mark.parametrize(("when", "stands"), [("T07:00:00Z", False), ("T09:30:00Z", True)])
def test_cleaning_before_a_lot_was_filled_in_says_nothing_of_its_seed(when, stands) -> None:
    tank = next(task for task in WORK.tasks if task.key.startswith("clean_tank"))
    made = [Tick(tank.key, place, "Ana", f"2026-05-04{when}") for place in tank.places]
    made.append(Tick("fill/H-9", tank.places[0], "Ben", "2026-05-04T09:00:00Z"))
    assert progress(WORK, made, corn(LONG_ACRE), SETTINGS).is_done(tank.key) is stands


def test_the_look_over_is_asked_again_when_more_is_to_be_cleaned() -> None:
    certified = replace(BEAN, purity=Purity.CERTIFIED)
    once = plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE), certified)
    organic = replace(BEAN, number="S-9", purity=Purity.ORGANIC, treatment=Treatment.NONE)
    done = next_plan(organic, ticked(once))
    look = next(t for t in done.worklist.tasks if t.key.startswith("inspect_clean"))
    assert done.left(look) == (PLANTER,)


def test_signs_that_part_a_key_are_no_part_of_a_lot_in_it() -> None:
    key = clean_key("meter", ["A/1~b|c", ""], [], "disc")
    assert key.count("/") == 2
    assert "~" not in key
    assert (lot_word("A/1"), lot_word("")) == ("A∕1", "not known")


def test_a_split_of_the_meters_holds_for_whatever_comes_out_of_them() -> None:
    split = Split("meter.somewhere else", "Bram", frozenset(rows(10, 11, 12)))
    work = with_own_tasks(WORK, (), (split,))
    apart = [task for task in work.tasks if task.title.endswith("(Bram)")]
    assert [task.places for task in apart] == [rows(10, 11, 12)]
