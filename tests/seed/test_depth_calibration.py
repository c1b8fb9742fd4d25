"""Depth per row: the notch chosen is the nearest there is, from as much as the digs allow."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.quantities import Q, Refusal
from changeover.seed import depth_calibration as depth

COMMON = depth.common_depth_line(Q(1, "in"))


@given(st.floats(1.0, 3.0))
def test_no_other_notch_is_nearer(target) -> None:
    choice = depth.notch_for_depth(COMMON, Q(target, "in"), 9)
    best = abs(choice.off)
    assert all(abs(COMMON.depth(n) - Q(target, "in")) >= best - Q(1e-9, "mm") for n in range(1, 10))


@given(st.floats(1.0, 3.0))
def test_units_do_not_change_the_notch(target) -> None:
    inches = depth.notch_for_depth(COMMON, Q(target, "in"), 9)
    metric = depth.notch_for_depth(COMMON, Q(target * 25.4, "mm"), 9)
    assert abs(inches.off - metric.off).to("mm").magnitude < 1e-6


def test_deeper_takes_a_higher_notch() -> None:
    notches = [depth.notch_for_depth(COMMON, Q(t, "in"), 9).notch for t in (1.5, 2.0, 2.5)]
    assert notches == [3, 5, 7]


@pytest.mark.parametrize("target", [0.5, 4.0])
def test_a_depth_beyond_the_notches_is_refused_with_the_range(target) -> None:
    with pytest.raises(Refusal, match="the notches run from 1 in to 3 in"):
        depth.notch_for_depth(COMMON, Q(target, "in"), 9)


def test_digs_at_two_notches_have_their_own_line_and_interval() -> None:
    line = depth.depth_line([4, 4, 8, 8], Q([40.0, 42.0, 63.0, 61.0], "mm"), COMMON)
    choice = depth.notch_for_depth(line, Q(2, "in"), 9)
    assert line.measured
    assert choice.notch == 6
    assert choice.low < choice.depth < choice.high


def test_digs_at_one_notch_move_the_line_and_keep_its_step() -> None:
    line = depth.depth_line([5, 5], Q([48.0, 50.0], "mm"), COMMON)
    assert line.depth(5) == Q(49, "mm")
    assert (line.depth(6) - line.depth(5)).to("in").magnitude == pytest.approx(0.25)
    assert line.half_width(5).to("mm").magnitude == pytest.approx(12.706, rel=1e-3)


def test_no_dig_leaves_the_fall_back_without_an_interval() -> None:
    choice = depth.notch_for_depth(depth.depth_line([], Q([], "mm"), COMMON), Q(2, "in"), 9)
    assert not choice.measured
    assert choice.low is None


def test_a_line_that_runs_backwards_is_refused() -> None:
    with pytest.raises(Refusal, match="which dig belongs to"):
        depth.fit_depth_line([2, 6], Q([50.0, 30.0], "mm"))


def test_a_step_of_nothing_is_refused() -> None:
    with pytest.raises(Refusal, match="such as 1/4 in"):
        depth.common_depth_line(Q(1, "in"), Q(0, "in"))


def test_the_mean_of_digs_has_an_interval_from_two_on() -> None:
    mean, half = depth.mean_depth(Q([48.0, 50.0, 52.0], "mm"))
    assert mean == Q(50, "mm")
    assert half.to("mm").magnitude == pytest.approx(4.303 * 2 / 3**0.5, rel=1e-3)
    assert depth.mean_depth(Q([48.0], "mm"))[1] is None
