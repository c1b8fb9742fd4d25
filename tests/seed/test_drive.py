"""Variable-rate drives: ranges that a motor allows agree with each other and warn in sentences."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.drive import MotorDrive, MotorKind
from changeover.quantities import Q, Refusal, Units
from changeover.seed import drive, rate

HYDRAULIC = MotorDrive(
    MotorKind.HYDRAULIC, 10.0, Q(40, "rpm"), Q(500, "rpm"), displacement=Q(5, "in^3")
)
ELECTRIC = MotorDrive(MotorKind.ELECTRIC, 90.0, Q(100, "rpm"), Q(4_000, "rpm"))
CORN = Q(32_000, "seed/acre"), Q(30, "in")

rates = st.floats(10_000, 200_000)
speeds = st.floats(2, 9)


@given(rates, st.integers(20, 80))
def test_the_motor_runs_at_its_limits_at_the_ends_of_the_speed_range(seeds, cells) -> None:
    slow, fast = drive.ground_speed_range(HYDRAULIC, Q(seeds, "seed/acre"), CORN[1], cells)
    per_second = rate.seeds_per_length(Q(seeds, "seed/acre"), CORN[1])
    for speed, limit in ((slow, HYDRAULIC.least_speed), (fast, HYDRAULIC.most_speed)):
        disc = (per_second * speed / cells).to("rpm")
        assert (disc * HYDRAULIC.ratio / limit).to("count").magnitude == pytest.approx(1.0)


@given(speeds, st.integers(20, 80))
def test_rate_range_and_speed_range_are_one_law(speed, cells) -> None:
    few, many = drive.rate_range(ELECTRIC, Q(speed, "mph"), CORN[1], cells)
    _, fast = drive.ground_speed_range(ELECTRIC, many, CORN[1], cells)
    assert few < many
    assert fast.to("mph").magnitude == pytest.approx(speed)


@given(st.floats(50, 4_000), st.floats(0.5, 1.0))
def test_oil_flow_and_motor_speed_are_inverses(turns, efficiency) -> None:
    flow = drive.oil_flow(Q(turns, "rpm"), Q(82, "cm^3"), efficiency)
    back = drive.motor_speed_from_flow(flow, Q(82, "cm^3"), efficiency)
    assert back.to("rpm").magnitude == pytest.approx(turns)


@given(st.floats(0.5, 0.99))
def test_a_leaking_motor_takes_more_oil(efficiency) -> None:
    job = Q(300, "rpm"), Q(5, "in^3")
    assert drive.oil_flow(*job, efficiency) > drive.oil_flow(*job)


def test_no_warning_within_the_range() -> None:
    assert drive.motor_warnings(HYDRAULIC, *CORN, Q(5, "mph"), 30) == ()


def test_too_fast_a_motor_warns_with_the_ranges_that_work() -> None:
    (warning,) = drive.motor_warnings(HYDRAULIC, *CORN, Q(12, "mph"), 30)
    assert "above its most, 500.0 rpm" in warning
    assert "drive 0.7 mph to 9.3 mph" in warning
    assert warning.endswith("seeds/ac.")


def test_too_slow_a_motor_warns_in_metric_units() -> None:
    (warning,) = drive.motor_warnings(
        HYDRAULIC, Q(12_000, "seed/acre"), CORN[1], Q(1.5, "mph"), 30, Units.METRIC
    )
    assert "below its least" in warning
    assert "km/h" in warning
    assert "seeds/ha" in warning


def test_oil_flow_of_a_drive_at_a_disc_speed() -> None:
    flow = drive.oil_flow_at(HYDRAULIC, Q(23.1, "rpm"))
    assert flow.to("gal/min").magnitude == pytest.approx(5.0)


def test_an_electric_drive_has_no_oil_flow() -> None:
    with pytest.raises(Refusal, match="no oil displacement"):
        drive.oil_flow_at(ELECTRIC, Q(25, "rpm"))


def test_efficiency_above_one_is_refused() -> None:
    with pytest.raises(Refusal, match=r"Efficiency: 1\.2 is not possible"):
        drive.oil_flow(Q(300, "rpm"), Q(5, "in^3"), 1.2)
