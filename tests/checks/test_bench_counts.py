"""Bench counts against printed intervals, exact tests of reference libraries, and simulation."""

import numpy as np
import pytest
from scipy import stats
from statsmodels.stats.multitest import multipletests
from statsmodels.stats.proportion import proportion_confint

from changeover.proof.exact import Side, binomial_p, fisher_p
from changeover.proof.false_alarms import Control, adjusted
from changeover.proof.intervals import mean_interval, wilson, wilson_many
from changeover.proof.power import plan_run

SIDES = {Side.MORE: "greater", Side.FEWER: "less", Side.BOTH: "two-sided"}


@pytest.mark.parametrize(
    ("events", "cells", "low", "high"),
    [(0, 100, 0, 3.699), (0, 250, 0, 1.513), (1, 250, 0.071, 2.231), (5, 250, 0.857, 4.596)],
)
def test_wilson_interval_of_bench_counts(outside_check, events, cells, low, high) -> None:
    interval = wilson(events, cells)
    for bound, printed, ours in (("low", low, interval.low), ("high", high, interval.high)):
        outside_check(
            calculation=f"Wilson 95 % interval of {events}/{cells}, {bound}",
            source="Wilson 1927, formula worked by hand",
            trust="derived",
            printed=printed,
            ours=100 * ours,
            unit="%",
            tolerance=0.0005,
        )


@pytest.mark.parametrize(
    ("events", "trials", "low", "high"),
    [
        (81, 263, 0.2553, 0.3662),
        (15, 148, 0.0624, 0.1605),
        (0, 20, 0, 0.1611),
        (1, 29, 0.0061, 0.1718),
    ],
)
def test_wilson_interval_as_printed_by_newcombe(outside_check, events, trials, low, high) -> None:
    interval = wilson(events, trials)
    for bound, printed, ours in (("low", low, interval.low), ("high", high, interval.high)):
        outside_check(
            calculation=f"Wilson 95 % interval of {events}/{trials}, {bound}",
            source="Newcombe 1998, Statistics in Medicine 17(8):857-872, table I, method 3",
            trust="from memory",
            printed=printed,
            ours=ours,
            unit="share",
            tolerance=0.00006,
        )


@pytest.mark.parametrize(("rows", "cells", "alarm"), [(1, 249, 10), (12, 449, 19), (24, 493, 21)])
def test_cells_needed_to_tell_two_from_five_percent(outside_check, rows, cells, alarm) -> None:
    plan = plan_run(0.02, 0.05, rows)
    for what, printed, ours in (("cells", cells, plan.cells), ("alarm", alarm, plan.alarm_at)):
        outside_check(
            calculation=f"bench run to tell 2 % from 5 %, {rows} rows, {what}",
            source="exact binomial, 80 % power, one-sided 5 % over the rows",
            trust="derived",
            printed=printed,
            ours=ours,
            unit="count",
            tolerance=0,
        )


def test_every_run_above_the_plan_keeps_the_power_by_scipy() -> None:
    cells = np.arange(249, 900)
    alarm = stats.binom.isf(0.05, cells, 0.02) + 1
    assert np.all(stats.binom.sf(alarm - 1, cells, 0.05) >= 0.8)
    assert stats.binom.sf(stats.binom.isf(0.05, 248, 0.02), 248, 0.05) < 0.8


def test_wilson_agrees_with_statsmodels() -> None:
    rng = np.random.default_rng(3)
    trials = rng.integers(1, 2000, 400)
    events = rng.integers(0, trials + 1)
    low, high = wilson_many(events, trials, 0.9)
    theirs = proportion_confint(events, trials, 0.1, "wilson")
    np.testing.assert_allclose(low, np.clip(theirs[0], 0, 1), atol=1e-12)
    np.testing.assert_allclose(high, np.clip(theirs[1], 0, 1), atol=1e-12)


