"""What each tank needs: nothing is lost in sharing, locked rows take none, a fill goes its way."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.groups import Group
from changeover.planter.places import Place, Scope
from changeover.quantities import Q, Refusal
from changeover.seed import need
from changeover.seed.case import Case
from changeover.seed.tank_need import drawn_rate, seeds_for, stops_for_seed, tank_needs
from tests.seed.made_up import case, job, lot, planter

RATE = Q(140_000, "seed/acre")
FIELD = job().field


def soy(tank: float | None = 40.0, **changes: object) -> Case:
    volume = None if tank is None else Q(tank, "bu")
    seed = lot(thousand_seed_mass=Q(160, "g"))
    return case(**{"planter": planter(tank_capacity=volume), "lot": seed, **changes})


def test_two_tanks_alike_are_told_together() -> None:
    (one,) = tank_needs(soy(), RATE, None)
    assert [place.label for place in one.places] == ["tank 1", "tank 2"]
    assert (one.rows, one.share) == (6, 0.5)
    assert one.seeds.magnitude == pytest.approx(80 * 140_000 / 2)


def test_a_fill_of_forty_bushels_goes_its_way() -> None:
    (one,) = tank_needs(soy(job=job(reserve=0.1)), RATE, None)
    assert one.fill is not None
    seeds = 40 * 60 * 453.59237 / 160 * 1000
    assert one.fill.seeds.magnitude == pytest.approx(seeds, rel=1e-6)
    assert one.fill.area.to("acre").magnitude == pytest.approx(seeds * 0.9 / 70_000, rel=1e-6)
    assert one.fill.fills == 1
    hours = one.fill.area.to("acre").magnitude / (30 * 5 * 0.65 / 8.25)
    assert one.fill.time.to("h").magnitude == pytest.approx(hours, rel=1e-3)


def test_the_lots_own_density_wins_and_without_any_there_is_no_fill() -> None:
    light = soy(lot=lot(thousand_seed_mass=Q(160, "g"), bulk_density=Q(30, "lb/bu")))
    (one,), (usual,) = tank_needs(light, RATE, None), tank_needs(soy(), RATE, None)
    assert one.fill.seeds.magnitude == pytest.approx(usual.fill.seeds.magnitude / 2)
    assert tank_needs(soy(tank=None), RATE, None)[0].fill is None


def test_rows_locked_up_take_no_seed_from_their_tank() -> None:
    rows = (1, 2, 3, 4, 5, 6, 7, 9, 11)
    first, second = tank_needs(soy(rows=rows), RATE, None)
    assert (first.rows, second.rows) == (6, 3)
    assert first.seeds.magnitude == pytest.approx(2 * second.seeds.magnitude)


def test_where_passes_join_no_split_row_stands() -> None:
    groups = (Group(Scope.DRIVE, "drive 1", tuple(range(1, 32))),)
    machine = planter(31, groups=groups, split_rows=frozenset(range(2, 31, 2)))
    narrow = soy(planter=machine, rows=tuple(range(1, 32)), row_spacing=Q(15, "in"))
    share = (drawn_rate(narrow, RATE) / RATE).to("count").magnitude
    assert share == pytest.approx(31 / 32)


def test_row_hoppers_each_take_their_share() -> None:
    groups = (Group(Scope.DRIVE, "drive 1", tuple(range(1, 13))),)
    (one,) = tank_needs(soy(planter=planter(groups=groups)), RATE, None)
    assert one.places == tuple(Place.of_row(row) for row in range(1, 13))
    assert one.share == pytest.approx(1 / 12)


@given(
    rows=st.sets(st.integers(1, 12), min_size=1),
    overlap=st.floats(0, 0.3),
    size=st.integers(1_000, 400_000),
)
def test_no_seed_is_lost_and_every_tank_has_packages_enough(rows, overlap, size) -> None:
    some = soy(rows=tuple(sorted(rows)), job=job(overlap=overlap))
    found = tank_needs(some, RATE, need.packages_needed(seeds_for(some, RATE), size))
    seeds = sum(one.seeds.magnitude * len(one.places) for one in found)
    assert seeds == pytest.approx(seeds_for(some, RATE).magnitude)
    for one in found:
        assert one.packages.whole * size >= one.seeds.magnitude * (1 - 1e-9)
        assert (one.packages.whole - 1) * size < one.seeds.magnitude


@given(tank=st.floats(2, 500), reserve=st.floats(0, 0.9), acres=st.floats(0.5, 2000))
def test_the_fills_hold_the_seed_and_one_less_does_not(tank, reserve, acres) -> None:
    field = replace(FIELD, area=Q(acres, "acre"))
    (one,) = tank_needs(soy(tank, job=job(reserve=reserve, field=field)), RATE, None)
    usable = one.fill.seeds.magnitude * (1 - reserve)
    assert usable * one.fill.fills >= one.seeds.magnitude * (1 - 1e-6)
    assert usable * (one.fill.fills - 1) <= one.seeds.magnitude * (1 + 1e-6)


def test_stops_come_at_the_end_where_the_seed_is() -> None:
    long = replace(FIELD, area=Q(400, "acre"), run_length=Q(2640, "ft"))
    found = soy(10, job=job(field=long))
    stops = stops_for_seed(found, RATE, tank_needs(found, RATE, None))
    assert stops
    assert all(stop.after_runs % 2 == 0 for stop in stops)
    per_run = 2640 * 30 / 43_560
    lasting = tank_needs(found, RATE, None)[0].fill.area.to("acre").magnitude
    assert stops[0].after_runs * per_run <= lasting < (stops[0].after_runs + 2) * per_run


def test_a_fill_that_does_not_last_to_the_end_is_refused() -> None:
    far = replace(FIELD, area=Q(400, "acre"), run_length=Q(11, "mile"))
    found = soy(2, job=job(field=far))
    with pytest.raises(Refusal, match="does not last"):
        stops_for_seed(found, RATE, tank_needs(found, RATE, None))
