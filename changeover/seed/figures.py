"""The figures that belong to a whole proposal: spacing, disc speed, stand, seed and packages."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Literal

from changeover.planter.parts import Part
from changeover.quantities import Quantity, Units, show
from changeover.seed import rate
from changeover.seed.case import Case
from changeover.seed.crops import Crop
from changeover.seed.drive_figures import drive_figures
from changeover.seed.need_figures import need_figures
from changeover.seed.reasons import Figure, Input, Reason, Trust
from changeover.seed.seed_rate import factors, shares_of
from changeover.seed.speed import top_ground_speed
from changeover.seed.trust_order import reasoned

SOURCE = "by definition"
TWINS = "; twin rows share the rate, so it is twice that of one row a pair"


def figures_of(case: Case, seed_rate: Quantity | None, disc: Part | None) -> tuple[Figure, ...]:
    """Return every figure that the inputs allow; those that lack an input are left out."""
    found = [*_row_length(case)]
    if seed_rate is not None:
        found += [*_spacing(case, seed_rate), *_speeds(case, seed_rate, disc)]
        found += [*_stand(case, seed_rate), *_mass(case, seed_rate), *need_figures(case, seed_rate)]
    return (*found, *_size(case))


def figures_of_lot(case: Case, seed_rate: Quantity | None) -> tuple[Figure, ...]:
    """Return what a lot that shares the planter needs; its number stands in key and name."""
    if seed_rate is None:
        return ()
    number = case.lot.number
    return tuple(
        replace(one, key=f"{one.key}:{number}", name=f"{one.name}, lot {number}")
        for one in need_figures(case, seed_rate)
    )


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
    twin = case.planter.twin_rows
    yield _figure(
        case,
        "spacing",
        "Spacing in each twin row" if twin else "Spacing in the row",
        spacing,
        "spacing",
        f"Seed to seed along the row{TWINS if twin else ''}.",
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
    yield from drive_figures(case, seed_rate, disc.cells)
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
    stand = rate.stand_from_rate(
        seed_rate, shares.germination, shares.emergence, shares.meter_error
    )
    error = f"; meter error {shares.meter_says}" if shares.meter_error else ""
    figure = _figure(
        case,
        "expected_stand",
        "Expected stand, plants",
        stand,
        "seed_rate",
        f"Germination {shares.germination_says}; emergence {shares.emergence_says}{error}.",
        f"seed rate · {factors(shares)}",
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
