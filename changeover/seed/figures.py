"""The figures that belong to a whole proposal: spacing, disc speed, stand, seed and packages."""

from collections.abc import Iterator
from typing import Literal

from changeover.planter.parts import Part
from changeover.quantities import Q, Quantity, Units, show
from changeover.seed import need, rate
from changeover.seed.case import Case
from changeover.seed.crops import Crop
from changeover.seed.reasons import Figure, Input, Reason, Trust
from changeover.seed.seed_rate import shares_of
from changeover.seed.speed import top_ground_speed
from changeover.seed.trust_order import reasoned

SOURCE = "by definition"


def figures_of(case: Case, seed_rate: Quantity | None, disc: Part | None) -> tuple[Figure, ...]:
    """Return every figure that the inputs allow; those that lack an input are left out."""
    found = [*_row_length(case)]
    if seed_rate is not None:
        found += [*_spacing(case, seed_rate), *_speeds(case, seed_rate, disc)]
        found += [*_stand(case, seed_rate), *_mass(case, seed_rate), *_need(case, seed_rate)]
    return (*found, *_size(case))


def _row_length(case: Case) -> Iterator[Figure]:
    area: Literal["acre", "hectare"] = "acre" if case.units is Units.US else "hectare"
    length = rate.row_length_thousandth(case.row_spacing, area)
    yield _figure(
        case,
        "row_length_thousandth",
        f"Row length of 1/1000 {area}",
        length,
        "row_length",
        "Count the plants in this length, times a thousand.",
        f"1/1000 {area} / row spacing",
    )


def _spacing(case: Case, seed_rate: Quantity) -> Iterator[Figure]:
    spacing = rate.spacing_in_row(seed_rate, case.row_spacing)
    yield _figure(
        case,
        "spacing",
        "Spacing in the row",
        spacing,
        "spacing",
        "Seed to seed along the row.",
        "1 / (seed rate · row spacing)",
    )
    per_length = rate.seeds_per_length(seed_rate, case.row_spacing)
    yield _figure(
        case,
        "seeds_per_length",
        "Seeds per length",
        per_length,
        "seeds_per_length",
        "Dig up a length and count.",
        "seed rate · row spacing",
    )


def _speeds(case: Case, seed_rate: Quantity, disc: Part | None) -> Iterator[Figure]:
    per_second = rate.seeds_per_second(seed_rate, case.row_spacing, case.job.speed)
    yield _figure(
        case,
        "seeds_per_second",
        "Seeds per second and row",
        per_second,
        "seeds_per_second",
        "What each meter must drop.",
        "seed rate · row spacing · ground speed",
    )
    if disc is None or disc.cells is None:
        return
    turns = rate.disc_speed(per_second, disc.cells)
    yield _figure(
        case,
        "disc_speed",
        "Disc speed",
        turns,
        "disc_speed",
        f"Disc {disc.code} with {disc.cells} cells.",
        "60 · seeds per second / cells",
    )
    if not limit_is_for(case.crop):
        return
    top = top_ground_speed(seed_rate, case.row_spacing, disc.cells)
    why = f"Above it expect more skips; bound by {top.bound_by}, on one machine in print."
    reason = Reason("top ground speed", why, top.source, Trust.PUBLISHED)
    yield Figure("top_speed", "Top ground speed advised", top.speed, "speed", reason)


def limit_is_for(crop: Crop) -> bool:
    """Say whether the one release limit in print, for cotton and maize, is for this crop."""
    return crop.family == "corn" or crop.key == "cotton"


def _stand(case: Case, seed_rate: Quantity) -> Iterator[Figure]:
    shares = shares_of(case)
    stand = rate.stand_from_rate(seed_rate, shares.germination, shares.emergence)
    figure = _figure(
        case,
        "expected_stand",
        "Expected stand, plants",
        stand,
        "seed_rate",
        f"Germination {shares.germination_says}; emergence {shares.emergence_says}.",
        f"seed rate · {shares.germination:.3g} · {shares.emergence:.3g}",
    )
    yield figure


def _mass(case: Case, seed_rate: Quantity) -> Iterator[Figure]:
    if case.seeds_per_mass is None:
        return
    per_mass, printed = case.seeds_per_mass
    shown = show(per_mass, "seeds_per_mass", case.units)
    whence = f"printed for the crop, {printed.source}" if printed else "the lot’s own"
    trust = printed.trust if printed else Trust.RECORD
    why = f"At {shown} ({whence})."
    yield Figure(
        "mass_rate",
        "Seed mass per area",
        rate.mass_rate(seed_rate, per_mass),
        "mass_rate",
        reasoned("mass per area", why, whence, trust, how="seed rate / seeds per mass"),
    )


def _need(case: Case, seed_rate: Quantity) -> Iterator[Figure]:
    area = case.job.planted_area
    seeds = need.seeds_needed(area, seed_rate)
    named = show(area, "area", case.units)
    yield _figure(
        case,
        "seeds_needed",
        "Seeds needed",
        seeds,
        "count",
        f"For {named}, no overlap counted.",
        "area · seed rate",
    )
    if case.seeds_per_mass is not None:
        mass = need.mass_needed(seeds, case.seeds_per_mass[0])
        why = f"For {named}."
        yield _figure(
            case, "mass_needed", "Seed needed", mass, "mass", why, "seeds / seeds per mass"
        )
    packages = packages_of(case, seeds)
    if packages is not None:
        yield _packages(case, packages)


def packages_of(case: Case, seeds: Quantity) -> need.Packages | None:
    """Return the whole packages that hold the seeds, None when the package is not known."""
    lot = case.lot
    if lot.package_seeds is not None:
        return need.packages_needed(seeds, lot.package_seeds)
    if lot.package_mass is not None and case.seeds_per_mass is not None:
        return need.packages_by_mass(seeds, case.seeds_per_mass[0], lot.package_mass)
    figure = case.crop.best("package_seeds")
    if figure is not None and lot.package_mass is None:
        return need.packages_needed(seeds, float(figure.middle.magnitude))
    return None


def _packages(case: Case, packages: need.Packages) -> Figure:
    held = f"{packages.seeds_per_package:,}".replace(",", "\u202f")
    left = f"{packages.left_over:,}".replace(",", "\u202f")
    return _figure(
        case,
        "packages_needed",
        "Packages needed",
        Q(packages.whole, "count"),
        "count",
        f"Whole packages of {held} seeds; {left} seeds are left over.",
        "seeds needed / seeds per package, rounded up",
    )


def _size(case: Case) -> Iterator[Figure]:
    if case.size is None:
        return
    trust = Trust.RECORD if case.size.measured else Trust.PUBLISHED
    shape = f", {case.size.shape}" if case.size.shape else ""
    reason = reasoned(
        "seed size",
        f"From {case.size.says}{shape}.",
        case.size.says,
        trust,
        how="(length · width · thickness) to the power 1/3, or the middle of the sieve grade",
    )
    yield Figure("seed_diameter", "Mean seed diameter", case.size.diameter, "seed_size", reason)


def _figure(
    case: Case, key: str, name: str, value: Quantity, measure: str, why: str, how: str
) -> Figure:
    inputs = (
        Input("row spacing", show(case.row_spacing, "row_spacing", case.units)),
        Input("ground speed", show(case.job.speed, "speed", case.units)),
    )
    reason = Reason(name.lower(), why, SOURCE, Trust.PUBLISHED, how, inputs)
    return Figure(key, name, value, measure, reason)
