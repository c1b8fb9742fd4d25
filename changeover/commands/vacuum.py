"""``changeover vacuum``: a start value of vacuum with its band, and the least that holds a seed."""

import argparse
from typing import TYPE_CHECKING

from changeover.commands.arguments import Parsers, add_job, add_json, add_units
from changeover.commands.figures import add_why, write_figures

if TYPE_CHECKING:
    from collections.abc import Mapping

    from changeover.quantities import Quantity
    from changeover.seed.reasons import Figure, Reason
    from changeover.seed.vacuum import VacuumBand

INPUTS = {
    "thousand_seed_mass": ("Thousand-seed mass", "thousand_seed_mass", 'such as "330 g"'),
    "hole": ("Hole diameter", "seed_size", 'such as "5 mm"'),
    "circle": ("Diameter of the cell circle", "diameter", 'such as "8 in"'),
    "disc_speed": ("Disc speed", "disc_speed", 'such as "27 rpm"'),
}
BAND_HOW = "half to double, which is what published optima bear out"


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    parser = add_job(parsers, "vacuum", "Propose a vacuum to start from, with its band.", run)
    parser.add_argument("--crop", help="key of the crop table, such as corn or soybean")
    for key, (_, _, example) in INPUTS.items():
        parser.add_argument(f"--{key.replace('_', '-')}", help=example)
    parser.add_argument("--altitude", help='height above the sea, such as "3000 ft" or "900 m"')
    add_units(parser)
    add_json(parser)
    add_why(parser)


def run(args: argparse.Namespace) -> int:
    """Write the answer; raises Refusal for an argument that cannot be used."""
    from changeover.quantities import Units, read_quantity
    from changeover.seed import bounds
    from changeover.seed.vacuum import altitude_note

    units = Units(args.units)
    given = {
        key: read_quantity(text, measure, units, name)
        for key, (name, measure, _) in INPUTS.items()
        if (text := getattr(args, key)) is not None
    }
    if "thousand_seed_mass" in given:
        bounds.THOUSAND_SEED_MASS.of(given["thousand_seed_mass"])
    figures = _start(args.crop, given) + _least(given)
    notes = ["A start value: tune it by bench runs with “changeover tune”."]
    if args.altitude is not None:
        height = read_quantity(args.altitude, "row_length", units, "Altitude")
        notes.append(altitude_note(height, units))
    write_figures(figures, units, as_json=args.json, why=args.why, notes=notes)
    return 0


def _start(crop: str | None, given: "Mapping[str, Quantity]") -> list["Figure"]:
    """Return start, low and high: from print where a crop has any, else from the seed itself."""
    from changeover.quantities import Refusal
    from changeover.seed.reasons import Reason, Trust
    from changeover.seed.vacuum import start_from_optima, start_from_seed

    optima = _optima(crop) if crop is not None else []
    if optima:
        sources = "; ".join(f"{source} ({value:.3g~P})" for value, source in optima)
        why = f"{len(optima)} published optima for {crop}; the start is their geometric mean."
        reason = Reason("vacuum", why, sources, Trust.PUBLISHED, BAND_HOW)
        return _band(start_from_optima([value for value, _ in optima]), reason)
    if {"thousand_seed_mass", "hole"} <= given.keys():
        mass = given["thousand_seed_mass"] / 1000
        why = "No optimum in print; holding force of 29 times the weight, as at ten optima."
        source = "derived from Karayel et al. 2004 and Yan et al. 2020"
        reason = Reason("vacuum", why, source, Trust.PUBLISHED, BAND_HOW)
        return _band(start_from_seed(mass, given["hole"]), reason)
    subject = f"for {crop} " if crop is not None else ""
    raise Refusal(
        f"Vacuum: no optimum is published {subject}here; give --thousand-seed-mass and --hole, or "
        "use your manual."
    )


def _optima(crop: str) -> list[tuple["Quantity", str]]:
    from changeover.desk.tables import crops
    from changeover.quantities import Refusal

    table = crops()
    if crop not in table:
        raise Refusal(f"Crop: “{crop}” is not in the table; choose {', '.join(sorted(table))}.")
    return [(figure.middle, figure.source) for figure in table[crop].of("vacuum")]


def _band(band: "VacuumBand", reason: "Reason") -> list["Figure"]:
    from changeover.seed.reasons import Figure

    return [
        Figure("start", "Start", band.start, "pressure", reason),
        Figure("low", "Low end of the band", band.low, "pressure", reason),
        Figure("high", "High end of the band", band.high, "pressure", reason),
    ]


def _least(given: "Mapping[str, Quantity]") -> list["Figure"]:
    """Return the force balance where all that it needs is given, else nothing."""
    from math import pi

    from changeover.quantities import Q
    from changeover.seed import bounds
    from changeover.seed.reasons import Figure, Reason, Trust
    from changeover.seed.vacuum import ASSUMPTIONS, FRICTION_SOURCE, least_holding_vacuum

    if not INPUTS.keys() <= given.keys():
        return []
    turns = bounds.DISC_SPEED.of(given["disc_speed"]) / 60.0
    speed = Q(pi * bounds.DIAMETER.of(given["circle"]) * turns, "m/s")
    least = least_holding_vacuum(
        given["thousand_seed_mass"] / 1000, given["hole"], speed, given["circle"]
    )
    how = "m · (g + v² / r) / (friction 0.4 · hole area)"
    source = f"statics; {FRICTION_SOURCE}"
    reason = Reason("force balance", " ".join(ASSUMPTIONS), source, Trust.PUBLISHED, how)
    return [Figure("least_holding", "Least that holds a seed", least, "pressure", reason)]
