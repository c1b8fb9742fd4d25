"""Laws of the exact tests."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.proof.exact import Side, binomial_p, binomial_probabilities, fisher_p
from changeover.quantities import Refusal


@given(st.integers(0, 800), st.floats(0, 1))
def test_probabilities_sum_to_one(trials, share) -> None:
    assert binomial_probabilities(trials, share).sum() == pytest.approx(1)


@given(st.integers(0, 60), st.integers(60, 300), st.floats(0.01, 0.9))
def test_the_two_tails_share_only_the_observed_count(events, trials, share) -> None:
    more, fewer = (binomial_p(events, trials, share, side) for side in (Side.MORE, Side.FEWER))
    here = binomial_probabilities(trials, share)[events]
    assert more + fewer == pytest.approx(1 + here)


@given(st.integers(0, 30), st.integers(0, 30))
def test_fisher_does_not_care_which_row_comes_first(a, b) -> None:
    one = fisher_p(a, 100, b, 200, Side.BOTH)
    assert one == pytest.approx(fisher_p(b, 200, a, 100, Side.BOTH))


def test_no_events_at_all_prove_nothing() -> None:
    assert fisher_p(0, 100, 0, 200) == 1
    assert binomial_p(0, 100, 0.0) == 1


def test_an_event_where_none_can_be_is_certain_proof() -> None:
    assert binomial_p(1, 100, 0.0) == 0


@pytest.mark.parametrize("call", [lambda: binomial_p(5, 4, 0.1), lambda: fisher_p(5, 4, 0, 9)])
def test_more_events_than_trials_are_refused(call) -> None:
    with pytest.raises(Refusal):
        call()
