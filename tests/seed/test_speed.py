"""Top ground speed: the lower of two limits, told as a warning with its source."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.quantities import Q, Units
from changeover.seed import rate, speed

CORN = Q(32_000, "seed/acre"), Q(30, "in")


@given(st.floats(10_000, 400_000), st.floats(10, 40))
def test_at_the_top_speed_a_row_drops_sixteen_seeds_a_second(seeds, width) -> None:
    job = Q(seeds, "seed/acre"), Q(width, "in")
    top = speed.top_ground_speed(*job, 30)
    dropped = speed.speed_for_seeds_per_second(Q(16, "seed/s"), *job)
    assert top.speed == dropped
    assert top.bound_by == "seeds per second"


@given(st.floats(5, 200))
def test_the_disc_limit_counts_when_it_is_lower(turns) -> None:
    top = speed.top_ground_speed(*CORN, 30, Q(turns, "rpm"))
    by_disc = speed.speed_for_disc_speed(Q(turns, "rpm"), 30, *CORN)
    by_seeds = speed.speed_for_seeds_per_second(Q(16, "seed/s"), *CORN)
    assert top.speed == min(by_disc, by_seeds)


def test_the_disc_limit_is_the_disc_speed_there() -> None:
    top = speed.top_ground_speed(*CORN, 30, Q(20, "rpm"))
    turns = rate.disc_speed_at(*CORN, top.speed, 30)
    assert turns.to("rpm").magnitude == pytest.approx(20)
    assert top.source == "your manual"


def test_below_the_top_speed_there_is_no_warning() -> None:
    assert speed.speed_warnings(Q(5, "mph"), *CORN, 30) == ()


def test_above_it_the_warning_names_its_source() -> None:
    (warning,) = speed.speed_warnings(Q(7, "mph"), *CORN, 30, units=Units.METRIC)
    assert "km/h" in warning
    assert "Önal" in warning
