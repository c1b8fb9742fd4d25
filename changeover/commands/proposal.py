"""``changeover proposal``: the proposed settings for a lot and a field, each with its reason."""

import argparse
import sys
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from changeover.commands.answers import write_json, write_pairs
from changeover.commands.arguments import Parsers, add_job
from changeover.commands.figures import add_why, reason_text, write_notes
from changeover.commands.job_arguments import add_job_arguments, opened, read_job

if TYPE_CHECKING:
    from changeover.desk.board import Board
    from changeover.quantities import Quantity, Units
    from changeover.seed.reasons import Figure, Proposal, Proposed, Reason

NO_GROUND = "no proposal, enter from your manual"


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    parser = add_job(parsers, "proposal", "Propose settings for a seed lot and a field.", run)
    add_job_arguments(parser)
    add_why(parser)


def run(args: argparse.Namespace) -> int:
    """Write the proposal; raises Refusal for a name that the store does not have."""
    from changeover.desk.board import read_board
    from changeover.desk.look_up import propose_for
    from changeover.quantities import Units

    units = Units(args.units)
    with opened(args) as store:
        job = read_job(args, store, units)
        board = read_board(store, args.planter, units, proposal=False)
        proposal = propose_for(store, args.planter, job, units)
    if args.json:
        named = {"planter": args.planter, "lot": job.lot, "field": args.field}
        write_json({**named, **proposal_json(board, proposal)})
    else:
        _write_text(board, proposal, why=args.why)
    return 0


def proposal_json(board: "Board", proposal: "Proposal") -> dict[str, Any]:
    """Return the proposal under the keys ``settings``, ``figures`` and ``warnings``."""
    return {
        "settings": [_cell_json(board, one) for one in proposal.cells.values()],
        "figures": [_figure_json(one, board.units) for one in proposal.figures],
        "warnings": list(proposal.warnings),
    }


def _cell_json(board: "Board", one: "Proposed") -> dict[str, Any]:
    from changeover.quantities import as_json, is_quantity

    setting = next(s for s in board.settings if s.key == one.cell.setting)
    measure = setting.measure or "count"

    def plain(value: "int | str | Quantity | None") -> object:
        return as_json(value, measure, board.units) if is_quantity(value) else value

    return {
        "setting": setting.key,
        "name": setting.name,
        "place": one.cell.place.label,
        "value": plain(one.value),
        "text": _shown(board, one),
        "low": plain(one.low),
        "high": plain(one.high),
        "reason": _reason_json(one.reason),
    }


def _figure_json(one: "Figure", units: "Units") -> dict[str, Any]:
    from changeover.quantities import as_json

    value = as_json(one.quantity, one.measure, units)
    reason = _reason_json(one.reason)
    return {"key": one.key, "name": one.name, "value": value, "reason": reason}


def _reason_json(reason: "Reason") -> dict[str, Any]:
    return {
        "rule": reason.rule,
        "why": reason.why,
        "how": reason.how,
        "inputs": [{"name": one.name, "text": one.text} for one in reason.inputs],
        "source": reason.source,
        "trust": str(reason.trust),
        "cautions": list(reason.cautions),
        "evidence": [
            {"trust": str(one.trust), "says": one.says, "used": one.used} for one in reason.evidence
        ],
    }


def _shown(board: "Board", one: "Proposed") -> str:
    """Return the value as it stands in the matrix, with its unit."""
    from changeover.planter.entry import show_value

    setting = next(s for s in board.settings if s.key == one.cell.setting)
    place = one.cell.place
    return show_value(setting, board.planter, place, one.value, board.units, sign=True)


def _write_text(board: "Board", proposal: "Proposal", *, why: bool) -> None:
    from changeover.quantities import show

    write_pairs((f.name, show(f.quantity, f.measure, board.units)) for f in proposal.figures)
    if why:
        write_notes(f"{one.name}: {reason_text(one.reason)}" for one in proposal.figures)
    write_notes(f"Warning: {warning}" for warning in proposal.warnings)
    for heading, reason in _alike(board, proposal):
        sys.stdout.write(f"\n{heading}\n")
        write_notes([f"  {reason.why} ({reason.source}; {reason.trust})"])
        write_notes(f"  Caution: {caution}" for caution in reason.cautions)
        if why:
            write_notes(_told(reason))


def _told(reason: "Reason") -> Iterator[str]:
    """Yield how a value was found, from what, and what each rung of the trust order says."""
    if reason.how:
        yield f"  How: {reason.how}"
    if reason.inputs:
        yield f"  From: {'; '.join(f'{one.name} {one.text}' for one in reason.inputs)}"
    for one in reason.evidence:
        yield f"  {'→' if one.used else ' '} {one.trust}: {one.says}"


def _alike(board: "Board", proposal: "Proposal") -> Iterator[tuple[str, "Reason"]]:
    """Yield each setting's values with the places that share one, and one reason for them."""
    from changeover.switch.wording import places_text

    names = {setting.key: setting.name for setting in board.settings}
    groups: dict[tuple[str, str], list[Proposed]] = {}
    for one in proposal.cells.values():
        text = _shown(board, one) or NO_GROUND
        groups.setdefault((one.cell.setting, text), []).append(one)
    for (key, text), alike in groups.items():
        where = places_text(one.cell.place for one in alike)
        yield f"{names[key]}, {where}: {text}", alike[0].reason
