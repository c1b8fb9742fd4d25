"""The kit against the shelf: what to lay out, what is short, what comes back."""

from hypothesis import given

from changeover.planter.machine import Planter
from changeover.planter.parts import Condition, Part, ShelfCount
from changeover.planter.places import Place
from changeover.planter.setup import Cell, Setup
from changeover.switch.difference import difference
from changeover.switch.kit import kit, labels
from changeover.switch.progress import progress
from changeover.switch.tasks import PartCount, Tick
from tests.switch.switch_case import BEAN, LONG_ACRE, SETTINGS, bean, corn, plan, switches

PARTS = (Part("S56", "soybean disc", "disc", cells=56), Part("low", "low brush", "brush"))
SHELF = (
    ShelfCount("S56", Condition.GOOD, 20, "bin 3"),
    ShelfCount("S56", Condition.NEW, 4, "bin 9"),
    ShelfCount("low", Condition.GOOD, 23, "bin 4"),
    ShelfCount("low", Condition.WORN, 10, "bin 4"),
    ShelfCount("low", Condition.INSPECT, 5, "bin 5"),
)
WORK = plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE), BEAN)


def test_only_new_and_good_parts_count_and_what_is_short_comes_first() -> None:
    low, disc = kit(WORK, PARTS, SHELF).lines
    assert (low.part, low.needed, low.on_shelf, low.short, low.bins) == (
        "low",
        24,
        23,
        1,
        ("bin 4",),
    )
    assert (disc.name, disc.on_shelf, disc.short, disc.bins) == (
        "soybean disc",
        24,
        0,
        ("bin 3", "bin 9"),
    )


def test_what_comes_off_comes_back() -> None:
    assert kit(WORK, PARTS, SHELF).back == (PartCount("C30", 24), PartCount("tall", 24))


def test_parts_that_come_off_do_not_fill_a_gap_before_they_are_inspected() -> None:
    swap = {Cell("disc", Place.of_row(row)): "S56" for row in range(1, 13)}
    back = {Cell("disc", Place.of_row(row)): "C30" for row in range(1, 13)}
    work = plan(LONG_ACRE, corn(LONG_ACRE).with_values(swap), bean(LONG_ACRE).with_values(back))
    corn_disc = next(line for line in kit(work, PARTS, SHELF).lines if line.part == "C30")
    assert (corn_disc.needed, corn_disc.released, corn_disc.short) == (12, 12, 12)


def test_the_kit_of_what_is_left_leaves_out_rows_that_are_done() -> None:
    (meter,) = [task for task in WORK.tasks if task.key.startswith("meter")]
    one = Place.of_row(1)
    values = {cell: value for cell, value in bean(LONG_ACRE).values.items() if cell.place == one}
    found = corn(LONG_ACRE).with_values(values)
    left = progress(WORK, [Tick(meter.key, one, "Ana", "")], found, SETTINGS)
    assert {line.part: line.needed for line in kit(left, PARTS, SHELF).lines} == {
        "S56": 23,
        "low": 23,
    }


def test_a_label_names_part_row_and_planter() -> None:
    made = labels(WORK, "Long Acre 24", PARTS)
    assert len(made) == 48
    assert (made[0].part, made[0].name, made[0].place.label, made[0].planter) == (
        "S56",
        "soybean disc",
        "row 1",
        "Long Acre 24",
    )


@given(switches())
def test_parts_are_conserved(case: tuple[Planter, Setup, Setup]) -> None:
    planter, before, target = case
    made = kit(plan(planter, before, target, BEAN), PARTS, SHELF)
    swaps = [c for c in difference(planter, SETTINGS, before, target).changes.values() if c.part]
    assert sum(line.needed for line in made.lines) == len(swaps)
    assert sum(count.count for count in made.back) == sum(c.before is not None for c in swaps)
    assert len(labels(plan(planter, before, target), "x", PARTS)) == len(swaps)
