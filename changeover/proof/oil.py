"""Oil flow, speed and torque of a hydraulic motor."""

from math import pi

from changeover.quantities import Q, Quantity, Refusal


def oil_flow(
    displacement: Quantity, speed: Quantity, volumetric_efficiency: float = 1.0
) -> Quantity:
    """Return the oil flow (volume per time) that a motor of a displacement takes at a speed.

    displacement · speed / volumetric efficiency; gal/min = in³/rev · rpm / 231. Fluid-power
    handbook formula, by definition. Raises Refusal for figures not above zero.
    """
    litres, turns = _above(displacement, "l", "displacement"), _above(speed, "rpm", "motor speed")
    return Q(litres * turns / _efficiency(volumetric_efficiency), "l/min").to("gal/min")


def motor_speed(
    displacement: Quantity, flow: Quantity, volumetric_efficiency: float = 1.0
) -> Quantity:
    """Return the speed of a motor from the oil flow it is given, the inverse of ``oil_flow``.

    Raises Refusal for figures not above zero.
    """
    litres, per_minute = _above(displacement, "l", "displacement"), _above(flow, "l/min", "flow")
    return Q(per_minute * _efficiency(volumetric_efficiency) / litres, "rpm")


def motor_torque(displacement: Quantity, pressure: Quantity) -> Quantity:
    """Return the ideal torque of a motor: pressure · displacement / 2π, a force times a length.

    Raises Refusal for figures not above zero.
    """
    cubic = _above(displacement, "in^3", "displacement")
    return Q(_above(pressure, "psi", "pressure") * cubic / (2 * pi), "lbf * in")


def _above(quantity: Quantity, unit: str, what: str) -> float:
    size = float(quantity.to(unit).magnitude)
    if not size > 0:
        raise Refusal(f"The {what} must be above zero.")
    return size


def _efficiency(share: float) -> float:
    if not 0.3 <= share <= 1:
        raise Refusal("A volumetric efficiency must be from 30 to 100 %.")
    return share
