"""``changeover seed-need``: seed, packages, fills and stops, with reasons when asked."""

import json

import pytest

from changeover.__main__ import main

FIELD = ["seed-need", "--area", "120 acre", "--rate", "32000/acre"]
SIZE = ["--seeds-per-mass", "1500/lb"]
TANK = [*SIZE, "--tank", "25 bu", "--bulk-density", "56 lb/bu"]


def answer(capsys, *args: str) -> dict:
    assert main([*FIELD, *args, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_seeds_and_whole_packages(capsys) -> None:
    told = answer(capsys, "--overlap", "3 %", "--package-seeds", "80000")
    assert told["seeds"]["value"] == pytest.approx(3_955_200)
    assert told["packages"]["value"] == 50
    assert told["left_over"]["value"] == 44_800


def test_packages_by_mass_and_lubricant(capsys) -> None:
    told = answer(capsys, *SIZE, "--package-mass", "50 lb", "--dose", "2 oz")
    assert told["mass"]["value"] == pytest.approx(2_560)
    assert told["packages"]["value"] == 52
    assert told["lubricant"]["value"] == pytest.approx(52 * 2 / 16)


def test_a_dose_by_volume(capsys) -> None:
    told = answer(capsys, "--package-seeds", "80000", "--dose", "0.1 l", "--units", "metric")
    assert told["lubricant"] == {"value": pytest.approx(4.8), "unit": "l"}


def test_tank_fills_run_out_and_stops(capsys) -> None:
    told = answer(
        capsys, *TANK, "--reserve", "10 %", "--field-capacity", "14 acre/h",
        "--run-length", "2600 ft", "--width", "30 ft",
    )  # fmt: skip
    area = 25 * 56 * 1500 * 0.9 / 32_000
    assert told["run_out_area"]["value"] == pytest.approx(area)
    assert told["run_out_time"]["value"] == pytest.approx(area / 14 * 60)
    assert told["fills"]["value"] == 3
    assert told["refill_after_runs"] == [32, 64]


def test_a_tank_for_half_the_rows_lasts_twice_the_area(capsys) -> None:
    whole, half = (answer(capsys, *TANK, *more) for more in ([], ["--tank-share", "50 %"]))
    ratio = half["run_out_area"]["value"] / whole["run_out_area"]["value"]
    assert ratio == pytest.approx(2)


def test_reasons_as_text(capsys) -> None:
    assert main([*FIELD, "--package-seeds", "80000", "--why"]) == 0
    written = capsys.readouterr().out
    assert "so that the field is finished" in written
    assert "Seeds / 80000 a package" in written


@pytest.mark.parametrize(
    ("args", "says"),
    [
        (["--tank", "25 bu"], "needs seeds per mass and bulk density too"),
        (["--package-mass", "50 lb"], "needs seeds per mass too"),
        (["--package-mass", "50 lb", *SIZE, "--package-seeds", "1000"], "not both"),
        ([*SIZE, "--thousand-seed-mass", "300 g"], "not both"),
        (["--dose", "2 oz"], "needs a package"),
        (["--overlap", "300 %"], "Overlap: 300 %"),
        ([*TANK, "--run-length", "9 mi", "--width", "120 ft"], "both ends"),
    ],
)
def test_a_mistake_is_one_line_and_status_two(capsys, args, says) -> None:
    assert main([*FIELD, *args]) == 2
    written = capsys.readouterr()
    assert not written.out
    assert says in written.err
    assert written.err.count("\n") == 1
