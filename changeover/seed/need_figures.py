"""The figures on seed needed: the job's seed and packages, each tank's, and the stops for seed."""

from collections.abc import Iterator

from changeover.planter.places import Place
from changeover.quantities import Q, Quantity, Refusal, grouped, show
from changeover.seed import bounds, need
from changeover.seed.case import Case
from changeover.seed.depth_rows import named_rows
from changeover.seed.reasons import Figure, Input, Reason, Trust
from changeover.seed.seed_rate import few_or_many
from changeover.seed.tank_need import (
    EFFICIENCY_SOURCE,
    Fill,
    TankNeed,
    bulk_density,
    seeds_for,
    stops_for_seed,
    tank_needs,
)

SOURCE = "by definition"
LEVEL = "Filled level; heaping and treatment change it by several percent (from memory)."


def need_figures(case: Case, seed_rate: Quantity) -> Iterator[Figure]:
    """Give the figures on seed needed that the inputs allow. Raises Refusal for bad input."""
    seeds = seeds_for(case, seed_rate)
    yield from _whole(case, seeds)
    packages = packages_of(case, seeds)
    if packages is not None:
        yield from _packages(case, packages)
    found = tank_needs(case, seed_rate, packages)
    for number, one in enumerate(found, start=1):
        yield from _tank(case, one, number, len(found))
    yield from _stops(case, seed_rate, found)


def packages_of(case: Case, seeds: Quantity) -> need.Packages | None:
    """Return the whole packages that hold the seeds, None when the package is not known."""
    size = package_size(case)
    return None if size is None else need.packages_holding(seeds, size)


def package_size(case: Case) -> int | None:
    """Return the seeds in a package: the lot's own, by its mass, or the crop's; None if unknown.

    Raises Refusal for a package that holds too few seeds or too many to be one.
    """
    lot = case.lot
    if lot.package_seeds is not None:
        return int(bounds.PACKAGE_SEEDS.of(lot.package_seeds))
    if lot.package_mass is not None and case.seeds_per_mass is not None:
        return need.seeds_in_package(case.seeds_per_mass[0], lot.package_mass)
    figure = case.crop.best("package_seeds")
    if figure is not None and lot.package_mass is None:
        return int(bounds.PACKAGE_SEEDS.of(float(figure.middle.magnitude)))
    return None


def refusal_of_stops(case: Case, seed_rate: Quantity | None) -> str | None:
    """Return the sentence that refuses the stops for seed, None where they can be had."""
    if seed_rate is None:
        return None
    try:
        stops_for_seed(case, seed_rate, tank_needs(case, seed_rate, None))
    except Refusal as refused:
        return str(refused)
    return None


def _whole(case: Case, seeds: Quantity) -> Iterator[Figure]:
    area = show(case.job.planted_area, "area", case.units)
    overlap = case.job.overlap
    counted = "no overlap counted" if overlap is None else f"{overlap:.1%} of it sown twice"
    error = case.job.meter_error
    counted += "" if not error else f", meter error {few_or_many(error)}"
    rows = f"{len(case.rows)} rows of {case.planter.rows}, " if _some(case) else ""
    why = f"For {area}, {rows}{counted}."
    how = "area · (1 + overlap) · (1 − meter error) · seeds per length · rows / width of the pass"
    yield _figure(case, "seeds_needed", "Seeds needed", seeds, "count", why, how)
    if case.seeds_per_mass is not None:
        mass = need.mass_needed(seeds, case.seeds_per_mass[0])
        how = "seeds / seeds per mass"
        yield _figure(case, "mass_needed", "Seed needed", mass, "mass", f"For {area}.", how)


def _some(case: Case) -> bool:
    return len(case.rows) < case.planter.rows


def _packages(case: Case, packages: need.Packages) -> Iterator[Figure]:
    held, left = (grouped(one, 0) for one in (packages.seeds_per_package, packages.left_over))
    why = f"Whole packages of {held} seeds; {left} seeds are left over."
    whole = Q(packages.whole, "count")
    how = "seeds needed / seeds per package, rounded up"
    yield _figure(case, "packages_needed", "Packages needed", whole, "count", why, how)
    dose = case.lot.lubricant
    if dose is not None:
        amount = need.dry_lubricant(packages.whole, dose)
        measure = "mass" if amount.is_compatible_with("g") else "volume"
        why = f"Your dose, {dose:~P} a package; none is proposed here."
        reason = Reason("dry lubricant", why, "your own dose", Trust.RECORD, "packages · dose")
        yield Figure("dry_lubricant", "Dry lubricant", amount, measure, reason)


