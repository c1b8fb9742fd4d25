"""Wheel sensor calibration in both conventions."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.proof.pulses import WheelRun, calibrate, corrected_pulses_per_distance, timed_speed
from changeover.quantities import Q, Refusal

COURSE = Q(400, "ft")


def test_runs_are_taken_together() -> None:
    found = calibrate([WheelRun(1000, Q(100, "m")), WheelRun(2040, Q(200, "m"))])
    assert found.pulses_per_distance.to("pulse/m").magnitude == pytest.approx(3040 / 300)
    assert found.spread == pytest.approx(0.014, abs=0.001)
    assert found.enough_runs


@given(st.integers(1, 100_000), st.floats(2, 5000))
def test_the_two_conventions_are_each_others_inverse(pulses, metres) -> None:
    found = calibrate([WheelRun(pulses, Q(metres, "m"))])
    product = found.pulses_per_distance * found.distance_per_pulse
    assert product.to("count").magnitude == pytest.approx(1)


def test_one_run_is_not_enough() -> None:
    found = calibrate([WheelRun(1000, COURSE)])
    assert not found.enough_runs
    assert found.spread is None


@given(st.floats(50, 500))
def test_a_corrected_controller_shows_the_true_length(shown) -> None:
    old, pulses = 10.0, 10.0 * shown
    new = corrected_pulses_per_distance(Q(old, "pulse/m"), Q(shown, "m"), Q(100, "m"))
    assert pulses / new.to("pulse/m").magnitude == pytest.approx(100)


def test_no_runs_are_refused() -> None:
    with pytest.raises(Refusal, match="no calibration runs"):
        calibrate([])


@pytest.mark.parametrize(("pulses", "feet"), [(0, 400), (100, 0), (100, -5)])
def test_impossible_runs_are_refused(pulses, feet) -> None:
    with pytest.raises(Refusal):
        WheelRun(pulses, Q(feet, "ft"))


def test_impossible_figures_are_refused() -> None:
    with pytest.raises(Refusal):
        timed_speed(COURSE, Q(0, "s"))
    with pytest.raises(Refusal, match="calibration in use"):
        corrected_pulses_per_distance(Q(0, "pulse/m"), COURSE, COURSE)
