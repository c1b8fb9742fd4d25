"""Fitting skips and doubles of 48 rows at 8 levels of vacuum, and the advice that follows."""

from collections.abc import Iterator

import numpy as np

from changeover.quantities import Q
from changeover.seed.bench_counts import BenchCounts
from changeover.seed.logistic_fit import fit_logistic
from changeover.seed.tuning import estimate
from changeover.seed.tuning_advice import advise, advise_together
from tests.bench.timing import Ratio, Spell, seconds_of

ROWS, LEVELS, CELLS = 48, 8, 500
LIMIT = 0.5


def counts() -> BenchCounts:
    """Return made counts whose errors are least near 4.7 kPa."""
    chance = np.random.default_rng(3)
    levels = np.broadcast_to(np.linspace(2.5, 8.0, LEVELS), (ROWS, LEVELS))
    x = np.log(levels / 4.5)
    skips = chance.binomial(CELLS, 1 / (1 + np.exp(3.9 + 4 * x))).astype(float)
    doubles = chance.binomial(CELLS // 2, 1 / (1 + np.exp(3.9 - 3 * x))).astype(float)
    names = tuple(f"row {row + 1}" for row in range(ROWS))
    return BenchCounts(names, levels, np.full((ROWS, LEVELS), float(CELLS)), skips, doubles)


def measure() -> Iterator[Ratio | Spell]:
    """Yield the fit alone against row by row, and the whole tuning against its limit."""
    made = counts()
    x = np.log(made.levels)
    yield Spell(
        "tuning fit with intervals, 48 rows × 8 levels", seconds_of(lambda: estimate(made)), LIMIT
    )
    yield Spell(
        "advice for each row and all together",
        seconds_of(lambda: (advise(made, Q(3, "kPa")), advise_together(made, Q(3, "kPa")))),
        LIMIT,
    )
    yield Ratio(
        "logistic fits of all rows at once",
        seconds_of(lambda: fit_logistic(x, made.cells, made.skips)),
        seconds_of(
            lambda: [
                fit_logistic(x[[row]], made.cells[[row]], made.skips[[row]]) for row in range(ROWS)
            ]
        ),
        "row by row",
        0.2,
    )
