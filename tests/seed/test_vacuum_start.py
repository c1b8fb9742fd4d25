"""Vacuum to start from: whose figure wins, the band, the fan limit, several lots on one fan."""

from dataclasses import replace

import pytest

from changeover.planter.places import Place, Scope
from changeover.planter.settings import standard
from changeover.quantities import Q, is_quantity
from changeover.seed.crops import Crop
from changeover.seed.manual import ManualValue, ProvedSetup
from changeover.seed.reasons import Trust
from changeover.seed.trust_order import Answer
from changeover.seed.vacuum_start import answer_vacuum, start_of
from tests.seed.made_up import (
    CORN_DISC,
    SMALL_DISC,
    SOY_DISC,
    case,
    crop_table,
    first,
    job,
    lot,
    planter,
    proposal,
)

FAN = Place(Scope.FAN, "fan 1")
VACUUM = standard("vacuum")


def answer(crop: str = "soybean", disc: object = SOY_DISC, **changes: object) -> Answer:
    return answer_vacuum(VACUUM, FAN, [(case(crop, **changes), disc)])  # type: ignore[list-item]


def kpa(one: object) -> float:
    assert is_quantity(one)
    return float(one.to("kPa").magnitude)


def test_soybean_shows_both_figures_and_why_they_differ() -> None:
    found = answer()
    assert kpa(found.value) == pytest.approx((3.0 * 6.0) ** 0.5)
    assert (kpa(found.low), kpa(found.high)) == pytest.approx((18**0.5 / 2, 18**0.5 * 2))
    assert "differ by 2" in found.reason.why
    assert "laboratory" in found.reason.why
    assert "in the field" in found.reason.why
    assert found.reason.trust is Trust.PUBLISHED


def test_figures_that_agree_are_named_without_fuss() -> None:
    assert "In print: 16.1 inH₂O and 18.1 inH₂O." in answer("corn", CORN_DISC).reason.why


def test_without_print_weight_and_hole_give_a_remembered_start() -> None:
    found = answer("sorghum", SMALL_DISC)
    assert found.reason.trust is Trust.MEMORY
    assert "29 · weight / hole area" in found.reason.how
    assert kpa(found.high) == pytest.approx(4 * kpa(found.low))


def test_without_disc_there_is_no_ground() -> None:
    assert answer("sorghum", None).value is None
    oats = replace(case(), crop=Crop("oats", "Oats"))
    assert start_of(oats, SOY_DISC) is None


def test_the_lower_bound_is_told_where_all_is_known() -> None:
    wanted = job(seed_rate=Q(32_000, "seed/acre"))
    heavy = lot("corn", thousand_seed_mass=Q(300, "g"))
    found = answer("corn", CORN_DISC, job=wanted, lot=heavy)
    assert "By weight and centripetal force alone at least" in found.reason.how


def test_the_manual_wins_and_has_an_honest_band() -> None:
    found = answer(manual=(ManualValue("soybean", "vacuum", Q(12, "inH2O"), "page 9"),))
    assert found.value == Q(12, "inH2O")
    assert found.reason.trust is Trust.MANUAL
    assert kpa(found.low) == pytest.approx(kpa(found.value) / 2)


def test_a_proved_setup_comes_before_print() -> None:
    record = ProvedSetup("May", "soybean", "S56", None, {"vacuum": Q(14, "inH2O")}, "Made-up")
    found = answer(records=(record,))
    assert found.value == Q(14, "inH2O")
    assert found.reason.trust is Trust.RECORD
    used = [rung.trust for rung in found.reason.evidence if rung.used]
    assert used == [Trust.RECORD]


def test_a_fan_that_falls_short_is_never_clamped_in_silence() -> None:
    machine = planter(fan_limit=Q(12, "inH2O"))
    found = answer(planter=machine)
    assert found.value == Q(12, "inH2O")
    assert "Fan 1 reaches 12.0 inH₂O, but soybean wants 17.0 inH₂O" in found.warnings[0]
    assert found.reason.cautions[0] == found.warnings[0]


def test_a_fan_below_the_band_gives_no_value() -> None:
    found = answer(planter=planter(fan_limit=Q(6, "inH2O")))
    assert found.value is None
    assert found.reason.why.startswith("No proposal")


def test_the_manual_above_the_fan_limit_is_not_cut_down() -> None:
    manual = (ManualValue("soybean", "vacuum", Q(20, "inH2O")),)
    found = answer(planter=planter(fan_limit=Q(15, "inH2O")), manual=manual)
    assert found.value is None
    assert "above the fan limit" in found.warnings[0]


def test_two_lots_share_a_level_where_their_bands_overlap() -> None:
    charges = [(case("soybean"), SOY_DISC), (case("corn"), CORN_DISC)]
    found = answer_vacuum(VACUUM, FAN, charges)
    assert kpa(found.value) == pytest.approx((18**0.5 * 18**0.5) ** 0.5, rel=0.02)
    assert "One vacuum serves this fan" in found.reason.why
    assert len(found.reason.inputs) == 2


def test_lots_whose_bands_part_get_no_level_and_a_sentence() -> None:
    low = ManualValue("sorghum", "vacuum", Q(3, "inH2O"))
    charges = [(case("corn"), CORN_DISC), (case("sorghum", manual=(low,)), SMALL_DISC)]
    found = answer_vacuum(VACUUM, FAN, charges)
    assert found.value is None
    assert "No one vacuum serves this fan" in found.warnings[0]


def test_every_optimum_has_its_crop() -> None:
    assert {crop for crop in crop_table() if crop_table()[crop].of("vacuum")} == {
        "corn",
        "cotton",
        "soybean",
        "sugar_beet",
    }


def test_a_field_high_up_keeps_the_level_and_says_what_the_fan_does() -> None:
    high = replace(job().field, altitude=Q(4000, "ft"))
    plain, found = proposal(), proposal(job=job(field=high))
    low, up = first(plain, "vacuum"), first(found, "vacuum")
    assert up.value == low.value
    assert "keep the level on the gauge" in up.reason.how
    assert any(one.name == "altitude" for one in up.reason.inputs)


def test_a_hole_too_small_for_the_seed_gets_a_sentence_and_no_value() -> None:
    bean = lot("dry_bean_pinto", thousand_seed_mass=Q(400, "g"))
    found = answer("dry_bean_pinto", replace(SMALL_DISC, hole=Q(1.5, "mm")), lot=bean)
    assert found.value is None
    assert "too small to hold so heavy a seed" in found.reason.why
