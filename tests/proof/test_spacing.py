"""Laws of the spacing measures, and what they refuse."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.proof.spacing import (
    all_spacings,
    by_positions,
    by_spacings,
    measure_rows,
    measure_spacings,
    spacings_between,
)
from changeover.quantities import Q, Refusal

SPACINGS = st.lists(st.floats(0.001, 3), min_size=2, max_size=80).map(np.array)
COUNTS = st.tuples(*[st.integers(0, 200)] * 5).filter(lambda counts: sum(counts[1:]) > 0)


@given(COUNTS)
def test_indices_sum_to_one_in_both_conventions(counts) -> None:
    for one in (by_spacings(counts), by_positions(counts)):
        assert one.multiples + one.quality_of_feed + one.misses == pytest.approx(1)


@given(SPACINGS)
def test_skips_doubles_and_spread_make_up_the_shortage(x) -> None:
    shortage = measure_spacings(Q(x, "m"), Q(0.4, "m")).shortage
    parts = shortage.skips + shortage.doubles + shortage.spread
    assert parts == pytest.approx(shortage.total, abs=1e-9)
    assert shortage.total == pytest.approx(1 - x.size * 0.4 / x.sum())


@given(SPACINGS)
def test_the_unit_does_not_matter(x) -> None:
    metres, inches = (
        measure_spacings(Q(x, "m").to(unit), Q(0.4, "m").to(unit)) for unit in ("m", "in")
    )
    assert metres.counts == inches.counts
    assert metres.mean.to("m").magnitude == pytest.approx(inches.mean.to("m").magnitude)
    assert metres.rate_share == pytest.approx(inches.rate_share)


@given(SPACINGS)
def test_divisions_are_the_histogram_summed(x) -> None:
    measured = measure_spacings(Q(x, "m"), Q(0.4, "m"))
    h = measured.histogram
    assert measured.counts == (sum(h[:5]), sum(h[5:15]), sum(h[15:25]), sum(h[25:35]), h[35])
    assert sum(h) == measured.n == x.size


def test_blocks_do_not_change_the_sums() -> None:
    x = np.abs(np.random.default_rng(1).normal(0.17, 0.05, 50_000))
    measured = measure_spacings(Q(x, "m"), Q(0.17, "m"))
    assert measured.mean.to("m").magnitude == pytest.approx(x.mean(), rel=1e-12)
    assert measured.sd.to("m").magnitude == pytest.approx(x.std(ddof=1), rel=1e-10)


def test_perfect_spacing_has_nothing_short() -> None:
    measured = measure_spacings(Q(np.full(20, 6.5), "in"), Q(6.5, "in"))
    assert measured.by_positions.quality_of_feed == 1
    assert (measured.shortage.total, measured.precision_ref) == (pytest.approx(0), pytest.approx(0))
    assert measured.cp3_mode == measured.cp3_target == 1


def test_clustered_seeds_have_no_meaningful_positions() -> None:
    measured = measure_spacings(Q(np.array([0.1, 0.1, 0.1, 4.0]), "in"), Q(6.5, "in"))
    assert not measured.by_positions.meaningful
    assert measured.by_spacings.meaningful


def test_one_single_spacing_has_no_spread() -> None:
    measured = measure_spacings(Q(np.array([6.5]), "in"), Q(6.5, "in"))
    assert (measured.sd, measured.precision_ref, measured.precision_mean) == (None, None, None)


def test_the_mode_follows_the_seeds_not_the_target() -> None:
    x = np.random.default_rng(2).normal(24, 0.4, 500)
    measured = measure_spacings(Q(x, "cm"), Q(20, "cm"))
    assert measured.mode.to("cm").magnitude == pytest.approx(24, abs=0.01)
    assert measured.cp3_mode > 0.99
    assert measured.cp3_target < 0.01


def test_seven_empty_places_in_a_row_count_in_full() -> None:
    shortage = measure_spacings(Q(np.array([8.0, 1, 1]), "m"), Q(1, "m")).shortage
    assert shortage.skips == pytest.approx(7 / 10)


def test_positions_become_spacings() -> None:
    between = spacings_between(Q(np.array([0, 6.5, 6.5, 13.2]), "in"))
    assert between.magnitude.tolist() == pytest.approx([6.5, 0, 6.7])


def test_positions_that_go_backwards_are_named() -> None:
    with pytest.raises(Refusal, match=r"Position 3 \(6\) lies behind position 2"):
        spacings_between(Q(np.array([0, 6.5, 6, 13]), "in"))


@pytest.mark.parametrize("x", [[], [-1.0], [float("nan")], [float("inf")], [1e200], [0.0, 0.0]])
def test_impossible_spacings_are_refused(x) -> None:
    with pytest.raises(Refusal):
        measure_spacings(Q(np.array(x), "in"), Q(6.5, "in"))


@pytest.mark.parametrize("target", [0, -6.5])
def test_a_target_of_zero_is_refused(target) -> None:
    with pytest.raises(Refusal, match="pacing in the row"):
        measure_spacings(Q(np.array([6.5]), "in"), Q(target, "in"))


def test_the_row_is_named_in_a_refusal() -> None:
    rows = {4: Q(np.array([6.5, -1]), "in")}
    with pytest.raises(Refusal, match="Row 4: Spacing 2"):
        measure_rows(rows, Q(6.5, "in"))


def test_rows_of_two_units_are_pooled_in_one() -> None:
    rows = {1: Q(np.array([1.0]), "in"), 2: Q(np.array([2.54]), "cm")}
    assert all_spacings(rows).to("in").magnitude.tolist() == pytest.approx([1, 1])
