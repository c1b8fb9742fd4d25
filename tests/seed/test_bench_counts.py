"""Bench counts: readings become tables without losing a cell, and impossible ones are refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.quantities import Q, Refusal
from changeover.seed.bench_counts import Reading, counts_by_meter, pooled


@st.composite
def readings(draw: st.DrawFn) -> Reading:
    cells = draw(st.integers(1, 1_000))
    skips = draw(st.integers(0, cells))
    return Reading(
        draw(st.sampled_from("ABC")),
        Q(draw(st.sampled_from([12, 14, 16])), "inH2O"),
        cells,
        skips,
        draw(st.integers(0, cells - skips)),
    )


@given(st.lists(readings(), min_size=1, max_size=30))
def test_every_cell_is_counted_once(runs) -> None:
    counts = counts_by_meter(runs)
    for table in (counts, pooled(counts)):
        assert table.cells.sum() == sum(run.cells for run in runs)
        assert table.skips.sum() == sum(run.skips for run in runs)
        assert table.doubles.sum() == sum(run.doubles for run in runs)


def test_levels_in_different_units_meet() -> None:
    runs = [Reading("A", Q(4, "kPa"), 100, 1, 1), Reading("B", Q(0.04, "bar"), 100, 2, 2)]
    assert counts_by_meter(runs).levels.shape == (2, 1)


def test_singulator_positions_are_kept_apart() -> None:
    runs = [Reading("A", Q(4, "kPa"), 100, 1, 1, position=name) for name in ("1/2", "3/4")]
    assert counts_by_meter(runs).names == ("A, 1/2", "A, 3/4")


@pytest.mark.parametrize(
    ("counts", "says"),
    [
        ((100, 60, 50), "line 4: 60 skips and 50 doubles are more than the 100 cells"),
        ((0, 0, 0), "at least one cell"),
        ((100, -1, 0), "below zero"),
    ],
)
def test_counts_that_cannot_be_are_refused(counts, says) -> None:
    with pytest.raises(Refusal, match=says):
        Reading("A", Q(4, "kPa"), *counts, where="line 4")


def test_a_vacuum_that_cannot_be_is_refused() -> None:
    with pytest.raises(Refusal, match="Pressure: 400 kPa"):
        Reading("A", Q(400, "kPa"), 100, 1, 1)


def test_no_run_is_refused() -> None:
    with pytest.raises(Refusal, match="there is no run"):
        counts_by_meter([])
