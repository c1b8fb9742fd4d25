"""``changeover drive-start``: which condition keeps a variable-rate drive from turning."""

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from changeover.commands.answers import write_json
from changeover.commands.arguments import Parsers, add_job, add_json, add_units
from changeover.commands.proof_words import advice_json, percent_of, shown

if TYPE_CHECKING:
    from changeover.proof.drive_start import ConditionState, DriveStart
    from changeover.quantities import Units


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    summary = "Find the condition that keeps a variable-rate drive from turning."
    parser = add_job(parsers, "drive-start", summary, run)
    parser.add_argument("file", help="TOML with tables planter, limits and readings")
    add_units(parser)
    add_json(parser)


def run(args: argparse.Namespace) -> int:
    """Write the verdict; raises Refusal for a file that cannot be used."""
    from changeover.desk.prove.files import prove_drive_start
    from changeover.quantities import Units

    start = prove_drive_start(Path(args.file))
    if args.json:
        write_json(answer(start, Units(args.units)))
    else:
        sys.stdout.write(_text(start, Units(args.units)))
    return 0


def answer(start: "DriveStart", units: "Units") -> dict[str, object]:
    """Return the JSON answer.

    ``conditions`` in order with state and evidence, ``first_unmet`` (null when there is none),
    ``not_judged``, ``expected_speed`` of the motor, ``oil_needed``, ``actual_share`` in percent
    of the target, ``within_tolerance``, ``saturated``, and ``next_steps``, likeliest first.
    """
    from changeover.quantities import as_json

    expected, oil = start.expected, start.oil_needed
    return {
        "conditions": [
            {
                "condition": str(one.condition),
                "state": str(one.state),
                "evidence": one.evidence,
            }
            for one in start.conditions
        ],
        "first_unmet": None if start.first_unmet is None else str(start.first_unmet),
        "not_judged": [str(one) for one in start.not_judged],
        "expected_speed": None if expected is None else as_json(expected, "disc_speed", units),
        "oil_needed": None if oil is None else as_json(oil, "oil_flow", units),
        "actual_share": percent_of(start.actual_share),
        "within_tolerance": start.within_tolerance,
        "saturated": start.saturated,
        "next_steps": advice_json(start.next_steps),
    }


def _condition(one: "ConditionState") -> str:
    evidence = "" if one.evidence == "not read" else f" ({one.evidence})"
    return f"{one.condition}: {one.state}{evidence}"


def _text(start: "DriveStart", units: "Units") -> str:
    from changeover.quantities import show

    lines = [_condition(one) for one in start.conditions]
    if start.expected is not None:
        lines.append(f"Motor speed reckoned: {show(start.expected, 'disc_speed', units)}")
    if start.actual_share is not None:
        lines.append(f"Actual speed: {shown(percent_of(start.actual_share))} % of the target")
    if start.saturated:
        lines.append("The drive command is at its limit.")
    lines.append(f"First condition not met: {start.first_unmet or 'none found'}")
    if start.not_judged:
        lines.append(f"Cannot be judged yet: {', '.join(start.not_judged)}")
    for number, one in enumerate(start.next_steps, start=1):
        caution = f" Caution: {one.caution}" if one.caution else ""
        lines.append(f"{number}. {one.text} ({one.source}){caution}")
    return "\n".join(lines) + "\n"
