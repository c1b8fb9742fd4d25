"""Bench runs from a file: every line becomes a reading with its place."""

from changeover.files.tuning_readings import read_tuning_runs
from changeover.quantities import Q


def test_lines_become_readings(tmp_path) -> None:
    path = tmp_path / "runs.csv"
    path.write_text("meter;vacuum (kPa);cells;skips;doubles\nA7;4.5;250;3;1\n", encoding="utf-8")
    (run,) = read_tuning_runs(path)
    assert (run.meter, run.vacuum, run.where) == ("A7", Q(4.5, "kPa"), "line 2")
    assert (run.cells, run.skips, run.doubles, run.position) == (250, 3, 1, "")


def test_a_singulator_column_is_kept(tmp_path) -> None:
    path = tmp_path / "runs.csv"
    text = "row,vacuum (inH2O),cells,skips,doubles,singulator\n1,14,250,3,1,3/4\n"
    path.write_text(text, encoding="utf-8")
    assert read_tuning_runs(path)[0].position == "3/4"
