"""``changeover catch``: the rate shown and the correction, from seeds or mass."""

import json

import pytest

from changeover.__main__ import main

ROWS = ["catch", "--rows", "2", "--row-spacing", "30 in"]


def answer(capsys, *args: str) -> dict:
    assert main([*ROWS, *args, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_seeds_over_a_distance(capsys) -> None:
    told = answer(capsys, "--seeds", "360", "--distance", "100 ft", "--wanted", "32000/acre")
    shown = 360 / (100 * 5) * 43_560
    assert told["rate"]["value"] == pytest.approx(shown)
    assert told["area"]["value"] == pytest.approx(500)
    assert told["correction"]["value"] == pytest.approx(32_000 / shown)


def test_mass_over_wheel_turns_with_slip(capsys) -> None:
    turns = ["--turns", "20", "--round", "84 in", "--slip", "4 %"]
    told = answer(capsys, "--mass", "4 oz", *turns, "--seeds-per-mass", "1500/lb")
    area = 20 * 7 / 0.96 * 5 / 43_560
    assert told["mass_rate"]["value"] == pytest.approx(0.25 / area)
    assert told["rate"]["value"] == pytest.approx(0.25 * 1500 / area)


def test_reasons_as_text(capsys) -> None:
    assert main([*ROWS, "--seeds", "360", "--distance", "100 ft", "--why"]) == 0
    assert "Seeds / area" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("args", "says"),
    [
        (["--distance", "100 ft"], "--seeds or --mass"),
        (["--seeds", "9", "--mass", "1 oz", "--distance", "9 ft"], "--seeds or --mass"),
        (["--seeds", "360"], "--distance, or --turns"),
        (["--seeds", "360", "--turns", "20"], "add --round"),
        (["--seeds", "0", "--distance", "100 ft"], "Count of seeds: 0"),
        (["--mass", "4 oz", "--distance", "9 ft", "--wanted", "9/acre"], "--seeds-per-mass"),
    ],
)
def test_a_mistake_is_one_line_and_status_two(capsys, args, says) -> None:
    assert main([*ROWS, *args]) == 2
    written = capsys.readouterr()
    assert not written.out
    assert says in written.err
