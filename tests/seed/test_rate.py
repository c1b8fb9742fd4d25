"""Rate, spacing, seeds per second and mass: laws that hold for every planter."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.quantities import Q, Refusal
from changeover.seed import rate

rates = st.floats(5_000, 400_000)
widths = st.floats(6, 60)
speeds = st.floats(1, 12)
cells = st.integers(10, 200)


@given(rates, widths)
def test_spacing_and_rate_are_inverses(seeds, width) -> None:
    spacing = rate.spacing_in_row(Q(seeds, "seed/acre"), Q(width, "in"))
    back = rate.seed_rate(spacing, Q(width, "in"))
    assert back.to("seed/acre").magnitude == pytest.approx(seeds)


@given(rates, widths, speeds, cells)
def test_us_and_metric_inputs_give_the_same_physics(seeds, width, speed, holes) -> None:
    us = Q(seeds, "seed/acre"), Q(width, "in"), Q(speed, "mph")
    metric = us[0].to("seed/hectare"), us[1].to("cm"), us[2].to("km/h")
    ours = rate.disc_speed_at(*us, holes).to("rpm").magnitude
    assert rate.disc_speed_at(*metric, holes).to("rpm").magnitude == pytest.approx(ours)


@given(rates, widths)
def test_seed_is_conserved_between_length_and_area(seeds, width) -> None:
    per_foot = rate.seeds_per_length(Q(seeds, "seed/acre"), Q(width, "in"))
    thousandth = rate.row_length_thousandth(Q(width, "in"))
    dropped = (per_foot * thousandth).to("seed").magnitude
    assert dropped == pytest.approx(seeds / 1000)


@given(rates, widths, speeds, cells)
def test_disc_turns_slower_with_more_cells(seeds, width, speed, holes) -> None:
    job = Q(seeds, "seed/acre"), Q(width, "in"), Q(speed, "mph")
    assert rate.disc_speed_at(*job, holes + 1) < rate.disc_speed_at(*job, holes)


@given(rates, st.floats(0.5, 1), st.floats(0.5, 1), st.floats(-0.2, 0.2))
def test_stand_and_rate_are_inverses(plants, germination, emergence, error) -> None:
    shares = germination, emergence, error
    entered = rate.rate_for_stand(Q(plants, "plant/acre"), *shares)
    stand = rate.stand_from_rate(entered, *shares)
    assert stand.to("plant/acre").magnitude == pytest.approx(plants)


@given(st.floats(0.5, 0.99))
def test_poorer_germination_asks_for_more_seed(germination) -> None:
    stand = Q(30_000, "plant/acre")
    assert rate.rate_for_stand(stand, germination) > rate.rate_for_stand(stand, 1.0)


@given(rates, st.floats(500, 200_000))
def test_mass_rate_and_seed_rate_are_inverses(seeds, per_pound) -> None:
    size = Q(per_pound, "seed/lb")
    back = rate.rate_from_mass(rate.mass_rate(Q(seeds, "seed/acre"), size), size)
    assert back.to("seed/acre").magnitude == pytest.approx(seeds)


@given(st.floats(0.1, 1000))
def test_thousand_seed_mass_and_seeds_per_mass_are_inverses(grams) -> None:
    back = rate.thousand_seed_mass(rate.seeds_per_mass_from_thousand(Q(grams, "g")))
    assert back.to("g").magnitude == pytest.approx(grams)


def test_rows_are_reckoned_at_once() -> None:
    spacing = rate.spacing_in_row(Q(np.array([30_000, 60_000]), "seed/acre"), Q(30, "in"))
    first, second = spacing.magnitude
    assert first == pytest.approx(2 * second)


def test_peripheral_speed_of_one_turn_a_second() -> None:
    speed = rate.peripheral_speed(Q(30, "seed/s"), 30, Q(0.2, "m"))
    assert speed.to("m/s").magnitude == pytest.approx(np.pi * 0.2)


@pytest.mark.parametrize(
    ("seeds", "says"),
    [
        (Q(0, "seed/acre"), "not possible"),
        (Q(float("nan"), "seed/acre"), "not possible"),
        (Q(30, "kg"), "wrong kind of unit"),
        (30_000, "wrong kind of unit"),
        (Q(np.array([30_000, -1]), "seed/acre"), "entry 2"),
    ],
)
def test_impossible_rates_are_refused_in_a_sentence(seeds, says) -> None:
    with pytest.raises(Refusal, match=says):
        rate.spacing_in_row(seeds, Q(30, "in"))


def test_germination_over_a_hundred_is_refused() -> None:
    with pytest.raises(Refusal, match="Germination: 105 % is not possible"):
        rate.rate_for_stand(Q(30_000, "plant/acre"), Q(105, "percent"))


def test_half_a_cell_is_refused() -> None:
    with pytest.raises(Refusal, match="whole cells"):
        rate.disc_speed(Q(13, "seed/s"), 30.5)


def test_an_unknown_area_is_refused() -> None:
    with pytest.raises(Refusal, match="choose acre or hectare"):
        rate.row_length_thousandth(Q(30, "in"), "furlong")
