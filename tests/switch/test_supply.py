"""Parts over several switches: nothing counted twice, released parts by their day."""

from collections import Counter
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.parts import Condition, ShelfCount
from changeover.quantities import Refusal
from changeover.switch.supply import PlannedSwitch, Source, supply, to_order
from changeover.switch.tasks import Kit, KitLine, PartCount

MAY_4 = date(2026, 5, 4)


def switch(planter: str, day: int, on: dict[str, int], off: dict[str, int]) -> PlannedSwitch:
    lines = tuple(KitLine(part, "", count, 0) for part, count in on.items())
    back = tuple(PartCount(part, count) for part, count in off.items())
    return PlannedSwitch(planter, MAY_4 + timedelta(days=day), Kit(lines, back))


def shelf(**counts: int) -> tuple[ShelfCount, ...]:
    return tuple(ShelfCount(part, Condition.GOOD, count) for part, count in counts.items())


def test_the_shelf_is_used_first_and_only_once() -> None:
    plans = [switch("A", 0, {"S56": 8}, {}), switch("B", 1, {"S56": 8}, {})]
    first, second = supply(plans, shelf(S56=12), {"S56": 5})
    assert (first.sources, first.short, first.order_by) == ((Source("shelf", 8),), 0, None)
    assert (second.short, second.order_by) == (4, date(2026, 4, 30))
    assert to_order([first, second]) == {"S56": 4}


def test_parts_released_by_another_planter_fill_a_gap_once_inspected() -> None:
    plans = [
        switch("A", 0, {}, {"C30": 12}),
        switch("B", 1, {"C30": 8}, {}),
        switch("C", 1, {"C30": 8}, {}),
    ]
    b, c = supply(plans, (), {})
    assert b.sources == (Source("A", 8, date(2026, 5, 5)),)
    assert (c.short, c.sources) == (4, (Source("A", 4, date(2026, 5, 5)),))


def test_parts_released_on_the_same_day_come_too_late() -> None:
    plans = [switch("A", 0, {}, {"C30": 12}), switch("B", 0, {"C30": 8}, {})]
    (b,) = supply(plans, (), {})
    assert b.short == 8


def test_parts_that_wait_to_be_inspected_meet_nothing_but_are_told() -> None:
    lying = (*shelf(S56=4), ShelfCount("S56", Condition.INSPECT, 9))
    (one,) = supply([switch("A", 0, {"S56": 8}, {})], lying, {})
    assert (one.short, one.to_inspect) == (4, 9)


def test_days_below_zero_are_refused() -> None:
    with pytest.raises(Refusal, match="cannot be below zero"):
        supply([], (), {"C30": -1})


counts = st.dictionaries(st.sampled_from(["a", "b"]), st.integers(1, 9), max_size=2)
plans = st.lists(
    st.builds(switch, st.sampled_from(["A", "B", "C"]), st.integers(0, 4), counts, counts),
    max_size=6,
)


@given(plans, st.integers(0, 20))
def test_parts_are_conserved_across_switches(made: list[PlannedSwitch], stock: int) -> None:
    met = supply(made, shelf(a=stock, b=stock), {})
    used = Counter[str]()
    for one in met:
        assert one.short >= 0
        used[one.part] += sum(source.count for source in one.sources)
        assert all(s.ready is None or s.ready <= one.day for s in one.sources)
    for part in ("a", "b"):
        released = sum(b.count for p in made for b in p.kit.back if b.part == part)
        assert used[part] <= stock + released