def _tank(case: Case, one: TankNeed, number: int, sorts: int) -> Iterator[Figure]:
    """Give the figures of one tank, or of several alike; keys are numbered when tanks differ."""
    end = f"_{number}" if sorts > 1 else ""
    where = _named(one.places)
    each = ", each" if len(one.places) > 1 else ""
    feeds = f"feeds {one.rows}" if not each else f"feed {one.rows} each"
    why = f"{where[0].upper()}{where[1:]} {feeds} of the {len(case.rows)} rows that plant."
    if case.seeds_per_mass is not None:
        mass = need.mass_needed(one.seeds, case.seeds_per_mass[0])
        why = f"{why} That is {show(mass, 'mass', case.units)}."
    how = "seeds needed · rows of the tank / rows that plant"
    name = f"Seeds to fill in, {where}{each}"
    yield _figure(case, f"tank_seeds{end}", name, one.seeds, "count", why, how)
    if one.packages is not None and len(case.rows) > one.rows:
        exact = one.seeds.magnitude / one.packages.seeds_per_package
        left = grouped(one.packages.left_over, 0)
        why = f"{exact:.2f} go in: rounded up, {left} seeds are left over."
        key, name = f"tank_packages{end}", f"Packages to fill in, {where}{each}"
        whole, how = Q(one.packages.whole, "count"), "seeds of the tank / seeds per package"
        yield _figure(case, key, name, whole, "count", why, how)
    if one.fill is not None:
        yield from _fill(case, one.fill, f"{where}{each}", end)


def _fill(case: Case, fill: Fill, where: str, end: str) -> Iterator[Figure]:
    volume, dense = case.planter.tank_capacity, bulk_density(case)
    if volume is None or dense is None:
        return
    shown = show(volume, "volume", case.units)
    heavy = show(dense[0], "bulk_density", case.units)
    whence = f"printed for the crop, {dense[1].source}" if dense[1] else "the lot’s own"
    trust = dense[1].trust if dense[1] else Trust.RECORD
    why = f"{shown} at {heavy} ({whence}). {LEVEL}"
    how = "volume · bulk density · seeds per mass"
    reason = Reason("seeds in a full tank", why, whence, trust, how)
    yield Figure(f"fill_seeds{end}", f"Seeds when full, {where}", fill.seeds, "count", reason)
    why, how = "The first fill is counted.", "seeds of its rows / fill without reserve, rounded up"
    key, name = f"fills{end}", f"Fills, {where}"
    yield _figure(case, key, name, Q(fill.fills, "count"), "count", why, how)
    why = f"A fill goes so far, down to {_reserve(case)}."
    how = "seeds in a fill · (1 − reserve) / seeds that its rows draw from an area"
    key, name = f"run_out_area{end}", f"Area of a fill, {where}"
    yield _figure(case, key, name, fill.area, "area", why, how)
    why = f"At {show(case.job.speed, 'speed', case.units)}, with turns and filling counted in."
    how = "area / (width · speed · 65 %)"
    reason = Reason("time to run out", why, EFFICIENCY_SOURCE, Trust.PUBLISHED, how)
    yield Figure(f"run_out_time{end}", f"Time of a fill, {where}", fill.time, "time", reason)


def _reserve(case: Case) -> str:
    reserve = case.job.reserve
    return f"a reserve of {reserve:.0%}" if reserve else "the last seed"


def _stops(case: Case, seed_rate: Quantity, found: tuple[TankNeed, ...]) -> Iterator[Figure]:
    try:
        stops = stops_for_seed(case, seed_rate, found)
    except Refusal:
        return
    if stops is None:
        return
    told = "; ".join(
        f"run {stop.after_runs}, {show(stop.area_done, 'area', case.units)}" for stop in stops
    )
    ends = "both ends" if case.job.seed_at_both_ends else "one end"
    why = f"Seed waits at {ends}. Stop after {told}." if stops else "One fill does the job."
    how = "whole runs that the tank that is empty first lasts for"
    count = Q(len(stops), "count")
    yield _figure(case, "stops_for_seed", "Stops for seed", count, "count", why, how)


def _named(places: tuple[Place, ...]) -> str:
    rows = [place.row for place in places if place.row is not None]
    if rows:
        return f"hopper{'s' if len(rows) > 1 else ''} of {named_rows(rows).lower()}"
    return " and ".join(place.label for place in places)


def _figure(
    case: Case, key: str, name: str, value: Quantity, measure: str, why: str, how: str
) -> Figure:
    inputs = (
        Input("area", show(case.job.planted_area, "area", case.units)),
        Input("rows that plant", str(len(case.rows))),
        Input("width of the pass", show(case.planter.width, "row_length", case.units)),
    )
    reason = Reason(name.lower(), why, SOURCE, Trust.PUBLISHED, how, inputs)
    return Figure(key, name, value, measure, reason)
