"""Laws of the confidence intervals, and what they refuse."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.proof.intervals import mean_interval, normal_quantile, wilson
from changeover.quantities import Refusal

COUNTS = st.integers(1, 5000).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n)))


@given(COUNTS)
def test_wilson_holds_the_share_and_stays_in_bounds(count) -> None:
    events, trials = count
    interval = wilson(events, trials)
    assert 0 <= interval.low <= events / trials <= interval.high <= 1


@given(COUNTS)
def test_wilson_turns_round_with_its_events(count) -> None:
    events, trials = count
    one, other = wilson(events, trials), wilson(trials - events, trials)
    assert one.low == pytest.approx(1 - other.high, abs=1e-12)


@given(COUNTS)
def test_more_confidence_is_wider(count) -> None:
    assert wilson(*count, level=0.99).width > wilson(*count, level=0.9).width


def test_ten_times_the_cells_narrow_the_interval() -> None:
    assert wilson(20, 1000).width < 0.4 * wilson(2, 100).width


@pytest.mark.parametrize(("events", "trials"), [(1, 0), (-1, 10), (11, 10)])
def test_impossible_counts_are_refused(events, trials) -> None:
    with pytest.raises(Refusal, match="trial"):
        wilson(events, trials)


@pytest.mark.parametrize("level", [0, 0.3, 1, 95])
def test_impossible_level_is_refused(level) -> None:
    with pytest.raises(Refusal, match="confidence level"):
        normal_quantile(level)


def test_one_value_has_no_interval_of_its_mean() -> None:
    assert mean_interval([2.0]) is None


def test_interval_says_what_lies_within() -> None:
    interval = wilson(5, 100)
    assert 0.05 in interval
    assert 0.5 not in interval
