"""Proving depth: digs as they are entered, their verdict, and taking a row's calibration over."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path
from statistics import median_low
from typing import Any

from changeover.desk.board import Board
from changeover.desk.edits import Edit, PutPlanter, SetCells, Several, Side
from changeover.desk.prove.proofs import FORM, Proof, PutProof, TakenProof, save_proof
from changeover.desk.prove.row_lines import EarlierDigs, calibration_of, days_before
from changeover.files.proof_readings import read_depths
from changeover.planter.places import Place
from changeover.planter.setup import Cell, Value
from changeover.proof.bench import Standing
from changeover.proof.depth import DepthDigs, DepthGoal, judge_depths, notch_change
from changeover.proof.findings import Finding
from changeover.proof.verdict_findings import DEPTH, depth_findings
from changeover.quantities import Q, Quantity, Refusal, how_many
from changeover.seed.row_line import RowCalibration


@dataclass(frozen=True)
class DepthProof:
    """Digs by row, arrays of depths, against a goal; ``notches`` are what the rows stood at.

    ``others`` holds digs of a row at further notches, by row and notch: they are not judged, and
    serve for its depth line. ``goal`` is None until a target and a tolerance are entered.
    """

    says = "Enter the digs"

    rows: Mapping[int, Quantity] = field(default_factory=dict)
    goal: DepthGoal | None = None
    notches: Mapping[int, int] = field(default_factory=dict)
    note: str = ""
    others: Mapping[int, Mapping[int, Quantity]] = field(default_factory=dict)

    def with_digs(self, row: int, notch: int | None, depths: Quantity) -> "DepthProof":
        """Return the proof with digs of a row at the notch where it stands, None if not known.

        Digs of that notch give way; those at another notch stay, for the row's depth line.
        """
        notches, others = dict(self.notches), dict(self.others.get(row, {}))
        stood = notches.pop(row, None)
        if notch is not None:
            if row in self.rows and stood is not None and stood != notch:
                others[stood] = self.rows[row]
            others.pop(notch, None)
            notches[row] = notch
        beside = _put(self.others, row, others)
        return replace(self, rows={**self.rows, row: depths}, notches=notches, others=beside)

    def without_digs(self, row: int, notch: int | None) -> "DepthProof":
        """Return the proof without a row's digs at a notch; those dug before them come forward."""
        others = dict(self.others.get(row, {}))
        if notch is not None and notch in others:
            del others[notch]
            return replace(self, others=_put(self.others, row, others))
        rows, notches = dict(self.rows), dict(self.notches)
        rows.pop(row, None)
        if others:
            last, rows[row] = others.popitem()
            notches[row] = last
        return replace(self, rows=rows, notches=notches, others=_put(self.others, row, others))

    def dug(self, row: int) -> dict[int, Quantity]:
        """Return all digs of a row by notch, those at the notch where it stands last."""
        notch = self.notches.get(row)
        here = {} if notch is None or row not in self.rows else {notch: self.rows[row]}
        return {**self.others.get(row, {}), **here}


def _put(
    had: Mapping[int, Mapping[int, Quantity]], row: int, others: dict[int, Quantity]
) -> Mapping[int, Mapping[int, Quantity]]:
    rest = {key: value for key, value in had.items() if key != row}
    return {**rest, row: others} if others else rest


@dataclass(frozen=True)
class RowDepth:
    """One row's digs, the notch it stood at, its calibration after them, and the notch to go to.

    ``calibration`` and ``notch_to`` are None where the digs or the notch cannot say.
    """

    digs: DepthDigs
    notch: int | None
    calibration: RowCalibration | None
    notch_to: int | None


def judge_digs(
    board: Board, proof: DepthProof, earlier: Sequence[EarlierDigs] = ()
) -> tuple[RowDepth, ...]:
    """Return the verdict on every row that was dug, from the left. Raises Refusal without any.

    ``earlier`` are digs of other days, which serve for the rows' depth lines alone.
    """
    judged = judge_depths(proof.rows, proof.goal)
    return tuple(_row(board, proof, one, earlier) for one in judged)


def _row(
    board: Board, proof: DepthProof, digs: DepthDigs, earlier: Sequence[EarlierDigs]
) -> RowDepth:
    scale, row = board.planter.depth, digs.row
    notch = proof.notches.get(row)
    if notch is None:
        return RowDepth(digs, None, None, None)
    found = calibration_of(scale, row, proof.dug(row), notch, earlier, board.units)
    if proof.goal is None:
        return RowDepth(digs, notch, found, None)
    target = proof.goal.target
    if found.own_line:
        return RowDepth(digs, notch, found, found.notch_to(scale, target, notch))
    change = notch_change(digs, target, scale.step_of(row))
    if change is None or not 1 <= notch + change <= scale.count:
        return RowDepth(digs, notch, found, None)
    return RowDepth(digs, notch, found, notch + change)


