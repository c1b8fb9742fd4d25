"""Wear readings against limits, and how long a part will last."""

from datetime import date

import pytest

from changeover.files.wear_limits import bundled_wear_limits
from changeover.proof.source import Source
from changeover.proof.verdict_findings import wear_findings
from changeover.proof.wear import (
    Kind,
    WearLimit,
    WearReading,
    WearState,
    judge_all,
    judge_wear,
    limit_for,
    wear_rate,
    worst_condition,
)
from changeover.quantities import Q, Refusal
from changeover.seed.reasons import Trust

LIMITS = bundled_wear_limits()
DISC = "opener disc diameter"
MANUAL = Source("page 40", Trust.MANUAL)
DAY = date(2024, 3, 1)


def disc(inches: float, on: date = DAY, worked: float | None = None) -> WearReading:
    acres = None if worked is None else Q(worked, "acre")
    return WearReading(3, DISC, Q(inches, "in"), on, acres, "15 in new")


@pytest.mark.parametrize(
    ("inches", "condition"),
    [
        (15, WearState.GOOD),
        (14.7, WearState.GOOD),
        (14.6, WearState.WATCH),
        (14.5, WearState.WATCH),
        (14.49, WearState.REPLACE),
    ],
)
def test_an_opener_disc(inches, condition) -> None:
    assert judge_wear(disc(inches), LIMITS).condition is condition


@pytest.mark.parametrize(
    ("part", "applies", "inches", "condition"),
    [
        ("opener contact", "3.5 mm blade", 1.75, WearState.GOOD),
        ("opener contact", "3.5 mm blade", 2.2, WearState.REPLACE),
        ("opener contact", "3.5 mm blade", 1.4, WearState.REPLACE),
        ("arm play sideways", "", 0.5, WearState.GOOD),
        ("arm play sideways", "", 0.9, WearState.WATCH),
        ("arm play sideways", "", 1.1, WearState.REPLACE),
    ],
)
def test_other_parts(part, applies, inches, condition) -> None:
    reading = WearReading(1, part, Q(inches, "in"), DAY, None, applies)
    assert judge_wear(reading, LIMITS).condition is condition


def test_a_look_is_fine_or_not() -> None:
    fine, not_fine = (WearReading(1, "seed tube", x, DAY) for x in (True, False))
    assert judge_wear(fine, LIMITS).condition is WearState.GOOD
    assert judge_wear(not_fine, LIMITS).condition is WearState.REPLACE


def test_your_manual_comes_first() -> None:
    own = WearLimit(DISC, "Opener disc", Kind.LEAST, MANUAL, "Replace.", low=Q(14.25, "in"))
    assert limit_for(DISC, "15 in new", (*LIMITS, own)) is own
    assert judge_wear(disc(14.3), (*LIMITS, own)).condition is WearState.GOOD


def test_a_part_nobody_has_a_limit_for() -> None:
    found = judge_wear(WearReading(1, "hub", Q(1, "in"), DAY), LIMITS)
    assert found.condition is WearState.NO_LIMIT
    assert "your manual" in found.says


def test_every_condition_has_its_own_mark() -> None:
    assert len({one.mark for one in WearState}) == len(WearState)


def test_the_worst_part_is_the_row() -> None:
    readings = [disc(15), WearReading(3, "seed tube", value=False, on=DAY)]
    assert worst_condition(judge_all(readings, LIMITS)) is WearState.REPLACE
    assert worst_condition([]) is WearState.NO_LIMIT


def test_worn_parts_become_findings_with_their_source() -> None:
    verdicts = judge_all([disc(15), disc(14.4)], LIMITS)
    (found,) = wear_findings(verdicts)
    assert "replace" in found.what
    assert "Iowa State" in found.advice[0].source.text


def test_acres_left_from_two_dates() -> None:
    limit = limit_for(DISC, "15 in new", LIMITS)
    first, second = disc(15, date(2023, 3, 1), 1000), disc(14.8, date(2024, 2, 29), 3000)
    found = wear_rate(first, second, limit)
    assert found.area_left.to("acre").magnitude == pytest.approx(3000)
    assert found.per_area.to("in/acre").magnitude == pytest.approx(0.0001)
    assert found.reaches_limit == date(2025, 8, 29)


def test_play_wears_upward() -> None:
    limit = limit_for("arm play sideways", "", LIMITS)
    one, two = (
        WearReading(1, limit.part, Q(x, "in"), date(2024, 3, d), Q(100.0 * d, "acre"))
        for x, d in ((0.25, 1), (0.5, 11))
    )
    assert wear_rate(one, two, limit).area_left.to("acre").magnitude == pytest.approx(2000)


def test_without_wear_or_acres_nothing_is_foretold() -> None:
    limit = limit_for(DISC, "15 in new", LIMITS)
    same = wear_rate(disc(15, DAY, 0), disc(15, date(2024, 4, 1), 500), limit)
    assert (same.area_left, same.reaches_limit) == (None, None)
    assert wear_rate(disc(15), disc(14.9, date(2024, 4, 1)), limit).area_left is None


@pytest.mark.parametrize(
    ("first", "second"),
    [(disc(15), disc(14.9)), (disc(15, DAY, 900), disc(14.9, date(2024, 4, 1), 100))],
)
def test_pairs_that_make_no_sense_are_refused(first, second) -> None:
    with pytest.raises(Refusal):
        wear_rate(first, second, limit_for(DISC, "15 in new", LIMITS))


@pytest.mark.parametrize("inches", [3, 15.5, 150])
def test_impossible_diameters_are_refused(inches) -> None:
    with pytest.raises(Refusal, match=r"Row 3, Opener disc diameter: .* is not possible"):
        judge_wear(disc(inches), LIMITS)


@pytest.mark.parametrize(("part", "value"), [(DISC, True), ("seed tube", Q(1, "in"))])
def test_a_reading_of_the_wrong_kind_is_refused(part, value) -> None:
    with pytest.raises(Refusal):
        judge_wear(WearReading(1, part, value, DAY, None, "15 in new"), LIMITS)


def test_a_limit_with_the_wrong_bounds_is_refused() -> None:
    with pytest.raises(Refusal, match="wrong bounds"):
        WearLimit("disc", "Disc", Kind.LEAST, MANUAL, "Replace.", high=Q(1, "in"))
