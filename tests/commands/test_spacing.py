"""``changeover spacing`` from file to answer."""

import json
from pathlib import Path

import pytest

from changeover.__main__ import main

VECTOR = "18 20 22 19 17 2 20 41 18 21 23 19 20 6 14 40 22 18 61 20 19 21 17 20 24 18 22 20 19 21"


@pytest.fixture
def file(tmp_path) -> Path:
    path = tmp_path / "furrow.csv"
    lines = [f"{row},{x}" for row in (1, 2) for x in VECTOR.split()]
    path.write_text("\n".join(["row,spacing (cm)", *lines]) + "\n", encoding="utf-8")
    return path


def answer(capsys, *arguments) -> dict:
    assert main(["spacing", *map(str, arguments), "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_the_answer_by_row_and_over_all(file, capsys) -> None:
    found = answer(capsys, file, "--target", "20 cm")
    assert [one["row"] for one in found["rows"]] == [1, 2]
    for one, n in ((found["rows"][0], 30), (found["overall"], 60)):
        assert one["n"] == n
        assert one["counts"] == [k * n // 30 for k in (2, 25, 2, 1, 0)]
        assert one["by_spacings"]["misses"] == pytest.approx(10)
        assert one["by_positions"]["multiples"] == pytest.approx(6.25)


def test_precision_mean_and_cp3(file, capsys) -> None:
    row = answer(capsys, file, "--target", "20 cm")["rows"][0]
    assert row["precision_ref"] == pytest.approx(10.774, abs=0.001)
    assert row["mean"] == {"value": pytest.approx(21.4), "unit": "cm"}
    assert row["sd"]["value"] == pytest.approx(10.334, abs=0.001)
    assert row["cp3_mode"] == row["cp3_target"] == pytest.approx(43.333, abs=0.001)


def test_units_follow_the_target_or_the_argument(file, capsys) -> None:
    found = answer(capsys, file, "--target", "8 in")
    assert found["overall"]["mean"]["unit"] == "in"
    metric = answer(capsys, file, "--target", "8 in", "--units", "metric")
    assert metric["overall"]["mean"]["value"] == pytest.approx(21.4)


def test_limits_and_intervals(file, capsys) -> None:
    limits = ["--quality-least", "80%", "--misses-most", "2%", "--intervals"]
    found = answer(capsys, file, "--target", "20 cm", *limits)["overall"]
    assert found["standing"] == "falls short"
    assert found["intervals"]["mean"]["low"] < 107 < found["intervals"]["mean"]["high"]


def test_lines_for_people(file, capsys) -> None:
    assert main(["spacing", str(file), "--target", "20 cm"]) == 0
    text = capsys.readouterr().out
    assert "quality of feed 81.2" in text
    assert "Verdict: no limit set" in text


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["--target", "0 in"], "--target: “0 in” is not possible"),
        (["--target", "5 mph"], "--target"),
        (["--target", "20 cm", "--rows", "1-3"], "no readings of row 3"),
        (["--target", "20 cm", "--misses-most", "200%"], "0 to 100 %"),
    ],
)
def test_bad_arguments_are_one_line_and_status_two(file, capsys, arguments, message) -> None:
    assert main(["spacing", str(file), *arguments]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert message in err
    assert err.count("\n") == 1


def test_a_bad_file_names_line_and_column(tmp_path, capsys) -> None:
    path = tmp_path / "tape.csv"
    path.write_text("row,position (in)\n1,0\n1,13\n1,6.5\n", encoding="utf-8")
    assert main(["spacing", str(path), "--target", "6.5 in"]) == 2
    assert "line 4, column 2 (position)" in capsys.readouterr().err


def test_the_target_must_be_given(file, capsys) -> None:
    with pytest.raises(SystemExit) as left:
        main(["spacing", str(file)])
    assert left.value.code == 2
    assert "--target" in capsys.readouterr().err
