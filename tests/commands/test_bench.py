"""``changeover bench`` from file to answer."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from changeover.__main__ import main


@pytest.fixture
def file(tmp_path) -> Path:
    path = tmp_path / "bench.csv"
    lines = [f"{row},M{row},500,{25 if row == 3 else 3},2" for row in range(1, 13)]
    text = "\n".join(["row,meter,cells,skips,doubles", *lines]) + "\n"
    path.write_text(text, encoding="utf-8")
    return path


def answer(capsys, *arguments) -> dict:
    assert main(["bench", *map(str, arguments), "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_the_odd_row_is_found(file, capsys) -> None:
    found = answer(capsys, file)
    assert [one["row"] for one in found["rows"] if one["odd_skips"]["odd"]] == [3]
    assert found["rows"][2]["skip"]["share"] == pytest.approx(5)
    assert found["rows"][2]["meter"] == "M3"
    assert [one["row"] for one in found["findings"]] == [3]


def test_shares_are_judged_by_the_users_limits(file, capsys) -> None:
    limits = ["--single-least", "97%", "--skips-most", "2%", "--doubles-most", "2%"]
    rows = answer(capsys, file, *limits)["rows"]
    assert rows[2]["standing"] == "falls short"
    assert rows[0]["skip"]["standing"] == "within limits"
    assert rows[0]["skip"]["interval"]["high"] == pytest.approx(1.749, abs=0.001)


def test_the_plan_and_the_rows_run_too_short(file, capsys) -> None:
    found = answer(capsys, file)
    assert (found["plan"]["cells"], found["plan"]["alarm_at"]) == (449, 19)
    assert found["too_short"] == []
    assert len(answer(capsys, file, "--bad", "3%")["too_short"]) == 12


def test_a_damaged_cell_is_named(tmp_path, capsys) -> None:
    path = tmp_path / "events.csv"
    events = [f"1,{7 + 30 * turn},skip" for turn in range(8)]
    path.write_text("\n".join(["row,cell,event", *events, "2,,"]) + "\n", encoding="utf-8")
    arguments = [path, "--passed", "300", "--disc-cells", "30", "--control", "bh"]
    (cell,) = answer(capsys, *arguments)["rows"][0]["damaged_cells"]
    assert (cell["cell"], cell["events"], cell["passes"]) == (7, 8, 10)


def test_lines_for_people(file, capsys) -> None:
    assert main(["bench", str(file), "--skips-most", "2%"]) == 0
    text = capsys.readouterr().out
    assert "alarm at 19 skips" in text
    assert "Row 3: skips on this row alone." in text
    assert "common practice, no source" in text


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("1,500,400,101", "line 2, column 3 (skips): 400 skips and 101 doubles are more"),
        ("1,500,x,0", "line 2, column 3 (skips): “x”"),
    ],
)
def test_counts_that_cannot_be(tmp_path, capsys, line, message) -> None:
    path = tmp_path / "bench.csv"
    path.write_text(f"row,cells,skips,doubles\n{line}\n", encoding="utf-8")
    assert main(["bench", str(path)]) == 2
    assert message in capsys.readouterr().err


def test_the_command_as_a_program(file) -> None:
    command = [sys.executable, "-m", "changeover", "bench", str(file), "--json"]
    done = subprocess.run(command, capture_output=True, text=True, check=True, encoding="utf-8")
    assert json.loads(done.stdout)["overall"]["cells"] == 6000
    assert done.stderr == ""
