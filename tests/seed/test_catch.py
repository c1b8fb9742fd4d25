"""Catch test: what should be caught and what was caught are two sides of one rate."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.quantities import Q, Refusal
from changeover.seed import catch

JOB = Q(100, "ft"), 4, Q(30, "in")


@given(st.floats(5_000, 400_000))
def test_the_right_catch_shows_the_right_rate(seeds) -> None:
    wanted = Q(seeds, "seed/acre")
    caught = catch.seeds_to_catch(wanted, *JOB)
    shown = catch.rate_from_seeds(caught, *JOB)
    assert catch.correction(wanted, shown) == pytest.approx(1.0)


@given(st.floats(5_000, 400_000), st.floats(1_000, 20_000))
def test_mass_and_count_tell_the_same(seeds, size) -> None:
    wanted, per_pound = Q(seeds, "seed/acre"), Q(size, "seed/lb")
    mass = catch.mass_to_catch(wanted, per_pound, *JOB)
    count = catch.seeds_to_catch(wanted, *JOB)
    assert (mass * per_pound / count).to("count").magnitude == pytest.approx(1.0)


def test_too_little_caught_asks_for_more_turns() -> None:
    wanted = Q(30_000, "seed/acre")
    short = catch.rate_from_seeds(catch.seeds_to_catch(wanted, *JOB) * 0.95, *JOB)
    assert catch.correction(wanted, short) == pytest.approx(1 / 0.95)


@given(st.floats(0, 0.3))
def test_slip_lengthens_the_distance_that_turns_stand_for(slip) -> None:
    distance = catch.distance_of_turns(20, Q(2.1, "m"), slip)
    assert distance.to("m").magnitude == pytest.approx(42 / (1 - slip))


def test_nothing_caught_is_refused() -> None:
    with pytest.raises(Refusal, match="Count of seeds"):
        catch.rate_from_seeds(0, *JOB)
