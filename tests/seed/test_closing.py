"""Closing force: from tilth and moisture, lightest for sand, strongest for untilled ground."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.scales import Index
from changeover.seed.closing import answer_closing, closing_position, closing_share
from changeover.seed.depth import Soil
from changeover.seed.fields import Moisture, Texture, Tillage
from changeover.seed.reasons import Trust
from changeover.seed.rules import NO_RULES
from tests.seed.made_up import at_row, case, crop_table, job, planter, proposal

RULES = crop_table()["corn"].rules


@pytest.mark.parametrize(
    ("soil", "position"),
    [
        (Soil(Moisture.MOIST, Texture.SAND, Tillage.TILLED), 1),
        (Soil(Moisture.MOIST, Texture.LOAM, Tillage.TILLED), 2),
        (Soil(Moisture.MOIST, Texture.LOAM, Tillage.STRIP), 3),
        (Soil(Moisture.MOIST, Texture.LOAM, Tillage.NO_TILL), 4),
        (Soil(Moisture.DRY, Texture.CLAY, Tillage.NO_TILL), 5),
        (Soil(Moisture.WET, Texture.LOAM, Tillage.TILLED), 1),
    ],
)
def test_five_positions_by_soil(soil: Soil, position: int) -> None:
    found = closing_share(RULES, soil)
    assert found is not None
    assert closing_position(Index.of("float", "1", "2", "3", "4"), found[0]) == position


@given(st.sampled_from(Moisture), st.sampled_from(Texture), st.integers(1, 12))
def test_firmer_ground_never_takes_less(moisture: Moisture, texture: Texture, count: int) -> None:
    index = Index.of(*map(str, range(count)))
    found = [closing_share(RULES, Soil(moisture, texture, tillage)) for tillage in Tillage]
    positions = [closing_position(index, one[0]) for one in found if one]
    assert positions[0] <= positions[-1]
    assert all(1 <= position <= count for position in positions)


def test_the_reason_is_common_practice_and_shows_its_steps() -> None:
    answer = answer_closing(case(job=job(tillage=Tillage.NO_TILL)))
    assert answer.reason.trust is Trust.PRACTICE
    assert "position 4 of 5, “3”" in answer.reason.how
    assert answer.reason.cautions


def test_a_printed_force_is_shown_as_evidence() -> None:
    says = {rung.trust: rung.says for rung in answer_closing(case("cotton")).reason.evidence}
    assert "40 lbf to 60 lbf" in says[Trust.PUBLISHED]


def test_without_rules_there_is_no_proposal() -> None:
    assert closing_share(NO_RULES, Soil()) is None


def test_rows_behind_a_tire_close_a_step_firmer() -> None:
    found = proposal(planter=planter(wheel_track_rows=frozenset({5})))
    plain, track = at_row(found, "closing", 4), at_row(found, "closing", 5)
    assert track.value == plain.value + 1
    assert "behind a tire" in track.reason.cautions[-1]
    assert at_row(found, "closing", 6).value == plain.value
