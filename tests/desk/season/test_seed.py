"""A lot that is too small for its jobs is named, with how many packages are short."""

from dataclasses import replace
from datetime import date

import pytest

from changeover.desk.season.plan import SeasonAnswer, read_inputs, solve_season, times_of
from changeover.desk.season.seed import seed_lines, seeds_held, short_seed
from changeover.desk.switch_times import SwitchTimes
from changeover.quantities import Q
from changeover.seed.lots import SeedLot
from changeover.store.opening import Store
from changeover.switch.search import Limits


@pytest.fixture
def planned(demo: Store) -> tuple[SeasonAnswer, SwitchTimes]:
    inputs = replace(read_inputs(demo), begins=date(2026, 5, 4))
    times = times_of(inputs)
    return solve_season(inputs, Limits(seconds=3.0, workers=1), times), times


def with_lot(answer: SeasonAnswer, number: str, packages: float | None) -> SeasonAnswer:
    def changed(lot: SeedLot) -> SeedLot:
        return replace(lot, packages=packages) if lot.number == number else lot

    fleet = tuple(
        replace(one, lots=tuple(changed(lot) for lot in one.lots)) for one in answer.inputs.fleet
    )
    return replace(answer, inputs=replace(answer.inputs, fleet=fleet))


def test_a_lot_too_small_is_named_with_its_jobs(planned: tuple[SeasonAnswer, SwitchTimes]) -> None:
    answer, times = planned
    (one,) = (
        o for o in short_seed(with_lot(answer, "Y-208", 1.0), times) if o.lot.number == "Y-208"
    )
    assert one.jobs == ("beans Otter Flat",)
    assert one.needed == pytest.approx(142 * 140_000, rel=1e-3)
    (line,) = (o for o in seed_lines((one,)))
    packages = one.short / one.held
    assert f"is {-int(-packages // 1)} packages short for beans Otter Flat" in line


def test_enough_seed_and_packages_not_entered_are_not_short(
    planned: tuple[SeasonAnswer, SwitchTimes],
) -> None:
    answer, times = planned
    for packages in (1e6, None):
        short = short_seed(with_lot(answer, "Y-208", packages), times)
        assert "Y-208" not in {one.lot.number for one in short}


def test_seeds_are_counted_by_package_or_by_mass() -> None:
    lot = SeedLot("A", "corn", packages=10.0, package_seeds=80_000)
    assert seeds_held(lot) == 800_000
    mass = SeedLot(
        "B", "soybean", packages=2.0, package_mass=Q(20, "kg"), thousand_seed_mass=Q(160, "g")
    )
    assert seeds_held(mass) == pytest.approx(250_000)
    assert seeds_held(SeedLot("C", "corn", packages=3.0)) is None
