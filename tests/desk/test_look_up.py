"""Looking up from what was read once says the same as looking up from the store."""

from dataclasses import replace

import pytest

from changeover.desk.board import read_board
from changeover.desk.edits import NextJob
from changeover.desk.look_up import propose_for, read_known
from changeover.quantities import Q, Refusal, Units

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
