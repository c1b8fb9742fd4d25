"""A row's own depth line: taken over where its digs bear it, else only its offset, and why."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from changeover.planter.scales import DepthScale
from changeover.quantities import Q, Quantity, Refusal, Units
from changeover.seed.row_line import RowCalibration, RowDigs, calibrate_row, row_depth_line

SCALE = DepthScale(Q(0.5, "in"), Q(0.25, "in"), 13)
SHALLOW, DEEP = (1.58, 1.60, 1.62), (2.35, 2.40, 2.45)


def inches(*depths: float) -> Quantity:
    return Q(np.array(depths), "in")


def calibrated(
    *depths: float, notch: int = 4, other: tuple[float, ...] = (), at: int = 8, days: int = 1
) -> RowCalibration:
    others = [(at, inches(*other))] if other else []
    return calibrate_row(SCALE, RowDigs(3, notch, inches(*depths), others, days), Units.US)


def squares(scale: DepthScale, digs: RowDigs) -> float:
    """Return the sum of squares of the digs about what a scale says of their row."""
    off = [
        (depths - scale.depth(notch, digs.row)).to("mm").magnitude
        for notch, depths in digs.by_notch
    ]
    return float((np.concatenate(off) ** 2).sum())


@st.composite
def row_digs(draw: st.DrawFn) -> RowDigs:
    """Draw digs of row 3 at two to four notches, about a line that grows with the notch."""
    notches = draw(st.lists(st.integers(1, 13), min_size=2, max_size=4, unique=True))
    step, noise = draw(st.floats(0.1, 0.4)), st.floats(-0.05, 0.05)
    parts = [
        (n, inches(*(0.5 + step * n + draw(noise) for _ in range(draw(st.integers(2, 4))))))
        for n in notches
    ]
    return RowDigs(3, *parts[0], parts[1:])


@given(row_digs(), st.floats(-0.2, 0.2), st.floats(-0.05, 0.05))
def test_no_other_line_lies_nearer_to_the_digs_than_the_one_taken_over(
    digs: RowDigs, deeper: float, steeper: float
) -> None:
    found = calibrate_row(SCALE, digs, Units.US)
    assume(found.own_line)
    taken = found.taken_by(SCALE)
    step = taken.step_of(3) + Q(steeper, "in")
    assume(step.magnitude > 0.01)
    other = SCALE.with_row(3, found.offset + Q(deeper, "in"), step, None)
    assert squares(taken, digs) <= squares(other, digs) + 1e-6


@given(row_digs())
def test_the_scale_keeps_the_line_and_the_interval_that_were_fitted(digs: RowDigs) -> None:
    found = calibrate_row(SCALE, digs, Units.US)
    again = row_depth_line(found.taken_by(SCALE), 3)
    for notch in (1, 6, 13):
        ours, kept = (line.half_width(notch).to("mm").magnitude for line in (found.line, again))
        assert kept == pytest.approx(ours)
        assert again.depth(notch).magnitude == pytest.approx(found.line.depth(notch).magnitude)


@given(row_digs())
def test_units_change_neither_the_line_nor_what_is_taken_over(digs: RowDigs) -> None:
    metric = RowDigs(
        3, digs.notch, digs.depths.to("mm"), [(n, one.to("mm")) for n, one in digs.others]
    )
    one, other = (calibrate_row(SCALE, each, Units.US) for each in (digs, metric))
    assert (one.own_line, one.why) == (other.own_line, other.why)
    assert one.offset.to("mm").magnitude == pytest.approx(other.offset.to("mm").magnitude)


def test_digs_at_two_notches_give_the_row_its_own_step_with_its_interval() -> None:
    found = calibrated(*SHALLOW, other=DEEP)
    assert found.own_line
    assert found.step.to("in").magnitude == pytest.approx(0.2)
    assert found.offset.to("in").magnitude == pytest.approx(0.5)
    assert found.half_width.to("in").magnitude == pytest.approx(2.776 * 0.0381 / 24**0.5, rel=1e-3)
    assert found.why == (
        "6 digs at notches 4 and 8 give this row its own line by least squares: 0.200 ± 0.022 in "
        "a notch (95 %); the scale says 0.25 in, which lies outside of that."
    )
    assert found.cautions == ()


def test_digs_at_one_notch_give_only_the_offset() -> None:
    found = calibrated(*SHALLOW)
    assert (found.own_line, found.step) == (False, None)
    assert found.offset.to("in").magnitude == pytest.approx(0.35)
    assert found.why == (
        "Only the offset. 3 digs at notch 4 tell how deep the row plants, not its step; the "
        "scale’s 0.25 in a notch stays."
    )


def test_a_step_measured_before_stays_when_only_one_notch_is_dug() -> None:
    had = SCALE.with_row(3, Q(0.5, "in"), Q(0.2, "in"), None)
    found = calibrate_row(had, RowDigs(3, 4, inches(*SHALLOW)), Units.US)
    assert (found.own_line, found.step) == (False, Q(0.2, "in"))
    assert found.taken_by(had).depth(4, 3).to("in").magnitude == pytest.approx(1.6)
    assert "its own 0.2 in a notch stays" in found.why


@pytest.mark.parametrize(
    ("depths", "other", "sentence"),
    [
        ((1.6, 1.6), (1.4, 1.42), "The depth does not grow with the notch"),
        ((1.6, 1.6), (1.6, 1.6), "The depth does not grow with the notch"),
        ((1.6,), (2.4,), "2 digs leave nothing to tell how sure the step is"),
        ((1.6, 1.2), (2.4, 1.1), "could as well be none; dig more, at notches further apart"),
    ],
)
def test_digs_that_bear_no_line_give_only_the_offset_and_say_why(
    depths: tuple[float, ...], other: tuple[float, ...], sentence: str
) -> None:
    found = calibrated(*depths, other=other)
    assert not found.own_line
    assert found.why.startswith("Only the offset. ")
    assert sentence in found.why
    assert found.offset == calibrated(*depths).offset


def test_a_step_beyond_what_is_possible_is_not_taken_over() -> None:
    found = calibrated(0.5, 0.51, notch=1, other=(5.0, 5.01), at=2)
    assert "4.500 ± 0.030 in a notch is not possible" in found.why


def test_a_step_far_from_the_scales_is_taken_with_cautions() -> None:
    cautions = " ".join(calibrated(1.6, 1.7, other=(3.4, 3.42), at=7).cautions)
    assert "0.587 in a notch is far from the scale’s 0.25 in" in cautions
    assert "by its line notch 1 would lie above the ground" in cautions


def test_neighbouring_notches_do_not_tell_of_the_far_end() -> None:
    found = calibrated(1.55, 1.6, 1.62, other=(1.85, 1.82, 1.88), at=5)
    assert any("at notch 13 the depth is known only to ± 0.64 in" in one for one in found.cautions)


def test_digs_of_several_days_bring_a_caution() -> None:
    (caution,) = calibrated(*SHALLOW, other=DEEP, days=2).cautions
    assert caution.startswith("Row 3 was dug on 2 days")


def test_the_notch_to_go_to_is_that_of_the_rows_own_line() -> None:
    found = calibrated(*SHALLOW, other=DEEP)
    assert found.notch_to(SCALE, Q(2.0, "in"), 4) == 6
    assert found.notch_to(SCALE, Q(1.62, "in"), 4) == 4
    assert found.notch_to(SCALE, Q(9.0, "in"), 4) is None


def test_no_notch_is_named_when_the_row_is_known_less_well_than_the_way_to_go() -> None:
    found = calibrated(1.0, 2.2, other=(2.0, 3.2), at=9)
    assert found.notch_to(SCALE, Q(2.0, "in"), 4) is None


def test_a_row_without_digs_has_a_line_without_interval() -> None:
    line = row_depth_line(SCALE.with_row(3, Q(0.5, "in"), Q(0.2, "in"), None), 3)
    assert (line.measured, line.half_width(4)) == (True, None)
    assert row_depth_line(SCALE, 4).measured is False
    assert line.depth(4).to("in").magnitude == pytest.approx(1.6)


def test_depths_out_of_bounds_are_refused() -> None:
    with pytest.raises(Refusal, match="is not possible"):
        calibrated(1.6, 19.0)
