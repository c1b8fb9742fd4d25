"""What proofs and work are given is refused in a sentence when it is of another kind."""

from collections.abc import Callable
from datetime import date

import pytest

from changeover.planter.settings import WorkPlace
from changeover.proof.depth import DepthGoal
from changeover.proof.drive_readings import DriveNeeds, DriveReadings
from changeover.proof.own_limits import OwnLimit
from changeover.proof.wear import WearReading
from changeover.quantities import Q, Refusal
from changeover.switch.own_tasks import OwnTask
from changeover.switch.tasks import StandardTime

SPEED, LENGTH = Q(5, "mph"), Q(3, "in")

WRONG: dict[str, tuple[Callable[[], object], str]] = {
    "target": (lambda: DepthGoal(SPEED, LENGTH), "target depth: “5 mph” is no depth"),
    "motor": (
        lambda: DriveNeeds(Q(30, "in"), 30, displacement=LENGTH),
        "motor's displacement: “3 in”",
    ),
    "ground": (lambda: DriveReadings(ground_speed=LENGTH), "ground speed: “3 in” is no speed"),
    "actual": (lambda: DriveReadings(actual_speed=SPEED), "actual speed: “5 mph” is no turning"),
    "limit": (lambda: OwnLimit("opener", "", SPEED, None, None, "page 3"), "opener, least"),
    "reading": (
        lambda: WearReading(4, "opener", SPEED, date(2026, 3, 2)),
        "Row 4, opener: “5 mph”",
    ),
    "minutes": (lambda: StandardTime("disc", SPEED, Q(1, "min")), "Standard time of disc"),
    "own task": (
        lambda: OwnTask("wash", "Wash it", WorkPlace.TANK, minutes_each=LENGTH),
        "minutes of the own task “wash”: “3 in” is no time",
    ),
}


@pytest.mark.parametrize("name", WRONG)
def test_readings_and_limits_refuse_another_kind_of_unit(name: str) -> None:
    make, says = WRONG[name]
    with pytest.raises(Refusal) as refused:
        make()
    assert says in str(refused.value)
