"""A drive start is read condition by condition; the first not met says what to look at next."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from changeover.proof.drive_readings import Condition
from changeover.window.marks import Mark
from changeover.window.proof.drive import DriveView
from tests.window.on_demo import OnDemo, on_demo


@pytest.fixture
def drive(qtbot: Any, tmp_path: Path) -> Iterator[OnDemo]:
    with on_demo(qtbot, tmp_path, DriveView) as put:
        put.page.enter()
        yield put


def answer(drive: OnDemo, name: str, text: str) -> None:
    combo = drive.page.form.flags[name]
    combo.setCurrentText(text)
    combo.activated.emit(combo.currentIndex())


def write(drive: OnDemo, name: str, text: str) -> None:
    field, _ = drive.page.form.fields[name]
    field.setText(text)
    field.setModified(True)
    field.editingFinished.emit()


def test_the_first_condition_not_met_is_marked_and_says_what_is_next(drive: OnDemo) -> None:
    answer(drive, "controller_set_up", "yes")
    answer(drive, "lowered", "no")
    form = drive.page.form
    assert form.marks[Condition.CONTROLLER].mark is Mark.READY
    assert form.marks[Condition.LOWERED].mark is Mark.ATTENTION
    assert "First not met: implement lowered" in drive.page.panel.says.text()
    assert "Lower the planter" in drive.page.panel.next.text()
    assert "common practice" in drive.page.panel.next.text()


def test_the_target_speed_is_reckoned_and_the_actual_held_against_it(drive: OnDemo) -> None:
    write(drive, "target_rate", "140 000")
    write(drive, "ground_speed", "5 mph")
    expected = drive.page.judged.start.expected.to("rpm").magnitude
    write(drive, "actual_speed", f"{expected * 0.7:.2f} rpm")
    write(drive, "command", "97 %")
    says = drive.page.panel.says.text()
    assert "Actual at 70.0 % of target, outside tolerance" in says
    assert "command is at its limit" in says


def test_a_reading_that_cannot_be_is_refused_and_undo_takes_one_back(drive: OnDemo) -> None:
    write(drive, "ground_speed", "5 bags")
    assert "not a unit" in drive.refused[-1] or "not known" in drive.refused[-1]
    answer(drive, "lowered", "no")
    drive.door.stack.undo()
    assert drive.page.entered.readings.lowered is None


def test_what_the_drive_needs_can_be_changed(drive: OnDemo) -> None:
    drive.page.cells.setText("30")
    drive.page.cells.setModified(True)
    drive.page.take_needs()
    assert drive.page.entered.needs.cells == 30


def test_the_wheel_is_calibrated_in_both_conventions(drive: OnDemo) -> None:
    panel = drive.page.panel
    for pulses in ("3300", "3310"):
        panel.pulses.setText(pulses)
        panel.distance.setText("400 ft")
        panel.add_run()
    assert "2 runs: 8.262 pulses per ft, or 1.4523 in per pulse" in panel.wheel.text()
    panel.clear_runs()
    assert drive.page.entered.wheel == ()


def test_sensors_are_held_against_controllers(drive: OnDemo) -> None:
    panel = drive.page.panel
    panel.controllers.setText("1")
    panel.silent.setText("3, 9")
    panel.controllers.setModified(True)
    panel.take_sensors()
    assert "12 sensors are not read" in panel.sensors.text()
    assert "Silent: rows 3, 9" in panel.sensors.text()
    panel.silent.setText("77")
    panel.silent.setModified(True)
    panel.take_sensors()
    assert "“77” is no row" in drive.refused[-1]


def test_a_start_is_saved_with_its_finding(drive: OnDemo) -> None:
    answer(drive, "lowered", "no")
    drive.page.save()
    (card,) = drive.page.cards.cards.values()
    assert card.kept.finding.what.startswith("drive does not start")
    assert not drive.page.entering
