"""Row layouts: split rows, twin rows and the mean rate over a pass."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.quantities import Q, Refusal
from changeover.seed import rate, row_layout


@given(st.floats(10_000, 300_000), st.floats(15, 60))
def test_twin_rows_double_the_spacing_in_each(seeds, width) -> None:
    job = Q(seeds, "seed/acre"), Q(width, "in")
    ratio = row_layout.twin_row_spacing(*job) / rate.spacing_in_row(*job)
    assert ratio.to("count").magnitude == pytest.approx(2)


def test_locked_rows_leave_the_main_rows() -> None:
    locked = range(2, 32, 2)
    assert row_layout.planting_rows(31, locked) == tuple(range(1, 32, 2))


@given(st.integers(1, 30), st.floats(10_000, 200_000))
def test_split_rows_in_use_sow_a_little_under_the_rate_in_the_row(main, seeds) -> None:
    width = row_layout.pass_width(main, Q(30, "in"))
    per_length = rate.seeds_per_length(Q(seeds, "seed/acre"), Q(15, "in"))
    rows = row_layout.rows_with_splits(main)
    mean = row_layout.mean_rate(per_length, rows, width).to("seed/acre").magnitude
    assert mean == pytest.approx(seeds * rows / (rows + 1))


def test_main_rows_alone_sow_the_rate_in_the_row() -> None:
    per_length = rate.seeds_per_length(Q(32_000, "seed/acre"), Q(30, "in"))
    mean = row_layout.mean_rate(per_length, 16, row_layout.pass_width(16, Q(30, "in")))
    assert mean.to("seed/acre").magnitude == pytest.approx(32_000)


@pytest.mark.parametrize(
    ("locked", "says"), [([40], "row 40 does not exist"), (range(1, 13), "unlock at least one")]
)
def test_impossible_locks_are_refused(locked, says) -> None:
    with pytest.raises(Refusal, match=says):
        row_layout.planting_rows(12, locked)


def test_no_main_row_is_refused() -> None:
    with pytest.raises(Refusal, match="at least one main row"):
        row_layout.rows_with_splits(0)
