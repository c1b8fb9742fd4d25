"""``changeover depth``: mean depth by row with its interval, and digs still needed."""

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from changeover.commands.answers import write_json
from changeover.commands.arguments import Parsers, add_job, add_json, add_units
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
    from collections.abc import Mapping, Sequence

    from changeover.desk.prove.files import DepthFile
    from changeover.proof.depth import DepthDigs, DepthGoal
    from changeover.quantities import Quantity, Units


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    parser = add_job(parsers, "depth", "Judge depth digs, row by row.", run)
    parser.add_argument("file", help="CSV with columns row and depth (in), notch if wanted")
    parser.add_argument("--target", help='depth wanted, such as "2 in"; needs --tolerance')
    parser.add_argument("--tolerance", help='how far a seed may lie from it, such as "0.25 in"')
    parser.add_argument("--step", help='depth between notches, such as "1/4 in"; needs --target')
    parser.add_argument("--rows", help="rows that must be in the file, such as 1-12")
    add_share(parser, "--share-least", "least share of digs in tolerance")
    add_units(parser)
    add_json(parser)


def run(args: argparse.Namespace) -> int:
    """Write the verdict; raises Refusal for arguments or a file that cannot be used."""
    from changeover.desk.prove.files import prove_depth
    from changeover.quantities import Units

    goal, step = _goal(args), None
    if args.step is not None:
        step = length_of(args.step, "depth", "--step")
    units = Units(args.units)
    found = prove_depth(Path(args.file), goal, units, rows=args.rows)
    steps = {one.row: _step_of(found, one.row, step) for one in found.digs}
    if args.json:
        rows = [
            {**digs_json(one, goal, steps[one.row], units), **line_json(found, one.row, units)}
            for one in found.digs
        ]
        write_json({"rows": rows})
    else:
        sys.stdout.write(_text(found.digs, goal, steps, units) + _lines_text(found, units))
    return 0


def line_json(found: "DepthFile", row: int, units: "Units") -> dict[str, object]:
    """Return a row's own depth line as JSON, null where it was dug at one notch or bears none.

    ``step`` is the depth between its notches with half its 95 % interval; ``line_why`` says why
    digs at several notches give no line.
    """
    from changeover.quantities import Q, as_json

    why, line = found.lines.get(row, ("", None))
    if line is None:
        return {"line": None, "line_why": why or None}
    half = Q(line.slope_half_width(), "mm")
    return {
        "line": {
            "step": as_json(Q(line.slope, "mm"), "depth_step", units),
            "half_width": as_json(half, "depth_step", units),
            "depth_at_notch_1": as_json(Q(line.at(1), "mm"), "depth", units),
            "digs": line.readings,
        },
        "line_why": None,
    }


def _step_of(found: "DepthFile", row: int, step: "Quantity | None") -> "Quantity | None":
    """Return the depth between a row's notches: by its own line, else as the argument says."""
    from changeover.quantities import Q

    line = found.lines.get(row, ("", None))[1]
    return step if line is None else Q(line.slope, "mm")


def _lines_text(found: "DepthFile", units: "Units") -> str:
    """Say the line of each row that was dug at several notches, or why it has none."""
    from changeover.quantities import Q, show

    said = []
    for row, (why, line) in found.lines.items():
        if line is None:
            said.append(f"row {row}: no depth line of its own; {why}")
            continue
        step = show(Q(line.slope, "mm"), "depth_step", units, sign=False)
        half = show(Q(line.slope_half_width(), "mm"), "depth_step", units)
        first = show(Q(line.at(1), "mm"), "depth", units)
        told = f"{step} ± {half} a notch, {first} at notch 1, by {line.readings} digs"
        said.append(f"row {row}: its own depth line, {told}")
    return "".join(f"{line}\n" for line in said)


def digs_json(
    one: "DepthDigs", goal: "DepthGoal | None", step: "Quantity | None", units: "Units"
) -> dict[str, object]:
    """Return the verdict on one row as JSON.

    Depths as value and unit, the interval of the mean in that unit, shares in percent;
    ``notch_change`` is above 0 for deeper, null when the digs cannot say.
    """
    from changeover.quantities import as_json

    return {
        "row": one.row,
        "n": one.n,
        "mean": as_json(one.mean, "depth", units),
        "sd": None if one.sd is None else as_json(one.sd, "depth", units),
        "interval": interval_json(one.interval, _factor(one, units)),
        "in_tolerance": percent_of(one.in_tolerance),
        "in_tolerance_interval": interval_json(one.share_interval),
        "digs_needed": one.digs_needed,
        "notch_change": _change(one, goal, step),
        "standing": str(one.standing),
        "share_standing": str(one.share_standing),
    }


def _goal(args: argparse.Namespace) -> "DepthGoal | None":
    from changeover.proof.depth import DepthGoal
    from changeover.quantities import Refusal

    if (args.target is None) != (args.tolerance is None):
        raise Refusal("A target depth needs a tolerance; give --target and --tolerance together.")
    if args.target is None:
        if args.step is not None or args.share_least is not None:
            raise Refusal("--step and --share-least need --target and --tolerance.")
        return None
    target = length_of(args.target, "depth", "--target")
    tolerance = length_of(args.tolerance, "depth", "--tolerance")
    return DepthGoal(target, tolerance, share_of(args, "share_least"))


def _change(one: "DepthDigs", goal: "DepthGoal | None", step: "Quantity | None") -> int | None:
    from changeover.proof.depth import notch_change

    return None if goal is None or step is None else notch_change(one, goal.target, step)


def _factor(one: "DepthDigs", units: "Units") -> float:
    """What brings the interval, in the unit of the mean, to the unit shown."""
    from changeover.quantities import MEASURES, Q

    return float(Q(1.0, one.mean.units).to(MEASURES["depth"].unit(units)).magnitude)


def _text(
    digs: "Sequence[DepthDigs]",
    goal: "DepthGoal | None",
    steps: "Mapping[int, Quantity | None]",
    units: "Units",
) -> str:
    from changeover.quantities import show

    header = (
        "row",
        "digs",
        "mean",
        "interval",
        "sd",
        "in tol. %",
        "more digs",
        "notches",
        "verdict",
    )
    rows = []
    for one in digs:
        change, factor = _change(one, goal, steps[one.row]), _factor(one, units)
        span = one.interval
        rows.append(
            (
                str(one.row),
                str(one.n),
                show(one.mean, "depth", units),
                "–" if span is None else f"{span.low * factor:.2f}–{span.high * factor:.2f}",
                "–" if one.sd is None else show(one.sd, "depth", units),
                shown(percent_of(one.in_tolerance), 0),
                "–" if one.digs_needed is None else str(one.digs_needed),
                "–" if change is None else f"{change:+d}",
                str(one.standing),
            )
        )
    return lines_of(header, rows)
