"""``changeover sprockets``: every pair of a ground drive's sprockets with its seed rate."""

import argparse
from typing import TYPE_CHECKING

from changeover.commands.answers import write_json
from changeover.commands.arguments import Parsers, add_job, add_json, add_units
from changeover.commands.figures import add_why, write_notes

if TYPE_CHECKING:
    from changeover.planter.drive import GroundDrive
    from changeover.quantities import Quantity, Units
    from changeover.seed.sprockets import SprocketPair

HOW = (
    "Seeds per area = cells · ratio · driver / driven · (1 − slip) / (rolling circumference · "
    "row spacing), by definition of a chain drive (derived)."
)


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    parser = add_job(parsers, "sprockets", "List sprocket pairs, nearest to a rate first.", run)
    parser.add_argument("--rate", required=True, help='seeds per area, such as "32000/acre"')
    parser.add_argument("--row-spacing", required=True, help='such as "30 in"')
    parser.add_argument("--cells", required=True, help="cells on the disc, a whole number")
    parser.add_argument("--driver", required=True, help="teeth to choose from, such as 17,19,23")
    parser.add_argument("--driven", required=True, help="teeth to choose from, such as 16,20,24")
    parser.add_argument("--round", required=True, help='ground covered in a wheel turn, "84 in"')
    parser.add_argument("--ratio", required=True, help="disc turns a wheel turn, even sprockets")
    parser.add_argument("--slip", help='share of the ground lost, such as "4 %%" (default: none)')
    parser.add_argument("--distance", help='of a measured run, such as "300 ft"; needs --turns')
    parser.add_argument("--turns", help="wheel turns over the measured run; gives the slip")
    parser.add_argument("--list", type=int, default=8, help="how many pairs to list (default: 8)")
    parser.add_argument("--table", action="store_true", help="give the rate of every pair too")
    add_units(parser)
    add_json(parser)
    add_why(parser)


def run(args: argparse.Namespace) -> int:
    """Write the answer; raises Refusal for an argument that cannot be used."""
    from changeover.quantities import Refusal, Units, read_quantity
    from changeover.seed.sprockets import nearest_pairs, rate_table

    units = Units(args.units)
    if args.list < 1:
        raise Refusal("Pairs to list: enter 1 or more.")
    wanted = read_quantity(args.rate, "seed_rate", units, "Seed rate")
    spacing = read_quantity(args.row_spacing, "row_spacing", units, "Row spacing")
    drive = _drive(args, units)
    cells = _number(args.cells, "Cells on the disc")
    pairs = nearest_pairs(drive, wanted, cells, spacing)
    table = rate_table(drive, cells, spacing) if args.table else None
    if args.json:
        answer = _json(pairs[: args.list], drive, units, why=args.why)
        write_json(answer if table is None else {**answer, "table": _table(table, drive, units)})
    else:
        lines = _lines(pairs[: args.list], drive, units, why=args.why)
        write_notes(lines if table is None else [*_table_lines(table, drive, units), "", *lines])
    return 0


def _drive(args: argparse.Namespace, units: "Units") -> "GroundDrive":
    from changeover.planter.drive import GroundDrive
    from changeover.quantities import read_quantity

    rolling = read_quantity(args.round, "diameter", units, "Rolling circumference")
    return GroundDrive(
        _teeth(args.driver, "Driver teeth"),
        _teeth(args.driven, "Driven teeth"),
        rolling,
        _number(args.ratio, "Ratio"),
        _slip(args, rolling, units),
    )


def _slip(args: argparse.Namespace, rolling: "Quantity", units: "Units") -> float:
    from changeover.quantities import Refusal, read_quantity
    from changeover.seed.sprockets import slip_from_run

    if (args.distance is None) != (args.turns is None):
        raise Refusal("Measured run: give both --distance and --turns, or neither.")
    if args.distance is not None:
        if args.slip is not None:
            raise Refusal("Slip: give --slip or a measured run, not both.")
        distance = read_quantity(args.distance, "row_length", units, "Measured run")
        return slip_from_run(distance, _number(args.turns, "Wheel turns"), rolling)
    if args.slip is None:
        return 0.0
    return float(read_quantity(args.slip, "share", units, "Slip").to("count").magnitude)


def _teeth(text: str, what: str) -> tuple[int, ...]:
    from changeover.quantities import Refusal

    try:
        teeth = tuple(sorted({int(part) for part in text.split(",")}))
    except ValueError:
        raise Refusal(f"{what}: “{text}” is no list of whole numbers; write 17,19,23.") from None
    if teeth[0] < 5 or teeth[-1] > 200:
        raise Refusal(f"{what}: sprockets have 5 to 200 teeth; check the list.")
    return teeth


def _number(text: str, what: str) -> float:
    from changeover.quantities import Units, read_quantity

    return float(read_quantity(text, "count", Units.US, what).to("count").magnitude)


def _lines(
    pairs: tuple["SprocketPair", ...], drive: "GroundDrive", units: "Units", *, why: bool
) -> list[str]:
    from changeover.quantities import show

    shown = [(pair.name, show(pair.rate, "seed_rate", units), f"{pair.off:+.1%}") for pair in pairs]
    widths = [max(len(row[column]) for row in shown) for column in range(3)]
    lines = [
        f"{name:<{widths[0]}}  {rate:>{widths[1]}}  {off:>{widths[2]}}" for name, rate, off in shown
    ]
    return lines + ([HOW, f"Slip {drive.slip:.1%}."] if why else [])


def _json(
    pairs: tuple["SprocketPair", ...], drive: "GroundDrive", units: "Units", *, why: bool
) -> dict[str, object]:
    from changeover.quantities import as_json

    listed = [
        {
            "driver": pair.driver,
            "driven": pair.driven,
            "rate": as_json(pair.rate, "seed_rate", units),
            "off": pair.off,
        }
        for pair in pairs
    ]
    answer: dict[str, object] = {"slip": drive.slip, "pairs": listed}
    return answer | ({"reasons": {"pairs": HOW}} if why else {})


def _table(table: "Quantity", drive: "GroundDrive", units: "Units") -> dict[str, object]:
    """Return the rates of all pairs, a line for each driver, a column for each driven sprocket."""
    from changeover.quantities import as_json

    rates = [[as_json(rate, "seed_rate", units) for rate in line] for line in table]
    return {"driver": sorted(drive.driver), "driven": sorted(drive.driven), "rates": rates}


def _table_lines(table: "Quantity", drive: "GroundDrive", units: "Units") -> list[str]:
    from changeover.quantities import MEASURES, show, unit_sign

    texts = [[show(rate, "seed_rate", units, sign=False) for rate in line] for line in table]
    wide = max(len(text) for line in texts for text in line)
    unit = unit_sign(MEASURES["seed_rate"].unit(units))
    head = "  ".join(f"{teeth:>{wide}}" for teeth in sorted(drive.driven))
    rows = [
        f"{teeth:>6}  {'  '.join(f'{text:>{wide}}' for text in line)}"
        for teeth, line in zip(sorted(drive.driver), texts, strict=True)
    ]
    return [f"{unit}; driver down, driven across", f"{'':>6}  {head}", *rows]
