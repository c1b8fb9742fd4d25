"""Logistic fits: finite curves from any counts, in the direction of the counts."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from changeover.seed.logistic_fit import fit_logistic, logistic

X = np.log(np.array([[2.5, 3.5, 5.0, 7.0]]))
TRIALS = np.full((1, 4), 250.0)


@given(arrays(np.int64, (1, 4), elements=st.integers(0, 250)))
def test_any_counts_have_a_finite_curve(hits) -> None:
    fit = fit_logistic(X, TRIALS, hits.astype(float))
    assert fit.settled.all()
    assert np.isfinite(fit.intercept).all()
    assert np.isfinite(fit.covariance).all()
    assert (fit.dispersion >= 1).all()


@given(arrays(np.int64, (1, 4), elements=st.integers(0, 250)))
def test_turned_counts_turn_the_curve(hits) -> None:
    one = fit_logistic(X, TRIALS, hits.astype(float))
    other = fit_logistic(X, TRIALS, 250.0 - hits)
    assert other.slope == pytest.approx(-one.slope, abs=1e-6)
    assert other.intercept == pytest.approx(-one.intercept, abs=1e-6)


def test_rows_do_not_touch_each_other() -> None:
    hits = np.array([[40, 20, 8, 2], [1, 3, 9, 30]], dtype=float)
    both = fit_logistic(X.repeat(2, 0), TRIALS.repeat(2, 0), hits)
    alone = fit_logistic(X, TRIALS, hits[1:])
    assert both.slope[1] == pytest.approx(alone.slope[0])


def test_a_level_without_trials_does_not_count() -> None:
    hits = np.array([[40.0, 0.0, 8.0, 2.0]])
    some = fit_logistic(X, np.array([[250.0, 0.0, 250.0, 250.0]]), hits)
    kept = fit_logistic(X[:, [0, 2, 3]], TRIALS[:, :3], hits[:, [0, 2, 3]])
    assert some.slope == pytest.approx(kept.slope)
    assert some.dispersion == pytest.approx(kept.dispersion)


def test_meters_that_differ_widen_the_covariance() -> None:
    x = np.tile(X, 4)
    hits = np.array([[40, 20, 8, 2, 90, 60, 40, 25, 40, 20, 8, 2, 5, 2, 1, 0]], dtype=float)
    fit = fit_logistic(x, np.full((1, 16), 250.0), hits)
    assert fit.dispersion[0] > 5


def test_logistic_does_not_overflow() -> None:
    assert logistic(np.array([-1e4, 0.0, 1e4])) == pytest.approx([0.0, 0.5, 1.0])
