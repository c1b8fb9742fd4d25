"""The way walked along the bar in a timetable, reckoned and put to the solver."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from changeover.switch.timetable.model import Activity, Person, Stint, Work
from changeover.switch.timetable.pieces import Piece
from changeover.switch.timetable.rules import Ruled

if TYPE_CHECKING:
    from ortools.sat.python import cp_model

    Expr = cp_model.LinearExpr | int
    Ends = tuple[Expr, Expr]


def walk_of(work: Work, stints: Sequence[Stint]) -> int:
    """Return the way that all persons walk between their stints, in row widths.

    A block is walked in the order of its rows; work without rows or place is done wherever its
    persons stand. The way along a block itself is not counted, since somebody must walk it.
    """
    total = 0
    for person in work.crew:
        here = person.place
        mine = (stint for stint in stints if person.name in stint.persons)
        for stint in sorted(mine, key=lambda stint: (stint.start, stint.end)):
            begin, end = _ends(work.activity(stint.activity), stint)
            if begin is not None:
                total += abs(begin - here) if here is not None else 0
                here = end
    return total


def _ends(activity: Activity, stint: Stint) -> tuple[int | None, int | None]:
    if stint.rows:
        return stint.rows[0], stint.rows[-1]
    return activity.place, activity.place


@dataclass(frozen=True)
class Walking:
    """The walk of all persons as a variable, and the direction in which each block is worked."""

    total: "Expr"
    back: "dict[int, cp_model.IntVar]"

    def stint(self, piece: Piece, solver: "cp_model.CpSolver") -> Stint | None:
        """Read a chosen stint, its rows in the order of work."""
        stint = piece.stint(solver)
        back = self.back.get(id(piece))
        if stint is None or back is None or not solver.value(back):
            return stint
        return replace(stint, rows=stint.rows[::-1])


def add_walking(ruled: Ruled) -> Walking:
    """Add the order in which each person takes the pieces, and the way between them."""
    numbers = [number for activity in ruled.rest.work.activities for number in _numbers(activity)]
    span = (min(numbers, default=0), max(numbers, default=0))
    back: dict[int, cp_model.IntVar] = {}
    ends = {id(piece): _entry_exit(ruled, piece, span, back) for piece in ruled.all_pieces}
    total: Expr = 0
    for person in ruled.rest.work.crew:
        mine = [piece for piece in ruled.all_pieces if person.name in piece.persons]
        if mine:
            total += _walk(ruled, person, mine, [ends[id(piece)] for piece in mine], span)
    return Walking(total, back)


def _numbers(activity: Activity) -> tuple[int, ...]:
    return (*activity.rows, *(() if activity.place is None else (activity.place,)))


def _entry_exit(
    ruled: Ruled, piece: Piece, span: tuple[int, int], back: "dict[int, cp_model.IntVar]"
) -> "Ends | None":
    """Return where a piece is begun and ended, None anywhere; a block may be worked either way."""
    model = ruled.model
    if piece.left is None or piece.right is None:
        place = piece.activity.place
        return None if place is None else (place, place)
    entry, leave = model.new_int_var(*span, "entry"), model.new_int_var(*span, "leave")
    turned = model.new_bool_var("back")
    back[id(piece)] = turned
    for literal, one, other in (
        (~turned, piece.left, piece.right),
        (turned, piece.right, piece.left),
    ):
        model.add(entry == one).only_enforce_if([literal, piece.present])
        model.add(leave == other).only_enforce_if([literal, piece.present])
    return entry, leave


def _walk(
    ruled: Ruled,
    person: Person,
    pieces: Sequence[Piece],
    given: "Sequence[Ends | None]",
    span: tuple[int, int],
) -> "Expr":
    """Order one person's pieces in a circuit and return the way between them."""
    model = ruled.model
    begin = _stand(ruled, person)
    ends = [each or _anywhere(model, span) for each in given]
    arcs: list[tuple[int, int, cp_model.LiteralT]] = []
    ways = [model.new_int_var(0, span[1] - span[0], "way") for _ in pieces]
    for to, piece in enumerate(pieces):
        arcs.append((to, to, ~piece.persons[person.name]))
        first, last = model.new_bool_var("first"), model.new_bool_var("last")
        arcs += [(len(pieces), to, first), (to, len(pieces), last)]
        if begin is not None:
            _at_least(model, ways[to], ends[to][0], begin, first)
        for come, other in enumerate(pieces):
            if come != to:
                arc = model.new_bool_var("then")
                arcs.append((come, to, arc))
                model.add(other.end <= piece.start).only_enforce_if(arc)
                _at_least(model, ways[to], ends[to][0], ends[come][1], arc)
    arcs.append((len(pieces), len(pieces), model.new_bool_var("idle")))
    model.add_circuit(arcs)
    return sum(ways)


def _anywhere(model: "cp_model.CpModel", span: tuple[int, int]) -> "Ends":
    here = model.new_int_var(*span, "here")
    return here, here


def _at_least(
    model: "cp_model.CpModel",
    way: "cp_model.IntVar",
    to: "Expr",
    come: "Expr",
    arc: "cp_model.IntVar",
) -> None:
    model.add(way >= to - come).only_enforce_if(arc)
    model.add(way >= come - to).only_enforce_if(arc)


def _stand(ruled: Ruled, person: Person) -> int | None:
    """Return where a person stands after what is done: at the end of the last stint."""
    here = person.place
    mine = (stint for stint in ruled.rest.fixed if person.name in stint.persons)
    for stint in sorted(mine, key=lambda stint: (stint.start, stint.end)):
        end = _ends(ruled.rest.work.activity(stint.activity), stint)[1]
        here = here if end is None else end
    return here
