"""The plan of a bench run."""

import pytest

from changeover.proof.exact import binomial_probabilities
from changeover.proof.power import plan_run
from changeover.quantities import Refusal


@pytest.mark.parametrize(("good", "bad", "rows"), [(0.02, 0.05, 1), (0.01, 0.04, 16), (0, 0.03, 1)])
def test_the_plan_keeps_what_it_promises(good, bad, rows) -> None:
    plan = plan_run(good, bad, rows)
    assert plan.false_alarm <= 0.05 / rows
    assert plan.power >= 0.8
    assert binomial_probabilities(plan.cells, bad)[plan.alarm_at :].sum() == pytest.approx(
        plan.power
    )


def test_finer_differences_need_longer_runs() -> None:
    assert plan_run(0.02, 0.03).cells > plan_run(0.02, 0.05).cells
    assert plan_run(0.02, 0.05, 24).cells > plan_run(0.02, 0.05, 1).cells


def test_a_run_one_cell_shorter_can_fall_short() -> None:
    plan = plan_run(0.02, 0.05)
    shorter = binomial_probabilities(plan.cells - 1, 0.05)[plan.alarm_at :].sum()
    assert shorter < 0.8


@pytest.mark.parametrize(
    "arguments", [(0.05, 0.02), (0.02, 0.02), (-0.1, 0.2), (0.02, 1.0), (0.02, 0.05, 0)]
)
def test_impossible_plans_are_refused(arguments) -> None:
    with pytest.raises(Refusal):
        plan_run(*arguments)


def test_a_plan_beyond_reason_is_refused() -> None:
    with pytest.raises(Refusal, match="over 20000 cells"):
        plan_run(0.02, 0.0201)
