"""Drive start against handbook formulas: motor speed, oil flow, torque."""

import pytest

from changeover.proof.drive_readings import DriveNeeds, DriveReadings
from changeover.proof.drive_start import expected_speed
from changeover.proof.oil import motor_speed, motor_torque, oil_flow
from changeover.quantities import Q

HANDBOOK = "fluid-power formula gal/min = in³/rev · rpm / 231"
EXAMPLES = "worked examples of a fluid-power distributor (nottco.com)"


@pytest.mark.parametrize(
    ("cubic_inches", "rpm", "printed", "source"),
    [(2.51, 1200, 13.04, EXAMPLES), (3.75, 1500, 24.35, "worked examples (ktnfluidpower.com)")],
)
def test_oil_flow(outside_check, cubic_inches, rpm, printed, source) -> None:
    outside_check(
        calculation=f"oil flow of a {cubic_inches} in³ motor at {rpm} rpm",
        source=source,
        trust="published",
        printed=printed,
        ours=oil_flow(Q(cubic_inches, "in^3"), Q(rpm, "rpm")).to("gal/min").magnitude,
        unit="gal/min",
        tolerance=0.005,
    )


@pytest.mark.parametrize(
    ("cubic_inches", "flow", "printed", "source"),
    [(0.95, 8, 1945, EXAMPLES), (0.75, 6, 1848, "worked examples (ktnfluidpower.com)")],
)
def test_motor_speed(outside_check, cubic_inches, flow, printed, source) -> None:
    outside_check(
        calculation=f"speed of a {cubic_inches} in³ motor with {flow} gal/min",
        source=source,
        trust="published",
        printed=printed,
        ours=motor_speed(Q(cubic_inches, "in^3"), Q(flow, "gal/min")).to("rpm").magnitude,
        unit="rpm",
        tolerance=0.5,
    )


def test_motor_torque(outside_check) -> None:
    outside_check(
        calculation="torque of a 2.25 in³ motor at 2 200 psi",
        source="pressure · displacement / 2π",
        trust="derived",
        printed=787.8,
        ours=motor_torque(Q(2.25, "in^3"), Q(2200, "psi")).to("lbf * in").magnitude,
        unit="in·lb",
        tolerance=0.05,
    )


def test_motor_torque_with_two_pi_cut_to_6_28(outside_check) -> None:
    outside_check(
        calculation="torque of a 2.25 in³ motor at 2 200 psi",
        source=EXAMPLES,
        trust="published",
        printed=788.22,
        ours=motor_torque(Q(2.25, "in^3"), Q(2200, "psi")).to("lbf * in").magnitude,
        unit="in·lb",
        tolerance=0.02,
        note="the print takes 6.28 for 2π",
        print_error=True,
        derived=787.817,
    )


def test_metric_oil_flow(outside_check) -> None:
    outside_check(
        calculation="oil flow of a 41.1 cm³ motor at 1 200 rpm",
        source="L/min = cm³/rev · rpm / 1000",
        trust="derived",
        printed=49.32,
        ours=oil_flow(Q(41.1, "cm^3"), Q(1200, "rpm")).to("l/min").magnitude,
        unit="L/min",
        tolerance=0.005,
    )


def test_volumetric_efficiency_asks_for_more_oil() -> None:
    whole, leaky = (oil_flow(Q(2, "in^3"), Q(1000, "rpm"), eta) for eta in (1.0, 0.9))
    assert (leaky / whole).to("count").magnitude == pytest.approx(1 / 0.9)


@pytest.mark.parametrize(("ratio", "printed"), [(1.0, 26.9), (10.0, 269.4)])
def test_expected_motor_speed(outside_check, ratio, printed) -> None:
    readings = DriveReadings(target_rate=Q(32_000, "1/acre"), ground_speed=Q(5, "mph"))
    ours = expected_speed(readings, DriveNeeds(Q(30, "in"), 30, ratio))
    outside_check(
        calculation=f"target speed at 32 000/ac, 30 in, 5 mph, 30 cells, ratio {ratio:g}",
        source="60 · speed / (cells · spacing)",
        trust="derived",
        printed=printed,
        ours=ours.to("rpm").magnitude,
        unit="rpm",
        tolerance=0.05,
    )