@pytest.mark.parametrize("side", SIDES)
def test_binomial_and_fisher_agree_with_scipy(side) -> None:
    rng = np.random.default_rng(4)
    for _ in range(150):
        n, m = (int(x) for x in rng.integers(1, 600, 2))
        k, j = int(rng.binomial(n, 0.03)), int(rng.binomial(m, 0.02))
        share = float(rng.uniform(0.001, 0.2))
        theirs = stats.binomtest(k, n, share, SIDES[side]).pvalue
        assert binomial_p(k, n, share, side) == pytest.approx(theirs, rel=1e-8, abs=1e-14)
        exact = stats.fisher_exact([[k, n - k], [j, m - j]], SIDES[side]).pvalue
        assert fisher_p(k, n, j, m, side) == pytest.approx(exact, rel=1e-7, abs=1e-13)


def test_fisher_on_the_tea_tasting(outside_check) -> None:
    outside_check(
        calculation="Fisher's exact test, 3 of 4 against 1 of 4",
        source="Fisher 1935, the lady tasting tea: 17/70",
        trust="published",
        printed=0.2429,
        ours=fisher_p(3, 4, 1, 4),
        unit="probability",
        tolerance=0.00005,
    )


@pytest.mark.parametrize(
    ("control", "name"), [(Control.HOLM, "holm"), (Control.BENJAMINI_HOCHBERG, "fdr_bh")]
)
def test_false_alarm_control_agrees_with_statsmodels(control, name) -> None:
    rng = np.random.default_rng(5)
    for size in (1, 2, 7, 48):
        p = rng.uniform(0, 1, size) ** 3
        p[: size // 3] = p[0]
        np.testing.assert_allclose(adjusted(p, control), multipletests(p, method=name)[1])


def test_benjamini_hochberg_on_their_own_example(outside_check) -> None:
    p = [0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459]
    p += [0.3240, 0.4262, 0.5719, 0.6528, 0.7590, 1.0]
    source = "Benjamini & Hochberg 1995, J. R. Stat. Soc. B 57:289-300"
    for control, printed in ((Control.BENJAMINI_HOCHBERG, 4), (Control.HOLM, 3)):
        outside_check(
            calculation=f"alarms among 15 tests at 5 %, {control}",
            source=source,
            trust="from memory",
            printed=printed,
            ours=int((adjusted(p, control) <= 0.05).sum()),
            unit="count",
            tolerance=0,
        )


def test_padjust_example_of_the_standard_library_for_javascript(outside_check) -> None:
    p = [0.319, 0.201, 0.4, 0.374, 0.113]
    printed = {Control.HOLM: [0.957, 0.804, 0.957, 0.957, 0.565]}
    for figure, ours in zip(printed[Control.HOLM], adjusted(p), strict=True):
        outside_check(
            calculation="Holm-adjusted p-value",
            source="stdlib.io, documentation of padjust",
            trust="published",
            printed=figure,
            ours=ours,
            unit="probability",
            tolerance=0.0005,
        )


def test_mean_interval_agrees_with_scipy() -> None:
    x = np.random.default_rng(6).normal(2, 0.2, 9)
    ours = mean_interval(x, 0.9)
    theirs = stats.t.interval(0.9, x.size - 1, x.mean(), stats.sem(x))
    assert (ours.low, ours.high) == pytest.approx(theirs)


@pytest.mark.parametrize(("skips", "doubles"), [(0.03, 0.02), (0.05, 0.05), (0.10, 0.02)])
def test_known_rates_lie_in_their_intervals_at_the_stated_rate(skips, doubles) -> None:
    rng = np.random.default_rng(20_251_125)
    cells = 500
    drawn = rng.multinomial(cells, [skips, doubles, 1 - skips - doubles], 2000)
    for events, true in zip(drawn.T, (skips, doubles, 1 - skips - doubles), strict=True):
        low, high = wilson_many(events, np.full(2000, cells))
        assert 0.93 <= np.mean((low <= true) & (true <= high)) <= 0.97
