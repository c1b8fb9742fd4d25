"""Warnings of a whole proposal: what the planter cannot do, or should not, in plain sentences."""

from collections.abc import Iterator

from changeover.planter.places import Scope
from changeover.quantities import Refusal, show
from changeover.seed import rate
from changeover.seed.case import Case
from changeover.seed.choices import Choice
from changeover.seed.depth import cold_warning
from changeover.seed.drive_settings import drive_warnings
from changeover.seed.figures import limit_is_for
from changeover.seed.need_figures import packages_of, refusal_of_stops
from changeover.seed.speed import RELEASE_LIMIT, RELEASE_SOURCE, speed_warnings
from changeover.seed.tank_need import seeds_for


def warnings_of(choices: tuple[Choice, ...]) -> list[str]:
    """Return the warnings for every lot of a proposal, each once, the weightiest first."""
    found: list[str] = []
    for choice in choices:
        found += [*_soil(choice.case), *_speed(choice), *_motors(choice), *_lot(choice)]
    return list(dict.fromkeys([*found, *_sensors(choices[0].case)]))


def _soil(case: Case) -> Iterator[str]:
    cold = cold_warning(case.crop, case.job.soil_temperature, case.units)
    if cold is not None:
        yield cold


def _speed(choice: Choice) -> Iterator[str]:
    case, wanted = choice.case, choice.seed_rate
    if wanted is None or choice.cells is None:
        return
    speed, spacing = case.job.speed, case.row_spacing
    if limit_is_for(case.crop):
        yield from speed_warnings(speed, wanted, spacing, choice.cells, units=case.units)
        return
    per_second = rate.seeds_per_second(wanted, spacing, speed)
    if per_second > RELEASE_LIMIT:
        yield (
            f"At {show(speed, 'speed', case.units)} each row drops "
            f"{show(per_second, 'seeds_per_second', case.units)}; the one limit in print, about "
            f"{RELEASE_LIMIT.magnitude:g} a second, is for cotton and maize ({RELEASE_SOURCE}), "
            f"not {case.name}: prove it on the bench at this speed."
        )


def _motors(choice: Choice) -> Iterator[str]:
    case = choice.case
    rows = set(case.rows)
    for group in case.planter.groups_of(Scope.DRIVE):
        if rows & set(group.rows):
            yield from drive_warnings(case, group.place, choice.seed_rate, choice.cells)


def _lot(choice: Choice) -> Iterator[str]:
    case, lot = choice.case, choice.case.lot
    if not case.crop.figures:
        yield f"No figures for the crop “{lot.crop}” are in the table: enter your manual’s values."
    if lot.germination is None:
        yield f"Lot {lot.number}: germination is not entered, so every seed is counted as live."
    refused_stops = refusal_of_stops(case, choice.seed_rate)
    if refused_stops is not None:
        yield refused_stops
    if choice.seed_rate is None or lot.packages is None:
        return
    try:
        packages = packages_of(case, seeds_for(case, choice.seed_rate))
    except Refusal as refused:
        yield str(refused)
        return
    if packages is not None and packages.whole > lot.packages:
        yield (
            f"Lot {lot.number}: {packages.whole} packages are needed and {lot.packages:g} are "
            "there."
        )


def _sensors(case: Case) -> Iterator[str]:
    planter = case.planter
    there = max(1, len(planter.groups_of(Scope.CONTROLLER)))
    if planter.controllers > there:
        yield (
            f"{planter.rows} rows need {planter.controllers} controllers, as one reads "
            f"{planter.sensors_per_controller} seed sensors; {planter.name} has {there}."
        )
