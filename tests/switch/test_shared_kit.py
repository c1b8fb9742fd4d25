"""A kit among those of other planters: nothing on the shelf is promised twice."""

from collections import Counter
from dataclasses import replace
from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.parts import Condition, ShelfCount
from changeover.switch.shared_kit import at_hand, others_text, shared_kit
from changeover.switch.supply import PlannedSwitch, supply
from changeover.switch.tasks import Claim, Kit, KitLine, PartCount

MAY_4 = date(2026, 5, 4)


def switch(
    planter: str, day: int, on: dict[str, int], off: dict[str, int], held: int
) -> PlannedSwitch:
    lines = tuple(KitLine(part, "", count, held, ("B2",)) for part, count in on.items())
    back = tuple(PartCount(part, count) for part, count in off.items())
    return PlannedSwitch(planter, MAY_4 + timedelta(days=day), Kit(lines, back))


def shared(plans: list[PlannedSwitch], held: int) -> list[Kit]:
    met = supply(plans, [ShelfCount(part, Condition.GOOD, held) for part in "ab"], {})
    return [shared_kit(one.kit, one.planter, met) for one in plans]


def first_line(kit: Kit) -> KitLine:
    return kit.lines[0]


def test_of_one_shelf_two_planters_each_are_told_of_the_other() -> None:
    plans = [switch("Old", 0, {"a": 15}, {}, 15), switch("Pen", 1, {"a": 12}, {}, 15)]
    old, pen = map(first_line, shared(plans, 15))
    assert (old.short, old.claims) == (0, (Claim("Pen", 12, 12),))
    assert at_hand(old) == "on the shelf, bin B2, but Pen needs 12 too: 12 short"
    assert (pen.short, pen.free) == (12, 0)
    assert at_hand(pen).startswith("0 of 15 on the shelf left, 12 short, bin B2; Old needs 15 too")


def test_what_suffices_for_both_is_on_the_shelf() -> None:
    plans = [switch("Old", 0, {"a": 5}, {}, 15), switch("Pen", 1, {"a": 10}, {}, 15)]
    lines = [first_line(kit) for kit in shared(plans, 15)]
    assert [at_hand(line) for line in lines] == ["on the shelf, bin B2"] * 2
    assert others_text(lines[0]) == "Pen needs 10 too: none short"


def test_parts_that_another_planter_releases_in_time_are_said() -> None:
    plans = [switch("Old", 0, {}, {"a": 4}, 0), switch("Pen", 1, {"a": 6}, {}, 0)]
    pen = first_line(shared(plans, 0)[1])
    assert (pen.coming, pen.short) == (4, 2)
    assert "4 come off another planter, 2 short" in at_hand(pen)


def test_a_kit_that_is_not_among_those_met_stays_as_it_is() -> None:
    made = switch("Old", 0, {"a": 5}, {}, 15).kit
    assert shared_kit(made, "Old", ()) == made


counts = st.dictionaries(st.sampled_from("ab"), st.integers(1, 20), max_size=2)


@given(*[counts] * 4, st.integers(-1, 2), st.integers(0, 30))
def test_two_planters_never_lay_out_more_than_there_is(
    on_old: dict[str, int],
    off_old: dict[str, int],
    on_pen: dict[str, int],
    off_pen: dict[str, int],
    later: int,
    held: int,
) -> None:
    plans = [switch("Old", 0, on_old, off_old, held), switch("Pen", later, on_pen, off_pen, held)]
    laid, coming, needed, short = Counter(), Counter(), Counter(), Counter()  # type: ignore[var-annotated]
    for kit in shared(plans, held):
        for line in kit.lines:
            laid[line.part] += min(line.needed, line.free)
            coming[line.part] += line.coming
            needed[line.part] += line.needed
            short[line.part] += line.short
            assert line.short_together >= line.short
    for part in needed:
        assert laid[part] <= held
        assert coming[part] <= off_old.get(part, 0) + off_pen.get(part, 0)
        assert laid[part] + coming[part] + short[part] == needed[part]


@given(counts, counts, st.integers(0, 30))
def test_both_planters_say_the_same_shortage_together(
    on_old: dict[str, int], on_pen: dict[str, int], held: int
) -> None:
    plans = [switch("Old", 0, on_old, {}, held), switch("Pen", 0, on_pen, {}, held)]
    old, pen = ({line.part: line for line in kit.lines} for kit in shared(plans, held))
    for part in old.keys() & pen.keys():
        assert old[part].short_together == pen[part].short_together
        assert old[part].short_together == max(0, on_old[part] + on_pen[part] - held)


def test_lines_that_are_short_come_first_then_those_another_lacks() -> None:
    mine = switch("Old", 0, {"a": 9, "b": 3}, {}, 9)
    other = switch("Pen", 1, {"b": 9}, {}, 9)
    lines = shared([mine, other], 9)[0].lines
    assert [line.part for line in lines] == ["b", "a"]
    assert replace(lines[0], claims=()).short_together == 0