def earlier_digs(taken: Iterable[TakenProof], day: date) -> tuple[EarlierDigs, ...]:
    """Return the digs at known notches of proofs, as far as they lie in the year before a day.

    A proof that a newer program saved is left out.
    """
    found: list[EarlierDigs] = []
    for one in taken:
        past = days_before(one.taken, day)
        if one.form == FORM and past is not None:
            proof = depth_of(one)
            found += [
                EarlierDigs(row, notch, depths, past)
                for row in proof.rows
                for notch, depths in proof.dug(row).items()
            ]
    return tuple(found)


def notches_as_found(board: Board) -> dict[int, int]:
    """Return the notch that each row stands at as found, where it is known."""
    found = {}
    for row in board.planter.row_numbers:
        value = board.as_found.get(Cell("depth", Place.of_row(row)))
        if isinstance(value, int):
            found[row] = value
    return found


def wanted_depth(board: Board) -> Quantity | None:
    """Return the depth that the rows' notches mean, wanted or as found: the middle of all rows.

    Each notch counts through its row's own line. None where no notch is known.
    """
    found, scale = notches_as_found(board), board.planter.depth
    depths = []
    for row in board.planter.row_numbers:
        wanted = board.target.get(Cell("depth", Place.of_row(row)))
        notch = wanted if isinstance(wanted, int) else found.get(row)
        if notch is not None:
            depths.append(scale.depth(notch, row).to(scale.step.units))
    middle = [float(depth.magnitude) for depth in depths]
    return Q(round(median_low(middle), 9), scale.step.units) if middle else None


def found_in_digs(board: Board, proof: DepthProof) -> tuple[Finding, ...]:
    """Return what fell short in the digs, nothing while no goal is set."""
    if proof.goal is None:
        return ()
    digs, scale = [one.digs for one in judge_digs(board, proof)], board.planter.depth
    return depth_findings(digs, proof.goal, {row: scale.step_of(row) for row in proof.rows})


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

    The offsets and steps go into the planter, the notches into the target. Raises Refusal when
    no row has digs at a known notch.
    """
    known = {one.digs.row: one for one in rows if one.calibration is not None}
    if not known:
        raise Refusal("No row was dug at a known notch; enter the notch as found first.")
    scale, lines = board.planter.depth, 0
    for one in known.values():
        if one.calibration is not None:
            scale = one.calibration.taken_by(scale)
            lines += one.calibration.own_line
    planter = replace(board.planter, depth=scale)
    why = f"depth digs on {how_many(len(known), 'row')}"
    why += f", {lines} with a line of {'its' if lines == 1 else 'their'} own" if lines else ""
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
        **_others_readings(proof),
    }


def _others_readings(proof: DepthProof) -> dict[str, Any]:
    """Return the digs at further notches as the store keeps them, nothing where there are none."""
    others = {
        str(row): {str(notch): depths for notch, depths in dug.items()}
        for row, dug in proof.others.items()
    }
    return {"others": others} if others else {}


def depth_of(proof: TakenProof) -> DepthProof:
    """Return the digs that a proof holds. Raises Refusal for readings of a newer form."""
    if proof.form != FORM:
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
        {
            int(row): {int(notch): depths for notch, depths in dug.items()}
            for row, dug in kept.get("others", {}).items()
        },
    )


def read_digs(text: str, unit: str, row: int) -> Quantity:
    """Return the depths in a text of figures in ``unit``. Raises Refusal by row and figure."""
    from changeover.desk.prove.spacing import read_figures

    return read_figures(text, unit, positions=False, row=row)


def import_digs(path: Path, proof: DepthProof, rows: range, notches: int) -> DepthProof:
    """Return the proof with the rows of a CSV file, at the notch that a column ``notch`` gives.

    Without one they were dug where the row stands. Raises Refusal by line and column, and for a
    row or notch that the planter does not have.
    """
    found = read_depths(path)
    stray = [row for row in found if row not in rows]
    if stray:
        raise Refusal(f"{path.name}: row {stray[0]} is not on this planter of {len(rows)} rows.")
    for row, dug in found.items():
        for notch, depths in dug.items():
            if notch is not None and notch > notches:
                raise Refusal(f"{path.name}: row {row}, notch {notch}: there are 1 to {notches}.")
            at = proof.notches.get(row) if notch is None else notch
            proof = proof.with_digs(row, at, depths)
    return proof


def _lot_in_row(board: Board) -> str | None:
    return board.lot.number if board.lot is not None else None
