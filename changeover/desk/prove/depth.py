"""Proving depth: digs as they are entered, their verdict, and taking a row's calibration over."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from types import MappingProxyType
from typing import Any

import numpy as np

from changeover.desk.board import Board
from changeover.desk.edits import Edit, PutPlanter, SetCells, Several, Side
from changeover.desk.prove.proofs import Proof, PutProof, TakenProof, save_proof
from changeover.files.proof_readings import read_depths
from changeover.planter.places import Place
from changeover.planter.setup import Cell, Value
from changeover.proof.bench import Standing
from changeover.proof.depth import DepthDigs, DepthGoal, judge_depths, new_offset, notch_change
from changeover.proof.findings import Finding
from changeover.proof.verdict_findings import DEPTH, depth_findings
from changeover.quantities import Q, Quantity, Refusal


@dataclass(frozen=True)
class DepthProof:
    """Digs by row, arrays of depths, against a goal; ``notches`` are what the rows stood at.

    ``goal`` is None until a target and a tolerance are entered.
    """

    says = "Enter the digs"

    rows: Mapping[int, Quantity] = field(default_factory=dict)
    goal: DepthGoal | None = None
    notches: Mapping[int, int] = field(default_factory=dict)
    note: str = ""

    def with_row(self, row: int, depths: Quantity | None) -> "DepthProof":
        """Return the proof with the digs of one row, or (None) without it."""
        rows = {**self.rows}
        if depths is None:
            rows.pop(row, None)
        else:
            rows[row] = depths
        return replace(self, rows=rows)


@dataclass(frozen=True)
class RowDepth:
    """One row's digs, the notch it stood at, what its offset becomes, and the notch to go to.

    ``offset`` and ``notch_to`` are None where the digs or the notch cannot say.
    """

    digs: DepthDigs
    notch: int | None
    offset: Quantity | None
    notch_to: int | None


def judge_digs(board: Board, proof: DepthProof) -> tuple[RowDepth, ...]:
    """Return the verdict on every row that was dug, from the left. Raises Refusal without any."""
    judged = judge_depths(proof.rows, proof.goal)
    return tuple(_row(board, proof, one) for one in judged)


def _row(board: Board, proof: DepthProof, digs: DepthDigs) -> RowDepth:
    scale, notch = board.planter.depth, proof.notches.get(digs.row)
    if notch is None:
        return RowDepth(digs, None, None, None)
    offset = new_offset(scale, notch, digs)
    if proof.goal is None:
        return RowDepth(digs, notch, offset, None)
    change = notch_change(digs, proof.goal.target, scale.step)
    if change is None or not 1 <= notch + change <= scale.count:
        return RowDepth(digs, notch, offset, None)
    return RowDepth(digs, notch, offset, notch + change)


def notches_as_found(board: Board) -> dict[int, int]:
    """Return the notch that each row stands at as found, where it is known."""
    found = {}
    for row in board.planter.row_numbers:
        value = board.as_found.get(Cell("depth", Place.of_row(row)))
        if isinstance(value, int):
            found[row] = value
    return found


def found_in_digs(board: Board, proof: DepthProof) -> tuple[Finding, ...]:
    """Return what fell short in the digs, nothing while no goal is set."""
    if proof.goal is None:
        return ()
    digs = [one.digs for one in judge_digs(board, proof)]
    return depth_findings(digs, proof.goal, dict.fromkeys(proof.rows, board.planter.depth.step))


def save_digs(board: Board, proof: DepthProof) -> PutProof:
    """Return the edit that saves digs; it settles rows that pass and rows that fall short."""
    judged = judge_digs(board, proof)
    settles = {
        (one.digs.row, DEPTH)
        for one in judged
        if Standing.OPEN not in (one.digs.standing, one.digs.share_standing)
        or Standing.SHORT in (one.digs.standing, one.digs.share_standing)
    }
    taken = TakenProof(
        board.planter.name,
        Proof.DEPTH,
        depth_readings(proof),
        note=proof.note,
        lot=_lot_in_row(board),
        settles=frozenset(settles),
    )
    return save_proof(taken, found_in_digs(board, proof))


def accept_calibration(board: Board, rows: tuple[RowDepth, ...]) -> Edit:
    """Return the edit that takes the rows' calibration over and proposes their notches.

    The offsets go into the planter, the notches into the target. Raises Refusal when no row
    has digs at a known notch.
    """
    known = {one.digs.row: one for one in rows if one.offset is not None}
    if not known:
        raise Refusal("No row was dug at a known notch; enter the notch as found first.")
    scale = board.planter.depth
    new = {row: one.offset for row, one in known.items() if one.offset is not None}
    offsets = MappingProxyType({**scale.offsets, **new})
    planter = replace(board.planter, depth=replace(scale, offsets=offsets))
    why = f"depth digs on {len(known)} rows"
    edits: list[Edit] = [PutPlanter(planter, before=board.planter, why=why)]
    target: dict[Cell, Value | None] = {
        Cell("depth", Place.of_row(row)): one.notch_to
        for row, one in known.items()
        if one.notch_to is not None and one.notch_to != one.notch
    }
    if target:
        before = {cell: board.target.get(cell) for cell in target}
        edits.append(SetCells(board.planter.name, Side.TARGET, target, before, why))
    return Several(tuple(edits), "Take the depth calibration over", why)


def depth_readings(proof: DepthProof) -> dict[str, Any]:
    """Return digs as the store keeps them."""
    goal = proof.goal
    return {
        "rows": {str(row): depths for row, depths in proof.rows.items()},
        "target": None if goal is None else goal.target,
        "tolerance": None if goal is None else goal.tolerance,
        "share_least": None if goal is None else goal.share_least,
        "notches": {str(row): notch for row, notch in proof.notches.items()},
    }


def depth_of(proof: TakenProof) -> DepthProof:
    """Return the digs that a proof holds. Raises Refusal for readings of a newer form."""
    if proof.form != 1:
        raise Refusal("These depth digs were saved by a newer program; open them there.")
    kept = proof.readings
    goal = None
    if kept["target"] is not None:
        goal = DepthGoal(kept["target"], kept["tolerance"], kept["share_least"])
    return DepthProof(
        {int(row): depths for row, depths in kept["rows"].items()},
        goal,
        {int(row): notch for row, notch in kept["notches"].items()},
        proof.note,
    )


def read_digs(text: str, unit: str, row: int) -> Quantity:
    """Return the depths in a text of figures in ``unit``. Raises Refusal by row and figure."""
    from changeover.desk.prove.spacing import read_figures

    return read_figures(text, unit, positions=False, row=row)


def import_digs(path: Path, proof: DepthProof, rows: range) -> DepthProof:
    """Return the proof with the rows of a CSV file. Raises Refusal by line and column."""
    found = read_depths(path)
    stray = [row for row in found if row not in rows]
    if stray:
        raise Refusal(f"{path.name}: row {stray[0]} is not on this planter of {len(rows)} rows.")
    return replace(proof, rows={**proof.rows, **found})


def more_digs(rows: Mapping[int, Quantity], row: int, depths: Quantity) -> Quantity:
    """Return the digs of a row with more added to them, in the unit of the first."""
    had = rows.get(row)
    if had is None:
        return depths
    return Q(np.concatenate([had.magnitude, depths.to(had.units).magnitude]), had.units)


def _lot_in_row(board: Board) -> str | None:
    return board.lot.number if board.lot is not None else None
