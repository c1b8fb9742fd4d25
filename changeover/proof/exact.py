"""Exact tests on counts: the binomial tail, and Fisher's test of one count against the rest."""

from enum import StrEnum
from math import log, log1p

import numpy as np
from numpy.typing import NDArray

from changeover.proof.intervals import Floats
from changeover.quantities import Refusal

_TIE = 1 + 1e-7  # probabilities this near to the observed one count as equal, as R and scipy do


class Side(StrEnum):
    """Which departures count: more events than expected, fewer, or both."""

    MORE = "more"
    FEWER = "fewer"
    BOTH = "both"


def binomial_probabilities(trials: int, share: float) -> Floats:
    """Return the probability of 0 … ``trials`` events, an array of ``trials`` + 1.

    Raises Refusal for a share outside 0 to 1 or trials below zero.
    """
    if trials < 0 or not 0 <= share <= 1:
        raise Refusal("A binomial needs trials of 0 or more and a share from 0 to 1.")
    if share in (0.0, 1.0):
        certain = np.zeros(trials + 1)
        certain[0 if share == 0 else trials] = 1.0
        return certain
    steps = np.arange(1, trials + 1, dtype=np.float64)
    ratios = np.log((trials - steps + 1) / steps) + log(share) - log1p(-share)
    return np.exp(trials * log1p(-share) + np.concatenate(([0.0], np.cumsum(ratios))))


def binomial_p(events: int, trials: int, share: float, side: Side = Side.MORE) -> float:
    """Return the exact probability of a count at least as far out as ``events``, 0 to 1.

    For both sides, the sum over all counts no likelier than the one observed. Raises Refusal
    when events exceed trials. Checked against scipy.stats.binomtest.
    """
    if not 0 <= events <= trials:
        raise Refusal(f"{events} events in {trials} trials is not possible.")
    return _tail(binomial_probabilities(trials, share), events, side)


def fisher_p(
    events: int, trials: int, other_events: int, other_trials: int, side: Side = Side.MORE
) -> float:
    """Return Fisher's exact probability that one share departs from another, 0 to 1.

    Given the total of events, the first count is hypergeometric if the shares are equal. Raises
    Refusal when events exceed trials. Fisher 1935; checked against scipy.stats.fisher_exact.
    """
    if not (0 <= events <= trials and 0 <= other_events <= other_trials):
        raise Refusal("A count of events lies outside 0 to its trials.")
    total = events + other_events
    least = max(0, total - other_trials)
    most = min(total, trials)
    k = np.arange(least, most + 1)
    chances = np.exp(
        _log_comb(trials, k)
        + _log_comb(other_trials, total - k)
        - _log_comb(trials + other_trials, np.array([total]))
    )
    return _tail(chances, events - least, side)


def _log_comb(n: int, k: NDArray[np.int64]) -> Floats:
    from scipy.special import gammaln

    return np.asarray(gammaln(n + 1) - gammaln(k + 1) - gammaln(n - k + 1), dtype=np.float64)


def _tail(chances: Floats, place: int, side: Side) -> float:
    if side is Side.MORE:
        total = chances[place:].sum()
    elif side is Side.FEWER:
        total = chances[: place + 1].sum()
    else:
        total = chances[chances <= chances[place] * _TIE].sum()
    return float(min(1.0, total))
