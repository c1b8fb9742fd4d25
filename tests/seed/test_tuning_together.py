"""One level for many meters: least mean error over them, whether they are alike or not."""

import numpy as np
import pytest

from changeover.quantities import Q, Refusal
from changeover.seed.bench_counts import BenchCounts, Reading, counts_by_meter
from changeover.seed.tuning import estimate
from changeover.seed.tuning_advice import Verdict, advise_together
from changeover.seed.tuning_together import estimate_together

LEVELS = np.array([2.5, 3.5, 5.0, 7.0])


def counts(skips, doubles, levels=LEVELS) -> BenchCounts:
    size = np.shape(skips)
    names = tuple(f"row {row + 1}" for row in range(size[0]))
    spread = np.broadcast_to(levels, size)
    return BenchCounts(
        names, spread, np.full(size, 500.0), np.array(skips, float), np.array(doubles, float)
    )


LOW = [40, 15, 4, 1], [3, 9, 30, 90]
HIGH = [90, 45, 18, 5], [0, 2, 6, 20]


def test_one_meter_alone_is_the_group() -> None:
    alone = counts([LOW[0]], [LOW[1]])
    assert estimate_together(alone).best == pytest.approx(estimate(alone).best)


def test_meters_that_differ_meet_between() -> None:
    both = counts([LOW[0], HIGH[0]], [LOW[1], HIGH[1]])
    low, high = estimate(both).best
    assert low < estimate_together(both).best[0] < high


def test_no_level_run_has_a_lower_mean_error() -> None:
    both = counts([LOW[0], HIGH[0]], [LOW[1], HIGH[1]])
    found = estimate_together(both)
    counted = (both.skips + both.doubles).mean(axis=0) / 500
    assert found.error[0] <= counted.min() + 0.005


def test_more_meters_of_a_kind_narrow_the_interval() -> None:
    few = estimate_together(counts([LOW[0]] * 2, [LOW[1]] * 2))
    many = estimate_together(counts([LOW[0]] * 16, [LOW[1]] * 16))
    assert many.best_high / many.best_low < few.best_high / few.best_low


def test_meters_run_at_one_level_each_are_fitted_as_one() -> None:
    runs = [
        Reading(str(row), Q(level, "kPa"), 500, skips, doubles)
        for row, (level, skips, doubles) in enumerate(zip(LEVELS, *LOW, strict=True))
    ]
    advice = advise_together(counts_by_meter(runs))
    assert advice.name == "All meters"
    assert advice.verdict is Verdict.FOUND


def test_all_runs_at_one_level_cannot_decide() -> None:
    runs = [Reading(str(row), Q(4, "kPa"), 500, 9, 3) for row in range(3)]
    assert advise_together(counts_by_meter(runs)).verdict is Verdict.ONE_LEVEL
    with pytest.raises(Refusal, match="two or more levels"):
        estimate_together(counts_by_meter(runs))
