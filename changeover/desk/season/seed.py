"""Whether the seed in the shed is enough for the season's plan, lot by lot."""

import math
from collections import defaultdict
from dataclasses import dataclass

from changeover.desk.look_up import Known
from changeover.desk.season.plan import SeasonAnswer
from changeover.desk.switch_times import SwitchTimes
from changeover.planter.places import Scope
from changeover.planter.setup import Cell, Setup
from changeover.quantities import is_quantity
from changeover.seed.lots import SeedLot


@dataclass(frozen=True)
class SeedShort:
    """One lot of which there is less than the jobs need, both in seeds."""

    lot: SeedLot
    jobs: tuple[str, ...]
    needed: float
    held: float

    @property
    def short(self) -> float:
        return self.needed - self.held


def short_seed(answer: SeasonAnswer, times: SwitchTimes) -> tuple[SeedShort, ...]:
    """Return the lots that are too small for the jobs of a plan, at the rates proposed for them.

    A lot whose packages were not entered is taken to be enough.
    """
    fleet = {known.planter.name: known for known in answer.inputs.fleet}
    needs: dict[str, float] = defaultdict(float)
    users: dict[str, list[str]] = defaultdict(list)
    for slot in answer.plan.best.slots:
        job, known = answer.job(slot.job), fleet[slot.planter]
        setup = times.setup(known, job)
        rate = _seeds_an_acre(known, setup) if setup is not None else 0.0
        acres = float(answer.inputs.area(job).to("acre").magnitude)
        needs[job.lot] += rate * acres
        users[job.lot].append(job.name)
    lots = {lot.number: lot for known in fleet.values() for lot in known.lots}
    found = [
        SeedShort(lots[number], tuple(users[number]), needed, held)
        for number, needed in needs.items()
        if (held := seeds_held(lots[number])) is not None and held < needed
    ]
    return tuple(sorted(found, key=lambda one: one.lot.number))


def _seeds_an_acre(known: Known, setup: Setup) -> float:
    for place in known.planter.places(Scope.DRIVE):
        rate = setup.get(Cell("seed_rate", place))
        if is_quantity(rate):
            return float(rate.to("seed/acre").magnitude)
    return 0.0


def seeds_held(lot: SeedLot) -> float | None:
    """Return the seeds of a lot, None where its packages were not entered."""
    if lot.packages is None:
        return None
    if lot.package_seeds is not None:
        return lot.packages * lot.package_seeds
    if lot.package_mass is None or lot.thousand_seed_mass is None:
        return None
    grams = float(lot.package_mass.to("g").magnitude)
    return lot.packages * grams / float(lot.thousand_seed_mass.to("g").magnitude) * 1000


def seed_lines(made: tuple[SeedShort, ...]) -> tuple[str, ...]:
    """Say of each lot how much is short, in packages where it is counted so."""
    return tuple(_seed_text(one) for one in made)


def _seed_text(one: SeedShort) -> str:
    jobs = ", ".join(one.jobs)
    packages = one.lot.packages or 0.0
    each = one.held / packages if packages and one.held else 0.0
    seeds = f"{one.short / 1e6:.1f} million seeds"
    much = f"{math.ceil(one.short / each)} packages" if each else seeds
    return f"Lot {one.lot.number} is {much} short for {jobs}."
