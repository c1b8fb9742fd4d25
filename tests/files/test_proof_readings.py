"""Spacings, bench runs and depth digs from files."""

from collections.abc import Callable
from pathlib import Path

import pytest

from changeover.files.proof_readings import (
    only_rows,
    read_bench,
    read_depths,
    read_spacings,
    rows_in,
)
from changeover.proof.bench import BenchCount
from changeover.proof.bench_events import CellEvent, EventKind
from changeover.quantities import Refusal


@pytest.fixture
def file(tmp_path) -> Callable[..., Path]:
    def write(*lines: str) -> Path:
        path = tmp_path / "readings.csv"
        path.write_text("\n".join(lines) + "\n", encoding="utf-8")
        return path

    return write


def test_spacings_by_row(file) -> None:
    rows = read_spacings(file("row,spacing (cm)", "1,16", "2,17.5", "1,15"))
    assert rows[1].to("cm").magnitude.tolist() == [16, 15]
    assert rows[2].to("cm").magnitude.tolist() == [17.5]


def test_positions_become_spacings_within_each_row(file) -> None:
    rows = read_spacings(file("row,position (in)", "1,0", "2,3", "1,6.5", "2,9", "1,13"))
    assert rows[1].magnitude.tolist() == [6.5, 6.5]
    assert rows[2].magnitude.tolist() == [6]


@pytest.mark.parametrize(
    ("lines", "message"),
    [
        (["row,position (in)", "1,0", "1,7", "1,6"], r"line 4, column 2 \(position\).*backwards"),
        (["row,position (in)", "1,0", "2,0", "2,5"], "line 2, column 2.*one position"),
        (["row,spacing (in)", "1,6", "1,-6"], "line 3, column 2.*-6 is not possible"),
        (["row,spacing (in)", ",6"], r"line 2, column 1 \(row\): the row number is missing"),
        (["row,spacing (in)", "0,6"], "line 2, column 1.*row number 0"),
        (["row,spacing (in)", "65,6"], "line 2, column 1.*row 65"),
        (["row,spacing", "1,6"], "line 1, column 2.*no unit"),
        (["row,spacing (in)", "1,16 cm"], "line 2, column 2.*“16 cm”"),
        (["row,spacing (in),position (in)", "1,6,6"], "keep one of them"),
        (["spacing (in)", "6"], "no column “row”"),
    ],
)
def test_spacings_that_cannot_be_used(file, lines, message) -> None:
    with pytest.raises(Refusal, match=message):
        read_spacings(file(*lines))


def test_depths_by_row(file) -> None:
    rows = read_depths(file("row,depth (mm)", "1,50", "1,45"))
    assert rows[1].keys() == {None}
    assert rows[1][None].to("mm").magnitude.tolist() == [50, 45]


def test_depths_by_notch_the_one_of_the_last_line_last(file) -> None:
    rows = read_depths(file("row,notch,depth (mm)", "1,4,50", "1,8,70", "1,4,52", "2,,48"))
    dug = {notch: depths.magnitude.tolist() for notch, depths in rows[1].items()}
    assert list(dug.items()) == [(8, [70]), (4, [50, 52])]
    assert rows[2].keys() == {None}


@pytest.mark.parametrize("notch", ["0", "61", "4.5", "deep"])
def test_impossible_notches_are_refused(file, notch) -> None:
    with pytest.raises(Refusal, match=r"line 2, column 2 \(notch\)"):
        read_depths(file("row,notch,depth (mm)", f"1,{notch},50"))


@pytest.mark.parametrize("depth", ["-1", "400"])
def test_impossible_depths_are_refused(file, depth) -> None:
    with pytest.raises(Refusal, match=r"line 2, column 2 \(depth\)"):
        read_depths(file("row,depth (mm)", f"1,{depth}"))


def test_bench_counts_with_meters(file) -> None:
    run = read_bench(file("row,meter,cells,skips,doubles", "1,A7,500,3,1", "2,,500,0,0"))
    assert run.counts == (BenchCount(1, 500, 3, 1, "A7"), BenchCount(2, 500, 0, 0))


def test_a_list_of_events(file) -> None:
    run = read_bench(file("row,cell,event", "1,9,skip", "1,40,Doubles", "2,,"), passed=300)
    assert run.counts == (BenchCount(1, 300, 1, 1), BenchCount(2, 300, 0, 0))
    assert run.events[1] == (CellEvent(9, EventKind.SKIP), CellEvent(40, EventKind.DOUBLE))


def test_times_between_seeds(file) -> None:
    times = ["1,100"] * 10 + ["1,200"] + ["1,100"] * 5 + ["1,4"] + ["1,96"]
    run = read_bench(file("row,time (ms)", *times))
    assert run.counts == (BenchCount(1, 19, 1, 1),)
    assert run.events[1] == (CellEvent(12, EventKind.SKIP), CellEvent(18, EventKind.DOUBLE))


@pytest.mark.parametrize(
    ("lines", "message"),
    [
        (["row,cells,skips,doubles", "1,500,300,201"], r"line 2, column 3 \(skips\).*more than"),
        (["row,cells,skips,doubles", "1,500,3"], r"line 2, column 4 \(doubles\).*missing"),
        (["row,cells,skips,doubles", "1,0,0,0"], "line 2, column 2.*cells passed 0"),
        (["row,cells,skips", "1,500,3"], "no column “doubles”"),
        (["row,cell,event", "1,301,skip"], r"line 2, column 2 \(cell\).*beyond the 300"),
        (["row,cell,event", "1,3,miss"], r"line 2, column 3 \(event\).*skip or double"),
        (["row,cell,event", "1,3,skip", "1,3,double"], "line 3, column 2.*two events"),
    ],
)
def test_bench_runs_that_cannot_be_used(file, lines, message) -> None:
    with pytest.raises(Refusal, match=message):
        read_bench(file(*lines), passed=300)


def test_events_need_the_number_of_cells_passed(file) -> None:
    with pytest.raises(Refusal, match="--passed"):
        read_bench(file("row,cell,event", "1,3,skip"))


@pytest.mark.parametrize(
    ("text", "rows"), [("1-4", (1, 2, 3, 4)), ("1,3,5-6", (1, 3, 5, 6)), (" 2 , 2", (2,))]
)
def test_rows_as_people_write_them(text, rows) -> None:
    assert rows_in(text) == rows


@pytest.mark.parametrize("text", ["", "1-", "a", "1;2", "1-99999999999", "5-2", "0"])
def test_rows_that_cannot_be_read(text) -> None:
    with pytest.raises(Refusal, match="Rows “"):
        rows_in(text)


def test_missing_and_stray_rows_are_named(file) -> None:
    found = {1: None, 2: None, 4: None}
    only_rows(found, "1,2,4", file("row"))
    for wanted, message in (("1-4", "no readings of row 3"), ("1-2", "row 4 is not among")):
        with pytest.raises(Refusal, match=message):
            only_rows(found, wanted, file("row"))
