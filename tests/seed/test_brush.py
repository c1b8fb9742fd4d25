"""Brush: by its owner's mark alone, of those to hand."""

from changeover.planter.parts import Condition, Part, ShelfCount
from changeover.seed.brush import answer_brush
from changeover.seed.reasons import Trust
from tests.seed.made_up import LOW_BRUSH, all_rows, case, planter

TALL = Part("tall", "tall brush", "brush", frozenset({"corn", "soybean"}))
PLAIN = Part("plain", "plain brush", "brush")


def shelf(*counts: tuple[str, Condition, int]) -> tuple[ShelfCount, ...]:
    return tuple(ShelfCount(*one) for one in counts)


def test_the_brush_marked_for_this_crop_alone_comes_first() -> None:
    counts = shelf(("tall", Condition.NEW, 40), ("low", Condition.GOOD, 12))
    answer = answer_brush(case(parts=(TALL, LOW_BRUSH, PLAIN), shelf=counts), "brush")
    assert (answer.value, answer.reason.trust) == ("low", Trust.RECORD)
    assert answer.warnings == ()


def test_too_few_is_said() -> None:
    counts = shelf(("low", Condition.GOOD, 5))
    answer = answer_brush(case(parts=(LOW_BRUSH,), shelf=counts), "brush")
    assert answer.warnings == ("Only 5 usable brush low for 12 rows: 7 short.",)


def test_those_that_wait_to_be_inspected_are_said_before_any_is_ordered() -> None:
    counts = shelf(("low", Condition.GOOD, 5), ("low", Condition.INSPECT, 4))
    answer = answer_brush(case(parts=(LOW_BRUSH,), shelf=counts), "brush")
    assert answer.warnings == (
        "Only 5 usable brush low for 12 rows: inspect 4 of the 4 that wait on the shelf, 3 short.",
    )


def test_one_to_hand_comes_before_one_that_only_waits() -> None:
    counts = shelf(("tall", Condition.NEW, 12), ("low", Condition.INSPECT, 12))
    both = answer_brush(case(parts=(TALL, LOW_BRUSH), shelf=counts), "brush")
    assert (both.value, both.warnings) == ("tall", ())
    alone = answer_brush(case(parts=(LOW_BRUSH,), shelf=counts), "brush")
    assert alone.value == "low"
    assert "inspect 12 of the 12 that wait" in alone.warnings[0]


def test_mounted_ones_count_worn_ones_do_not() -> None:
    machine = planter()
    counts = shelf(("low", Condition.WORN, 40))
    found = all_rows(machine, brush="low")
    answer = answer_brush(case(parts=(LOW_BRUSH,), shelf=counts, as_found=found), "brush")
    assert (answer.value, answer.warnings) == ("low", ())
    assert answer_brush(case(parts=(LOW_BRUSH,), shelf=counts), "brush").value is None


def test_without_a_mark_there_is_no_ground() -> None:
    counts = shelf(("plain", Condition.NEW, 40))
    answer = answer_brush(case(parts=(PLAIN,), shelf=counts), "brush")
    assert answer.value is None
    assert "No brush to hand is marked for soybean" in answer.reason.why
