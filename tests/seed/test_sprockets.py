"""Ground drives: the table holds every pair, and the nearest really is the nearest."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.drive import GroundDrive
from changeover.quantities import Q, Refusal
from changeover.seed import sprockets

WHEEL = GroundDrive((17, 19, 23), (16, 20, 24, 28), Q(84, "in"), 1.55, slip=0.04)
ROWS = Q(30, "in")


@given(st.floats(15_000, 60_000))
def test_nearest_pairs_come_first_and_none_is_missing(seeds) -> None:
    pairs = sprockets.nearest_pairs(WHEEL, Q(seeds, "seed/acre"), 30, ROWS)
    distances = [abs(pair.off) for pair in pairs]
    assert len({pair.name for pair in pairs}) == len(pairs) == 12
    assert distances == pytest.approx(sorted(distances))


def test_each_pair_tells_how_far_it_is_off() -> None:
    pair = sprockets.nearest_pairs(WHEEL, Q(30_000, "seed/acre"), 30, ROWS)[0]
    assert pair.rate.to("seed/acre").magnitude == pytest.approx(30_000 * (1 + pair.off))


def test_the_table_has_drivers_down_and_drivens_across() -> None:
    table = sprockets.rate_table(WHEEL, 30, ROWS)
    alone = sprockets.pair_rate(WHEEL, 19, 28, 30, ROWS)
    assert table.shape == (3, 4)
    assert table[1, 3].to("seed/m^2").magnitude == pytest.approx(alone.magnitude)


@given(st.floats(10_000, 80_000))
def test_the_exact_ratio_would_meet_the_rate(seeds) -> None:
    ratio = sprockets.ratio_for_rate(WHEEL, Q(seeds, "seed/acre"), 30, ROWS)
    even = sprockets.pair_rate(WHEEL, 20, 20, 30, ROWS).to("seed/acre").magnitude
    assert even * ratio == pytest.approx(seeds)


@given(st.floats(0.0, 0.4))
def test_slip_lowers_the_rate_in_proportion(slip) -> None:
    slipping = GroundDrive(WHEEL.driver, WHEEL.driven, WHEEL.rolling_circumference, 1.55, slip)
    firm = GroundDrive(WHEEL.driver, WHEEL.driven, WHEEL.rolling_circumference, 1.55)
    ratio = sprockets.pair_rate(slipping, 17, 16, 30, ROWS) / sprockets.pair_rate(
        firm, 17, 16, 30, ROWS
    )
    assert ratio.to("count").magnitude == pytest.approx(1 - slip)


@given(st.floats(-0.1, 0.4), st.floats(10, 200))
def test_slip_comes_back_from_a_calibration_run(slip, turns) -> None:
    distance = Q(turns * 2.1 / (1 - slip), "m")
    assert sprockets.slip_from_run(distance, turns, Q(2.1, "m")) == pytest.approx(slip, abs=1e-9)


def test_a_circumference_measured_under_load_leaves_no_slip() -> None:
    loaded = sprockets.rolling_circumference(Q(300, "ft"), 41)
    assert sprockets.slip_from_run(Q(300, "ft"), 41, loaded) == pytest.approx(0.0)


def test_a_run_that_cannot_be_is_refused() -> None:
    with pytest.raises(Refusal, match="check the distance, the turns"):
        sprockets.slip_from_run(Q(100, "m"), 10, Q(2.1, "m"))
