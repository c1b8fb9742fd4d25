"""``changeover drive-start`` from file to answer."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from changeover.__main__ import main

DRIVE = """
[planter]
row_spacing = "30 in"
cells = 30
motor_ratio = 10.0
displacement = "2.51 in^3"

[readings]
controller_set_up = true
target_rate = "32000/acre"
lowered = {lowered}
height_calibrated = true
start_point_set = true
ground_speed = "5 mph"
wheel_speed = "5 mph"
clutches_on = true
oil_flow = "4 gal/min"
target_speed = "269 rpm"
command = "97 %"
actual_speed = "200 rpm"
"""


@pytest.fixture
def file(tmp_path) -> Callable[..., Path]:
    def write(lowered: str) -> Path:
        path = tmp_path / "drive.toml"
        path.write_text(DRIVE.format(lowered=lowered), encoding="utf-8")
        return path

    return write


def answer(capsys, path) -> dict:
    assert main(["drive-start", str(path), "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_a_drive_that_gives_all_it_has(file, capsys) -> None:
    found = answer(capsys, file("true"))
    assert found["first_unmet"] == "actual speed agrees with target"
    assert found["expected_speed"] == {"value": pytest.approx(269.36, abs=0.01), "unit": "rpm"}
    assert found["actual_share"] == pytest.approx(74.25, abs=0.01)
    assert found["saturated"]
    assert "oil flow" in found["next_steps"][0]["text"]


def test_what_waits_for_an_unmet_condition(file, capsys) -> None:
    found = answer(capsys, file("false"))
    assert found["first_unmet"] == "implement lowered"
    assert "actual speed agrees with target" in found["not_judged"]


def test_lines_for_people(file, capsys) -> None:
    assert main(["drive-start", str(file("false"))]) == 0
    text = capsys.readouterr().out
    assert "First condition not met: implement lowered" in text
    assert "Cannot be judged yet:" in text
    assert "Caution: Engine off" in text


def test_a_bad_file_names_line_and_column(file, capsys) -> None:
    assert main(["drive-start", str(file("maybe"))]) == 2
    err = capsys.readouterr().err
    assert "line 11, column" in err
    assert err.count("\n") == 1
