"""``changeover spacing``: indices, precision and rate achieved from spacings in the furrow."""

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from changeover.commands.answers import write_json
from changeover.commands.arguments import Parsers, add_job, add_json
from changeover.commands.proof_words import (
    add_share,
    interval_json,
    length_of,
    lines_of,
    percent_of,
    share_of,
    shown,
)

if TYPE_CHECKING:
    from changeover.desk.prove.files import SpacingProof
    from changeover.proof.bootstrap import SpacingIntervals
    from changeover.proof.spacing import Indices, SpacingMeasures
    from changeover.proof.spacing_limits import SpacingVerdict
    from changeover.quantities import Quantity, Units

METRIC = ("mm", "cm", "dm", "m")


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    summary = "Judge spacings or positions of seeds in the furrow, by row."
    parser = add_job(parsers, "spacing", summary, run)
    parser.add_argument("file", help="CSV with columns row and spacing (in) or position (in)")
    parser.add_argument("--target", required=True, help='target spacing, such as "6.5 in"')
    parser.add_argument("--rows", help="rows that must be in the file, such as 1-12")
    parser.add_argument("--intervals", action="store_true", help="add bootstrap intervals")
    add_share(parser, "--quality-least", "least quality of feed")
    add_share(parser, "--multiples-most", "most multiples")
    add_share(parser, "--misses-most", "most misses")
    add_share(parser, "--precision-most", "most precision over the target spacing")
    parser.add_argument("--units", choices=("us", "metric"), help="default: those of the target")
    add_json(parser)


def run(args: argparse.Namespace) -> int:
    """Write the measures; raises Refusal for arguments or a file that cannot be used."""
    from changeover.desk.prove.files import prove_spacing
    from changeover.proof.spacing_limits import SpacingLimits

    target = length_of(args.target, "spacing", "--target")
    limits = SpacingLimits(
        quality_least=share_of(args, "quality_least"),
        multiples_most=share_of(args, "multiples_most"),
        misses_most=share_of(args, "misses_most"),
        precision_most=share_of(args, "precision_most"),
    )
    proof = prove_spacing(Path(args.file), target, limits, rows=args.rows, intervals=args.intervals)
    units = _units(args.units, target)
    if args.json:
        write_json(answer(proof, target, units))
    else:
        sys.stdout.write(_text(proof, target, units))
    return 0


def answer(proof: "SpacingProof", target: "Quantity", units: "Units") -> dict[str, object]:
    """Return the JSON answer: ``target``, ``rows`` (a list, each with its ``row``), ``overall``.

    Shares and precision in percent, lengths as value and unit; ``counts`` are the five divisions,
    ``by_spacings`` shares of spacings (Kachman & Smith 1995), ``by_positions`` shares of drop
    positions (ISO 7256-1); ``histogram`` has 36 classes of a tenth of the target, the last open.
    """
    from changeover.quantities import as_json

    rows = [
        {
            "row": row,
            **measures_json(measures, units),
            **_judged(proof.verdicts[row], proof.intervals.get(row)),
        }
        for row, measures in proof.rows.items()
    ]
    overall = {
        **measures_json(proof.overall, units),
        **_judged(proof.overall_verdict, proof.overall_intervals),
    }
    return {"target": as_json(target, "spacing", units), "rows": rows, "overall": overall}


def measures_json(measures: "SpacingMeasures", units: "Units") -> dict[str, object]:
    """Return the measures of one row, or of all, as JSON."""
    from changeover.quantities import as_json

    shortage = measures.shortage
    return {
        "n": measures.n,
        "counts": list(measures.counts),
        "by_spacings": _indices(measures.by_spacings),
        "by_positions": _indices(measures.by_positions),
        "precision_ref": percent_of(measures.precision_ref),
        "precision_mean": percent_of(measures.precision_mean),
        "mean": as_json(measures.mean, "spacing", units),
        "sd": None if measures.sd is None else as_json(measures.sd, "spacing", units),
        "mode": as_json(measures.mode, "spacing", units),
        "cp3_mode": percent_of(measures.cp3_mode),
        "cp3_target": percent_of(measures.cp3_target),
        "length": as_json(measures.length, "row_length", units),
        "seeds_per_length": as_json(measures.seeds_per_length, "seeds_per_length", units),
        "rate_achieved": percent_of(measures.rate_share),
        "shortage": {
            name: percent_of(getattr(shortage, name))
            for name in ("total", "skips", "doubles", "spread")
        },
        "histogram": list(measures.histogram),
    }


def _indices(indices: "Indices") -> dict[str, object]:
    return {
        "of": indices.of,
        "multiples": percent_of(indices.multiples),
        "quality_of_feed": percent_of(indices.quality_of_feed),
        "misses": percent_of(indices.misses),
        "meaningful": indices.meaningful,
    }


def _judged(verdict: "SpacingVerdict", intervals: "SpacingIntervals | None") -> dict[str, object]:
    figures = [
        {
            "name": one.name,
            "value": percent_of(one.value),
            "interval": interval_json(one.interval),
            "limit": percent_of(one.limit),
            "standing": str(one.standing),
        }
        for one in verdict.figures
    ]
    judged: dict[str, object] = {"standing": str(verdict.standing), "judged": figures}
    if intervals is not None:
        judged["intervals"] = {name: interval_json(one) for name, one in vars(intervals).items()}
    return judged


def _units(given: str | None, target: "Quantity") -> "Units":
    from changeover.quantities import Units

    if given is not None:
        return Units(given)
    return Units.METRIC if f"{target.units:~}" in METRIC else Units.US


def _text(proof: "SpacingProof", target: "Quantity", units: "Units") -> str:
    from changeover.quantities import show

    header = ("row", "n", "mean", "sd", "multiples", "feed", "misses", "precision", "CP3", "rate")
    rows = [_line(str(row), one, units) for row, one in proof.rows.items()]
    rows.append(_line("all", proof.overall, units))
    both = proof.overall.by_positions
    return (
        f"Target {show(target, 'spacing', units)}; shares in % of spacings, precision in % of the "
        "target, CP3 about the target, rate in % of that wanted.\n"
        + lines_of(header, rows)
        + f"Over all, by drop positions: multiples {shown(100 * both.multiples)}, quality of feed "
        f"{shown(100 * both.quality_of_feed)}, misses {shown(100 * both.misses)} %"
        + ("" if both.meaningful else " (not meaningful: seeds in clusters)")
        + f".\nVerdict: {proof.overall_verdict.standing}.\n"
    )


def _line(name: str, one: "SpacingMeasures", units: "Units") -> tuple[str, ...]:
    from changeover.quantities import show

    shares = one.by_spacings
    return (
        name,
        str(one.n),
        show(one.mean, "spacing", units),
        "–" if one.sd is None else show(one.sd, "spacing", units),
        shown(100 * shares.multiples),
        shown(100 * shares.quality_of_feed),
        shown(100 * shares.misses),
        shown(percent_of(one.precision_ref)),
        shown(percent_of(one.cp3_target)),
        shown(percent_of(one.rate_share)),
    )
