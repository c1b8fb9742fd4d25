"""Drive starts: what the planter needs, the first condition not met, and what a start settles."""

from dataclasses import replace

import pytest

from changeover.desk.board import Board, read_board
from changeover.desk.prove.drive import DriveProof, drive_of, fresh_drive, judge_drive, save_drive
from changeover.desk.prove.proofs import findings, proofs
from changeover.planter.places import Scope
from changeover.proof.drive_readings import Condition
from changeover.proof.pulses import WheelRun
from changeover.quantities import Q, Refusal

BAR = "Old Fiddle 24"


@pytest.fixture
def board(demo) -> Board:
    return read_board(demo, BAR, proposal=False)


def starting(board, **more) -> DriveProof:
    """Return a start in which all is met, but for what is given."""
    fresh = fresh_drive(board)
    readings = replace(
        fresh.readings,
        controller_set_up=True,
        target_rate=Q(140_000.0, "1/acre"),
        lowered=True,
        height_calibrated=True,
        start_point_set=True,
        ground_speed=Q(5.0, "mph"),
        wheel_speed=Q(5.05, "mph"),
        clutches_on=True,
        supply=True,
        command=0.4,
    )
    read = replace(fresh, readings=readings)
    expected = judge_drive(board, read).start.expected
    all_read = {"target_speed": expected, "actual_speed": expected, **more}
    return replace(read, readings=replace(readings, **all_read))


def test_the_needs_come_from_the_planter_and_its_disc(board) -> None:
    fresh = fresh_drive(board)
    assert fresh.needs.row_spacing == Q(30.0, "in")
    assert fresh.needs.cells == 56
    assert fresh.group == board.planter.groups_of(Scope.DRIVE)[0].name


def test_a_start_comes_back_from_the_store_as_it_was_read(demo, do, board) -> None:
    wheel = (WheelRun(3301, Q(400.0, "ft")), WheelRun(3297, Q(400.0, "ft")))
    proof = replace(starting(board), wheel=wheel, controllers=1, silent=(5,), note="dry")
    do(save_drive(board, proof))
    assert drive_of(proofs(demo, BAR)[0]) == proof


def test_the_first_condition_not_met_is_a_finding_until_a_start_succeeds(demo, do, board) -> None:
    do(save_drive(board, starting(board, ground_speed=Q(1.0, "mph"), wheel_speed=Q(1.0, "mph"))))
    (found,) = findings(demo, BAR)
    assert str(Condition.GROUND_SPEED) in found.finding.what
    partly = starting(board, actual_speed=None)
    do(save_drive(board, partly))
    assert len(findings(demo, BAR)) == 1
    do(save_drive(board, starting(board)))
    assert findings(demo, BAR) == ()


def test_sensors_are_held_against_the_controllers_and_the_silent_rows_named(board) -> None:
    judged = judge_drive(board, replace(starting(board), controllers=0, silent=(3, 9)))
    assert (judged.sensors.needed, judged.sensors.unread) == (2, 24)
    assert judged.silence.rows == (3, 9)


def test_the_wheel_sensor_is_calibrated_from_all_runs(board) -> None:
    runs = (WheelRun(3300, Q(400.0, "ft")), WheelRun(3310, Q(400.0, "ft")))
    wheel = judge_drive(board, replace(starting(board), wheel=runs)).wheel
    assert wheel.pulses_per_distance.to("pulse/ft").magnitude == pytest.approx(6610 / 800)
    assert wheel.enough_runs


def test_without_needs_nothing_is_judged(board) -> None:
    with pytest.raises(Refusal, match="row spacing and the cells"):
        judge_drive(board, DriveProof())


def test_too_few_controllers_and_silent_rows_are_findings_until_read_again(demo, do, board) -> None:
    few = replace(board.planter, sensors_per_controller=16)
    board = replace(board, planter=few)
    do(save_drive(board, replace(starting(board), controllers=1, silent=(5, 20))))
    kept = {(one.finding.row, one.finding.part) for one in findings(demo, BAR)}
    assert kept == {(None, "controllers"), (5, "row sensor"), (20, "row sensor")}
    do(save_drive(board, starting(board)))  # says nothing of the sensors
    assert len(findings(demo, BAR)) == 3
    do(save_drive(board, replace(starting(board), controllers=2, silent=(20,))))
    assert [one.finding.row for one in findings(demo, BAR)] == [20]
    do(save_drive(board, replace(starting(board), controllers=2)))
    assert findings(demo, BAR) == ()


def test_silent_rows_are_findings_though_the_controllers_were_not_counted(demo, do, board) -> None:
    do(save_drive(board, replace(starting(board), silent=(7,))))
    (one,) = findings(demo, BAR)
    assert (one.finding.row, one.finding.what) == (7, "the row sensor never reported")
