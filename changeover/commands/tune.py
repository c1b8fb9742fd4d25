"""``changeover tune``: the level of vacuum with the least skips and doubles, from bench runs."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from changeover.commands.answers import write_json
from changeover.commands.arguments import Parsers, add_job, add_json, add_units
from changeover.commands.figures import add_why, write_notes

if TYPE_CHECKING:
    from changeover.desk.tune import Tuned
    from changeover.quantities import Quantity, Units
    from changeover.seed.tuning_advice import Advice

HOW = (
    "Skips and doubles are fitted as binomial counts with logistic curves over the log of vacuum "
    "(Firth 1993, Biometrika 80:27-38), skips held to fall and doubles to rise; the interval is "
    "95 %, from 600 draws of the fits, widened where meters differ by more than chance."
)
PRESSURES = ("best", "low", "high", "next_level")
SHARES = ("error", "error_low", "error_high", "gain", "gain_low", "gain_high")


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    parser = add_job(parsers, "tune", "Find the best vacuum from counts of bench runs.", run)
    parser.add_argument(
        "file",
        type=Path,
        metavar="FILE.csv",
        help="columns: row or meter, vacuum (inH2O), cells, skips, doubles, singulator if varied",
    )
    parser.add_argument("--present", help='the present vacuum, such as "14 inH2O"')
    parser.add_argument("--most", help='the most that the fan reaches, such as "25 inH2O"')
    add_units(parser)
    add_json(parser)
    add_why(parser)


def run(args: argparse.Namespace) -> int:
    """Write the answer; raises Refusal for a file or an argument that cannot be used."""
    from changeover.desk.tune import tune_file
    from changeover.quantities import Units

    units = Units(args.units)
    present = _pressure(args.present, "Present vacuum", units)
    most = _pressure(args.most, "Fan limit", units)
    tuned = tune_file(args.file, present, most, units)
    if args.json:
        write_json(_json(tuned, units, why=args.why))
    else:
        write_notes(_lines(tuned, why=args.why))
    return 0


def _pressure(text: str | None, what: str, units: "Units") -> "Quantity | None":
    from changeover.quantities import read_quantity

    return None if text is None else read_quantity(text, "pressure", units, what)


def _lines(tuned: "Tuned", *, why: bool) -> list[str]:
    lines = [advice.says for advice in tuned.meters]
    if len(tuned.meters) > 1:
        lines.append(tuned.together.says)
    if tuned.position is not None:
        lines.append(tuned.position.says)
    return lines + ([HOW] if why else [])


def _json(tuned: "Tuned", units: "Units", *, why: bool) -> dict[str, object]:
    answer: dict[str, object] = {
        "meters": [_advice_json(advice, units) for advice in tuned.meters],
        "together": _advice_json(tuned.together, units),
    }
    if tuned.position is not None:
        answer["singulator"] = {
            "position": tuned.position.position,
            "clear": tuned.position.clear,
            "says": tuned.position.says,
        }
    return answer | ({"reasons": {"fit": HOW}} if why else {})


def _advice_json(advice: "Advice", units: "Units") -> dict[str, object]:
    from changeover.quantities import as_json

    pressures = {
        key: None if (value := getattr(advice, key)) is None else as_json(value, "pressure", units)
        for key in PRESSURES
    }
    return {
        "name": advice.name,
        "verdict": advice.verdict.value,
        **pressures,
        **{key: getattr(advice, key) for key in SHARES},
        "says": advice.says,
    }
