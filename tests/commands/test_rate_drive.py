"""``changeover rate`` for a variable-rate motor: its speed, oil, ranges and warnings."""

import json

import pytest

from changeover.__main__ import main

JOB = ["rate", "--rate", "32000/acre", "--row-spacing", "30 in", "--speed", "5 mph"]
MOTOR = [*JOB, "--cells", "30", "--motor-ratio", "10"]
LIMITS = ["--motor-least", "40 rpm", "--motor-most", "350 rpm"]


def answer(capsys, *args: str) -> dict:
    assert main([*args, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_motor_speed_and_oil_flow(capsys) -> None:
    told = answer(capsys, *MOTOR, "--displacement", "5 in^3", "--volumetric-efficiency", "90 %")
    turns = told["motor_speed"]["value"]
    assert turns == pytest.approx(10 * told["disc_speed"]["value"])
    assert told["oil_flow"]["value"] == pytest.approx(5 * turns / 231 / 0.9)
    assert told["displacement"] == {"value": pytest.approx(5), "unit": "in^3"}


def test_ranges_that_the_motor_allows(capsys) -> None:
    told = answer(capsys, *MOTOR, *LIMITS)
    share = 350 / told["motor_speed"]["value"]
    assert told["fastest"]["value"] == pytest.approx(5 * share)
    assert told["most_rate"]["value"] == pytest.approx(32_000 * share)
    assert "notes" not in told


def test_warnings_stand_below_the_figures(capsys) -> None:
    assert main([*MOTOR[:-5], "7 mph", *MOTOR[-4:], *LIMITS]) == 0
    written = capsys.readouterr().out.splitlines()
    assert "expect more skips" in written[-2]
    assert "above its most, 350.0 rpm" in written[-1]


@pytest.mark.parametrize(
    ("args", "says"),
    [
        ([*JOB, "--cells", "30", "--displacement", "5 in^3"], "add --motor-ratio"),
        ([*JOB, "--motor-ratio", "10"], "add --speed and --cells"),
        ([*MOTOR, "--motor-least", "40 rpm"], "both --motor-least and --motor-most"),
        ([*MOTOR, "--volumetric-efficiency", "90 %"], "add --displacement"),
        ([*MOTOR, *LIMITS[:2], "--motor-most", "20 rpm"], "least speed must lie below"),
    ],
)
def test_a_mistake_is_one_line_and_status_two(capsys, args, says) -> None:
    assert main(args) == 2
    written = capsys.readouterr()
    assert not written.out
    assert says in written.err


def test_the_discs_own_limit_bounds_the_ground_speed(capsys) -> None:
    disc = [*JOB, "--cells", "30"]
    free = answer(capsys, *disc)["top_speed"]["value"]
    bound = answer(capsys, *disc, "--most-disc-speed", "20 rpm", "--why")
    assert bound["top_speed"]["value"] < free
    assert "your manual" in bound["reasons"]["top_speed"]["source"]
    assert any("bound by disc speed (your manual)" in note for note in bound["notes"])
    turns = bound["disc_speed"]["value"] / bound["speed"]["value"]
    assert bound["top_speed"]["value"] * turns == pytest.approx(20)


def test_a_disc_limit_without_cells_is_refused(capsys) -> None:
    assert main([*JOB, "--most-disc-speed", "20 rpm"]) == 2
    assert "add --cells" in capsys.readouterr().err
