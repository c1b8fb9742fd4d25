"""Bench runs: typed, pasted and imported lines, what a run settles, and a meter's history."""

import pytest

from changeover.desk.bench_runs import BenchLine, BenchRun, run_of
from changeover.desk.board import Board, read_board
from changeover.desk.door import apply
from changeover.desk.prove.bench import judge_run, save_run
from changeover.desk.prove.bench_entry import imported_lines, pasted_lines, read_line
from changeover.desk.prove.meters import meter_history, which_vacuum
from changeover.desk.prove.proofs import findings, proofs
from changeover.proof.bench import BenchLimits
from changeover.quantities import Q, Refusal

FIDDLE = "Old Fiddle 24"
LIMITS = BenchLimits(skip_most=0.03, double_most=0.03)


@pytest.fixture
def board(demo) -> Board:
    return read_board(demo, FIDDLE, proposal=False)


def run(*skips: int, cells: int = 500, **more) -> BenchRun:
    lines = tuple(BenchLine(n, cells, s, 2, f"M{n}") for n, s in enumerate(skips, start=1))
    return BenchRun(lines, limits=LIMITS, **more)


def test_a_run_comes_back_from_the_store_as_it_was_entered(demo, board) -> None:
    line = read_line(board, ("OF-07", "500", "", "", "12s 68 101d"))
    entered = BenchRun((line,), Q(12.0, "inH2O"), "open", 56, LIMITS, note="cold oil")
    apply(demo, save_run(FIDDLE, entered), "Ada")
    kept = proofs(demo, FIDDLE)[0]
    assert run_of(kept) == entered
    assert (line.row, line.skips, line.doubles, kept.meters) == (19, 2, 1, {19: "OF-07"})


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        (("25", "250", "1", "1"), "neither a row from 1 to 24"),
        (("3", "", "1", "1"), "cells passed"),
        (("3", "250", "x", "1"), "no whole number"),
        (("3", "250", "200", "100"), "more than the 250 cells"),
        (("3", "250", "", "", "12x3"), "no cell with s or d"),
        (("3", "250", "", "", "251s"), "outside the 250 cells"),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(board, typed, says) -> None:
    with pytest.raises(Refusal, match=says):
        read_line(board, typed)


def test_a_pasted_block_is_taken_whole_or_not_at_all(board) -> None:
    assert [one.row for one in pasted_lines(board, "1\t250\t2\t1\n2\t250\t0\t3\n")] == [1, 2]
    with pytest.raises(Refusal, match="line 2"):
        pasted_lines(board, "1\t250\t2\t1\n2\t250\t0\t300\n")


def test_a_csv_is_imported_with_the_meters_on_their_rows(board, tmp_path) -> None:
    path = tmp_path / "run.csv"
    path.write_text("row,cells,skips,doubles\n3,250,4,1\n", encoding="utf-8")
    (line,) = imported_lines(board, path)
    assert (line.row, line.meter, line.skips) == (3, "OF-03", 4)


def test_one_bad_row_of_many_is_found_and_only_a_passing_run_closes_it(demo) -> None:
    apply(demo, save_run(FIDDLE, run(3, 40, 2, 3, 4, 1)), "Ada")
    (found,) = findings(demo, FIDDLE)
    assert (found.finding.row, found.state) == (2, "open")
    short = BenchRun((BenchLine(2, 30, 0, 0),), limits=LIMITS)
    apply(demo, save_run(FIDDLE, short), "Ada")
    assert findings(demo, FIDDLE)[0].state == "open"
    doubtful = BenchRun((BenchLine(2, 500, 12, 0),), limits=LIMITS)
    apply(demo, save_run(FIDDLE, doubtful), "Ada")
    assert findings(demo, FIDDLE)[0].state == "open"
    told = apply(demo, save_run(FIDDLE, BenchRun((BenchLine(2, 500, 3, 0),), limits=LIMITS)), "Ada")
    assert findings(demo, FIDDLE) == ()
    apply(demo, told.inverse, "Ada")
    assert len(findings(demo, FIDDLE)) == 1


def test_a_run_to_tune_raises_and_closes_nothing(demo) -> None:
    apply(demo, save_run(FIDDLE, run(3, 40, 2)), "Ada")
    apply(demo, save_run(FIDDLE, run(50, 1, 60, to_tune=True)), "Ada")
    assert [one.finding.row for one in findings(demo, FIDDLE)] == [2]


def test_a_damaged_cell_is_named_and_closed_with_its_row(demo, board) -> None:
    events = " ".join(f"{17 + 56 * turn}s" for turn in range(8))
    line = read_line(board, ("11", "500", "", "", events))
    apply(demo, save_run(FIDDLE, BenchRun((line,), disc_cells=56, limits=LIMITS)), "Ada")
    known = findings(demo, FIDDLE)
    assert "meter, cell 17" in {one.finding.part for one in known}
    again = BenchRun((BenchLine(11, 500, 2, 1),), limits=LIMITS)
    apply(demo, save_run(FIDDLE, again, known=known), "Ada")
    assert findings(demo, FIDDLE) == ()


def test_several_levels_tell_which_vacuum(demo) -> None:
    for level, skips, doubles in ((8, 60, 1), (12, 6, 5), (18, 1, 45)):
        lines = tuple(BenchLine(n, 1000, skips, doubles, f"M{n}") for n in range(1, 5))
        entered = BenchRun(lines, Q(float(level), "inH2O"))
        apply(demo, save_run(FIDDLE, entered), "Ada")
    assert which_vacuum(proofs(demo, FIDDLE)[:1], None) is None
    tuned = which_vacuum(proofs(demo, FIDDLE), None)
    assert 10 < tuned.together.best.to("inH2O").magnitude < 16


def test_a_meter_has_its_history_over_the_years(demo) -> None:
    from dataclasses import replace

    assert meter_history(demo, "M1") is None
    for year, skips in ((2024, 2), (2025, 9), (2026, 25)):
        edit = save_run(FIDDLE, run(skips))
        proof = replace(edit.proof, taken=f"{year}-04-20T08:00:00+00:00")
        apply(demo, replace(edit, proof=proof), "Ada")
    told = meter_history(demo, "M1")
    assert [one.on.year for one in told.skips.runs] == [2024, 2025, 2026]
    assert told.skips.rising()
    assert not told.doubles.rising()


def test_a_run_without_rows_cannot_be_judged() -> None:
    with pytest.raises(Refusal, match="no rows"):
        judge_run(BenchRun())
