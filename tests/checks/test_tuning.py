"""The tuning fit against a reference library, and against truth that is known because made."""

import numpy as np
import pytest

from changeover.quantities import Q
from changeover.seed.bench_counts import BenchCounts
from changeover.seed.logistic_fit import fit_logistic, logistic
from changeover.seed.tuning import estimate
from changeover.seed.tuning_together import estimate_together

LEVELS = np.array([2.5, 3.2, 4.0, 5.0, 6.3, 8.0])
SKIPS = np.array([60, 31, 14, 9, 3, 1])
DOUBLES = np.array([1, 4, 5, 12, 22, 55])


def reference(hits: np.ndarray, trials: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Fit by the reference library: parameters and standard errors against ln vacuum."""
    import statsmodels.api as sm

    x = sm.add_constant(np.log(LEVELS))
    counts = np.column_stack([hits, trials - hits])
    fitted = sm.GLM(counts, x, family=sm.families.Binomial()).fit()
    return fitted.params, fitted.bse


@pytest.mark.parametrize(("name", "hits"), [("skips", SKIPS), ("doubles", DOUBLES)])
def test_plain_fit_equals_the_reference_library(outside_check, name, hits) -> None:
    trials = np.full(LEVELS.shape, 500.0)
    fit = fit_logistic(np.log(LEVELS)[None], trials[None], hits[None].astype(float), shrink=False)
    (intercept, slope), (_, error) = reference(hits, trials)
    ours = {
        "intercept": float(fit.intercept[0] - fit.slope[0] * fit.middle[0]),
        "slope": float(fit.slope[0]),
        "standard error of the slope": float(np.sqrt(fit.covariance[0, 1, 1] / fit.dispersion[0])),
    }
    printed = {"intercept": intercept, "slope": slope, "standard error of the slope": error}
    for part, value in printed.items():
        outside_check(
            calculation=f"logistic fit of {name}, {part}",
            source="statsmodels GLM, binomial",
            trust="published",
            printed=value,
            ours=ours[part],
            unit="",
            tolerance=1e-5 * abs(value),
        )


def test_shrunken_fit_stays_near_the_plain_one_with_many_counts(outside_check) -> None:
    trials = np.full((1, 6), 500.0)
    plain, firm = (
        fit_logistic(np.log(LEVELS)[None], trials, SKIPS[None].astype(float), shrink=shrink)
        for shrink in (False, True)
    )
    outside_check(
        calculation="logistic fit of skips, slope with Jeffreys' prior against plain",
        source="Firth 1993, Biometrika 80:27-38: a bias of the order 1/n is removed",
        trust="derived",
        printed=float(plain.slope[0]),
        ours=float(firm.slope[0]),
        unit="",
        tolerance=0.1 * abs(float(plain.slope[0])),
    )


def made(
    meters, cells, levels, seed, slope_skips=-4.0, slope_doubles=3.0
) -> tuple[BenchCounts, float, float]:
    """Make counts from known curves; return them with the true best level and its error."""
    chance = np.random.default_rng(seed)

    def shares(x: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        return logistic(-3.9 + slope_skips * x), logistic(-3.9 + slope_doubles * x)

    skip, double = shares(np.log(levels / 4.5))
    size = (meters, levels.size)
    skips = chance.binomial(cells, skip, size).astype(float)
    doubles = chance.binomial((cells - skips).astype(int), double / (1 - skip), size).astype(float)
    fine = np.linspace(np.log(levels[0] / 4.5), np.log(levels[-1] / 4.5), 20_001)
    total = sum(shares(fine))
    names = tuple(str(one) for one in range(meters))
    counts = BenchCounts(
        names, np.broadcast_to(levels, size), np.full(size, float(cells)), skips, doubles
    )
    return counts, 4.5 * np.exp(fine[total.argmin()]), total.min()


@pytest.mark.parametrize(("cells", "levels"), [(100, 5), (250, 4), (250, 8), (1_000, 6)])
def test_interval_covers_the_known_best_level(outside_check, cells, levels) -> None:
    counts, truth, _ = made(300, cells, np.linspace(2.5, 8.0, levels), seed=11)
    found = estimate(counts)
    covered = (found.best_low <= truth + 1e-3) & (found.best_high >= truth - 1e-3)
    outside_check(
        calculation=f"share of 95 % intervals that hold the best vacuum, {cells} cells × {levels}",
        source="simulation of 300 meters with known truth",
        trust="derived",
        printed=95,
        ours=float(covered.mean() * 100),
        unit="%",
        tolerance=4.5,
        note="honest: never far below 95, wider where meters differ",
    )


@pytest.mark.parametrize("spread", [0.0, 0.4, 0.8])
def test_interval_of_a_fan_covers_the_best_level_of_its_meters(outside_check, spread) -> None:
    covered = [holds_best_of_unlike_meters(seed, spread) for seed in range(60)]
    outside_check(
        calculation=f"share of 95 % intervals for 12 meters on a fan, logit spread {spread}",
        source="simulation of 60 fans with known truth",
        trust="derived",
        printed=95,
        ours=100 * sum(covered) / len(covered),
        unit="%",
        tolerance=6,
        note="meters that differ do not pass for chance",
    )


def holds_best_of_unlike_meters(seed: int, spread: float) -> bool:
    chance, levels, cells = np.random.default_rng(seed), np.linspace(2.5, 8.0, 6), 250
    skip_level, double_level = -3.9 + chance.normal(0, spread, (2, 12, 1))

    def shares(x: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        return logistic(skip_level - 4 * x), logistic(double_level + 3 * x)

    skip, double = shares(np.log(levels / 4.5))
    skips = chance.binomial(cells, skip).astype(float)
    doubles = chance.binomial((cells - skips).astype(int), double / (1 - skip)).astype(float)
    size = skips.shape
    names = tuple(str(meter) for meter in range(12))
    counts = BenchCounts(
        names, np.broadcast_to(levels, size), np.full(size, float(cells)), skips, doubles
    )
    fine = np.linspace(np.log(2.5 / 4.5), np.log(8 / 4.5), 4_001)
    truth = 4.5 * np.exp(fine[sum(shares(fine)).mean(axis=0).argmin()])
    found = estimate_together(counts)
    return bool(found.best_low[0] <= truth * 1.001 and found.best_high[0] >= truth * 0.999)


def test_best_level_closes_in_on_the_truth_as_cells_grow() -> None:
    errors = []
    for cells in (100, 400, 1_600):
        counts, truth, _ = made(200, cells, np.linspace(2.5, 8.0, 6), seed=5)
        errors.append(float(np.abs(estimate(counts).best - truth).mean()))
    assert errors[0] > 1.5 * errors[1] > 2.0 * errors[2]


def test_error_at_the_best_level_is_the_known_one(outside_check) -> None:
    counts, _, error = made(400, 500, np.linspace(2.5, 8.0, 6), seed=2)
    outside_check(
        calculation="mean error at the best vacuum, 500 cells × 6",
        source="simulation of 400 meters with known truth",
        trust="derived",
        printed=error * 100,
        ours=float(estimate(counts).error.mean() * 100),
        unit="%",
        tolerance=0.2,
    )


def test_gain_over_the_present_level_is_the_known_one(outside_check) -> None:
    counts, _, error = made(400, 500, np.linspace(2.5, 8.0, 6), seed=8)
    away = np.log(2.5 / 4.5)
    present = float(logistic(np.array(-3.9 - 4 * away)) + logistic(np.array(-3.9 + 3 * away)))
    outside_check(
        calculation="mean gain over 2.5 kPa, 500 cells × 6",
        source="simulation of 400 meters with known truth",
        trust="derived",
        printed=(present - error) * 100,
        ours=float(np.mean(estimate(counts, Q(2.5, "kPa")).gain) * 100),
        unit="%",
        tolerance=0.4,
    )
