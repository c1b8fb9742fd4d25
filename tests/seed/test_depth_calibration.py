"""Lines of depth against notch: fitted to digs, moved to them, or the common quarter inch."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.quantities import Q, Refusal
from changeover.seed import depth_calibration as depth

COMMON = depth.common_depth_line(Q(1, "in"))


@given(st.floats(10, 40), st.floats(2, 12), st.sets(st.integers(1, 13), min_size=2, max_size=6))
def test_digs_on_a_line_give_it_back(first, step, notches) -> None:
    depths = [first + step * (notch - 1) for notch in notches]
    line = depth.fit_depth_line(list(notches), Q(depths, "mm"))
    assert line.depth(1).to("mm").magnitude == pytest.approx(first, abs=1e-6)
    assert (line.depth(5) - line.depth(4)).to("mm").magnitude == pytest.approx(step)


def test_digs_at_two_notches_have_their_own_line_and_interval() -> None:
    line = depth.fit_depth_line([4, 4, 8, 8], Q([40.0, 42.0, 63.0, 61.0], "mm"))
    assert line.measured
    assert line.depth(6) == Q(51.5, "mm")
    assert line.half_width(6).magnitude > 0


def test_digs_at_one_notch_move_the_line_and_keep_its_step() -> None:
    line = depth.shifted_depth_line(COMMON, 5, Q([48.0, 50.0], "mm"))
    assert line.depth(5) == Q(49, "mm")
    assert (line.depth(6) - line.depth(5)).to("in").magnitude == pytest.approx(0.25)
    assert line.half_width(5).to("mm").magnitude == pytest.approx(12.706, rel=1e-3)


def test_the_common_line_has_no_interval() -> None:
    assert not COMMON.measured
    assert COMMON.half_width(4) is None


def test_a_line_that_runs_backwards_is_refused() -> None:
    with pytest.raises(Refusal, match="which dig belongs to"):
        depth.fit_depth_line([2, 6], Q([50.0, 30.0], "mm"))


def test_a_step_of_nothing_is_refused() -> None:
    with pytest.raises(Refusal, match="such as 1/4 in"):
        depth.common_depth_line(Q(1, "in"), Q(0, "in"))
