"""What the planters' cheapest rounds prove of a season is never more than can be reached."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from changeover.switch.season.numbers import Sequences, numbers_of
from changeover.switch.season.orders import nearest_due
from changeover.switch.season.relaxation import Asked, Relaxation, asked_of, late_unit, whole
from changeover.switch.season.rounds import Ended, Rounds, last_ends, round_of, steps_of
from tests.switch.season_cases import every_plan, random_season

HORIZON = 20_000
SMALL = st.builds(
    random_season,
    seed=st.integers(0, 10_000),
    jobs=st.integers(1, 4),
    planters=st.just(2),
    release=st.integers(0, 2),
)


def never() -> bool:
    return False


def bound(season, ways: bool, late: int, grid: int = 1) -> float:
    """Return the bound of a season at its end, begun from the simple order by due date."""
    numbers = numbers_of(season)
    told: list[float] = []
    relaxation = Relaxation(numbers, Asked(ways, late, HORIZON, grid, grid), never, told.append)
    relaxation.begin(nearest_due(numbers))
    relaxation.run()
    assert told == sorted(told)
    return relaxation.bound


@settings(max_examples=25, deadline=None)
@given(season=SMALL, grid=st.sampled_from([1, 7, 60]))
def test_the_bound_on_lateness_is_under_the_best_of_all_plans(season, grid: int) -> None:
    late = numbers_of(season).cost(nearest_due(numbers_of(season))).late
    least, _ = every_plan(season)
    assert bound(season, ways=False, late=late, grid=grid) <= 100 * least + 0.01


@settings(max_examples=25, deadline=None)
@given(season=SMALL, grid=st.sampled_from([1, 30]))
def test_the_bound_on_minutes_is_under_the_best_of_the_least_late_plans(season, grid: int) -> None:
    late, minutes = every_plan(season)
    assert bound(season, ways=True, late=round(100 * late), grid=grid) <= minutes + 0.01


@pytest.mark.parametrize("seed", range(5))
def test_on_one_planter_the_bound_on_lateness_is_met(seed: int) -> None:
    season = random_season(seed, jobs=4, planters=1)
    numbers = numbers_of(season)
    late = numbers.cost(nearest_due(numbers)).late
    proven = whole(bound(season, ways=False, late=late), late_unit(numbers))
    assert proven == pytest.approx(100 * every_plan(season)[0])


def test_a_round_is_as_late_as_its_order_on_the_finest_grid() -> None:
    numbers = numbers_of(random_season(3, jobs=5, planters=1, release=2))
    order = (2, 0, 4, 1, 3)
    steps = steps_of(numbers, 0, 1, [HORIZON] * 5, ways=True)
    made = round_of(steps, order)
    cost = numbers.cost((order,))
    assert (made.late, made.ways) == (cost.late, cost.between)


def test_a_round_that_remembers_all_does_no_job_twice() -> None:
    numbers = numbers_of(random_season(8, jobs=4, planters=1))
    rounds = Rounds(steps_of(numbers, 0, 10, [HORIZON] * 4, ways=True))
    worth = np.full(4, 5000.0)
    _, loose = rounds.cheapest(worth, 0.0, never)
    rounds.memory = [[other for other in range(4) if other != job] for job in range(4)]
    rounds.build()
    least, found = rounds.cheapest(worth, 0.0, never)
    assert not rounds.allows(loose[0].jobs)
    assert sorted(found[0].jobs) == [0, 1, 2, 3]
    assert found[0].ways - 20_000 == pytest.approx(least)


def test_a_wish_to_stop_ends_a_long_calculation() -> None:
    numbers = numbers_of(random_season(1, jobs=4, planters=1))
    rounds = Rounds(steps_of(numbers, 0, 1, [HORIZON] * 4, ways=True))
    with pytest.raises(Ended):
        rounds.cheapest(np.ones(4), 1.0, lambda: True)


def test_lateness_allowed_sets_how_late_each_job_can_end() -> None:
    numbers = numbers_of(random_season(1, jobs=3, planters=2))
    strict, loose = (last_ends(numbers, late, HORIZON) for late in (0, 10**9))
    assert strict == [(due + 1) * numbers.day for due in numbers.due if due is not None]
    assert loose == [HORIZON] * 3


def test_a_bound_is_rounded_up_to_what_a_cost_can_be() -> None:
    numbers = numbers_of(random_season(1, jobs=3, planters=2))
    assert late_unit(numbers) % 5000 == 0
    assert whole(12_000.0, 5000) == 15_000
    assert whole(15_000.0001, 5000) == 15_000


@settings(max_examples=15, deadline=None)
@given(season=SMALL, horizon=st.integers(200, 3000))
def test_a_bound_on_lateness_may_look_no_further_than_any_minute(season, horizon: int) -> None:
    numbers = numbers_of(season)
    late = numbers.cost(nearest_due(numbers)).late
    asked = asked_of(numbers, late, ways=False, horizon=horizon)
    relaxation = Relaxation(numbers, asked, never, lambda _: None)
    relaxation.begin(nearest_due(numbers))
    relaxation.run()
    assert relaxation.bound <= 100 * every_plan(season)[0] + 0.01


def test_the_worth_of_jobs_proves_a_bound_from_a_plan_of_any_quality() -> None:
    season = random_season(4, jobs=4, planters=2)
    numbers = numbers_of(season)
    every: Sequences = ((3, 1, 2, 0), ())
    late, minutes = every_plan(season)
    asked = Asked(ways=True, late=round(100 * late), horizon=HORIZON, grid=5, finest=5)
    relaxation = Relaxation(numbers, asked, never, lambda _: None)
    relaxation.begin(every)
    relaxation.run()
    assert 0 < relaxation.bound <= minutes
