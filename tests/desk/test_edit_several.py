"""Several edits in one transaction: all or none, one entry, one inverse."""

import pytest

from changeover.desk.board import read_board
from changeover.desk.edits import (
    ChooseNext,
    NextJob,
    PutField,
    PutLot,
    Several,
    TakeProposal,
)
from changeover.desk.records import history
from changeover.quantities import Q, Refusal
from changeover.seed.fields import Field
from changeover.seed.lots import SeedLot

BAR = "Penny Twelve"
TAKE_OVER = Several(
    (ChooseNext(BAR, NextJob("B-22", "Crow Strip")), TakeProposal(BAR)), "Take the seed over"
)


def test_choosing_and_taking_over_is_one_entry_of_history(demo, do) -> None:
    done = do(TAKE_OVER)
    board = read_board(demo, BAR)
    assert board.next_job.lot == "B-22"
    assert board.target.values == board.proposal.values()
    assert {line.entry for line in history(demo, BAR, 5)} == {done.entry}


def test_it_is_undone_and_done_again_as_one(demo, do) -> None:
    before = read_board(demo, BAR)
    undone = do(do(TAKE_OVER).inverse)
    after = read_board(demo, BAR)
    assert (after.target, after.next_job, after.lot) == (before.target, None, None)
    do(undone.inverse)
    assert read_board(demo, BAR).next_job.field == "Crow Strip"


def test_where_one_is_refused_none_is_done(demo, do) -> None:
    field, lot = Field("New Piece", Q(3.0, "acre")), SeedLot("B-22", "corn")
    with pytest.raises(Refusal):
        do(Several((PutField(field), PutLot(lot))))
    with demo.read() as work:
        assert work.fields.find(("New Piece",)) is None
