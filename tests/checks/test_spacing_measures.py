"""Spacing measures against worked figures, a second implementation, and simulation."""

import math
import statistics

import numpy as np
import pytest

from changeover.proof.bootstrap import bootstrap_spacings
from changeover.proof.intervals import wilson_many
from changeover.proof.spacing import EVENLY_SPREAD, SpacingMeasures, measure_spacings
from changeover.quantities import Q
from changeover.seed.rate import spacing_in_row

VECTOR = "18 20 22 19 17 2 20 41 18 21 23 19 20 6 14 40 22 18 61 20 19 21 17 20 24 18 22 20 19 21"
SPACINGS = [float(x) for x in VECTOR.split()]
SPACING_RULE = "divisions of Kachman & Smith 1995 as Iowa State University quotes them"


@pytest.fixture(scope="module")
def measured() -> SpacingMeasures:
    return measure_spacings(Q(np.array(SPACINGS), "cm"), Q(20, "cm"))


@pytest.mark.parametrize(
    ("name", "printed"), [("multiples", 6.667), ("quality_of_feed", 83.333), ("misses", 10.0)]
)
def test_shares_of_spacings(outside_check, measured, name, printed) -> None:
    outside_check(
        calculation=f"{name.replace('_', ' ')} by spacings, 30 made-up spacings",
        source=SPACING_RULE,
        trust="derived",
        printed=printed,
        ours=100 * getattr(measured.by_spacings, name),
        unit="%",
        tolerance=0.0005,
    )


@pytest.mark.parametrize(
    ("name", "printed"), [("multiples", 6.25), ("quality_of_feed", 81.25), ("misses", 12.5)]
)
def test_shares_of_drop_positions(outside_check, measured, name, printed) -> None:
    outside_check(
        calculation=f"{name.replace('_', ' ')} by drop positions, 30 made-up spacings",
        source="ISO 7256-1:1984 as remembered; the algebra closes",
        trust="from memory",
        printed=printed,
        ours=100 * getattr(measured.by_positions, name),
        unit="%",
        tolerance=0.0005,
    )


def test_divisions_and_precision_of_the_made_up_row(outside_check, measured) -> None:
    assert measured.counts == (2, 25, 2, 1, 0)
    assert measured.by_positions.of == 32
    outside_check(
        calculation="precision over the target, 30 made-up spacings",
        source="standard deviation of division II with n − 1 over the target",
        trust="derived",
        printed=10.774,
        ours=100 * measured.precision_ref,
        unit="%",
        tolerance=0.0005,
    )


def test_upper_limit_of_precision(outside_check) -> None:
    even = Q(np.linspace(0.5, 1.5, 100_001)[1:], "m")
    for ours, source in (
        (EVENLY_SPREAD, "standard deviation of an even spread, 1/√12"),
        (measure_spacings(even, Q(1, "m")).precision_ref, "division II filled evenly"),
    ):
        outside_check(
            calculation="upper limit of precision",
            source=source,
            trust="derived",
            printed=28.9,
            ours=100 * ours,
            unit="%",
            tolerance=0.05,
        )


def test_skips_alone_give_the_spacing_spread_of_theory(outside_check) -> None:
    target = spacing_in_row(Q(30_000, "1/acre"), Q(30, "in")).to("in")
    gaps = np.random.default_rng(7).geometric(0.95, 400_000)
    measured = measure_spacings(Q(gaps * target.magnitude, "in"), target)
    outside_check(
        calculation="spread of spacing from 5 % independent skips at 30 000/ac, 30 in",
        source="target · √p/(1 − p), geometric distribution",
        trust="derived",
        printed=1.64,
        ours=measured.sd.to("in").magnitude,
        unit="in",
        tolerance=0.02,
    )


