"""``changeover vacuum``: a start value with its band and reasons, or a line that says why not."""

import json

import pytest

from changeover.__main__ import main

SEED = ["--thousand-seed-mass", "330 g", "--hole", "5 mm"]


def answer(capsys, *args: str) -> dict:
    assert main(["vacuum", *args, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_a_crop_in_print_starts_at_the_mean_of_its_optima(capsys) -> None:
    told = answer(capsys, "--crop", "soybean", "--units", "metric", "--why")
    assert told["start"]["value"] == pytest.approx((3 * 6) ** 0.5)
    assert told["low"]["value"] <= 3 < 6 <= told["high"]["value"]
    assert "Lauriano" in told["reasons"]["start"]["source"]
    assert told["reasons"]["start"]["trust"] == "published"


def test_a_seed_without_print_starts_from_its_mass(capsys) -> None:
    told = answer(capsys, *SEED)
    assert told["start"]["unit"] == "inH2O"
    assert told["high"]["value"] == pytest.approx(4 * told["low"]["value"])
    assert "least_holding" not in told


def test_with_disc_and_speed_the_lower_bound_is_told(capsys) -> None:
    told = answer(capsys, *SEED, "--circle", "8 in", "--disc-speed", "27 rpm")
    assert 0 < told["least_holding"]["value"] < told["low"]["value"]


def test_altitude_and_reasons_as_text(capsys) -> None:
    assert main(["vacuum", "--crop", "corn", "--altitude", "5000 ft", "--why"]) == 0
    written = capsys.readouterr().out
    assert "14% thinner" in written
    assert "Karayel" in written
    assert "changeover tune" in written


@pytest.mark.parametrize(
    ("args", "says"),
    [
        ([], "--thousand-seed-mass and --hole"),
        (["--crop", "oats"], "not in the table"),
        (["--thousand-seed-mass", "330 m", "--hole", "5 mm"], "not a unit"),
        (["--thousand-seed-mass", "0 g", "--hole", "5 mm"], "Thousand-seed mass: 0 g is not"),
        (["--thousand-seed-mass", "330 g", "--hole", "0.5 mm"], "take a larger hole"),
        (["--crop", "corn", "--altitude", "90000 ft"], "Altitude"),
    ],
)
def test_a_mistake_is_one_line_and_status_two(capsys, args, says) -> None:
    assert main(["vacuum", *args]) == 2
    written = capsys.readouterr()
    assert not written.out
    assert says in written.err
    assert written.err.count("\n") == 1
