"""The cost of a day late is an amount of money that can be, or is refused in a sentence."""

import pytest

from changeover.desk.season.lines import read_lateness_cost
from changeover.desk.season.plan import read_inputs
from changeover.quantities import Refusal
from changeover.store.opening import Store
from changeover.store.values import PlannedJob


@pytest.mark.parametrize(
    ("text", "cost"), [("", None), ("600", 600.0), ("1,250.5", 1250.5), ("12\u202f000", 12_000.0)]
)
def test_money_is_read_as_it_is_written(text: str, cost: float | None) -> None:
    assert read_lateness_cost(text) == cost


@pytest.mark.parametrize("text", ["nan", "inf", "1e308", "-5", "-0.01", "2e9"])
def test_what_no_day_can_cost_is_refused(text: str) -> None:
    with pytest.raises(Refusal, match="cannot be its cost; enter 0 to 1"):
        read_lateness_cost(text)


def test_a_word_is_no_amount_of_money() -> None:
    with pytest.raises(Refusal, match="is no amount of money"):
        read_lateness_cost("dear")


def test_a_job_cannot_hold_a_cost_that_is_no_figure(demo: Store) -> None:
    lot = read_inputs(demo).fleet[0].lots[0].number
    with pytest.raises(Refusal, match="cannot be below zero"):
        PlannedJob(lot, name="late", lateness_cost=float("nan"))
