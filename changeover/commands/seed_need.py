"""``changeover seed-need``: seeds, packages, fills and stops for seed in a field."""

import argparse
from collections.abc import Mapping
from typing import TYPE_CHECKING

from changeover.commands.arguments import Parsers, add_job, add_json, add_units
from changeover.commands.figures import add_why, write_figures
from changeover.commands.seed_need_inputs import INPUTS, check_together, read_inputs

if TYPE_CHECKING:
    from changeover.quantities import Quantity, Units
    from changeover.seed.reasons import Figure

WHY = {
    "seeds": "The seeds that the area takes, with what overlap sows twice.",
    "mass": "The weight of those seeds at the size of this lot.",
    "packages": "Rounded up in whole packages, so that the field is finished.",
    "left_over": "What stays in the last package: keep it in its bag with the label.",
    "lubricant": "At the dose that you gave; none is proposed here.",
    "seeds_per_fill": "A tank filled level; heaping and treatment change it by several percent.",
    "fills": "The first fill is counted.",
    "run_out_area": "The field area after which the tank is down to its reserve.",
    "run_out_time": "The time until then at your field capacity.",
}


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    parser = add_job(parsers, "seed-need", "Reckon seed, packages and tank fills.", run)
    for key, (_, _, example, needed) in INPUTS.items():
        parser.add_argument(f"--{key.replace('_', '-')}", required=needed, help=example)
    parser.add_argument("--both-ends", action="store_true", help="seed waits at both ends")
    add_units(parser)
    add_json(parser)
    add_why(parser)


def run(args: argparse.Namespace) -> int:
    """Write the answer; raises Refusal for an argument that cannot be used."""
    from changeover.quantities import Units

    units = Units(args.units)
    given = read_inputs(args, units)
    check_together(given)
    figures = reckon(given)
    stops = _stops(given, both_ends=args.both_ends)
    write_figures(
        figures,
        units,
        as_json=args.json,
        why=args.why,
        notes=_stop_notes(stops, units),
        more={"refill_after_runs": [runs for runs, _ in stops]} if stops else {},
    )
    return 0


def reckon(given: Mapping[str, "Quantity"]) -> list["Figure"]:
    """Return what follows from the inputs, in the order in which people ask for it.

    Always ``seeds``; ``mass`` with a seed size; ``packages`` and ``left_over`` with a package;
    ``lubricant`` with a dose; with a tank ``seeds_per_fill``, ``fills``, ``run_out_area`` and,
    with a field capacity, ``run_out_time``. Raises Refusal for figures out of bounds.
    """
    from changeover.quantities import Q
    from changeover.seed import need

    overlap = given.get("overlap", Q(0.0, "percent"))
    seeds = need.seeds_needed(given["area"], given["rate"], overlap)
    figures = [_figure("seeds", "Seeds", seeds, "count", "area · (1 + overlap) · seed rate")]
    if "seeds_per_mass" in given:
        mass = need.mass_needed(seeds, given["seeds_per_mass"])
        figures.append(_figure("mass", "Mass of seed", mass, "mass", "seeds / seeds per mass"))
    return figures + _packages(given, seeds) + _tank(given, seeds)


def _packages(given: Mapping[str, "Quantity"], seeds: "Quantity") -> list["Figure"]:
    from changeover.quantities import Q
    from changeover.seed import need

    if "package_seeds" in given:
        packages = need.packages_needed(seeds, given["package_seeds"])
    elif "package_mass" in given:
        packages = need.packages_by_mass(seeds, given["seeds_per_mass"], given["package_mass"])
    else:
        return []
    whole, left = Q(packages.whole, "package"), Q(packages.left_over, "seed")
    how = f"seeds / {packages.seeds_per_package} a package, rounded up"
    figures = [
        _figure("packages", "Whole packages", whole, "count", how),
        _figure("left_over", "Seeds left over", left, "count", "packages · seeds each − seeds"),
    ]
    if "dose" in given:
        amount = need.dry_lubricant(packages.whole, given["dose"])
        measure = "mass" if amount.check("[mass]") else "volume"
        how = "packages · your dose"
        figures.append(_figure("lubricant", "Dry lubricant", amount, measure, how))
    return figures


def _tank(given: Mapping[str, "Quantity"], seeds: "Quantity") -> list["Figure"]:
    from changeover.quantities import Q
    from changeover.seed import tanks

    if "tank" not in given:
        return []
    fill = _seeds_per_fill(given)
    share = given.get("tank_share", Q(100.0, "percent"))
    reserve = given.get("reserve", Q(0.0, "percent"))
    area = tanks.run_out_area(fill, _drawn_rate(given), share, reserve)
    lasting = fill * (1 - reserve.to("count").magnitude)
    fills = tanks.fills_needed(seeds * share.to("count").magnitude, lasting)
    how = "seeds · (1 − reserve) / (rate · (1 + overlap) · share of the rows)"
    figures = [
        _figure("seeds_per_fill", "Seeds in a full tank", fill, "count", "volume · density · size"),
        _figure("fills", "Fills", Q(fills, "count"), "count", "seeds of its rows / fill, up"),
        _figure("run_out_area", "Area to the reserve", area, "area", how),
    ]
    if "field_capacity" in given:
        time = tanks.run_out_time(area, given["field_capacity"])
        figures.append(_figure("run_out_time", "Time to it", time, "time", "area / capacity"))
    return figures


def _drawn_rate(given: Mapping[str, "Quantity"]) -> "Quantity":
    """Return the seeds that a field area draws from the tanks, overlap counted in."""
    overlap = given["overlap"].to("count").magnitude if "overlap" in given else 0.0
    drawn: Quantity = given["rate"] * (1.0 + overlap)
    return drawn


def _seeds_per_fill(given: Mapping[str, "Quantity"]) -> "Quantity":
    from changeover.seed import tanks

    density = tanks.bulk_density(given["bulk_density"])
    return tanks.seeds_in_volume(given["tank"], density, given["seeds_per_mass"])


def _stops(given: Mapping[str, "Quantity"], *, both_ends: bool) -> list[tuple[int, "Quantity"]]:
    from changeover.quantities import Q
    from changeover.seed import tanks

    if not {"run_length", "width", "tank"} <= given.keys():
        return []
    share = given.get("tank_share", Q(100.0, "percent")).to("count").magnitude
    stops = tanks.refill_stops(
        given["area"],
        given["run_length"],
        given["width"],
        _seeds_per_fill(given) / share,
        _drawn_rate(given),
        reserve=given.get("reserve", Q(0.0, "percent")),
        runs_between_stops=1 if both_ends else 2,
    )
    return [(stop.after_runs, stop.area_done) for stop in stops]


def _stop_notes(stops: list[tuple[int, "Quantity"]], units: "Units") -> list[str]:
    from changeover.quantities import show

    return [f"Stop for seed after run {runs}, {show(area, 'area', units)}." for runs, area in stops]


def _figure(key: str, name: str, quantity: "Quantity", measure: str, how: str) -> "Figure":
    from changeover.seed.reasons import Figure, Reason, Trust

    reason = Reason("seed need", WHY[key], "by definition", Trust.PUBLISHED, how)
    return Figure(key, name, quantity, measure, reason)
