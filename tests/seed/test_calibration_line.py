"""Least squares: exact on exact points, honest about too few."""

from math import inf, isfinite

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.quantities import Refusal
from changeover.seed.calibration_line import fit_line

points = st.lists(st.integers(0, 12), min_size=2, max_size=10, unique=True)


@given(points, st.floats(-50, 50), st.floats(0.1, 20))
def test_points_on_a_line_give_it_back(x, level, slope) -> None:
    line = fit_line(x, [level + slope * one for one in x], "Line")
    assert line.at(0) == pytest.approx(level, abs=1e-7)
    assert line.solve(line.at(3.7)) == pytest.approx(3.7)
    assert line.spread == pytest.approx(0, abs=1e-6)


def test_two_readings_leave_the_interval_open() -> None:
    assert fit_line([1, 2], [10.0, 20.0], "Line").half_width(1) == inf


def test_three_readings_close_it_and_it_widens_away_from_them() -> None:
    line = fit_line([1, 2, 3], [10.0, 21.0, 29.0], "Line")
    assert isfinite(line.half_width(2))
    assert line.half_width(6) > line.half_width(2)


@pytest.mark.parametrize(
    ("x", "y", "says"),
    [
        ([1, 1], [10.0, 11.0], "two different settings"),
        ([1, 2], [10.0], "the counts differ"),
        ([1, 2], [10.0, float("nan")], "not a number"),
    ],
)
def test_readings_that_make_no_line_are_refused(x, y, says) -> None:
    with pytest.raises(Refusal, match=says):
        fit_line(x, y, "Line")


def test_a_level_line_cannot_be_solved() -> None:
    with pytest.raises(Refusal, match="do not change"):
        fit_line([1, 2], [5.0, 5.0], "Line").solve(6)


@given(st.floats(-20, 80), st.booleans())
def test_the_interval_of_a_reading_turned_about_holds_the_line_and_ends_where_it_says(
    y, mean
) -> None:
    line = fit_line([1, 2, 3, 4, 6], [10.0, 21.0, 29.0, 42.0, 59.0], "Line")
    low, high = line.reached_at(y, mean=mean)
    assert low <= line.solve(y) <= high
    width = line.half_width if mean else line.reading_half_width
    assert line.at(low) + width(low) == pytest.approx(y, abs=1e-6)
    assert line.at(high) - width(high) == pytest.approx(y, abs=1e-6)


@pytest.mark.parametrize(
    ("x", "y"), [([1, 2], [10.0, 20.0]), ([1, 2, 3, 4], [10.0, 30.0, 12.0, 28.0])]
)
def test_too_few_or_too_scattered_readings_bound_no_setting(x, y) -> None:
    line = fit_line(x, y, "Line")
    assert line.reached_at(15.0) is None
    assert line.reading_half_width(2) > line.spread


def test_one_reading_is_known_less_well_than_the_line() -> None:
    line = fit_line([1, 2, 3], [10.0, 21.0, 29.0], "Line")
    assert line.reading_half_width(2) ** 2 - line.half_width(2) ** 2 == pytest.approx(
        (12.706 * line.spread) ** 2, rel=1e-3
    )
