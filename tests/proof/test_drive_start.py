"""Conditions of a variable-rate drive, in order."""

import dataclasses

import pytest

from changeover.proof.drive_readings import Condition, DriveNeeds, DriveReadings
from changeover.proof.drive_start import DriveStart, State, judge_start
from changeover.proof.fault_tree import Fault, next_steps
from changeover.proof.verdict_findings import start_findings
from changeover.quantities import Q, Refusal

NEEDS = DriveNeeds(Q(30, "in"), 30, 10.0, displacement=Q(2.5, "in^3"))
FINE = DriveReadings(
    controller_set_up=True,
    target_rate=Q(32_000, "1/acre"),
    lowered=True,
    height_calibrated=True,
    start_point_set=True,
    ground_speed=Q(5, "mph"),
    wheel_speed=Q(5.05, "mph"),
    clutches_on=True,
    oil_flow=Q(4, "gal/min"),
    target_speed=Q(269, "rpm"),
    command=0.6,
    actual_speed=Q(268, "rpm"),
)


def judged(**changes) -> DriveStart:
    return judge_start(dataclasses.replace(FINE, **changes), NEEDS)


def test_all_met() -> None:
    found = judged()
    assert found.first_unmet is None
    assert found.not_judged == ()
    assert found.within_tolerance
    assert not found.saturated
    assert found.next_steps == ()


@pytest.mark.parametrize(
    ("changes", "first"),
    [
        ({"controller_set_up": False}, Condition.CONTROLLER),
        ({"target_rate": Q(0, "1/acre")}, Condition.RATE),
        ({"lowered": False}, Condition.LOWERED),
        ({"height_calibrated": False}, Condition.HEIGHT),
        ({"start_point_set": False}, Condition.START_POINT),
        ({"ground_speed": Q(1.9, "mph")}, Condition.GROUND_SPEED),
        ({"wheel_speed": Q(0, "mph")}, Condition.WHEEL_MOTION),
        ({"wheel_speed": Q(4, "mph")}, Condition.WHEEL_AGREES),
        ({"clutches_on": False}, Condition.CLUTCHES),
        ({"oil_flow": Q(1, "gal/min")}, Condition.SUPPLY),
        ({"target_speed": Q(200, "rpm")}, Condition.TARGET),
        ({"command": 0.0}, Condition.COMMAND),
        ({"actual_speed": Q(100, "rpm")}, Condition.ACTUAL),
    ],
)
def test_the_first_unmet_condition_is_named(changes, first) -> None:
    found = judged(**changes)
    assert found.first_unmet is first
    assert found.next_steps


def test_the_first_of_several_wins() -> None:
    assert judged(lowered=False, clutches_on=False).first_unmet is Condition.LOWERED


def test_what_depends_on_an_unmet_condition_waits() -> None:
    states = {one.condition: one.state for one in judged(lowered=False).conditions}
    assert states[Condition.ACTUAL] is State.WAITING
    assert states[Condition.CLUTCHES] is State.MET


def test_without_readings_nothing_can_be_judged() -> None:
    found = judge_start(DriveReadings(), NEEDS)
    assert found.first_unmet is None
    assert found.not_judged == tuple(Condition)
    assert found.expected is None


def test_a_missing_reading_does_not_block_those_after_it() -> None:
    found = judged(height_calibrated=None)
    assert found.not_judged == (Condition.HEIGHT,)
    assert found.within_tolerance


@pytest.mark.parametrize(
    ("speed", "command", "fault"),
    [
        (0, 0.3, Fault.STANDS),
        (0, 1.0, Fault.STANDS_DRIVEN),
        (150, 0.5, Fault.SLOW),
        (150, 0.97, Fault.SLOW_SATURATED),
        (400, 0.5, Fault.TOO_FAST),
    ],
)
def test_a_wrong_speed_has_its_own_branch(speed, command, fault) -> None:
    found = judged(actual_speed=Q(speed, "rpm"), command=command)
    assert found.next_steps == next_steps(fault)


def test_every_branch_leads_somewhere() -> None:
    for fault in (*Condition, *Fault):
        if fault is not Condition.ACTUAL:
            assert next_steps(fault)


def test_an_electric_drive_is_judged_by_its_current() -> None:
    needs = DriveNeeds(Q(30, "in"), 30, least_current=Q(2, "A"))
    readings = dataclasses.replace(FINE, oil_flow=None, target_speed=None, actual_speed=None)
    weak = judge_start(dataclasses.replace(readings, current=Q(0.5, "A")), needs)
    assert weak.first_unmet is Condition.SUPPLY
    assert judge_start(dataclasses.replace(readings, current=Q(3, "A")), needs).first_unmet is None


def test_supply_by_eye_does_when_no_gauge_was_read() -> None:
    assert judged(oil_flow=None, supply=False).first_unmet is Condition.SUPPLY


def test_the_unmet_condition_becomes_a_finding() -> None:
    (found,) = start_findings(judged(lowered=False), "left")
    assert found.part == "drive left"
    assert "implement lowered" in found.what
    assert start_findings(judged()) == ()


@pytest.mark.parametrize(
    "changes", [{"command": 1.2}, {"ground_speed": Q(-1, "mph")}, {"target_rate": Q(9e9, "1/acre")}]
)
def test_impossible_readings_are_refused(changes) -> None:
    with pytest.raises(Refusal):
        dataclasses.replace(FINE, **changes)


@pytest.mark.parametrize(
    "changes",
    [{"motor_ratio": 0}, {"cells": 0}, {"speed_tolerance": 0}, {"volumetric_efficiency": 2}],
)
def test_impossible_needs_are_refused(changes) -> None:
    with pytest.raises(Refusal):
        dataclasses.replace(NEEDS, **changes)
