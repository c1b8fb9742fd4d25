"""Depth notches and named positions."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.scales import DepthScale, Index, Position
from changeover.quantities import Q, Refusal

SCALE = DepthScale(Q(0.5, "in"), Q(0.25, "in"), 13, {14: Q(0.12, "in")})


@given(notch=st.integers(1, 13), row=st.integers(1, 24))
def test_a_notch_comes_back_from_its_own_depth(notch: int, row: int) -> None:
    assert SCALE.notch(SCALE.depth(notch, row), row) == notch


def test_a_row_that_plants_deep_gets_a_shallower_notch() -> None:
    scale = DepthScale(Q(0.5, "in"), Q(0.25, "in"), 13, {14: Q(0.2, "in")})
    assert (scale.notch(Q(1.25, "in"), 1), scale.notch(Q(1.25, "in"), 14)) == (4, 3)


@given(low=st.floats(0.5, 3.4), more=st.floats(0, 0.1))
def test_deeper_never_asks_for_a_shallower_notch(low: float, more: float) -> None:
    assert SCALE.notch(Q(low + more, "in"), 1) >= SCALE.notch(Q(low, "in"), 1)


def test_a_depth_beyond_the_last_notch_is_refused_with_the_reach() -> None:
    with pytest.raises(Refusal, match=r"13 notches reach 0\.50 to 3\.50 in"):
        SCALE.notch(Q(4, "in"), 3)


def test_an_index_finds_names_and_the_nearest_share() -> None:
    index = Index((Position("1/4", 0.25), Position("1/2", 0.5), Position("open", 1.0)))
    assert (index.number("OPEN"), index.number("none"), index.name(2)) == (3, None, "1/2")
    assert index.nearest_share(0.55) == 2


def test_an_index_without_shares_has_no_nearest() -> None:
    assert Index.of("float", "1").nearest_share(0.5) is None


@pytest.mark.parametrize("names", [(), ("a", "a"), ("",)])
def test_an_index_needs_positions_with_names_of_their_own(names: tuple[str, ...]) -> None:
    with pytest.raises(Refusal):
        Index.of(*names)


@pytest.mark.parametrize(("first", "step", "count"), [(0.5, 0, 9), (-1, 0.25, 9), (0.5, 0.25, 0)])
def test_an_impossible_depth_scale_is_refused(first: float, step: float, count: int) -> None:
    with pytest.raises(Refusal):
        DepthScale(Q(first, "in"), Q(step, "in"), count)
