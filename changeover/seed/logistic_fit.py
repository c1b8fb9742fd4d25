"""Logistic curves through counts, many rows at once: how the share of skips or doubles goes."""

from dataclasses import dataclass

import numpy as np

from changeover.seed.bounds import Floats

_STEPS = 60
_LONGEST_STEP = 4.0
_SETTLED = 1e-10


@dataclass(frozen=True)
class LogisticFit:
    """logit(share) = intercept + slope · (x − middle), one curve a row.

    Arrays over rows; ``covariance`` is rows by 2 by 2 for intercept and slope, already widened
    by ``dispersion`` (1 or more). ``settled`` is False where the iteration did not end.
    """

    intercept: Floats
    slope: Floats
    middle: Floats
    covariance: Floats
    dispersion: Floats
    settled: np.ndarray[tuple[int, ...], np.dtype[np.bool_]]

    def slope_z(self) -> Floats:
        """Return each slope over its standard error."""
        errors: Floats = np.sqrt(self.covariance[:, 1, 1])
        return self.slope / errors


def fit_logistic(x: Floats, trials: Floats, hits: Floats, *, shrink: bool = True) -> LogisticFit:
    """Fit a logistic curve to each row of counts by iterated weighted least squares.

    Tables of rows by levels; a level with no trials does not count. With ``shrink`` the score
    carries Jeffreys' prior (Firth 1993, Biometrika 80:27-38), so that rows with few or perfectly
    parted counts keep finite curves; without it the fit is plain maximum likelihood. The
    covariance is the inverse information times Pearson's dispersion where that exceeds 1
    (McCullagh & Nelder 1989). Two different levels a row are needed; the caller sees to it.
    """
    middle = (x * trials).sum(axis=1) / trials.sum(axis=1)
    away = x - middle[:, None]
    share = (hits.sum(axis=1) + 0.5) / (trials.sum(axis=1) + 1.0)
    intercept, slope = np.log(share / (1.0 - share)), np.zeros_like(share)
    change = np.full_like(share, np.inf)
    for _ in range(_STEPS):
        information, score = _information_and_score(
            away, trials, hits, intercept, slope, shrink=shrink
        )
        up, along = _solved(information, score)
        up, along = (np.clip(step, -_LONGEST_STEP, _LONGEST_STEP) for step in (up, along))
        intercept, slope = intercept + up, slope + along
        change = np.maximum(np.abs(up), np.abs(along))
        if change.max() < _SETTLED:
            break
    information, _ = _information_and_score(away, trials, hits, intercept, slope, shrink=shrink)
    spread = _dispersion(away, trials, hits, intercept, slope)
    covariance = _inverse(information) * spread[:, None, None]
    return LogisticFit(intercept, slope, middle, covariance, spread, change < 1e-6)


def logistic(logit: Floats) -> Floats:
    """Return the share that belongs to a logit, without overflow."""
    share: Floats = 0.5 * (1.0 + np.tanh(0.5 * logit))
    return share


def _information_and_score(
    away: Floats, trials: Floats, hits: Floats, intercept: Floats, slope: Floats, *, shrink: bool
) -> tuple[Floats, Floats]:
    """Return the information (a, b, c of each 2 by 2) and the score (2) of each row, stacked."""
    share = logistic(intercept[:, None] + slope[:, None] * away)
    weight = trials * share * (1.0 - share)
    a, b, c = weight.sum(axis=1), (weight * away).sum(axis=1), (weight * away**2).sum(axis=1)
    information = np.stack([a, b, c])
    pull = hits - trials * share
    if shrink:
        det = np.maximum(a * c - b * b, 1e-300)[:, None]
        reach = c[:, None] - 2.0 * b[:, None] * away + a[:, None] * away**2
        pull = pull + weight * reach / det * (0.5 - share)
    return information, np.stack([pull.sum(axis=1), (pull * away).sum(axis=1)])


def _solved(information: Floats, score: Floats) -> tuple[Floats, Floats]:
    a, b, c = information
    det = np.maximum(a * c - b * b, 1e-300)
    return (c * score[0] - b * score[1]) / det, (a * score[1] - b * score[0]) / det


def _inverse(information: Floats) -> Floats:
    a, b, c = information
    det = np.maximum(a * c - b * b, 1e-300)
    rows: Floats = np.stack([c, -b, -b, a], axis=1).reshape(-1, 2, 2) / det[:, None, None]
    return rows


def _dispersion(
    away: Floats, trials: Floats, hits: Floats, intercept: Floats, slope: Floats
) -> Floats:
    """Return Pearson's dispersion of each row, never below 1."""
    share = logistic(intercept[:, None] + slope[:, None] * away)
    variance = np.maximum(trials * share * (1.0 - share), 1e-12)
    pearson = ((hits - trials * share) ** 2 / variance).sum(axis=1)
    freedom = (trials > 0).sum(axis=1) - 2
    spread: Floats = np.maximum(pearson / np.maximum(freedom, 1), 1.0)
    return np.where(freedom > 0, spread, 1.0)
