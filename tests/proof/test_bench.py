"""Bench counts judged against the user's limits."""

import pytest

from changeover.proof.bench import (
    BenchCount,
    BenchLimits,
    Standing,
    cells_to_settle,
    judge_row,
    pooled,
    worst,
)
from changeover.quantities import Refusal

LIMITS = BenchLimits(single_least=0.95, skip_most=0.03, double_most=0.03)


@pytest.mark.parametrize(
    ("skips", "standing"), [(0, Standing.WITHIN), (20, Standing.OPEN), (60, Standing.SHORT)]
)
def test_skips_against_their_limit(skips, standing) -> None:
    assert judge_row(BenchCount(1, 1000, skips, 0), LIMITS).skip.standing is standing


@pytest.mark.parametrize(
    ("faults", "standing"), [(10, Standing.WITHIN), (45, Standing.OPEN), (90, Standing.SHORT)]
)
def test_single_seeds_against_their_least(faults, standing) -> None:
    judged = judge_row(BenchCount(1, 1000, faults // 2, faults - faults // 2), LIMITS)
    assert judged.single.standing is standing
    assert judged.single.share == (1000 - faults) / 1000


def test_without_limits_nothing_is_judged() -> None:
    assert judge_row(BenchCount(1, 100, 5, 5), BenchLimits()).standing is Standing.NO_LIMIT


def test_a_clean_hundred_cannot_prove_three_percent() -> None:
    assert judge_row(BenchCount(1, 100, 0, 0), LIMITS).skip.standing is Standing.OPEN


def test_the_worst_standing_wins() -> None:
    assert worst([Standing.WITHIN, Standing.SHORT, Standing.OPEN]) is Standing.SHORT
    assert worst([Standing.NO_LIMIT, Standing.WITHIN]) is Standing.WITHIN


def test_replicates_are_added() -> None:
    runs = [BenchCount(2, 250, 3, 1, "B"), BenchCount(1, 250, 0, 0), BenchCount(2, 250, 2, 0)]
    assert pooled(runs) == (BenchCount(1, 250, 0, 0), BenchCount(2, 500, 5, 1, "B"))


@pytest.mark.parametrize(
    ("counts", "message"),
    [
        ([], "no rows"),
        ([BenchCount(1, 9, 0, 0, "A"), BenchCount(1, 9, 0, 0, "B")], "two meters, A and B"),
    ],
)
def test_runs_that_cannot_be_added(counts, message) -> None:
    with pytest.raises(Refusal, match=message):
        pooled(counts)


@pytest.mark.parametrize("counts", [(0, 0, 0), (10**12, 0, 0), (100, 60, 41), (100, -1, 0)])
def test_impossible_counts_are_refused(counts) -> None:
    with pytest.raises(Refusal, match="Row 3"):
        BenchCount(3, *counts)


def test_cells_still_needed_settle_the_matter() -> None:
    judged = judge_row(BenchCount(1, 200, 2, 0), LIMITS).skip
    more = cells_to_settle(judged)
    assert judged.standing is Standing.OPEN
    longer = judge_row(BenchCount(1, 200 + more, round((200 + more) / 100), 0), LIMITS).skip
    assert longer.standing is Standing.WITHIN


def test_a_settled_share_needs_no_more_cells() -> None:
    assert cells_to_settle(judge_row(BenchCount(1, 1000, 0, 0), LIMITS).skip) == 0
    single = judge_row(BenchCount(1, 1000, 0, 0), LIMITS).single
    assert cells_to_settle(single, most=False) == 0


def test_a_share_on_the_limit_is_never_settled() -> None:
    assert cells_to_settle(judge_row(BenchCount(1, 100, 3, 0), LIMITS).skip) is None
