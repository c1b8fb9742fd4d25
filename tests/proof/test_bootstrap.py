"""Bootstrap intervals of the spacing measures."""

import numpy as np
import pytest

from changeover.proof.bootstrap import bootstrap_rows, bootstrap_spacings, resampled_sums
from changeover.proof.spacing import measure_spacings
from changeover.quantities import Q, Quantity, Refusal

TARGET = Q(6.5, "in")


def row(seed: int, n: int = 250) -> Quantity:
    rng = np.random.default_rng(seed)
    return Q(np.abs(6.5 * (rng.geometric(0.95, n) + rng.normal(0, 0.1, n))), "in")


def test_intervals_hold_what_was_measured() -> None:
    x = row(1)
    measured, found = measure_spacings(x, TARGET), bootstrap_spacings(x, TARGET)
    assert measured.by_spacings.misses in found.misses_by_spacings
    assert measured.by_positions.quality_of_feed in found.quality_of_feed_by_positions
    assert measured.precision_ref in found.precision_ref
    assert measured.precision_mean in found.precision_mean
    assert (measured.mean / TARGET).magnitude in found.mean
    assert (measured.sd / TARGET).magnitude in found.sd


def test_the_same_readings_give_the_same_interval() -> None:
    assert bootstrap_spacings(row(2), TARGET) == bootstrap_spacings(row(2), TARGET)


def test_pooled_rows_have_the_narrower_interval() -> None:
    each, total = bootstrap_rows({i: row(i) for i in range(1, 9)}, TARGET, draws=500)
    assert total.mean.width < 0.6 * each[1].mean.width


def test_draws_are_of_the_row_itself() -> None:
    sums = resampled_sums(np.array([0.2, 1.0, 2.0]), 1000, np.random.default_rng(3))
    assert np.all(sums[:, :5].sum(axis=1) == 3)
    assert sums[:, 1].mean() == pytest.approx(1, abs=0.1)


def test_one_spacing_cannot_be_resampled() -> None:
    with pytest.raises(Refusal, match="two spacings"):
        bootstrap_spacings(Q(np.array([6.5]), "in"), TARGET)


def test_a_row_without_singles_has_no_precision() -> None:
    x = Q(np.full(20, 13.0), "in")
    assert bootstrap_spacings(x, TARGET).precision_ref is None
