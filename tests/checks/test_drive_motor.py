"""Motor speed, oil flow and torque against a textbook and worked examples of the trade."""

import pytest

from changeover.quantities import Q
from changeover.seed import drive

SULLIVAN = "Sullivan, Fluid Power: Theory & Applications, 4th ed., chapter 9"
NOTT = "fluid power distributor's worked examples of motor calculations (nottco.com)"
KTN = "fluid power distributor's worked examples of motor calculations (ktnfluidpower.com)"
ACADEMY = "calculator.academy, Hydraulic motor flow"


@pytest.mark.parametrize(
    ("source", "displacement", "speed", "printed", "tolerance"),
    [
        (NOTT, 2.51, 1_200, 13.04, 0.005),
        (KTN, 3.75, 1_500, 24.35, 0.005),
        (ACADEMY, 4.0, 2_000, 34.63, 0.005),
        (SULLIVAN, 0.55, 3_400, 8.095, 0.0005),
    ],
)
def test_oil_flow(outside_check, source, displacement, speed, printed, tolerance) -> None:
    flow = drive.oil_flow(Q(speed, "rpm"), Q(displacement, "in^3"))
    outside_check(
        calculation=f"oil flow, {displacement} in³ at {speed} rpm",
        source=source,
        trust="published",
        printed=printed,
        ours=flow.to("gal/min").magnitude,
        unit="gal/min",
        tolerance=tolerance,
    )


@pytest.mark.parametrize(
    ("source", "flow", "displacement", "printed", "tolerance"),
    [
        (NOTT, 8.0, 0.95, 1_945, 0.5),
        (KTN, 6.0, 0.75, 1_848, 0.5),
        (SULLIVAN, 7.5, 2.0, 866.25, 0.005),
    ],
)
def test_motor_speed_from_flow(
    outside_check, source, flow, displacement, printed, tolerance
) -> None:
    speed = drive.motor_speed_from_flow(Q(flow, "gal/min"), Q(displacement, "in^3"))
    outside_check(
        calculation=f"motor speed, {flow} gal/min through {displacement} in³",
        source=source,
        trust="published",
        printed=printed,
        ours=speed.to("rpm").magnitude,
        unit="rpm",
        tolerance=tolerance,
    )


def test_motor_speed_in_metric_units(outside_check) -> None:
    speed = drive.motor_speed_from_flow(Q(28.39, "l/min"), Q(0.03281, "l"))
    outside_check(
        calculation="motor speed, 28.39 l/min through 0.03281 l",
        source=SULLIVAN,
        trust="published",
        printed=865.285,
        ours=speed.to("rpm").magnitude,
        unit="rpm",
        tolerance=0.0005,
    )


def test_flow_with_a_leaking_motor(outside_check) -> None:
    """The book works out 95.9 % from 0.6 in³, 2 400 rpm and 6.5 gal/min; here turned round."""
    flow = drive.oil_flow(Q(2_400, "rpm"), Q(0.6, "in^3"), 0.6 * 2_400 / (6.5 * 231))
    outside_check(
        calculation="oil flow, 0.6 in³ at 2400 rpm with 95.9 % volumetric efficiency",
        source=SULLIVAN,
        trust="published",
        printed=6.5,
        ours=flow.to("gal/min").magnitude,
        unit="gal/min",
        tolerance=1e-6,
    )


@pytest.mark.parametrize(
    ("source", "pressure", "displacement", "printed", "tolerance"),
    [
        ("definition of work per turn: psi · in³ / 2π", 2_200, 2.25, 787.8, 0.05),
        (NOTT, 2_200, 2.25, 788.22, 0.5),
        (KTN, 2_000, 2.5, 796.19, 0.5),
    ],
)
def test_motor_torque(outside_check, source, pressure, displacement, printed, tolerance) -> None:
    torque = drive.motor_torque(Q(pressure, "psi"), Q(displacement, "in^3"))
    outside_check(
        calculation=f"motor torque, {displacement} in³ at {pressure} psi",
        source=source,
        trust="derived" if source.startswith("definition") else "published",
        printed=printed,
        ours=torque.to("lbf*in").magnitude,
        unit="lbf·in",
        tolerance=tolerance,
        note="" if source.startswith("definition") else "printed with 6.28 for 2π",
    )


def test_oil_flow_in_metric_units(outside_check) -> None:
    flow = drive.oil_flow(Q(150, "rpm"), Q(10, "cm^3"))
    outside_check(
        calculation="oil flow, 10 cm³ at 150 rpm",
        source="definition: L/min = cm³ · rpm / 1000",
        trust="derived",
        printed=1.5,
        ours=flow.to("l/min").magnitude,
        unit="l/min",
        tolerance=1e-9,
    )


def test_drive_ratio_of_two_chain_stages(outside_check) -> None:
    outside_check(
        calculation="drive ratio of 29/18 and 28/19 teeth",
        source="definition: stages multiply",
        trust="derived",
        printed=812 / 342,
        ours=drive.ratio_of_stages([29 / 18, 28 / 19]),
        unit="",
        tolerance=1e-12,
    )
