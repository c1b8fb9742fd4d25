"""The figures of a motor: its speed, the ranges that it allows, and the oil that it takes."""

from dataclasses import replace

import pytest

from changeover.planter.drive import MotorKind
from changeover.quantities import Q
from changeover.seed.drive_figures import drive_figures
from tests.seed.made_up import case, ground_drive, motor, planter

RATE = Q(32_000, "seed/acre")


def by_key(*drives: object) -> dict[str, object]:
    names = ("drive 1", "drive 2")
    from changeover.planter.groups import equal_groups
    from changeover.planter.places import Scope

    groups = equal_groups(Scope.DRIVE, len(drives), 12)
    machine = planter(groups=groups, drives=dict(zip(names, drives, strict=False)))
    return {one.key: one for one in drive_figures(case("corn", planter=machine), RATE, 30)}


def test_motor_speed_and_oil_flow_follow_the_disc() -> None:
    found = by_key(motor())
    assert found["motor_speed"].quantity.to("rpm").magnitude == pytest.approx(26.936 * 8, rel=1e-3)
    flow = found["oil_flow"].quantity.to("l/min").magnitude
    assert flow == pytest.approx(26.936 * 8 * 0.04, rel=1e-3)
    assert "Oil under pressure" in found["oil_flow"].reason.cautions[0]


def test_the_ranges_are_said_both_ways() -> None:
    why = by_key(motor())["motor_speed"].reason.why
    assert "drive 0.5 to 7.0 mph" in why
    assert "sow 2\u202f970 to 44\u202f550 seeds/ac" in why


def test_an_electric_motor_takes_no_oil() -> None:
    electric = replace(motor(), kind=MotorKind.ELECTRIC, displacement=None)
    assert list(by_key(electric)) == ["motor_speed"]


def test_drives_alike_are_told_together_and_others_apart() -> None:
    both = by_key(motor(), motor())
    assert both["motor_speed"].name == "Motor speed, drive 1 and drive 2"
    apart = by_key(motor(), replace(motor(), ratio=10.0))
    assert {"motor_speed_1", "motor_speed_2"} <= apart.keys()


def test_a_ground_drive_has_no_motor() -> None:
    assert by_key(ground_drive()) == {}
