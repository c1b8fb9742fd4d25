"""Vacuum: the force balance moves the right way, bands overlap or say that they do not."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.quantities import Q, Refusal, Units
from changeover.seed import vacuum

SEED = Q(0.3, "g"), Q(5, "mm"), Q(0.3, "m/s"), Q(0.2, "m")
levels = st.floats(1, 10)


def band(low: float, start: float, high: float) -> vacuum.VacuumBand:
    return vacuum.VacuumBand(Q(low, "kPa"), Q(start, "kPa"), Q(high, "kPa"))


@given(st.floats(0.02, 0.5), st.floats(1.01, 3))
def test_heavier_and_faster_seed_needs_more(grams, more) -> None:
    mass, hole, speed, circle = Q(grams, "g"), *SEED[1:]
    least = vacuum.least_holding_vacuum(mass, hole, speed, circle)
    assert vacuum.least_holding_vacuum(mass * more, hole, speed, circle) > least
    assert vacuum.least_holding_vacuum(mass, hole, speed * more, circle) > least


@given(st.floats(1.01, 3))
def test_a_larger_hole_needs_less(more) -> None:
    mass, hole, speed, circle = SEED
    wide = vacuum.least_holding_vacuum(mass, hole * more, speed, circle)
    assert wide < vacuum.least_holding_vacuum(*SEED)


def test_a_standing_disc_holds_weight_by_friction() -> None:
    still = vacuum.least_holding_vacuum(Q(1, "g"), Q(5, "mm"), Q(0, "m/s"), Q(0.2, "m"), 0.5)
    area = np.pi / 4 * 0.005**2
    assert still.to("Pa").magnitude == pytest.approx(0.001 * 9.80665 / (0.5 * area))


def test_rows_are_reckoned_at_once() -> None:
    masses = Q(np.array([0.1, 0.2]), "g")
    one, two = vacuum.least_holding_vacuum(masses, *SEED[1:]).magnitude
    assert two == pytest.approx(2 * one)


@given(levels)
def test_the_band_is_half_to_double_in_the_unit_given(inches) -> None:
    about = vacuum.band_about(Q(inches, "inH2O"))
    assert about.low.to("inH2O").magnitude == pytest.approx(inches / 2)
    assert about.high.to("inH2O").magnitude == pytest.approx(inches * 2)
    assert about.start == Q(inches, "inH2O")


@given(st.lists(levels, min_size=1, max_size=6))
def test_the_band_holds_every_published_optimum(optima) -> None:
    found = vacuum.start_from_optima([Q(one, "kPa") for one in optima])
    low, high = found.low.magnitude, found.high.magnitude
    assert all(low <= one <= high for one in optima)
    assert low <= found.start.magnitude <= high


def test_start_from_the_seed_has_the_mean_holding_ratio() -> None:
    start = vacuum.start_from_seed(Q(0.3, "g"), Q(5, "mm")).start
    ratio = vacuum.holding_ratio(start, Q(0.3, "g"), Q(5, "mm"))
    assert ratio.to("count").magnitude == pytest.approx(29)


@given(st.lists(st.tuples(levels, st.floats(1.0, 3.0)), min_size=1, max_size=8))
def test_one_level_serves_all_or_none(rows) -> None:
    bands = [band(low, low * width**0.5, low * width) for low, width in rows]
    shared = vacuum.shared_level(bands, [f"row {n}" for n in range(len(bands))])
    most_low = max(low for low, _ in rows)
    least_high = min(low * width for low, width in rows)
    assert (shared.band is None) == (most_low > least_high)
    if shared.band is not None:
        assert most_low <= shared.band.start.magnitude <= least_high


def test_bands_apart_name_the_two_that_clash() -> None:
    shared = vacuum.shared_level([band(1, 2, 3), band(4, 5, 6)], ["rows 1-12", "rows 13-24"])
    assert shared.band is None
    assert "rows 13-24 needs at least" in shared.says
    assert "split the rows by fan" in shared.says


def test_a_weak_fan_is_named() -> None:
    shared = vacuum.shared_level([band(4, 5, 6)], ["rows 1-12"], Q(3, "kPa"), Units.METRIC)
    assert shared.band is None
    assert shared.says == "The fan reaches 3.00 kPa; rows 1-12 needs 4.00 kPa."


def test_the_fan_limit_caps_the_band() -> None:
    shared = vacuum.shared_level([band(4, 7, 9)], ["rows 1-12"], Q(5, "kPa"))
    assert shared.band is not None
    assert shared.band.start == shared.band.high == Q(5, "kPa")


@given(st.floats(0, 4_000), st.floats(1, 500))
def test_higher_is_thinner(metres, more) -> None:
    low = vacuum.air_density_share(Q(metres, "m"))
    assert vacuum.air_density_share(Q(metres + more, "m")) < low


def test_the_note_on_altitude_keeps_the_gauge() -> None:
    note = vacuum.altitude_note(Q(5_000, "ft"))
    assert note.startswith("At 5000 ft the air is 14% thinner")
    assert "keep the level on the gauge" in note
    assert "8% faster" in note


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: vacuum.start_from_optima([]), "no optimum is published"),
        (lambda: vacuum.shared_level([], []), "name of its rows"),
        (lambda: band(3, 2, 4), "between the two ends"),
        (lambda: vacuum.start_from_seed(Q(0, "g"), Q(5, "mm")), "Mass of one seed"),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(call, says) -> None:
    with pytest.raises(Refusal, match=says):
        call()


def test_a_hole_that_would_take_more_than_a_fan_gives_is_told_by_hole_and_seed() -> None:
    with pytest.raises(Refusal, match=r"hole of 0.5 mm .* seed of 330 mg, more than a fan"):
        vacuum.start_from_seed(Q(0.33, "g"), Q(0.5, "mm"))
