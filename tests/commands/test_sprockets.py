"""``changeover sprockets``: pairs nearest first, slip from a run, one line for a mistake."""

import json

import pytest

from changeover.__main__ import main

JOB = ["sprockets", "--rate", "32000/acre", "--row-spacing", "30 in", "--cells", "30"]
WHEEL = ["--driver", "17,19", "--driven", "28,20", "--round", "84 in", "--ratio", "0.7"]


def test_the_nearest_pair_comes_first(capsys) -> None:
    assert main([*JOB, *WHEEL]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[0].startswith("17/28")
    assert len(lines) == 4


def test_json_holds_pairs_and_reason(capsys) -> None:
    assert main([*JOB, *WHEEL, "--json", "--why", "--list", "1"]) == 0
    answer = json.loads(capsys.readouterr().out)
    (pair,) = answer["pairs"]
    assert (pair["driver"], pair["driven"]) == (17, 28)
    assert pair["rate"]["unit"] == "seed/acre"
    assert pair["rate"]["value"] == pytest.approx(32_000 * (1 + pair["off"]))
    assert "driver / driven" in answer["reasons"]["pairs"]


def test_the_table_holds_every_pair(capsys) -> None:
    assert main([*JOB, *WHEEL, "--table", "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    table, pairs = answer["table"], answer["pairs"]
    for pair in pairs:
        line = table["rates"][table["driver"].index(pair["driver"])]
        assert line[table["driven"].index(pair["driven"])] == pair["rate"]
    assert main([*JOB, *WHEEL, "--table"]) == 0
    head, columns, *lines = capsys.readouterr().out.splitlines()
    assert head == "seeds/ac; driver down, driven across"
    assert columns.split() == ["20", "28"]
    assert [line.split()[0] for line in lines[:2]] == ["17", "19"]


def test_a_measured_run_gives_the_slip(capsys) -> None:
    assert main([*JOB, *WHEEL, "--distance", "300 ft", "--turns", "41", "--json"]) == 0
    slip = json.loads(capsys.readouterr().out)["slip"]
    assert slip == pytest.approx(1 - 41 * 7 / 300)


@pytest.mark.parametrize(
    ("extra", "says"),
    [
        (["--distance", "300 ft"], "give both --distance and --turns"),
        (["--distance", "300 ft", "--turns", "41", "--slip", "4 %"], "not both"),
        (["--slip", "80 %"], "Wheel slip must be"),
        (["--list", "0"], "enter 1 or more"),
        (["--driver", "17;19"], "no list of whole numbers"),
        (["--driver", "1,19"], "5 to 200 teeth"),
        (["--cells", "30.5"], "whole cells"),
        (["--rate", "0/acre"], "not possible"),
    ],
)
def test_a_mistake_is_one_line_and_status_two(capsys, extra, says) -> None:
    assert main([*JOB, *WHEEL, *extra]) == 2
    written = capsys.readouterr()
    assert not written.out
    assert says in written.err
    assert written.err.count("\n") == 1
