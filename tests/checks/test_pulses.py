"""Pulse calibration and timed speed against their definitions and rules of thumb."""

import pytest

from changeover.proof.pulses import (
    corrected_distance_per_pulse,
    corrected_pulses_per_distance,
    timed_speed,
)
from changeover.quantities import Q


@pytest.mark.parametrize(("course", "unit", "rule"), [("88 ft", "mph", 60), ("100 m", "km/h", 360)])
def test_timed_speed(outside_check, course, unit, rule) -> None:
    length = Q(float(course.split()[0]), course.split()[1])
    outside_check(
        calculation=f"ground speed from 12 s over {course}",
        source=f"{rule}/s, by definition",
        trust="derived",
        printed=rule / 12,
        ours=timed_speed(length, Q(12, "s")).to(unit).magnitude,
        unit=unit,
        tolerance=1e-9,
    )


def test_speed_rule_fifteen_over_twenty_two(outside_check) -> None:
    outside_check(
        calculation="ground speed from 10 s over 110 ft",
        source="15/22 · ft/s = mph",
        trust="derived",
        printed=7.5,
        ours=timed_speed(Q(110, "ft"), Q(10, "s")).to("mph").magnitude,
        unit="mph",
        tolerance=1e-9,
    )


def test_corrected_calibration(outside_check) -> None:
    shown, true = Q(412, "ft"), Q(400, "ft")
    old = Q(10.0, "pulse/m")
    ours = corrected_pulses_per_distance(old, shown, true)
    outside_check(
        calculation="pulses per distance when 400 ft show as 412 ft",
        source="new = old · shown / true",
        trust="derived",
        printed=10.3,
        ours=ours.to("pulse/m").magnitude,
        unit="pulses/m",
        tolerance=1e-9,
    )
    inverse = corrected_distance_per_pulse(Q(0.1, "m/pulse"), shown, true)
    assert (ours * inverse).to("count").magnitude == pytest.approx(1)
