"""Laws of oil flow and motor speed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.proof.oil import motor_speed, motor_torque, oil_flow
from changeover.quantities import Q, Refusal


@given(st.floats(0.1, 50), st.floats(1, 3000), st.floats(0.5, 1))
def test_flow_and_speed_are_each_others_inverse(cubic_inches, rpm, efficiency) -> None:
    displacement = Q(cubic_inches, "in^3")
    flow = oil_flow(displacement, Q(rpm, "rpm"), efficiency)
    assert motor_speed(displacement, flow, efficiency).to("rpm").magnitude == pytest.approx(rpm)


def test_torque_goes_with_pressure() -> None:
    one, two = (motor_torque(Q(2, "in^3"), Q(p, "psi")) for p in (500, 1000))
    assert (two / one).to("count").magnitude == pytest.approx(2)


@pytest.mark.parametrize("efficiency", [0, 1.2])
def test_impossible_efficiency_is_refused(efficiency) -> None:
    with pytest.raises(Refusal, match="efficiency"):
        oil_flow(Q(2, "in^3"), Q(100, "rpm"), efficiency)


def test_a_motor_without_displacement_is_refused() -> None:
    with pytest.raises(Refusal, match="displacement"):
        oil_flow(Q(0, "in^3"), Q(100, "rpm"))
