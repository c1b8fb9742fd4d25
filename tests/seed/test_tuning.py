"""Tuning: the best level lies where the fitted errors are least, within the levels run."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from changeover.quantities import Q, Refusal
from changeover.seed.bench_counts import BenchCounts, pooled
from changeover.seed.logistic_fit import logistic
from changeover.seed.tuning import Curves, Estimates, estimate, held

LEVELS = np.array([[2.5, 3.5, 5.0, 7.0]])


def counts(skips, doubles, cells=500.0, levels=LEVELS) -> BenchCounts:
    rows = np.atleast_2d(skips)
    size = rows.shape
    names = tuple(f"row {n + 1}" for n in range(size[0]))
    spread = np.broadcast_to(levels, size)
    return BenchCounts(
        names,
        spread,
        np.full(size, cells),
        rows.astype(float),
        np.atleast_2d(doubles).astype(float),
    )


def error_at(found: Estimates, x: np.ndarray) -> np.ndarray:
    fitted = Curves(held(found.skips, falls=True), held(found.doubles, falls=False))
    return fitted.total(x[:, None])[:, 0]


GOOD = counts([[60, 25, 9, 2]], [[1, 4, 12, 45]])


@given(
    arrays(np.int64, (2, 4), elements=st.integers(0, 200)),
    arrays(np.int64, (2, 4), elements=st.integers(0, 200)),
)
def test_the_best_level_has_the_least_error_of_the_range(skips, doubles) -> None:
    found = estimate(counts(skips, doubles))
    assert np.all(found.best >= 2.5 * (1 - 1e-9))
    assert np.all(found.best <= 7.0 * (1 + 1e-9))
    assert np.all(found.best_low <= found.best * (1 + 1e-9))
    assert np.all(found.best <= found.best_high * (1 + 1e-9))
    for level in LEVELS[0]:
        there = error_at(found, np.log(np.full(2, level)))
        assert np.all(found.error <= there + 2e-4)


@given(arrays(np.int64, (1, 4), elements=st.integers(0, 200)))
def test_skips_never_rise_and_doubles_never_fall(hits) -> None:
    found = estimate(counts(hits, hits))
    for fit, sign, falls in ((found.skips, -1, True), (found.doubles, 1, False)):
        intercept, slope = held(fit, falls=falls)
        shares = logistic(intercept + slope * np.log(LEVELS))
        assert np.all(np.diff(sign * shares) >= -1e-12)


def test_the_same_counts_give_the_same_interval() -> None:
    first, second = estimate(GOOD), estimate(GOOD)
    assert first.best_low == second.best_low
    assert first.best_high == second.best_high


def test_more_cells_narrow_the_interval() -> None:
    few = estimate(GOOD)
    many = estimate(counts(GOOD.skips * 10, GOOD.doubles * 10, cells=5_000.0))
    assert many.best_high / many.best_low < few.best_high / few.best_low
    assert many.best == pytest.approx(few.best, rel=0.05)


def test_units_of_vacuum_do_not_matter() -> None:
    present = estimate(GOOD, Q(3.5, "kPa")), estimate(GOOD, Q(0.035, "bar"))
    assert present[0].gain == pytest.approx(present[1].gain)


def test_a_present_level_that_was_not_run_has_no_gain() -> None:
    assert np.isnan(estimate(GOOD, Q(12, "kPa")).gain).all()


def test_the_gain_is_the_error_saved() -> None:
    found = estimate(GOOD, Q(2.5, "kPa"))
    there = error_at(found, np.log(np.array([2.5])))
    assert found.gain == pytest.approx(there - found.error)
    assert found.gain_low < found.gain < found.gain_high


def test_pooled_meters_share_one_level() -> None:
    both = counts([[60, 25, 9, 2], [55, 28, 7, 3]], [[1, 4, 12, 45], [2, 3, 15, 40]])
    alone, shared = estimate(both), estimate(pooled(both))
    assert alone.best.min() * 0.98 <= shared.best[0] <= alone.best.max() * 1.02


def test_one_level_is_refused_with_the_name_of_the_meter() -> None:
    with pytest.raises(Refusal, match="row 1: runs at two or more levels"):
        estimate(counts([[3]], [[1]], levels=np.array([[4.0]])))


def test_a_meter_without_runs_is_refused() -> None:
    empty = BenchCounts(("row 1",), LEVELS, np.zeros((1, 4)), np.zeros((1, 4)), np.zeros((1, 4)))
    with pytest.raises(Refusal, match="leave it out"):
        estimate(empty)
