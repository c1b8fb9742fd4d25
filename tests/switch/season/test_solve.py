"""The season is planned no later than can be, and breaks nothing that was asked."""

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from changeover.quantities import Refusal
from changeover.switch.season.solve import (
    Fixed,
    Limits,
    Season,
    SeasonJob,
    SeasonPlanter,
    SeasonStatus,
    season_plan,
)
from tests.switch.season_cases import (
    contractor_season,
    crowded_season,
    every_late_cost,
    late_cost,
    random_season,
)

QUICK = Limits(seconds=10, workers=1)
TWO = (SeasonPlanter("a"), SeasonPlanter("b"))


@pytest.mark.parametrize("seed", range(6))
def test_small_seasons_are_as_good_as_trying_everything(seed: int) -> None:
    season = random_season(seed, jobs=4, planters=2)
    plan = season_plan(season, QUICK)
    assert plan.best.late_cost == pytest.approx(every_late_cost(season))
    assert plan.status is SeasonStatus.OPTIMAL


@settings(max_examples=12)
@given(seed=st.integers(0, 10_000))
def test_every_job_stands_once_and_no_two_overlap_on_a_planter(seed: int) -> None:
    season = random_season(seed, jobs=5, planters=2)
    best = season_plan(season, Limits(seconds=3, workers=1)).best
    assert sorted(slot.job for slot in best.slots) == sorted(job.key for job in season.jobs)
    for planter in season.planters:
        slots = best.on(planter.name)
        for one, other in itertools.pairwise(slots):
            assert other.start >= one.end + planter.switch.get((one.job, other.job), 0)


@settings(max_examples=12)
@given(seed=st.integers(0, 10_000))
def test_the_cost_told_is_that_of_the_order_told(seed: int) -> None:
    season = random_season(seed, jobs=5, planters=2)
    best = season_plan(season, Limits(seconds=3, workers=1)).best
    jobs = {job.key: job for job in season.jobs}
    plain = sum(
        late_cost(season, planter, tuple(jobs[slot.job] for slot in best.on(planter.name)))
        for planter in season.planters
    )
    assert best.late_cost == pytest.approx(plain)


@pytest.mark.parametrize("seed", range(3))
def test_the_plan_is_never_later_than_either_simple_order(seed: int) -> None:
    plan = season_plan(random_season(seed, jobs=7, planters=2), QUICK)
    simple = [order.late_cost for order in (plan.as_entered, plan.nearest_due) if order]
    assert simple
    assert plan.best.late_cost <= min(simple)
    assert plan.late_bound <= plan.best.late_cost


def test_a_fixed_job_stays_on_its_planter() -> None:
    jobs = (SeasonJob("one", {"a": 100, "b": 100}), SeasonJob("two", {"a": 100, "b": 100}))
    plan = season_plan(Season(jobs, TWO, fixed=(Fixed("one", "b"),)), QUICK)
    assert next(slot.planter for slot in plan.best.slots if slot.job == "one") == "b"


def test_one_set_of_parts_is_never_on_two_planters_on_one_day() -> None:
    discs = frozenset({"S56"})
    jobs = tuple(
        SeasonJob(key, {"a": 300, "b": 300}, parts=discs) for key in ("one", "two", "three")
    )
    best = season_plan(Season(jobs, TWO), QUICK).best
    days = [
        (slot.planter, day)
        for slot in best.slots
        for day in range(slot.first_day, slot.last_day + 1)
    ]
    for planter, day in days:
        assert not any(other != planter and that == day for other, that in days)


def test_a_season_too_large_to_be_tried_whole_has_bounds_under_its_plan() -> None:
    season = contractor_season(jobs=24)
    plan = season_plan(season, Limits(seconds=5, workers=2))
    assert sorted(slot.job for slot in plan.best.slots) == sorted(job.key for job in season.jobs)
    assert 0 <= plan.late_bound <= plan.best.late_cost
    assert 0 < plan.between_bound <= plan.best.between
    assert plan.as_entered
    assert plan.best.late_cost <= plan.as_entered.late_cost


def test_a_large_season_that_is_stopped_has_a_plan_no_later_than_the_simple_orders() -> None:
    asked = itertools.count()
    limits = Limits(seconds=60, workers=1, stop=lambda: next(asked) > 3)
    plan = season_plan(crowded_season(), limits)
    simple = [order.late_cost for order in (plan.as_entered, plan.nearest_due) if order]
    assert plan.stopped
    assert plan.best.late_cost <= min(simple)


def test_shared_parts_stay_apart_in_a_large_season_too() -> None:
    season = crowded_season(parts=(1, 3))
    best = season_plan(season, Limits(seconds=4, workers=1)).best
    sets = {job.key: job.parts for job in season.jobs}
    for one, other in itertools.combinations(best.slots, 2):
        if sets[one.job] & sets[other.job] and one.planter != other.planter:
            assert one.last_day < other.first_day or other.last_day < one.first_day


def test_a_job_that_no_planter_can_do_is_named() -> None:
    with pytest.raises(Refusal, match="swamp"):
        season_plan(Season((SeasonJob("swamp", {}),), TWO), QUICK)


def test_a_window_that_has_passed_is_named() -> None:
    late = SeasonJob("early field", {"a": 60}, due=2)
    with pytest.raises(Refusal, match="early field"):
        season_plan(Season((late,), TWO, today=9), QUICK)
