"""Drive-start readings from a file."""

from collections.abc import Callable
from pathlib import Path

import pytest

from changeover.files.drive_file import read_drive
from changeover.quantities import Refusal

PLANTER = ["[planter]", 'row_spacing = "30 in"', "cells = 30"]


@pytest.fixture
def file(tmp_path) -> Callable[..., Path]:
    def write(*lines: str) -> Path:
        path = tmp_path / "drive.toml"
        path.write_text("\n".join(lines) + "\n", encoding="utf-8")
        return path

    return write


def test_all_tables(file) -> None:
    path = file(
        *PLANTER,
        "motor_ratio = 10.0",
        'displacement = "2.5 in^3"',
        "[limits]",
        'least_ground_speed = "1 mph"',
        "speed_tolerance = 0.1",
        'saturated_at = "90 %"',
        "[readings]",
        "lowered = true",
        'target_rate = "32000/acre"',
        'current = "3.5 A"',
        'command = "97 %"',
    )
    readings, needs = read_drive(path)
    assert (needs.cells, needs.motor_ratio, needs.speed_tolerance) == (30, 10.0, 0.1)
    assert needs.saturated_at == pytest.approx(0.9)
    assert needs.least_ground_speed.to("mph").magnitude == pytest.approx(1)
    assert readings.lowered
    assert readings.clutches_on is None
    assert readings.current.to("A").magnitude == 3.5
    assert readings.command == pytest.approx(0.97)


@pytest.mark.parametrize(
    ("lines", "message"),
    [
        (["[readings]", "speed = 5"], "line 5, column 1: “speed” is not known"),
        (["[readings]", 'ground_speed = "5 in"'], "line 5, column 1: ground_speed"),
        (["[readings]", "ground_speed = 5"], "line 5, column 1.*in quotes with its unit"),
        (["[readings]", 'ground_speed = "-5 mph"'], "line 5, column 1.*0 or more"),
        (["[readings]", 'lowered = "yes"'], "line 5, column 1.*true or false"),
        (["[readings]", 'command = "lots"'], "line 5, column 1: command"),
        (["[readings]", 'current = "3 mph"'], "line 5, column 1.*12 A"),
        (["[weather]", "rain = true"], "line 4, column 2: “weather” is not a table"),
        (["[readings", "lowered = true"], "not TOML.*line 4, column"),
    ],
)
def test_entries_that_cannot_be_used(file, lines, message) -> None:
    with pytest.raises(Refusal, match=message):
        read_drive(file(*PLANTER, *lines))


@pytest.mark.parametrize("value", ["0", "30.5", "true", '"30"'])
def test_cells_must_be_whole(file, value) -> None:
    with pytest.raises(Refusal, match="line 3, column 1: cells"):
        read_drive(file("[planter]", 'row_spacing = "30 in"', f"cells = {value}"))


def test_the_planter_must_be_stated(file) -> None:
    with pytest.raises(Refusal, match="lacks “row_spacing”"):
        read_drive(file("[readings]", "lowered = true"))


def test_a_file_that_is_not_there(tmp_path) -> None:
    with pytest.raises(Refusal, match="cannot be read"):
        read_drive(tmp_path / "none.toml")
