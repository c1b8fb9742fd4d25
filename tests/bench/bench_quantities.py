"""Carrying units over whole arrays against the bare arithmetic, and reading them from text."""

from collections.abc import Iterator

import numpy as np

from changeover.quantities import Q, read_quantity
from changeover.seed.rate import spacing_in_row
from tests.bench.timing import Ratio, Spell, seconds_of


def measure() -> Iterator[Ratio | Spell]:
    """Yield the cost of units on a million spacings and on one text."""
    rates, across = np.linspace(20_000.0, 60_000.0, 1_000_000), np.full(1_000_000, 30.0)
    yield Ratio(
        "a million spacings with units and bounds",
        seconds_of(lambda: spacing_in_row(Q(rates, "seed/acre"), Q(across, "in"))),
        seconds_of(lambda: 6_272_640 / (rates * across)),
        "bare numpy",
        10,
    )
    yield Spell(
        "reading one quantity", seconds_of(lambda: read_quantity("1 3/4 in", "depth")), 1e-3
    )
