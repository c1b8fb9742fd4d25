"""Depth digs judged, notches proposed, and digs still needed."""

import numpy as np
import pytest

from changeover.proof.bench import Standing
from changeover.proof.depth import (
    DepthDigs,
    DepthGoal,
    digs_for,
    judge_depth,
    judge_depths,
    notch_change,
)
from changeover.proof.intervals import student_quantile
from changeover.proof.verdict_findings import depth_findings
from changeover.quantities import Q, Refusal

GOAL = DepthGoal(Q(2, "in"), Q(0.25, "in"), 0.8)
STEP = Q(0.25, "in")


def digs(mean: float, spread: float = 0.05, n: int = 8, row: int = 1) -> DepthDigs:
    x = np.linspace(-1, 1, n)
    return judge_depth(row, Q(mean + spread * x / x.std(ddof=1), "in"), GOAL)


@pytest.mark.parametrize(
    ("mean", "standing"),
    [(2.0, Standing.WITHIN), (1.73, Standing.OPEN), (1.5, Standing.SHORT), (2.5, Standing.SHORT)],
)
def test_the_mean_against_its_tolerance(mean, standing) -> None:
    assert digs(mean).standing is standing


def test_mean_spread_and_share() -> None:
    found = judge_depth(3, Q(np.array([1.6, 1.8, 2.0, 2.2, 2.4]), "in"), GOAL)
    assert found.mean.to("in").magnitude == pytest.approx(2)
    assert found.sd.to("in").magnitude == pytest.approx(np.sqrt(0.1))
    assert found.in_tolerance == 0.6


def test_a_dig_on_the_edge_is_in_tolerance() -> None:
    assert judge_depth(1, Q(np.array([1.75, 2.25]), "in"), GOAL).in_tolerance == 1


def test_metric_digs_have_the_same_standing() -> None:
    inches = Q(np.array([1.9, 2.0, 2.1, 2.05]), "in")
    one, other = judge_depth(1, inches, GOAL), judge_depth(1, inches.to("mm"), GOAL)
    assert (one.standing, one.digs_needed) == (other.standing, other.digs_needed)
    assert other.mean.units == Q(1, "mm").units


@pytest.mark.parametrize("spread", [0.05, 0.125, 0.2, 0.5, 2.0])
def test_digs_needed_are_the_least_that_do(spread) -> None:
    n = digs_for(Q(spread, "in"))
    half = [student_quantile(0.95, k - 1) * spread / np.sqrt(k) for k in (n, max(n - 1, 2))]
    assert half[0] <= 0.125
    assert n == 2 or half[1] > 0.125


def test_digs_still_needed_are_those_beyond_the_ones_dug() -> None:
    found = digs(2.0, 0.2, 6)
    assert found.digs_needed == digs_for(found.sd) - 6
    assert digs(2.0, 0.01, 6).digs_needed == 0


def test_depths_that_scatter_without_end_are_refused() -> None:
    with pytest.raises(Refusal, match="scatter"):
        digs_for(Q(50, "in"))


@pytest.mark.parametrize(
    ("mean", "change"), [(2.0, 0), (1.9, 0), (1.5, 2), (1.74, 1), (2.55, -2), (1.875, 0)]
)
def test_notches_by_the_depth_a_notch_gives(mean, change) -> None:
    assert notch_change(digs(mean, 0.02), GOAL.target, STEP) == change


def test_a_row_with_a_steeper_scale_needs_fewer_notches() -> None:
    assert notch_change(digs(1.5), GOAL.target, Q(0.5, "in")) == 1


def test_too_few_digs_propose_nothing() -> None:
    assert notch_change(digs(1.7, 0.4, 4), GOAL.target, STEP) is None
    one = judge_depth(1, Q(np.array([1.2]), "in"), GOAL)
    assert (one.interval, one.digs_needed, one.standing) == (None, None, Standing.OPEN)
    assert notch_change(one, GOAL.target, STEP) is None


def test_shallow_rows_become_findings_with_the_notches() -> None:
    rows = [digs(2.0, 0.02, 30, row=1), digs(1.5, 0.02, 30, row=2)]
    (found,) = depth_findings(rows, GOAL, {1: STEP, 2: STEP})
    assert found.row == 2
    assert found.advice[0].text == "Set the depth 2 notches deeper."


def test_without_a_goal_nothing_is_judged() -> None:
    found = judge_depth(1, Q(np.array([1.9, 2.0]), "in"))
    assert (found.standing, found.in_tolerance) == (Standing.NO_LIMIT, None)


@pytest.mark.parametrize("x", [[], [-0.1], [13.0], [float("nan")]])
def test_impossible_depths_are_refused(x) -> None:
    with pytest.raises(Refusal, match="Row 4"):
        judge_depth(4, Q(np.array(x), "in"), GOAL)


def test_no_rows_are_refused() -> None:
    with pytest.raises(Refusal, match="at least one row"):
        judge_depths({}, GOAL)


@pytest.mark.parametrize("goal", [(0, 0.25), (2, 0), (20, 0.25)])
def test_impossible_goals_are_refused(goal) -> None:
    with pytest.raises(Refusal):
        DepthGoal(Q(goal[0], "in"), Q(goal[1], "in"))
