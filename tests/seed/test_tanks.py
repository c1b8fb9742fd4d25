"""Tanks: fills, run-out and stops conserve seed and never run dry between stops."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from changeover.quantities import Q, Refusal
from changeover.seed import need, tanks

CORN = Q(32_000, "seed/acre")


@given(st.floats(1e4, 1e8), st.floats(5_000, 300_000))
def test_the_run_out_area_takes_just_the_tank(seeds, rate) -> None:
    area = tanks.run_out_area(Q(seeds, "seed"), Q(rate, "seed/acre"))
    back = need.seeds_needed(area, Q(rate, "seed/acre"))
    assert back.to("seed").magnitude == pytest.approx(seeds)


def test_a_tank_for_a_third_of_the_rows_lasts_three_times_the_area() -> None:
    whole = tanks.run_out_area(Q(1e6, "seed"), CORN)
    third = tanks.run_out_area(Q(1e6, "seed"), CORN, 1 / 3)
    assert (third / whole).to("count").magnitude == pytest.approx(3)


def test_a_reserve_shortens_the_area() -> None:
    kept = tanks.run_out_area(Q(1e6, "seed"), CORN, 1.0, Q(10, "percent"))
    assert kept.to("acre").magnitude == pytest.approx(0.9 * 1e6 / 32_000)


@given(st.floats(1e5, 1e8), st.floats(1e4, 1e7))
def test_the_fills_hold_the_need_and_one_fewer_would_not(seeds, fill) -> None:
    fills = tanks.fills_needed(Q(seeds, "seed"), Q(fill, "seed"))
    assert fills * fill >= seeds * (1 - 1e-8)
    assert (fills - 1) * fill < seeds


@given(st.floats(5, 800), st.floats(200, 3_000), st.floats(5e5, 1e7), st.sampled_from([1, 2]))
def test_no_stretch_between_stops_takes_more_than_a_fill(acres, metres, fill, apart) -> None:
    job = Q(acres, "acre"), Q(metres, "m"), Q(9.144, "m"), Q(fill, "seed"), CORN
    assume(fill >= 32_000 / 4046.8564224 * metres * 9.144 * apart)
    stops = tanks.refill_stops(*job, runs_between_stops=apart)
    assert all(stop.seeds_used <= Q(fill * (1 + 1e-9), "seed") for stop in stops)
    assert all(stop.after_runs % apart == 0 for stop in stops)
    sown = stops[-1].area_done if stops else Q(0, "acre")
    per_stretch = Q(fill, "seed") / CORN
    run = Q(metres * 9.144 * apart, "m^2")
    assert Q(acres, "acre") - sown <= per_stretch + run


def test_a_fill_that_does_not_last_is_refused() -> None:
    with pytest.raises(Refusal, match="place seed at both ends"):
        tanks.refill_stops(Q(80, "acre"), Q(800, "m"), Q(18, "m"), Q(120_000, "seed"), CORN)


def test_seeds_in_a_tank_by_bulk_density() -> None:
    seeds = tanks.seeds_in_volume(
        Q(50, "bu"), tanks.bulk_density(Q(56, "lb/bu")), Q(1_500, "seed/lb")
    )
    assert seeds.to("seed").magnitude == pytest.approx(50 * 56 * 1_500)


def test_run_out_time_at_a_field_capacity() -> None:
    time = tanks.run_out_time(Q(30, "acre"), Q(12, "acre/h"))
    assert time.to("hour").magnitude == pytest.approx(2.5)


def test_seed_cannot_wait_in_the_middle_of_a_run() -> None:
    with pytest.raises(Refusal, match="at one end"):
        tanks.refill_stops(
            Q(80, "acre"), Q(800, "m"), Q(9, "m"), Q(1e6, "seed"), CORN, runs_between_stops=3
        )
