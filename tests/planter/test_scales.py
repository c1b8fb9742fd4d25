"""Depth notches and named positions."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.scales import DepthScale, DugLine, Index, Position
from changeover.quantities import Q, Refusal

SCALE = DepthScale(Q(0.5, "in"), Q(0.25, "in"), 13, {14: Q(0.12, "in")})


@st.composite
def scales(draw: st.DrawFn) -> DepthScale:
    """Draw a scale on which row 1 has a line of its own, row 2 an offset and row 3 nothing."""
    inches = st.floats(-0.4, 0.4).map(lambda by: Q(by, "in"))
    own = draw(st.floats(0.5, 20.0).map(lambda mm: Q(mm, "mm")))
    plain = DepthScale(Q(0.5, "in"), Q(draw(st.floats(0.05, 0.5)), "in"), 13)
    return plain.with_row(1, draw(inches), own, None).with_row(2, draw(inches), None, None)


@given(scales(), st.integers(1, 13), st.integers(1, 3))
def test_a_notch_comes_back_from_its_own_depth(scale: DepthScale, notch: int, row: int) -> None:
    assert scale.notch(scale.depth(notch, row), row) == notch
    assert scale.place(scale.depth(notch, row), row) == pytest.approx(notch)


@given(scales(), st.floats(1.0, 13.0), st.integers(1, 3))
def test_a_depth_lies_within_half_a_step_of_its_notch(
    scale: DepthScale, place: float, row: int
) -> None:
    depth = scale.depth(1, row) + (place - 1) * scale.step_of(row)
    off = scale.depth(scale.notch(depth, row), row) - depth
    assert abs(off) <= scale.step_of(row) * (0.5 + 1e-6)


@given(scales(), st.integers(1, 12), st.integers(1, 3))
def test_each_further_notch_plants_a_step_of_the_row_deeper(
    scale: DepthScale, notch: int, row: int
) -> None:
    deeper = scale.depth(notch + 1, row) - scale.depth(notch, row)
    assert deeper.to("mm").magnitude == pytest.approx(scale.step_of(row).to("mm").magnitude)
    assert deeper.magnitude > 0


def test_a_row_measured_anew_leaves_the_others_and_what_it_had() -> None:
    scale = SCALE.with_row(3, Q(0.1, "in"), Q(6, "mm"), DugLine(8, 5.0, 32.0, Q(1, "mm")))
    assert (scale.offsets[14], scale.step_of(14), scale.step_of(3)) == (
        Q(0.12, "in"),
        Q(0.25, "in"),
        Q(6, "mm"),
    )
    again = scale.with_row(3, Q(0.2, "in"), None, None)
    assert (again.offsets[3], dict(again.steps), dict(again.digs)) == (Q(0.2, "in"), {}, {})
    assert scale.nominal == DepthScale(SCALE.first, SCALE.step, SCALE.count)


def test_the_history_tells_each_rows_own_line() -> None:
    scale = SCALE.with_row(3, Q(0.1, "in"), Q(6, "mm"), DugLine(8, 5.0, 32.0))
    assert scale.in_brief == (
        "13 notches, 0.5 in at the first, 0.25 in a notch; row 3 0.1 in deeper, 6 mm a notch, "
        "by 8 digs; row 14 0.12 in deeper"
    )


@pytest.mark.parametrize(
    ("offset", "step", "sentence"),
    [
        (0.1, 0.0, "Row 5: a depth step of 0 in is not possible"),
        (0.1, -0.2, "more than 0 and at most 2 in .51 mm. a notch"),
        (0.1, 3.0, "3 in is not possible"),
        (-3.0, 0.1, "would not reach the soil at notch 13"),
    ],
)
def test_an_impossible_step_of_a_row_is_refused(offset: float, step: float, sentence: str) -> None:
    with pytest.raises(Refusal, match=sentence):
        SCALE.with_row(5, Q(offset, "in"), Q(step, "in"), None)


def test_a_step_without_its_depth_at_the_first_notch_is_refused() -> None:
    with pytest.raises(Refusal, match="Row 5 has a depth step of its own, but not how much"):
        DepthScale(Q(0.5, "in"), Q(0.25, "in"), 13, steps={5: Q(0.2, "in")})


@pytest.mark.parametrize(
    "digs",
    [{"digs": 0, "middle": 4.0}, {"digs": 2, "middle": float("nan")},
     {"digs": 2, "middle": 4.0, "squares": -1.0},
     {"digs": 3, "middle": 4.0, "spread": Q(-1, "mm")}],
)  # fmt: skip
def test_impossible_digs_behind_a_line_are_refused(digs: dict[str, float]) -> None:
    with pytest.raises(Refusal, match="again"):
        DugLine(**digs)


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
