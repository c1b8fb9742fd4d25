"""``changeover rate``: spacing, seeds per length and disc speed from a seed rate or a stand."""

import argparse
from collections.abc import Mapping
from typing import TYPE_CHECKING

from changeover.commands.arguments import Parsers, add_job, add_json, add_units
from changeover.commands.figures import add_why, write_figures
from changeover.commands.rate_drive import INPUTS as DRIVE_INPUTS
from changeover.commands.rate_drive import check_drive, drive_figures, top_speed, warnings
from changeover.commands.rate_words import NAMES, figures_of

if TYPE_CHECKING:
    from changeover.quantities import Quantity, Units

INPUTS = {
    "rate": 'seeds per area, such as "32000/acre"',
    "stand": 'plants per area wanted instead, such as "30000/acre"',
    "row_spacing": 'such as "30 in" or "75 cm"',
    "speed": 'ground speed, such as "5 mph" or "8 km/h"',
    "cells": "cells on the disc, a whole number; needs --speed",
    "most_disc_speed": 'the disc\'s limit in your manual, such as "40 rpm"; needs --cells',
    "germination": 'share of the seeds, such as "95 %%"; needs --stand',
    "emergence": 'share of live seeds that come up, such as "90 %%"; needs --stand',
    "meter_error": 'share that the meter drops too few, such as "1 %%"; needs --stand',
    "seeds_per_mass": 'such as "1500/lb"; gives the mass rate',
    "thousand_seed_mass": 'such as "300 g"; gives the mass rate',
    **DRIVE_INPUTS,
}


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    parser = add_job(parsers, "rate", "Reckon spacing and disc speed from a seed rate.", run)
    for key, example in INPUTS.items():
        needed = key == "row_spacing"
        parser.add_argument(f"--{key.replace('_', '-')}", required=needed, help=example)
    parser.add_argument("--twin", action="store_true", help="twin rows, --row-spacing apart")
    add_units(parser)
    add_json(parser)
    add_why(parser)


def run(args: argparse.Namespace) -> int:
    """Write the answer; raises Refusal for an argument that cannot be used."""
    from changeover.quantities import Units

    units = Units(args.units)
    given = _inputs(args, units)
    figures = reckon(given, units, twin=args.twin)
    notes = warnings(given, figures, units)
    write_figures(figures_of(figures), units, as_json=args.json, why=args.why, notes=notes)
    return 0


def _inputs(args: argparse.Namespace, units: "Units") -> dict[str, "Quantity"]:
    from changeover.quantities import read_quantity

    given = {key: text for key in INPUTS if (text := getattr(args, key)) is not None}
    _check_together(given)
    check_drive(given)
    return {
        key: read_quantity(text, NAMES[key][1], units, NAMES[key][0]) for key, text in given.items()
    }


def _check_together(given: Mapping[str, str]) -> None:
    """Refuse inputs that lack their partners or say one thing twice. Raises Refusal."""
    from changeover.quantities import Refusal

    if ("rate" in given) == ("stand" in given):
        raise Refusal("Seed rate: give --rate or --stand, one of them.")
    if "most_disc_speed" in given and "cells" not in given:
        raise Refusal("Most disc speed: how far it reaches follows from the cells; add --cells.")
    if "cells" in given and "speed" not in given:
        raise Refusal("Cells on the disc: the disc speed needs a ground speed; add --speed.")
    for key in ("germination", "emergence", "meter_error"):
        if key in given and "stand" not in given:
            raise Refusal(f"{NAMES[key][0]}: it serves to reckon from a stand; add --stand.")
    if {"seeds_per_mass", "thousand_seed_mass"} <= given.keys():
        raise Refusal("Seed size: give seeds per mass or the thousand-seed mass, not both.")


def reckon(
    given: Mapping[str, "Quantity"], units: "Units", *, twin: bool = False
) -> dict[str, "Quantity"]:
    """Return the inputs and all that follows from them, by key.

    Always ``rate``, ``spacing``, ``seeds_per_length`` and ``row_length_thousandth`` (of an acre
    or, in metric units, of a hectare); ``twin_row_spacing`` for twin rows; ``seeds_per_second``
    with a ``speed``; ``disc_speed`` and ``top_speed`` with ``cells`` too; what ``drive_figures``
    adds for a motor; ``mass_rate`` with a seed size. Raises Refusal for figures out of bounds.
    """
    from changeover.quantities import Units
    from changeover.seed import rate as reckoning
    from changeover.seed import row_layout

    rate, row_spacing = _rate(given), given["row_spacing"]
    figures = {
        **given,
        "rate": rate,
        "spacing": reckoning.spacing_in_row(rate, row_spacing),
        "seeds_per_length": reckoning.seeds_per_length(rate, row_spacing),
        "row_length_thousandth": reckoning.row_length_thousandth(
            row_spacing, "acre" if units is Units.US else "hectare"
        ),
    }
    if twin:
        figures["twin_row_spacing"] = row_layout.twin_row_spacing(rate, row_spacing)
    if "speed" in given:
        figures["seeds_per_second"] = reckoning.seeds_per_second(rate, row_spacing, given["speed"])
    if "cells" in given:
        figures["disc_speed"] = reckoning.disc_speed(figures["seeds_per_second"], given["cells"])
        figures["top_speed"] = top_speed(given, rate).speed
    return figures | drive_figures(given, figures) | _mass(given, rate)


def _rate(given: Mapping[str, "Quantity"]) -> "Quantity":
    from changeover.seed.rate import ALL, NO_ERROR, rate_for_stand

    if "rate" in given:
        return given["rate"]
    germination, emergence = given.get("germination", ALL), given.get("emergence", ALL)
    return rate_for_stand(
        given["stand"], germination, emergence, given.get("meter_error", NO_ERROR)
    )


def _mass(given: Mapping[str, "Quantity"], rate: "Quantity") -> dict[str, "Quantity"]:
    from changeover.seed.rate import mass_rate, seeds_per_mass_from_thousand

    size = given.get("seeds_per_mass")
    if "thousand_seed_mass" in given:
        size = seeds_per_mass_from_thousand(given["thousand_seed_mass"])
    return {} if size is None else {"seeds_per_mass": size, "mass_rate": mass_rate(rate, size)}
