"""Cells for the cab and the nearest sprockets, with the rate that they give."""

import pytest

from changeover.planter.parts import Part
from changeover.planter.places import Place, Scope
from changeover.quantities import Q
from changeover.seed.drive_settings import answer_cells, answer_sprockets, drive_warnings
from changeover.seed.sprockets import nearest_pairs
from tests.seed.made_up import CORN_DISC, case, ground_drive, motor, planter

DRIVE = Place(Scope.DRIVE, "drive 1")
RATE = Q(32_000, "seed/acre")
GROUND = planter(drives={"drive 1": ground_drive()})
MOTOR = planter(drives={"drive 1": motor()})


def test_the_cab_is_told_the_cells_of_the_disc() -> None:
    assert answer_cells(CORN_DISC).value == 30
    assert answer_cells(None).value is None
    uncounted = answer_cells(Part("X", "x", "disc"))
    assert uncounted.value is None
    assert "how many cells disc X has" in uncounted.reason.why


def test_the_nearest_pair_is_named_with_its_rate() -> None:
    answer, pair = answer_sprockets(case("corn", planter=GROUND), DRIVE, RATE, 30)
    wanted = nearest_pairs(ground_drive(), RATE, 30, GROUND.row_spacing)[0]
    assert pair == wanted
    assert answer.value == wanted.name
    assert f"{wanted.name} gives" in answer.reason.why
    assert answer.reason.how.count(";") == 4


def test_a_pair_far_off_is_said() -> None:
    answer, pair = answer_sprockets(case("corn", planter=GROUND), DRIVE, RATE * 3, 30)
    assert pair is not None
    assert pair.off < -0.05
    assert "no pair of this planter comes closer" in answer.warnings[0]


def test_a_motor_has_no_sprockets() -> None:
    answer, pair = answer_sprockets(case("corn", planter=MOTOR), DRIVE, RATE, 30)
    assert (answer.value, pair) == (None, None)
    assert answer.reason.why == "Drive 1 has no sprockets to change."


def test_without_rate_or_cells_there_is_no_pair() -> None:
    for rate, cells in ((None, 30), (RATE, None)):
        answer, _ = answer_sprockets(case("corn", planter=GROUND), DRIVE, rate, cells)
        assert answer.value is None


@pytest.mark.parametrize(("rate", "warned"), [(32_000, False), (90_000, True), (2_000, True)])
def test_a_motor_out_of_its_range_is_said(rate: float, warned: bool) -> None:
    found = drive_warnings(case("corn", planter=MOTOR), DRIVE, Q(rate, "seed/acre"), 30)
    assert bool(found) is warned
    assert all(one.startswith("Drive 1: The hydraulic motor") for one in found)


def test_a_ground_drive_has_no_motor_to_warn_of() -> None:
    assert drive_warnings(case("corn", planter=GROUND), DRIVE, RATE, 30) == ()
    assert drive_warnings(case("corn", planter=MOTOR), DRIVE, None, 30) == ()
