"""``changeover catch``: the rate that a catch test shows, and the correction it asks for."""

import argparse
from collections.abc import Mapping
from typing import TYPE_CHECKING

from changeover.commands.arguments import Parsers, add_job, add_json, add_units
from changeover.commands.figures import add_why, write_figures

if TYPE_CHECKING:
    from changeover.quantities import Quantity
    from changeover.seed.reasons import Figure

# key: name, measure, example, whether it must be given
INPUTS = {
    "rows": ("Rows caught", "count", "how many rows were caught", True),
    "row_spacing": ("Row spacing", "row_spacing", 'such as "30 in"', True),
    "seeds": ("Seeds caught", "count", "seeds counted, or", False),
    "mass": ("Mass caught", "mass", 'seed weighed, such as "9 oz" or "250 g"', False),
    "distance": ("Distance", "row_length", 'driven, such as "100 ft", or', False),
    "turns": ("Wheel turns", "ratio", "turns of the drive wheel; needs --round", False),
    "round": ("Rolling circumference", "diameter", 'in one wheel turn, such as "84 in"', False),
    "slip": ("Slip", "share", 'in the field, such as "4 %%", when turned by hand', False),
    "seeds_per_mass": ("Seeds per mass", "seeds_per_mass", 'such as "1500/lb"', False),
    "wanted": ("Rate wanted", "seed_rate", 'such as "32000/acre"; gives the correction', False),
}
WHY = {
    "distance": ("What the turns stand for.", "turns · circumference / (1 − slip)"),
    "area": ("What the rows caught would have sown.", "distance · rows · row spacing"),
    "rate": ("What the planter drops as it is set.", "seeds / area"),
    "mass_rate": ("What the planter drops as it is set.", "mass / area"),
    "correction": ("Turn the discs this much faster for the rate wanted.", "wanted / shown"),
}


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    parser = add_job(parsers, "catch", "Reckon the rate from seed caught over a distance.", run)
    for key, (_, _, example, needed) in INPUTS.items():
        parser.add_argument(f"--{key.replace('_', '-')}", required=needed, help=example)
    add_units(parser)
    add_json(parser)
    add_why(parser)


def run(args: argparse.Namespace) -> int:
    """Write the answer; raises Refusal for an argument that cannot be used."""
    from changeover.quantities import Units, read_quantity

    units = Units(args.units)
    given = {
        key: read_quantity(text, measure, units, name)
        for key, (name, measure, _, _) in INPUTS.items()
        if (text := getattr(args, key)) is not None
    }
    write_figures(reckon(given), units, as_json=args.json, why=args.why)
    return 0


def reckon(given: Mapping[str, "Quantity"]) -> list["Figure"]:
    """Return what the catch shows: ``distance``, ``area``, ``rate`` or ``mass_rate``, or both.

    ``correction`` is the factor on the drive, with a rate wanted. Raises Refusal for inputs that
    lack their partners or figures out of bounds.
    """
    from changeover.desk.catch_test import CatchTest, catch_shown
    from changeover.quantities import Q
    from changeover.seed.catch import sown_area

    _check(given)
    shown = catch_shown(CatchTest(**given))
    found: dict[str, Quantity | None] = {
        "distance": shown.distance,
        "area": sown_area(shown.distance, given["rows"], given["row_spacing"]),
        "mass_rate": shown.mass_rate,
        "rate": shown.rate,
        "correction": None if shown.correction is None else Q(shown.correction, "count"),
    }
    return [_figure(key, quantity) for key, quantity in found.items() if quantity is not None]


def _check(given: Mapping[str, "Quantity"]) -> None:
    """Refuse arguments that lack their partners. Raises Refusal."""
    from changeover.quantities import Refusal

    if ("seeds" in given) == ("mass" in given):
        raise Refusal("Catch test: give --seeds or --mass, one of them.")
    if ("distance" in given) == ("turns" in given):
        raise Refusal("Catch test: give --distance, or --turns with --round.")
    if "turns" in given and "round" not in given:
        raise Refusal("Wheel turns: the ground covered in one is missing; add --round.")
    if "wanted" in given and "mass" in given and "seeds_per_mass" not in given:
        raise Refusal("Rate wanted: a mass caught needs the seed size; add --seeds-per-mass.")


def _figure(key: str, quantity: "Quantity") -> "Figure":
    from changeover.seed.reasons import Figure, Reason, Trust

    names = {
        "distance": ("Distance", "row_length"),
        "area": ("Area", "test_area"),
        "rate": ("Seed rate shown", "seed_rate"),
        "mass_rate": ("Mass rate shown", "mass_rate"),
        "correction": ("Correction", "ratio"),
    }
    why, how = WHY[key]
    reason = Reason(key, why, "by definition", Trust.PUBLISHED, how)
    return Figure(key, names[key][0], quantity, names[key][1], reason)
