"""``changeover tune``: advice for each meter from a table of bench runs."""

import json
from pathlib import Path

import pytest

from changeover.__main__ import main

HEAD = "row,vacuum (inH2O),cells,skips,doubles\n"
ROWS = (
    "1,10,500,60,1\n1,14,500,25,4\n1,20,500,9,12\n1,28,500,2,45\n"
    "2,10,500,50,2\n2,14,500,29,2\n2,20,500,6,15\n2,28,500,3,40\n"
)


@pytest.fixture
def table(tmp_path: Path) -> Path:
    path = tmp_path / "runs.csv"
    path.write_text(HEAD + ROWS, encoding="utf-8")
    return path


def test_each_meter_and_all_together_have_a_line(capsys, table) -> None:
    assert main(["tune", str(table), "--present", "14 inH2O", "--why"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert [line.split(":")[0] for line in lines[:3]] == ["1", "2", "All meters"]
    assert "against the present level" in lines[0]
    assert "Firth 1993" in lines[3]


def test_json_holds_levels_and_shares(capsys, table) -> None:
    assert main(["tune", str(table), "--units", "metric", "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    first = told["meters"][0]
    assert first["verdict"] == "found"
    assert first["low"]["value"] < first["best"]["value"] < first["high"]["value"]
    assert first["best"]["unit"] == "kPa"
    assert first["gain"] is None
    assert 0 < told["together"]["error"] < 0.1


def test_one_level_says_that_it_cannot_decide(capsys, tmp_path) -> None:
    path = tmp_path / "one.csv"
    path.write_text(HEAD + "1,14,500,25,4\n", encoding="utf-8")
    assert main(["tune", str(path), "--json"]) == 0
    (meter,) = json.loads(capsys.readouterr().out)["meters"]
    assert meter["verdict"] == "one level only"
    assert meter["best"] is None
    assert meter["next_level"]["value"] == pytest.approx(17.5)


def test_singulator_positions_are_compared(capsys, tmp_path) -> None:
    path = tmp_path / "positions.csv"
    lines = [f"{line},open" for line in ROWS.split()[:4]]
    lines += ["1,10,500,160,1,1/2", "1,14,500,125,4,1/2", "1,20,500,99,12,1/2"]
    path.write_text(HEAD.strip() + ",singulator\n" + "\n".join(lines), encoding="utf-8")
    assert main(["tune", str(path), "--json"]) == 0
    choice = json.loads(capsys.readouterr().out)["singulator"]
    assert choice["position"] == "open"
    assert choice["clear"]


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("vacuum (inH2O)", "vacuum", "the header has no unit"),
        ("vacuum (inH2O)", "vacuum (lb)", "no such unit"),
        ("1,10,500,60,1", "1,10,50,60,1", "line 2: 60 skips"),
        ("1,10,500,60,1", "1,10,500,many,1", "line 2, column 4 (skips)"),
        ("1,10,500,60,1", "1,0,500,60,1", "line 2, column 2 (vacuum)"),
        ("1,10,500,60,1", ",10,500,60,1", "the row is missing"),
        ("doubles", "triples", "no column “doubles”"),
    ],
)
def test_a_mistake_names_line_and_column(capsys, table, old, new, says) -> None:
    table.write_text((HEAD + ROWS).replace(old, new, 1), encoding="utf-8")
    assert main(["tune", str(table)]) == 2
    written = capsys.readouterr()
    assert not written.out
    assert says in written.err


def test_a_missing_file_is_one_line(capsys, tmp_path) -> None:
    assert main(["tune", str(tmp_path / "none.csv")]) == 2
    assert "none.csv cannot be read" in capsys.readouterr().err
