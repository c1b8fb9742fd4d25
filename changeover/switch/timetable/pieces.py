"""The pieces of a timetable as CP-SAT variables: blocks of rows by person, and work in one go."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from changeover.switch.timetable.model import Activity, Mode, Stint, Work

if TYPE_CHECKING:
    from ortools.sat.python import cp_model


@dataclass(frozen=True)
class Piece:
    """One stretch of work whose time, persons, way and rows the solver chooses.

    ``persons`` and ``ways`` hold the literals of who does it and how; ``count`` and ``first``
    are the number of rows in the block and the index of its first row, None in one go.
    ``left`` and ``right`` are row numbers, None for work without rows.
    """

    activity: Activity
    present: "cp_model.IntVar"
    start: "cp_model.IntVar"
    size: "cp_model.IntVar"
    end: "cp_model.IntVar"
    persons: "Mapping[str, cp_model.IntVar]"
    ways: "Sequence[cp_model.IntVar]"
    count: "cp_model.IntVar | None" = None
    first: "cp_model.IntVar | None" = None
    left: "cp_model.LinearExprT | None" = None
    right: "cp_model.LinearExprT | None" = None

    def stint(self, solver: "cp_model.CpSolver") -> Stint | None:
        """Read the chosen stint, None when this person takes no share."""
        if not solver.value(self.present):
            return None
        rows = self.activity.rows
        if self.first is not None and self.count is not None:
            begin = solver.value(self.first)
            rows = rows[begin : begin + solver.value(self.count)]
        return Stint(
            self.activity.key,
            solver.value(self.start),
            solver.value(self.end),
            tuple(name for name, chosen in self.persons.items() if solver.value(chosen)),
            rows,
            next(way for way, chosen in enumerate(self.ways) if solver.value(chosen)),
        )


def make_pieces(
    model: "cp_model.CpModel", work: Work, activity: Activity, release: int, horizon: int
) -> list[Piece]:
    """Return the pieces of an activity, with the constraints that hold within it."""
    able = [person.name for person in work.crew if person.can(activity)]
    if not activity.shared_out:
        return [_in_one_go(model, activity, able, release, horizon)]
    pieces = [_block(model, activity, name, release, horizon) for name in able]
    counts = [piece.count for piece in pieces if piece.count is not None]
    model.add(sum(counts) == len(activity.rows))
    least = min(mode.duration(len(activity.rows)) for mode in activity.modes)
    model.add(sum(piece.size for piece in pieces) >= least)
    _rows_apart(model, pieces)
    return pieces


def _times(
    model: "cp_model.CpModel", activity: Activity, release: int, horizon: int
) -> "tuple[cp_model.IntVar, cp_model.IntVar, cp_model.IntVar]":
    most = max(mode.duration(len(activity.rows)) for mode in activity.modes)
    start = model.new_int_var(release, horizon, "start")
    size = model.new_int_var(0, most, "size")
    end = model.new_int_var(release, horizon, "end")
    return start, size, end


def _in_one_go(
    model: "cp_model.CpModel", activity: Activity, able: Sequence[str], release: int, horizon: int
) -> Piece:
    start, size, end = _times(model, activity, release, horizon)
    model.add(start + size == end)
    ways = [model.new_bool_var(f"way {way}") for way in range(len(activity.modes))]
    persons = {name: model.new_bool_var(name) for name in able}
    model.add_exactly_one(ways)
    rows = len(activity.rows)
    chosen = list(zip(ways, activity.modes, strict=True))
    model.add(size == sum(way * mode.duration(rows) for way, mode in chosen))
    model.add(sum(persons.values()) == sum(way * mode.persons for way, mode in chosen))
    left, right = (activity.rows[0], activity.rows[-1]) if rows else (None, None)
    present = model.new_constant(1)
    return Piece(activity, present, start, size, end, persons, ways, left=left, right=right)


def _block(
    model: "cp_model.CpModel", activity: Activity, name: str, release: int, horizon: int
) -> Piece:
    rows = len(activity.rows)
    start, size, end = _times(model, activity, release, horizon)
    model.add(start + size == end)
    present = model.new_bool_var(f"{activity.key} {name}")
    ways = [model.new_bool_var(f"way {way}") for way in range(len(activity.modes))]
    model.add(sum(ways) == present)
    count = model.new_int_var(0, rows, "rows")
    first = model.new_int_var(0, rows - 1, "first")
    model.add(count >= 1).only_enforce_if(present)
    model.add(count == 0).only_enforce_if(~present)
    model.add(size == 0).only_enforce_if(~present)
    for way, mode in zip(ways, activity.modes, strict=True):
        _block_minutes(model, mode, way, size, count)
    seconds = min(mode.seconds_per_row for mode in activity.modes)
    once = min(mode.minutes for mode in activity.modes)
    model.add(60 * size >= seconds * count + 60 * once * present)
    model.add(first + count <= rows)
    left, right = _row_numbers(model, activity.rows, first, count, present)
    return Piece(
        activity, present, start, size, end, {name: present}, ways, count, first, left, right
    )


def _block_minutes(
    model: "cp_model.CpModel",
    mode: Mode,
    way: "cp_model.IntVar",
    size: "cp_model.IntVar",
    count: "cp_model.IntVar",
) -> None:
    """Tie the minutes of a block to its rows, rounded up to whole minutes."""
    seconds = mode.seconds_per_row
    if seconds % 60 == 0:
        model.add(size == mode.minutes + count * (seconds // 60)).only_enforce_if(way)
        return
    rest = 60 * size - seconds * count - 60 * mode.minutes
    model.add_linear_constraint(rest, 0, 59).only_enforce_if(way)


def _row_numbers(
    model: "cp_model.CpModel",
    rows: tuple[int, ...],
    first: "cp_model.IntVar",
    count: "cp_model.IntVar",
    present: "cp_model.IntVar",
) -> "tuple[cp_model.LinearExprT, cp_model.LinearExprT]":
    """Return the first and last row number of a block as expressions."""
    steps = {after - before for before, after in pairwise(rows)}
    if len(steps) <= 1:
        step = steps.pop() if steps else 1
        return rows[0] + step * first, rows[0] + step * (first + count - 1)
    last = model.new_int_var(0, len(rows) - 1, "last")
    model.add(last == first + count - 1).only_enforce_if(present)
    left = model.new_int_var(rows[0], rows[-1], "left")
    right = model.new_int_var(rows[0], rows[-1], "right")
    model.add_element(first, list(rows), left)
    model.add_element(last, list(rows), right)
    return left, right


def _rows_apart(model: "cp_model.CpModel", pieces: Sequence[Piece]) -> None:
    intervals = []
    for piece in pieces:
        if piece.first is not None and piece.count is not None:
            end = model.new_int_var(0, len(piece.activity.rows), "past")
            intervals.append(
                model.new_optional_interval_var(
                    piece.first, piece.count, end, piece.present, "block"
                )
            )
    model.add_no_overlap(intervals)