@pytest.mark.parametrize(
    ("spacing", "target", "division"),
    [
        (10, 20, 0),
        (0.05, 0.1, 0),
        (10.001, 20, 1),
        (30, 20, 1),
        (0.15, 0.1, 1),
        (0.45, 0.3, 1),
        (1.05, 0.7, 1),
        (30.001, 20, 2),
        (0.25, 0.1, 2),
        (0.35, 0.1, 3),
        (70.1, 20, 4),
    ],
)
def test_edges_belong_to_the_division_below(spacing, target, division) -> None:
    counts = measure_spacings(Q(np.array([spacing]), "m"), Q(target, "m")).counts
    assert counts.index(1) == division


def plain_measures(spacings: list[float], target: float) -> dict[str, float]:
    """A second implementation, plain Python, spacing by spacing."""
    divisions = [0] * 5
    singles = []
    for x in spacings:
        ratio = round(x / target, 9)
        number = sum(ratio > edge for edge in (0.5, 1.5, 2.5, 3.5))
        divisions[number] += 1
        if number == 1:
            singles.append(x)
    a, b, c, d, e = divisions
    positions = b + 2 * c + 3 * d + 4 * e
    return {
        "multiples": a / len(spacings),
        "feed": b / len(spacings),
        "misses": (c + d + e) / len(spacings),
        "n2": a / positions,
        "n1": (len(spacings) - 2 * a) / positions,
        "n0": (c + 2 * d + 3 * e) / positions,
        "precision_ref": statistics.stdev(singles) / target,
        "precision_mean": statistics.stdev(singles) / statistics.fmean(singles),
        "mean": statistics.fmean(spacings),
        "sd": statistics.stdev(spacings),
        "cp3": sum(abs(x - target) <= 0.015 + 1e-12 for x in spacings) / len(spacings),
    }


@pytest.mark.parametrize("seed", range(8))
def test_agrees_with_a_second_implementation(seed) -> None:
    rng = np.random.default_rng(seed)
    target = float(rng.uniform(0.02, 0.6))
    steps = rng.choice([0.02, 1, 1, 1, 1, 1, 2, 3, 5], 700)
    x = np.abs(target * (steps + rng.normal(0, 0.12, steps.size)))
    ours, theirs = measure_spacings(Q(x, "m"), Q(target, "m")), plain_measures(x.tolist(), target)
    found = [ours.by_spacings.multiples, ours.by_spacings.quality_of_feed, ours.by_spacings.misses]
    by = ours.by_positions
    found += [by.multiples, by.quality_of_feed, by.misses, ours.precision_ref, ours.precision_mean]
    found += [ours.mean.to("m").magnitude, ours.sd.to("m").magnitude, ours.cp3_target]
    assert found == pytest.approx(list(theirs.values()), rel=1e-9)


def test_known_misses_lie_in_their_interval_at_the_stated_rate() -> None:
    rng = np.random.default_rng(8)
    skips = 0.06
    gaps = rng.geometric(1 - skips, (2000, 250)) + rng.normal(0, 0.05, (2000, 250))
    counts = [
        measure_spacings(Q(row, "m"), Q(1.0, "m")).counts for row in np.clip(gaps, 0.01, None)
    ]
    misses = np.array([c + d + e for _, _, c, d, e in counts])
    low, high = wilson_many(misses, np.full(2000, 250))
    assert 0.93 <= np.mean((low <= skips) & (skips <= high)) <= 0.97


def test_bootstrap_covers_the_true_precision_at_about_the_stated_rate() -> None:
    rng = np.random.default_rng(9)
    hits = 0
    for _ in range(400):
        x = Q(rng.normal(1, 0.12, 250), "m")
        interval = bootstrap_spacings(x, Q(1.0, "m"), draws=300, rng=rng).precision_ref
        hits += 0.12 in interval
    assert 0.90 <= hits / 400 <= 0.98


def test_bootstrap_spread_agrees_with_theory() -> None:
    x = np.random.default_rng(10).normal(1, 0.2, 2000)
    interval = bootstrap_spacings(Q(x, "m"), Q(1.0, "m")).mean
    theory = 2 * 1.96 * x.std(ddof=1) / math.sqrt(x.size)
    assert interval.width == pytest.approx(theory, rel=0.06)
