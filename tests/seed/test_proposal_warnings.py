"""Warnings of a whole proposal: each in one sentence, with its source where it has one."""

import pytest

from changeover.planter.groups import equal_groups
from changeover.planter.places import Scope
from changeover.planter.scales import DepthScale
from changeover.quantities import Q
from tests.seed.made_up import job, lot, motor, planter, proposal


def said(word: str, **changes: object) -> list[str]:
    return [one for one in proposal(**changes).warnings if word in one]


def test_all_is_well_and_nothing_is_said() -> None:
    slow = job(speed=Q(1.3, "mph"), soil_temperature=Q(65, "degF"))
    assert proposal(job=slow).warnings == ()


def test_cold_soil_is_said_with_its_source() -> None:
    assert "NDSU" in said("The soil is", job=job(soil_temperature=Q(44, "degF")))[0]


def test_too_many_seeds_a_second_for_corn_names_the_top_speed() -> None:
    fast = job(speed=Q(9, "mph"), seed_rate=Q(36_000, "seed/acre"))
    words = said("expect more skips above", job=fast, lot=lot("corn"))
    assert "Önal" in words[0]


def test_the_limit_for_corn_is_not_claimed_for_beans() -> None:
    words = said("is for cotton and maize", job=job(speed=Q(5, "mph")))
    assert "not soybean: prove it on the bench" in words[0]


def test_a_motor_beyond_its_range_is_said() -> None:
    machine = planter(drives={"drive 1": motor()})
    assert said("hydraulic motor would turn", planter=machine, job=job(speed=Q(8, "mph")))


def test_missing_germination_is_said() -> None:
    assert said("germination is not entered", lot=lot(germination=None))
    assert not said("germination is not entered")


@pytest.mark.parametrize(("there", "short"), [(10, True), (100, False)])
def test_too_few_packages_are_said(there: float, short: bool) -> None:
    assert bool(said("packages are needed", lot=lot(packages=there))) is short


def test_sensors_beyond_one_controller_are_counted() -> None:
    machine = planter(32)
    assert said("32 rows need 2 controllers", planter=machine)
    groups = (*machine.groups, *equal_groups(Scope.CONTROLLER, 2, 32))
    assert not said("controllers", planter=planter(32, groups=groups))


def test_a_depth_out_of_reach_is_said_once() -> None:
    shallow = DepthScale(Q(0.25, "in"), Q(0.25, "in"), 2)
    assert len(said("cannot plant", planter=planter(depth=shallow))) == 1


def test_no_warning_is_said_twice() -> None:
    found = proposal(planter=planter(32), lot=lot(germination=None, packages=1)).warnings
    assert len(set(found)) == len(found)
