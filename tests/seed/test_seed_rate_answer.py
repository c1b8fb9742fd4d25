"""Seed rate: as asked, from the stand, or from the crop table, and nothing where none is known."""

import pytest

from changeover.quantities import Q, Refusal, is_quantity
from changeover.seed.crops import Crop
from changeover.seed.reasons import Trust
from changeover.seed.seed_rate import answer_seed_rate, asked_for, rate_wanted, shares_of
from changeover.seed.trust_order import Answer
from tests.seed.made_up import case, crop_table, job, lot, proposal

STAND = job(stand=Q(30_000, "plant/acre"))


def per_acre(answer: Answer) -> float:
    assert is_quantity(answer.value)
    return float(answer.value.to("seed/acre").magnitude)


def test_the_rate_asked_for_is_taken() -> None:
    answer = answer_seed_rate(case(job=job(seed_rate=Q(132_000, "seed/acre"))))
    assert per_acre(answer) == pytest.approx(132_000)
    assert answer.reason.why == "You asked for 132\u202f000 seeds/ac in West Bottom."


def test_a_stand_is_divided_by_germination_and_emergence() -> None:
    wanted = job(stand=Q(100_000, "plant/acre"), emergence=0.8)
    answer = answer_seed_rate(case(job=wanted))
    assert per_acre(answer) == pytest.approx(100_000 / 0.9 / 0.8)
    assert "100\u202f000 plants/ac / (0.9 · 0.8)" in answer.reason.how


def test_the_crop_table_is_asked_last_with_its_band() -> None:
    answer = answer_seed_rate(case())
    assert per_acre(answer) == pytest.approx(140_000)
    assert answer.low == Q(130_000, "seed/acre")
    assert "Purdue" in answer.reason.source
    assert answer.reason.cautions


def test_a_printed_stand_serves_where_no_rate_is_printed() -> None:
    answer = answer_seed_rate(case("sugar_beet", lot=lot("sugar_beet", germination=0.95)))
    assert per_acre(answer) == pytest.approx(35_640 / 0.65)
    assert answer.reason.trust is Trust.PUBLISHED


def test_a_crop_without_figures_has_no_rate() -> None:
    bare = case(job=job(), lot=lot())
    answer = answer_seed_rate(bare.__class__(**{**bare.__dict__, "crop": Crop("oats", "Oats")}))
    assert answer.value is None
    assert "Enter a seed rate or a stand" in answer.reason.why


@pytest.mark.parametrize("crop", sorted(crop_table()))
def test_the_rate_alone_is_that_of_the_answer(crop: str) -> None:
    for wanted in (job(), job(stand=Q(30_000, "plant/acre"))):
        given = case(crop, job=wanted)
        answer, alone = answer_seed_rate(given), rate_wanted(given)
        assert alone is not None
        assert per_acre(answer) == pytest.approx(alone.to("seed/acre").magnitude)


def test_shares_say_whence_they_come() -> None:
    shares = shares_of(case("sorghum", lot=lot("sorghum", germination=None)))
    assert (shares.germination, shares.emergence) == (1.0, pytest.approx(0.675))
    assert shares.germination_says == "not entered: 100 %"
    assert "Kansas State" in shares.emergence_says


def test_a_share_of_the_seeds_sown_holds_germination_already() -> None:
    tags = [lot("sorghum", germination=share) for share in (0.85, 0.95)]
    rates = [rate_wanted(case("sorghum", lot=tag, job=STAND)) for tag in tags]
    assert rates[0] is not None
    assert rates[1] is not None
    assert rates[0].magnitude == pytest.approx(rates[1].magnitude)
    poor = shares_of(case("sorghum", lot=lot("sorghum", germination=0.5)))
    assert (poor.germination, poor.emergence) == (0.5, 1.0)


def test_asked_for_means_the_job_says_so() -> None:
    assert asked_for(case(job=job(stand=Q(100_000, "plant/acre"))))
    assert not asked_for(case())


@pytest.mark.parametrize(("error", "words"), [(0.02, "2.0% too few"), (-0.03, "3.0% too many")])
def test_a_meter_error_is_made_up_for_and_said(error: float, words: str) -> None:
    stand = Q(30_000, "plant/acre")
    plain, wrong = (
        answer_seed_rate(case("corn", job=job(stand=stand, meter_error=one)))
        for one in (None, error)
    )
    assert is_quantity(plain.value)
    assert is_quantity(wrong.value)
    assert (wrong.value * (1 - error)).m_as("1/acre") == pytest.approx(plain.value.m_as("1/acre"))
    told = {one.name: one.text for one in wrong.reason.inputs}
    assert words in told["meter error"]


def test_a_meter_error_changes_the_rate_set_but_not_the_seed_that_falls() -> None:
    stand = Q(30_000, "plant/acre")
    found = [
        {one.key: one.quantity for one in proposal(job=job(stand=stand, meter_error=error)).figures}
        for error in (None, 0.04)
    ]
    seeds, stands = (
        [one[key].magnitude for one in found] for key in ("seeds_needed", "expected_stand")
    )
    assert seeds[1] == pytest.approx(seeds[0])
    assert stands[1] == pytest.approx(stands[0])


def test_a_meter_error_that_cannot_be_is_refused() -> None:
    with pytest.raises(Refusal, match="-50 to 50 %"):
        job(meter_error=0.7)
