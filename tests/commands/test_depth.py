"""``changeover depth`` from file to answer."""

import json
from pathlib import Path

import pytest

from changeover.__main__ import main

GOAL = ["--target", "2 in", "--tolerance", "1/4 in"]


@pytest.fixture
def file(tmp_path) -> Path:
    path = tmp_path / "digs.csv"
    digs = {1: (1.45, 1.5, 1.55, 1.5), 2: (1.95, 2.0, 2.05, 2.0)}
    lines = [f"{row},{x}" for row, depths in digs.items() for x in depths]
    path.write_text("\n".join(["row,depth (in)", *lines]) + "\n", encoding="utf-8")
    return path


def answer(capsys, *arguments) -> list[dict]:
    assert main(["depth", *map(str, arguments), "--json"]) == 0
    return json.loads(capsys.readouterr().out)["rows"]


def test_notches_and_verdict(file, capsys) -> None:
    first, second = answer(capsys, file, *GOAL, "--step", "1/4 in")
    assert (first["notch_change"], first["standing"]) == (2, "falls short")
    assert (second["notch_change"], second["standing"]) == (0, "within limits")


def test_interval_and_share(file, capsys) -> None:
    row = answer(capsys, file, *GOAL, "--share-least", "80%")[1]
    assert row["mean"] == {"value": pytest.approx(2.0), "unit": "in"}
    assert row["interval"]["low"] == pytest.approx(1.935, abs=0.001)
    assert row["in_tolerance"] == 100
    assert row["share_standing"] == "not proved"


def test_metric_answer(file, capsys) -> None:
    row = answer(capsys, file, "--units", "metric")[0]
    assert row["mean"] == {"value": pytest.approx(38.1), "unit": "mm"}
    assert row["interval"]["low"] < 38.1 < row["interval"]["high"]
    assert (row["standing"], row["in_tolerance"]) == ("no limit set", None)


@pytest.fixture
def notched(tmp_path) -> Path:
    path = tmp_path / "notched.csv"
    digs = {(1, 4): (1.58, 1.6, 1.62), (1, 8): (2.35, 2.4, 2.45), (2, 4): (1.6,), (2, 8): (2.4,)}
    lines = [f"{row},{notch},{x}" for (row, notch), depths in digs.items() for x in depths]
    path.write_text("\n".join(["row,notch,depth (in)", *lines]) + "\n", encoding="utf-8")
    return path


def test_digs_at_several_notches_give_a_line_with_its_interval(notched, capsys) -> None:
    first, second = answer(capsys, notched, *GOAL)
    assert first["mean"]["value"] == pytest.approx(2.4)
    assert first["line"]["step"] == {"value": pytest.approx(0.2), "unit": "in"}
    assert first["line"]["half_width"]["value"] == pytest.approx(0.0216, abs=1e-4)
    assert (first["line"]["digs"], first["notch_change"]) == (6, -2)
    assert (second["line"], second["notch_change"]) == (None, None)
    assert "2 digs leave nothing to tell" in second["line_why"]


def test_lines_of_rows_for_people(notched, capsys) -> None:
    assert main(["depth", str(notched), *GOAL]) == 0
    out = capsys.readouterr().out
    assert (
        "row 1: its own depth line, 0.200 ± 0.022 in a notch, 1.00 in at notch 1, by 6 digs" in out
    )
    assert "row 2: no depth line of its own; 2 digs leave nothing" in out


def test_digs_at_one_notch_have_no_line_and_need_no_reason(file, capsys) -> None:
    row = answer(capsys, file)[0]
    assert (row["line"], row["line_why"]) == (None, None)


def test_lines_for_people(file, capsys) -> None:
    assert main(["depth", str(file), *GOAL, "--step", "1/4 in"]) == 0
    assert "+2" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["--target", "2 in"], "give --target and --tolerance together"),
        (["--target", "0 in", "--tolerance", "1/4 in"], "--target"),
        (["--step", "1/4 in"], "need --target"),
        ([*GOAL, "--rows", "1-4"], "no readings of row 3, 4"),
    ],
)
def test_bad_arguments_are_one_line_and_status_two(file, capsys, arguments, message) -> None:
    assert main(["depth", str(file), *arguments]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert message in err
    assert err.count("\n") == 1
