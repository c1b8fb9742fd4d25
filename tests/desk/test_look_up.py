"""Looking up from what was read once says the same as looking up from the store."""

from dataclasses import replace

import pytest

from changeover.desk.bench_runs import BenchLine, BenchRun
from changeover.desk.board import read_board
from changeover.desk.door import apply
from changeover.desk.edits import ChooseNext, NextJob, PutLot
from changeover.desk.look_up import propose_for, read_known
from changeover.desk.prove.bench import save_run
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell
from changeover.quantities import Q, Refusal, Units
from changeover.seed.lots import SeedLot

BAR = "Old Fiddle 24"


@pytest.mark.parametrize("units", Units)
def test_what_was_read_once_proposes_what_the_store_proposes(demo, units) -> None:
    job = replace(read_board(demo, BAR, proposal=False).next_job, speed=Q(6.5, "mph"))
    assert read_known(demo, BAR).propose(job, units) == propose_for(demo, BAR, job, units)


def test_an_unsaved_speed_moves_the_disc_speed(demo) -> None:
    known = read_known(demo, BAR)
    slow, fast = (
        next(
            figure.quantity
            for figure in known.propose(NextJob("M-41", speed=Q(speed, "mph"))).figures
            if figure.key == "disc_speed"
        )
        for speed in (4.0, 8.0)
    )
    assert fast.to("rpm").magnitude == pytest.approx(2 * slow.to("rpm").magnitude)


@pytest.mark.parametrize("job", [NextJob("NONE-1"), NextJob("M-41", "No Such Field")])
def test_an_unknown_lot_or_field_is_refused(demo, job) -> None:
    with pytest.raises(Refusal, match="There is no"):
        read_known(demo, BAR).propose(job)


def test_a_saved_bench_run_of_the_lot_moves_its_row(demo) -> None:
    board = read_board(demo, BAR, proposal=False)
    index, lot = board.planter.singulator, board.next_job.lot
    cell = Cell("singulator", Place.of_row(7))
    before = propose_for(demo, BAR, board.next_job).cells[cell].value
    run = BenchRun((BenchLine(7, 1000, 2, 60),), Q(18.0, "inH2O"), index.name(before))
    apply(demo, save_run(BAR, run, lot), "Ada")
    after = propose_for(demo, BAR, board.next_job).cells[cell]
    assert after.value == before - 1
    assert after.reason.source.startswith("bench run of 20")
    assert read_known(demo, BAR).propose(board.next_job).cells[cell] == after


def test_tanks_that_take_another_lot_have_their_own_seed_and_need(demo) -> None:
    board = read_board(demo, BAR, proposal=False)
    tank = board.planter.places(Scope.TANK)[-1]
    other = next(lot for lot in read_known(demo, BAR).lots if lot.number != board.next_job.lot)
    shared = replace(board.next_job, other_lots=((tank, other.number),))
    found = propose_for(demo, BAR, shared)
    assert found.cells[Cell("seed", tank)].value == other.number
    assert f"seeds_needed:{other.number}" in {one.key for one in found.figures}
    assert read_known(demo, BAR).propose(shared) == found


def test_a_tank_that_is_not_there_or_a_lot_not_known_is_refused(demo) -> None:
    known = read_known(demo, BAR)
    job = read_board(demo, BAR, proposal=False).next_job
    nowhere = replace(job, other_lots=((Place(Scope.TANK, "tank 99"), job.lot),))
    with pytest.raises(Refusal, match="tank 99"):
        known.propose(nowhere)
    unknown = replace(job, other_lots=((known.planter.places(Scope.TANK)[0], "NONE-1"),))
    with pytest.raises(Refusal, match="no lot"):
        known.propose(unknown)


def test_a_lot_that_shares_the_next_job_cannot_be_taken_out(demo) -> None:
    board = read_board(demo, BAR, proposal=False)
    tank = board.planter.places(Scope.TANK)[-1]
    extra = SeedLot("ZZ-9", "soybean")
    apply(demo, PutLot(extra), "Ada")
    shared = replace(board.next_job, other_lots=((tank, "ZZ-9"),))
    apply(demo, ChooseNext(BAR, shared, before=board.next_job), "Ada")
    with pytest.raises(Refusal, match="ZZ-9 is chosen next"):
        apply(demo, PutLot(None, before=extra), "Ada")


def test_a_rung_that_is_used_never_says_that_it_is_not(demo) -> None:
    proposal = read_board(demo, BAR).proposal
    assert proposal is not None
    used = [e for one in proposal.cells.values() for e in one.reason.evidence if e.used]
    assert used
    assert not [evidence.says for evidence in used if "not used" in evidence.says]
