"""``changeover rate`` from a stand, with seed size and twin rows, and its refusals."""

import json

import pytest

from changeover.__main__ import main

ROWS = ["rate", "--row-spacing", "30 in"]
RATE = [*ROWS, "--rate", "32000/acre"]
STAND = [*ROWS, "--stand", "30000/acre"]


def answer(capsys, *args: str) -> dict:
    assert main([*args, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_a_stand_asks_for_more_seeds(capsys) -> None:
    shares = ["--germination", "95 %", "--emergence", "90 %", "--meter-error", "1 %"]
    told = answer(capsys, *STAND, *shares)
    assert told["rate"]["value"] == pytest.approx(30_000 / (0.95 * 0.90 * 0.99))
    assert told["stand"]["value"] == pytest.approx(30_000)


def test_seed_size_gives_the_mass_rate(capsys) -> None:
    told = answer(capsys, *RATE, "--thousand-seed-mass", "300 g")
    assert told["mass_rate"]["value"] == pytest.approx(32_000 * 0.3 / 453.59237)


def test_twin_rows_double_the_spacing(capsys) -> None:
    told = answer(capsys, *RATE, "--twin")
    assert told["twin_row_spacing"]["value"] == pytest.approx(2 * told["spacing"]["value"])


def test_reasons_stand_beside_each_figure(capsys) -> None:
    reasons = answer(capsys, *STAND, "--why")["reasons"]
    assert "germination" in reasons["rate"]["how"]
    assert "az1203" in reasons["rate"]["source"]
    assert reasons["row_spacing"]["source"] == "your entry"


@pytest.mark.parametrize(
    ("args", "says"),
    [
        (ROWS, "one of them"),
        ([*RATE, "--stand", "30000/acre"], "one of them"),
        ([*RATE, "--germination", "95 %"], "add --stand"),
        ([*STAND, "--germination", "105 %"], "Germination: 105 % is not possible"),
        ([*RATE, "--cells", "30"], "add --speed"),
        ([*RATE, "--seeds-per-mass", "1500/lb", "--thousand-seed-mass", "300 g"], "not both"),
    ],
)
def test_a_mistake_is_one_line_and_status_two(capsys, args, says) -> None:
    assert main(args) == 2
    written = capsys.readouterr()
    assert not written.out
    assert says in written.err
