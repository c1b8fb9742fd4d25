"""Residual seed and its flush: first-order mixing, limits by class, and what is refused."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.bundled import bundled
from changeover.quantities import Q, Refusal
from changeover.seed.reasons import Trust
from changeover.switch.dilution import (
    flush,
    limits_for,
    old_share,
    read_purity,
    seeds_to_flush,
    stray_share,
    strays_allowed,
)

LIMITS = read_purity(bundled("resources", "purity.toml").read_text(encoding="utf-8"))
PER_FOOT = Q(140_000, "seed/acre") * Q(30, "in")
POOLS = st.floats(10, 5000)
SHARES = st.floats(1e-5, 0.5)


@given(POOLS, st.floats(0, 1), SHARES)
def test_the_share_meets_the_limit_after_the_flush_and_not_before(pool, part, limit) -> None:
    seeds = seeds_to_flush(part * pool, pool, limit)
    assert old_share(part * pool, pool, seeds) <= limit * (1 + 1e-9)
    if seeds > 1:
        assert old_share(part * pool, pool, seeds - 1) > limit


@given(POOLS, st.floats(0.01, 1), SHARES)
def test_old_seed_is_neither_made_nor_lost(pool, part, limit) -> None:
    flushed = flush(part * pool, pool, limit, PER_FOOT, Q(30, "in"), 12)
    assert flushed.left + flushed.passed == pytest.approx(part * pool)
    if flushed.seeds:
        assert flushed.left == pytest.approx(limit * pool)


def test_length_and_area_follow_from_the_seeds() -> None:
    flushed = flush(60, 300, 0.001, PER_FOOT, Q(30, "in"), 24)
    assert flushed.seeds == pytest.approx(300 * math.log(200))
    feet = flushed.row_length.to("ft").magnitude
    assert feet == pytest.approx(flushed.seeds / (140_000 * 30 / 12 / 43_560))
    assert flushed.area.to("acre").magnitude == pytest.approx(24 * feet * 2.5 / 43_560)


def test_a_clean_row_needs_no_flush() -> None:
    assert seeds_to_flush(0, 300, 0.001) == 0
    assert flush(0.2, 300, 0.001, PER_FOOT, Q(30, "in"), 24).area.magnitude == 0


def test_strays_and_their_limit_are_each_other_s_inverse() -> None:
    allowed = strays_allowed(0.009, Q(1000, "ft"), PER_FOOT)
    assert stray_share(allowed, Q(1000, "ft"), PER_FOOT) == pytest.approx(0.009)


def test_limits_are_found_by_crop_and_class() -> None:
    field, seed = limits_for(LIMITS, "dry_bean", "certified")
    assert (field.share, seed.share) == (1 / 400, 0.002)
    assert limits_for(LIMITS, "corn", "identity preserved")[0].share == 0.009
    assert all(limit.source and limit.trust is Trust.PUBLISHED for limit in LIMITS)


@pytest.mark.parametrize(
    ("residual", "pool", "limit", "words"),
    [
        (10, 300, 0, "clean the row and inspect it empty"),
        (10, 300, 1.5, "from 0 to 1"),
        (400, 300, 0.01, "residual from 0 to the pool"),
        (-1, 300, 0.01, "residual from 0 to the pool"),
        (0, 0, 0.01, "pool over 0"),
    ],
)
def test_what_cannot_be_is_refused(residual, pool, limit, words) -> None:
    with pytest.raises(Refusal, match=words):
        seeds_to_flush(residual, pool, limit)


def test_rates_rows_and_counts_below_zero_are_refused() -> None:
    with pytest.raises(Refusal, match="rows over 0"):
        flush(1, 300, 0.001, PER_FOOT, Q(30, "in"), 0)
    with pytest.raises(Refusal, match="count of 0 or more"):
        stray_share(-1, Q(1000, "ft"), PER_FOOT)
    with pytest.raises(Refusal, match="0 or more"):
        old_share(1, 300, -5)


def test_a_limit_that_is_not_whole_is_refused() -> None:
    with pytest.raises(Refusal, match="purity limit of “soybean” is not whole"):
        read_purity('[[limit]]\ncrop = "soybean"\none_in = 0\n')
