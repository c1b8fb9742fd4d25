"""A meter's history over seasons: is its share of events rising?"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from math import sqrt
from statistics import NormalDist

import numpy as np

from changeover.proof.intervals import Interval, wilson
from changeover.quantities import Refusal

_YEAR = 365.2425


@dataclass(frozen=True)
class PastRun:
    """One bench run of a meter: when, and how many events in how many cells."""

    on: date
    events: int
    cells: int


@dataclass(frozen=True)
class Trend:
    """The runs in order of date with their Wilson intervals, and the trend over them.

    ``per_year`` is the rise of the share in a year (0 to 1 scale), ``p`` the two-sided
    probability of so strong a trend if there is none; both None below two dates or without any
    variation of events.
    """

    runs: tuple[PastRun, ...]
    intervals: tuple[Interval, ...]
    per_year: float | None
    p: float | None

    def rising(self, level: float = 0.05) -> bool:
        return (
            self.p is not None
            and self.per_year is not None
            and self.p <= level < 1
            and (self.per_year > 0)
        )


def trend(runs: Sequence[PastRun], level: float = 0.95) -> Trend:
    """Return the history of one meter and its trend.

    Cochran-Armitage test for a linear trend in shares, scores in years: Armitage 1955,
    Biometrics 11:375-386; the slope is the weighted least squares one that belongs to it.
    Raises Refusal when there are no runs.
    """
    if not runs:
        raise Refusal("This meter has no bench runs yet; enter one.")
    ordered = tuple(sorted(runs, key=lambda run: run.on))
    intervals = tuple(wilson(run.events, run.cells, level) for run in ordered)
    years = np.array([(run.on - ordered[0].on).days / _YEAR for run in ordered])
    k = np.array([run.events for run in ordered], dtype=np.float64)
    n = np.array([run.cells for run in ordered], dtype=np.float64)
    share = k.sum() / n.sum()
    centred = years - (n * years).sum() / n.sum()
    spread = float((n * centred**2).sum())
    if years[-1] == 0 or share in (0.0, 1.0):
        return Trend(ordered, intervals, None, None)
    score = float((centred * k).sum())
    z = score / sqrt(share * (1 - share) * spread)
    return Trend(ordered, intervals, score / spread, 2 * NormalDist().cdf(-abs(z)))
