"""Vacuum and fan: gauge readings by row along each fan's manifold, judged and saved."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from itertools import combinations

from changeover.desk.board import Board
from changeover.desk.prove.proofs import PutProof, TakenProof
from changeover.planter.groups import Group
from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell
from changeover.proof.fan import FansCompared, Manifold, compare_fans, judge_manifold
from changeover.proof.findings import Finding, Proof
from changeover.proof.verdict_findings import vacuum_findings
from changeover.quantities import Quantity, Refusal, is_quantity
from changeover.store.opening import Store
from changeover.switch.difference import locked_rows

RUNNING_FAN = (
    (
        "Keep clear of the fan's inlet, of its drive and of its outlet's dust while it runs; dust "
        "of treated seed is harmful: wear what the seed tag says."
    ),
    (
        "Read the gauges with the machine lowered, the tractor in park and a person at its "
        "controls; stop the fan and take the key out before a meter or hose is opened. Your manual "
        "goes first."
    ),
)


@dataclass(frozen=True)
class Gauges:
    """Gauge readings of one day: vacuum by row, and for each fan its set value.

    ``near`` is the row at which a fan feeds its manifold; rows left and right of it are judged
    as two branches.
    """

    day: date
    cells: Mapping[int, Quantity] = field(default_factory=dict)
    set_values: Mapping[str, Quantity] = field(default_factory=dict)
    near: Mapping[str, int] = field(default_factory=dict)
    note: str = ""
    number: int = 0


@dataclass(frozen=True)
class FanJudged:
    """One fan: its branches from the fan outward, all its rows as one, or why it is not judged.

    ``whole`` is None, and ``branches`` empty, while ``says`` tells what is missing.
    """

    fan: str
    rows: tuple[int, ...]
    branches: tuple[Manifold, ...] = ()
    whole: Manifold | None = None
    says: str = ""


def first_gauges(board: Board, day: date, last: Gauges | None = None) -> Gauges:
    """Return empty readings with the set values as found, and each fan where it was last time.

    A fan of which nothing is known is taken to feed the middle of its rows.
    """
    found = {group.name: board.as_found.get(Cell("vacuum", group.place)) for group in fans(board)}
    values = {name: one for name, one in found.items() if is_quantity(one)}
    known = last.near if last is not None else {}
    near = {
        group.name: known[group.name]
        if known.get(group.name) in group.rows
        else group.rows[(len(group.rows) - 1) // 2]
        for group in fans(board)
    }
    return Gauges(day, {}, values, near)


def fans(board: Board) -> tuple[Group, ...]:
    """Return the fans with the rows that are down; a planter without fan groups has one fan."""
    planter = board.planter
    up = locked_rows(planter, board.as_found)
    groups = planter.groups_of(Scope.FAN) or (_whole(planter),)
    down = (replace_rows(group, [row for row in group.rows if row not in up]) for group in groups)
    return tuple(group for group in down if group is not None)


def replace_rows(group: Group, rows: Sequence[int]) -> Group | None:
    """Return a group with other rows, None when none are left."""
    return replace(group, rows=tuple(rows)) if rows else None


def judge(board: Board, gauges: Gauges) -> tuple[FanJudged, ...]:
    """Return the verdict on each fan; one that cannot be judged yet says what is missing."""
    return tuple(_fan(group, gauges) for group in fans(board))


def compared(found: Sequence[FanJudged]) -> tuple[FansCompared, ...]:
    """Return every pair of judged fans beside each other."""
    wholes = [one.whole for one in found if one.whole is not None]
    return tuple(compare_fans(one, other) for one, other in combinations(wholes, 2))


def findings_of(found: Sequence[FanJudged]) -> tuple[Finding, ...]:
    """Return what falls short, under the fan's own name whatever its branches are called.

    The row that a fan feeds lies on both branches and is named once.
    """
    named: dict[tuple[str, int | None, str, str], Finding] = {}
    for one in found:
        for branch in one.branches:
            for finding in vacuum_findings(branch):
                key = (one.fan, finding.row, finding.what, finding.evidence)
                named.setdefault(key, replace(finding, part=part_of(one.fan)))
    return tuple(named.values())


def part_of(fan: str) -> str:
    """Return the part under which a fan's findings are kept."""
    return f"vacuum, {fan}"


def save(board: Board, gauges: Gauges) -> PutProof:
    """Return the edit that saves the readings with what falls short.

    Raises Refusal for a row without a reading, a missing set value, or a vacuum that cannot be.
    """
    found = judge(board, gauges)
    missing = next((one.says for one in found if one.whole is None), "")
    if missing:
        raise Refusal(missing)
    settles: set[tuple[int | None, str]] = {(None, part_of(one.fan)) for one in found}
    settles |= {(row, part_of(one.fan)) for one in found for row in one.rows}
    proof = TakenProof(
        board.planter.name,
        Proof.VACUUM,
        readings_of(gauges),
        note=gauges.note,
        settles=frozenset(settles),
    )
    return PutProof(proof, findings_of(found), (), f"gauges of {gauges.day.isoformat()}")


def gauges_taken(store: Store, planter: str) -> tuple[Gauges, ...]:
    """Return the readings of a planter that stand, latest first. Raises Refusal."""
    with store.read() as work:
        found = [gauges_of(one) for one in work.proofs.of(planter, Proof.VACUUM)]
    return tuple(sorted(found, key=lambda one: (one.day, one.number), reverse=True))


def readings_of(gauges: Gauges) -> dict[str, object]:
    """Return the readings as the store keeps them."""
    return {
        "day": gauges.day.isoformat(),
        "set": dict(gauges.set_values),
        "near": dict(gauges.near),
        "rows": {str(row): gauges.cells[row] for row in sorted(gauges.cells)},
    }


def gauges_of(proof: TakenProof) -> Gauges:
    """Return the gauge readings that a proof of the store holds."""
    kept = proof.readings
    return Gauges(
        date.fromisoformat(kept["day"]),
        {int(row): value for row, value in kept["rows"].items()},
        dict(kept["set"]),
        dict(kept["near"]),
        proof.note,
        proof.number,
    )


def _fan(group: Group, gauges: Gauges) -> FanJudged:
    wanted = gauges.set_values.get(group.name)
    if wanted is None:
        return FanJudged(group.name, group.rows, says=f"{group.name}: enter the set value.")
    try:
        whole = judge_manifold(group.name, gauges.cells, group.rows, wanted)
        branches = tuple(
            judge_manifold(name, gauges.cells, rows, wanted)
            for name, rows in branches_of(group, gauges.near.get(group.name))
        )
    except Refusal as refusal:
        return FanJudged(group.name, group.rows, says=str(refusal))
    return FanJudged(group.name, group.rows, branches, whole)


def branches_of(group: Group, near: int | None) -> tuple[tuple[str, tuple[int, ...]], ...]:
    """Return the branches of a manifold, each its name and its rows from the fan outward.

    A fan at one end has one branch, a fan in between two; the row that it feeds belongs to both,
    so that each begins at the fan.
    """
    rows = group.rows
    here = near if near in rows else rows[0]
    left = tuple(row for row in reversed(rows) if row <= here)
    right = tuple(row for row in rows if row >= here)
    if len(left) == 1 or len(right) == 1:
        return ((group.name, max(left, right, key=len)),)
    return (
        (f"{group.name} to the left", left),
        (f"{group.name} to the right", right),
    )


def _whole(planter: Planter) -> Group:
    return Group(Scope.FAN, Place(Scope.FAN, "fan").name, tuple(range(1, planter.rows + 1)))
