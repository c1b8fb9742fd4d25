"""A shortage of controllers and a sensor that never reported are findings with advice."""

from changeover.proof.findings import Proof
from changeover.proof.sensor_findings import CONTROLLERS, SENSOR, sensor_findings
from changeover.proof.sensors import Silence, sensor_capacity

ALL_SPEAK = Silence((), ())


def test_enough_controllers_and_no_silent_row_are_no_finding() -> None:
    assert sensor_findings(sensor_capacity(24, 1), ALL_SPEAK) == ()
    assert sensor_findings(None, ALL_SPEAK) == ()


def test_thirty_two_rows_on_one_controller_of_24_are_short_of_one() -> None:
    (found,) = sensor_findings(sensor_capacity(32, 1), ALL_SPEAK)
    assert found.key == (Proof.DRIVE, None, CONTROLLERS)
    assert found.evidence == "1 controller at 24 sensors each for 32 row sensors: 8 not read"
    assert found.advice[0].text.startswith("Add 1 controller, or wire fewer rows")


def test_each_row_that_never_reported_is_one_with_a_caution() -> None:
    found = sensor_findings(None, Silence((3, 9), ()))
    assert [one.key for one in found] == [(Proof.DRIVE, 3, SENSOR), (Proof.DRIVE, 9, SENSOR)]
    assert all("key out" in one.advice[0].caution for one in found)


def test_where_a_whole_controller_is_silent_its_harness_comes_first() -> None:
    (one,) = sensor_findings(sensor_capacity(25, 2), Silence((25,), ("controller 2",)))
    assert "Every row of controller 2 is silent" in one.advice[0].text
    assert len(one.advice) == len(sensor_findings(None, Silence((25,), ()))[0].advice) + 1
