"""``changeover rate``: spacing, seeds per length and disc speed from a seed rate."""

import argparse
from collections.abc import Mapping
from typing import TYPE_CHECKING

from changeover.commands.answers import write_json, write_pairs
from changeover.commands.arguments import Parsers, add_job, add_json, add_units

if TYPE_CHECKING:
    from changeover.quantities import Quantity, Units

NAMES = {
    "rate": ("Seed rate", "seed_rate"),
    "row_spacing": ("Row spacing", "row_spacing"),
    "speed": ("Ground speed", "speed"),
    "cells": ("Cells on the disc", "count"),
    "spacing": ("Spacing in the row", "spacing"),
    "seeds_per_length": ("Seeds per length of row", "seeds_per_length"),
    "row_length_thousandth": ("Row length of a thousandth", "row_length"),
    "seeds_per_second": ("Seeds per second and row", "seeds_per_second"),
    "disc_speed": ("Disc speed", "disc_speed"),
}


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    parser = add_job(parsers, "rate", "Reckon spacing and disc speed from a seed rate.", run)
    parser.add_argument("--rate", required=True, help='seeds per area, such as "32000/acre"')
    parser.add_argument("--row-spacing", required=True, help='such as "30 in" or "75 cm"')
    parser.add_argument("--speed", help='ground speed, such as "5 mph" or "8 km/h"')
    parser.add_argument("--cells", help="cells on the disc, a whole number; needs --speed")
    add_units(parser)
    add_json(parser)


def run(args: argparse.Namespace) -> int:
    """Write the answer; raises Refusal for an argument that cannot be used."""
    from changeover.quantities import Units, as_json, show

    units = Units(args.units)
    figures = reckon(_inputs(args, units), units)
    if args.json:
        write_json({key: as_json(value, NAMES[key][1], units) for key, value in figures.items()})
    else:
        write_pairs(
            (NAMES[key][0], show(value, NAMES[key][1], units)) for key, value in figures.items()
        )
    return 0


def _inputs(args: argparse.Namespace, units: "Units") -> dict[str, "Quantity"]:
    from changeover.quantities import Refusal, read_quantity

    given = {key: getattr(args, key) for key in ("rate", "row_spacing", "speed", "cells")}
    if given["cells"] is not None and given["speed"] is None:
        raise Refusal("Cells on the disc: the disc speed needs a ground speed; add --speed.")
    return {
        key: read_quantity(text, NAMES[key][1], units, NAMES[key][0])
        for key, text in given.items()
        if text is not None
    }


def reckon(given: Mapping[str, "Quantity"], units: "Units") -> dict[str, "Quantity"]:
    """Return the inputs and all that follows from them, by key.

    Always ``spacing``, ``seeds_per_length`` and ``row_length_thousandth`` (of an acre or, in
    metric units, of a hectare); ``seeds_per_second`` with a ``speed``; ``disc_speed`` with
    ``cells`` too. Raises Refusal for figures out of bounds.
    """
    from changeover.quantities import Units
    from changeover.seed import rate as reckoning

    rate, row_spacing = given["rate"], given["row_spacing"]
    figures = {
        **given,
        "spacing": reckoning.spacing_in_row(rate, row_spacing),
        "seeds_per_length": reckoning.seeds_per_length(rate, row_spacing),
        "row_length_thousandth": reckoning.row_length_thousandth(
            row_spacing, "acre" if units is Units.US else "hectare"
        ),
    }
    if "speed" in given:
        figures["seeds_per_second"] = reckoning.seeds_per_second(rate, row_spacing, given["speed"])
    if "cells" in given:
        figures["disc_speed"] = reckoning.disc_speed(figures["seeds_per_second"], given["cells"])
    return figures
