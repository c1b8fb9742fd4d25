"""From an entered reading to the updated verdict, for the proofs of a 48-row planter."""

from collections.abc import Iterator

import numpy as np

from changeover.proof.bench import BenchCount, BenchLimits
from changeover.proof.bench_report import report_bench
from changeover.proof.depth import DepthGoal, judge_depths
from changeover.proof.spacing import all_spacings, measure_rows, measure_spacings
from changeover.quantities import Q
from tests.bench.timing import Spell, seconds_of

ENTRY = 0.050


def measure() -> Iterator[Spell]:
    """Yield the cost of a new verdict after each entry."""
    rng = np.random.default_rng(2)
    counts = [BenchCount(r, 500, int(rng.binomial(500, 0.02)), 3) for r in range(1, 49)]
    limits = BenchLimits(0.97, 0.02, 0.02)
    yield Spell("bench run", seconds_of(lambda: report_bench(counts, limits)), ENTRY)
    target = Q(6.5, "in")
    rows = {row: Q(rng.normal(6.5, 0.8, 250), "in") for row in range(1, 49)}
    yield Spell("spacing, one row", seconds_of(lambda: measure_spacings(rows[1], target)), ENTRY)
    yield Spell(
        "spacing, all rows",
        seconds_of(
            lambda: (measure_rows(rows, target), measure_spacings(all_spacings(rows), target))
        ),
        ENTRY,
    )
    digs = {row: Q(rng.normal(2, 0.15, 6), "in") for row in range(1, 49)}
    goal = DepthGoal(Q(2, "in"), Q(0.25, "in"), 0.8)
    yield Spell("depth digs", seconds_of(lambda: judge_depths(digs, goal)), ENTRY)
