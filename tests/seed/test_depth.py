"""Depth wanted: by crop and soil, within the bounds in print, with a reason."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.settings import standard
from changeover.quantities import Q, Units
from changeover.seed.crops import Crop
from changeover.seed.depth import Soil, cold_warning, depth_wanted, is_cold, target_depth
from changeover.seed.fields import Moisture, Texture, Tillage
from changeover.seed.manual import ManualValue, ProvedSetup
from changeover.seed.reasons import Trust
from tests.seed.made_up import case, crop_table, job

soils = st.builds(
    Soil, st.sampled_from(Moisture), st.sampled_from(Texture), st.sampled_from(Tillage)
)
crops = st.sampled_from(sorted(crop_table()))


def inches(crop: str, soil: Soil) -> float:
    target = target_depth(crop_table()[crop], soil)
    assert target is not None
    return float(target.depth.to("in").magnitude)


@given(crops, soils)
def test_the_depth_stays_within_the_bounds_in_print(crop: str, soil: Soil) -> None:
    target = target_depth(crop_table()[crop], soil)
    assert target is not None
    assert target.low is None or target.depth >= target.low
    assert target.high is None or target.depth <= target.high


@given(crops, st.sampled_from(Texture), st.sampled_from(Tillage))
def test_drier_is_never_shallower(crop: str, texture: Texture, tillage: Tillage) -> None:
    wet, moist, dry = (
        inches(crop, Soil(moisture, texture, tillage))
        for moisture in (Moisture.WET, Moisture.MOIST, Moisture.DRY)
    )
    assert wet <= moist + 1e-9
    assert moist <= dry + 1e-9 or texture in (Texture.CLAY, Texture.CLAY_LOAM, Texture.SAND)


def test_a_figure_for_just_this_soil_is_taken_as_it_stands() -> None:
    target = target_depth(
        crop_table()["soybean"], Soil(Moisture.DRY, Texture.SILT_LOAM, Tillage.TILLED)
    )
    assert target is not None
    assert (target.steps, target.depth) == ((), Q(1.75, "in"))


def test_steps_go_part_of_the_way_to_the_bound() -> None:
    assert inches("corn", Soil()) == 1.75
    assert inches("corn", Soil(Moisture.DRY)) == pytest.approx(1.75 + 0.5 * 1.25)
    assert inches("corn", Soil(Moisture.DRY, Texture.SAND)) == pytest.approx(3.0)
    assert inches("corn", Soil(Moisture.WET)) == pytest.approx(1.625)
    assert inches("corn", Soil(Moisture.WET, Texture.CLAY)) == pytest.approx(1.5)


def test_no_step_is_told_towards_an_end_that_is_not_printed() -> None:
    wet, dry = (
        target_depth(crop_table()["sunflower"], Soil(moisture))
        for moisture in (Moisture.WET, Moisture.DRY)
    )
    assert wet is not None
    assert dry is not None
    assert (wet.low, wet.steps, wet.depth) == (None, (), wet.figure.middle)
    assert dry.steps


def test_cold_soil_is_planted_shallower() -> None:
    assert inches("corn", Soil(temperature=Q(52, "degF"))) < inches("corn", Soil())
    assert inches("corn", Soil(temperature=Q(60, "degF"))) == inches("corn", Soil())


def test_cold_is_within_five_degrees_of_the_least() -> None:
    corn = crop_table()["corn"]
    assert is_cold(corn, Q(54.9, "degF"))
    assert not is_cold(corn, Q(55.1, "degF"))
    assert is_cold(corn, Q(11, "degC"))
    assert not is_cold(corn, None)


def test_a_crop_without_a_printed_depth_has_no_target() -> None:
    assert target_depth(Crop("oats", "Oats"), Soil()) is None


def test_soil_below_the_least_is_said_with_every_source() -> None:
    says = cold_warning(crop_table()["soybean"], Q(48, "degF"), Units.US)
    assert says is not None
    assert "The soil is 48 °F" in says
    assert "NDSU" in says
    assert "Kansas State" in says


def test_between_two_figures_only_the_unmet_one_is_named() -> None:
    says = cold_warning(crop_table()["soybean"], Q(52, "degF"), Units.US)
    assert says is not None
    assert "NDSU" not in says
    assert "at least 55 °F" in says
    assert cold_warning(crop_table()["soybean"], Q(60, "degF"), Units.US) is None
    assert cold_warning(crop_table()["soybean"], None, Units.US) is None


def test_the_reason_names_soil_print_and_steps() -> None:
    answer = depth_wanted(case("corn", job=job(Moisture.DRY)), standard("depth"))
    assert answer.reason.trust is Trust.PUBLISHED
    assert "dry loam" in answer.reason.why
    assert "Ohio State" in answer.reason.source
    assert "the top is dry" in answer.reason.why


def test_the_manual_wins_and_print_is_still_shown() -> None:
    manual = (ManualValue("corn", "depth", Q(2.5, "in"), "page 12"),)
    answer = depth_wanted(case("corn", manual=manual), standard("depth"))
    assert answer.value == Q(2.5, "in")
    assert answer.reason.trust is Trust.MANUAL
    said = {rung.trust: rung for rung in answer.reason.evidence}
    assert said[Trust.MANUAL].used
    assert "1.50 to 3.00 in" in said[Trust.PUBLISHED].says


def test_a_record_bears_witness_but_the_soil_decides() -> None:
    record = ProvedSetup("May", "corn", values={"depth": Q(2.25, "in")}, planter="Made-up")
    answer = depth_wanted(case("corn", records=(record,)), standard("depth"))
    assert answer.value == Q(1.75, "in")
    said = {rung.trust: rung.says for rung in answer.reason.evidence}
    assert said[Trust.RECORD].startswith("2.25 in in “May”")
