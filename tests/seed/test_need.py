"""Seed needed: whatever is rounded, no seed and no package is lost."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.quantities import Q, Refusal
from changeover.seed import need

sizes = st.integers(100, 500_000)


@given(st.integers(1, 10**9), sizes)
def test_whole_packages_hold_the_need_and_less_than_one_is_left(seeds, size) -> None:
    packages = need.packages_needed(Q(seeds, "seed"), size)
    assert packages.whole * size >= seeds
    assert 0 <= packages.left_over < size


@given(st.integers(1, 3_000), sizes)
def test_an_exact_number_of_packages_is_not_rounded_up(whole, size) -> None:
    seeds = Q(whole * (size / 3) * 3, "seed")
    assert need.packages_needed(seeds, size).whole == whole


@given(st.integers(0, 500), st.lists(st.floats(0.01, 50), min_size=1, max_size=40))
def test_sharing_out_keeps_every_package(packages, shares) -> None:
    given_out = need.share_packages(packages, shares)
    assert sum(given_out) == packages
    fair = packages * np.array(shares) / sum(shares)
    assert np.all(np.abs(np.array(given_out) - fair) < 1 + 1e-6)


@given(st.floats(1, 5_000), st.floats(10_000, 300_000), st.floats(0, 0.2))
def test_overlap_takes_more_seed_in_proportion(acres, seeds, overlap) -> None:
    job = Q(acres, "acre"), Q(seeds, "seed/acre")
    ratio = need.seeds_needed(*job, overlap) / need.seeds_needed(*job)
    assert ratio.to("count").magnitude == pytest.approx(1 + overlap)


@given(st.lists(st.integers(0, 12), min_size=1, max_size=8).filter(any), st.floats(1, 900))
def test_the_groups_share_the_whole_area(rows, acres) -> None:
    parts = need.shared_area(Q(acres, "acre"), rows)
    assert parts.sum().to("acre").magnitude == pytest.approx(acres)


@given(st.integers(1, 10**7), st.floats(500, 20_000))
def test_mass_and_seeds_are_inverses(seeds, size) -> None:
    mass = need.mass_needed(Q(seeds, "seed"), Q(size, "seed/lb"))
    back = need.seeds_in_mass(mass, Q(size, "seed/lb"))
    assert back.to("seed").magnitude == pytest.approx(seeds)


def test_packages_by_mass_count_whole_seeds() -> None:
    packages = need.packages_by_mass(Q(1_000_000, "seed"), Q(2_800, "seed/lb"), Q(50, "lb"))
    assert (packages.whole, packages.seeds_per_package) == (8, 140_000)
    assert packages.left_over == 120_000


def test_lubricant_has_the_unit_of_the_users_dose() -> None:
    amount = need.dry_lubricant(6, Q(2, "oz"))
    assert (amount.magnitude, str(amount.units)) == (12, "ounce")


@pytest.mark.parametrize("dose", [Q(2, "count"), Q(-1, "oz"), Q(float("nan"), "g")])
def test_a_dose_that_is_none_is_refused(dose) -> None:
    with pytest.raises(Refusal, match="enter the dose of one package"):
        need.dry_lubricant(6, dose)


def test_no_row_that_plants_is_refused() -> None:
    with pytest.raises(Refusal, match="unlock a row"):
        need.shared_area(Q(80, "acre"), [0, 0])


def test_a_negative_share_is_refused() -> None:
    with pytest.raises(Refusal, match="share of zero or more"):
        need.share_packages(5, [1.0, -1.0])
