"""Spacing measures of ten million spacings against a bare binning pass, and the bootstrap."""

from collections.abc import Iterator

import numpy as np

from changeover.proof.bootstrap import bootstrap_rows
from changeover.proof.spacing import measure_spacings
from changeover.quantities import Q
from tests.bench.timing import Ratio, Spell, seconds_of


def measure() -> Iterator[Ratio | Spell]:
    """Yield the cost of all spacing measures, and that of a planter's bootstrap intervals."""
    rng = np.random.default_rng(1)
    target = 0.166
    x = np.abs(target * (rng.geometric(0.96, 10_000_000) + rng.normal(0, 0.15, 10_000_000)))
    edges = target * np.array([0.0, 0.5, 1.5, 2.5, 3.5, np.inf])
    ours = seconds_of(lambda: measure_spacings(Q(x, "m"), Q(target, "m")), 5)
    name = "all measures of 10 million spacings"
    divisions = seconds_of(lambda: np.histogram(x, edges), 5)
    yield Ratio(name, ours, divisions, "numpy binning into 5 divisions", 4)
    tenths = seconds_of(lambda: np.histogram(x, 36, (0.0, 3.6 * target)), 5)
    yield Ratio(name, ours, tenths, "numpy binning into 36 classes", 4)
    rows = {row: Q(rng.normal(6.5, 0.8, 250), "in") for row in range(1, 49)}
    spent = seconds_of(lambda: bootstrap_rows(rows, Q(6.5, "in"), 2000), 3)
    yield Spell("bootstrap of 48 rows of 250 spacings, 2 000 draws", spent, 2.0)
