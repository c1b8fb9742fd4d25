"""Shortages over all open switches and over a season, with the latest day to order."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta

import pytest

from changeover.desk.door import Outcome
from changeover.desk.edits import Edit, SetShelf
from changeover.desk.season.plan import read_inputs, solve_season, times_of
from changeover.desk.stock import stock
from changeover.desk.supply_list import (
    read_lead_days,
    season_supplies,
    set_delivery,
    short_lines,
    short_text,
    supplies,
)
from changeover.planter.parts import ShelfCount
from changeover.quantities import Refusal
from changeover.store.opening import Store
from changeover.switch.search import Limits
from changeover.switch.supply import Supply

MAY_4 = date(2026, 5, 4)
PLANTER = "Old Fiddle 24"
Do = Callable[[Edit], Outcome]


def low_brush(demo: Store, today: date = MAY_4) -> Supply:
    return next(one for one in supplies(demo, today) if one.part == "low")


def test_what_an_open_switch_lacks_is_short_on_its_day(demo: Store) -> None:
    found = low_brush(demo)
    assert (found.planter, found.day, found.short) == (PLANTER, MAY_4, 1)
    assert found.order_by == MAY_4 - timedelta(days=2)


def test_with_days_to_deliver_the_last_day_to_order_is_told(demo: Store, do: Do) -> None:
    do(set_delivery("low", 2, "3 days"))
    assert read_lead_days(demo)["low"] == 3
    assert low_brush(demo).order_by == MAY_4 - timedelta(days=3)
    line = next(one for one in stock(demo, MAY_4) if one.part.code == "low")
    assert (line.days, line.order_by) == (3, "! now, due 1 May")


def test_days_to_deliver_can_be_changed_taken_back_and_emptied(demo: Store, do: Do) -> None:
    back = do(set_delivery("low", 2, "")).inverse
    assert "low" not in read_lead_days(demo)
    assert low_brush(demo).order_by is None
    do(back)
    assert read_lead_days(demo)["low"] == 2
    do(set_delivery("low", 2, "10"))
    assert read_lead_days(demo)["low"] == 10


@pytest.mark.parametrize("text", ["soon", "-2", "1.5"])
def test_days_that_cannot_be_are_refused(text: str) -> None:
    with pytest.raises(Refusal, match="low"):
        set_delivery("low", None, text)


def test_more_on_the_shelf_fills_the_gap(demo: Store, do: Do) -> None:
    line = next(one for one in stock(demo, MAY_4) if one.part.code == "low")
    count = next(one for one in line.counts.values() if one.count)
    do(SetShelf(ShelfCount("low", count.condition, count.count + 1, count.bin), before=count))
    assert low_brush(demo).short == 0


def test_no_part_is_used_twice_over_a_season(demo: Store) -> None:
    inputs = replace(read_inputs(demo), begins=MAY_4)
    times = times_of(inputs)
    answer = solve_season(inputs, Limits(seconds=3.0, workers=1), times)
    met = season_supplies(answer, times, {"B45": 14})
    shelf: dict[str, int] = {}
    for one in met:
        shelf[one.part] = shelf.get(one.part, 0) + sum(
            source.count for source in one.sources if source.name == "shelf"
        )
    held = {part: sum(c.count for c in inputs.fleet[0].shelf if c.part == part) for part in shelf}
    assert all(shelf[part] <= held[part] for part in shelf)
    short = [line for line in short_lines(met, MAY_4) if "B45" in line]
    assert short
    assert "order by 6 May" in short[0] or "order now" in short[0]


def test_a_shortage_is_said_with_what_to_do() -> None:
    one = Supply("Bar", date(2026, 5, 20), "B45", 12, (), None)
    assert short_text(one, MAY_4).startswith("12 B45 short for Bar on 20 May; enter the days")
    dated = replace(one, order_by=date(2026, 5, 10))
    assert short_text(dated, MAY_4).endswith("order by 10 May.")
    assert short_text(dated, date(2026, 5, 11)).endswith("by 10 May: order now.")


def test_what_waits_on_the_shelf_is_to_be_inspected_before_any_is_ordered() -> None:
    one = Supply("Bar", date(2026, 5, 20), "B45", 12, (), date(2026, 5, 10), to_inspect=12)
    assert short_text(one, MAY_4) == (
        "12 B45 short for Bar on 20 May, inspect the 12 that wait on the shelf first."
    )
    some = replace(one, to_inspect=1)
    assert "inspect the one that waits on the shelf first; order by" in short_text(some, MAY_4)
