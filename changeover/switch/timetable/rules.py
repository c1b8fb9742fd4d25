"""The rules between the pieces of a timetable as constraints."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import combinations
from typing import TYPE_CHECKING

from changeover.switch.timetable.apart import pairs_apart
from changeover.switch.timetable.model import Activity, Person, Stint
from changeover.switch.timetable.pieces import Piece, make_pieces
from changeover.switch.timetable.rest import Rest

if TYPE_CHECKING:
    from ortools.sat.python import cp_model


@dataclass
class Ruled:
    """A model with its pieces by activity and the variable of its length."""

    rest: Rest
    model: "cp_model.CpModel"
    horizon: int
    length: "cp_model.IntVar"
    pieces: dict[str, list[Piece]] = field(default_factory=dict)
    overs: "dict[str, cp_model.IntVar]" = field(default_factory=dict)

    @property
    def all_pieces(self) -> list[Piece]:
        return [piece for pieces in self.pieces.values() for piece in pieces]

    def of(self, key: str) -> Sequence[Piece]:
        """Return the pieces of an activity, none when it is done."""
        return self.pieces.get(key, ())

    def over(self, key: str) -> "cp_model.IntVar":
        """Return the minute at which every piece of an activity has ended, or a later one."""
        if key not in self.overs:
            self.overs[key] = self.model.new_int_var(0, self.horizon, "over")
            for piece in self.of(key):
                self.model.add(self.overs[key] >= piece.end).only_enforce_if(piece.present)
        return self.overs[key]


def ruled_model(rest: Rest, horizon: int) -> Ruled:
    """Return a model whose every solution is a right timetable no longer than the horizon."""
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    least = max((stint.end for stint in rest.fixed), default=rest.now)
    ruled = Ruled(rest, model, horizon, model.new_int_var(least, horizon, "length"))
    for activity in rest.todo:
        release = rest.release(activity)
        ruled.pieces[activity.key] = make_pieces(model, rest.work, activity, release, horizon)
    for piece in ruled.all_pieces:
        model.add(ruled.length >= piece.end).only_enforce_if(piece.present)
    ordered = _prerequisites(ruled)
    _persons_apart(ruled)
    _states(ruled, ordered)
    for person in rest.work.crew:
        _one_at_a_time(ruled, person)
    for tool, capacity in rest.work.tools.items():
        _tools(ruled, tool, capacity)
    return ruled


def _prerequisites(ruled: Ruled) -> set[tuple[str, str]]:
    """Add the prerequisites; return the pairs of activities that are ordered throughout."""
    ordered = set()
    for activity in ruled.rest.todo:
        for key in activity.after:
            ordered.add((key, activity.key))
            _after(ruled, key, activity)
        for key in activity.after_by_row:
            for before in ruled.of(key):
                for piece in ruled.of(activity.key):
                    _after_by_row(ruled, before, piece)
    return ordered


def _after(ruled: Ruled, key: str, activity: Activity) -> None:
    """Let no piece of an activity begin before every piece of another has ended."""
    before = ruled.of(key)
    if not before:
        return
    wait = ruled.rest.gap(before[0].activity, activity) or 0
    for piece in ruled.of(activity.key):
        ruled.model.add(piece.start >= ruled.over(key) + wait).only_enforce_if(piece.present)


def _after_by_row(ruled: Ruled, before: Piece, piece: Piece) -> None:
    """Let a piece begin after another has ended, unless their rows lie apart."""
    model = ruled.model
    wait = ruled.rest.gap(before.activity, piece.activity) or 0
    choices: list[cp_model.LiteralT] = [~before.present, ~piece.present]
    if before.left is not None and piece.left is not None:
        assert before.right is not None
        assert piece.right is not None
        to_left, to_right = model.new_bool_var("left of"), model.new_bool_var("right of")
        model.add(before.right + 1 <= piece.left).only_enforce_if(to_left)
        model.add(piece.right + 1 <= before.left).only_enforce_if(to_right)
        choices += [to_left, to_right]
    earlier = model.new_bool_var("earlier")
    model.add(before.end + wait <= piece.start).only_enforce_if(earlier)
    model.add_bool_or([*choices, earlier])


def _persons_apart(ruled: Ruled) -> None:
    """Let nobody do two things that different persons must do."""
    for one, other in pairs_apart(ruled.rest.todo):
        for first in ruled.of(one.key):
            for second in ruled.of(other.key):
                for name in first.persons.keys() & second.persons.keys():
                    ruled.model.add_bool_or([~first.persons[name], ~second.persons[name]])


def _states(ruled: Ruled, ordered: set[tuple[str, str]]) -> None:
    """Keep apart in time what needs the machine in different states."""
    model = ruled.model
    for one, other in combinations(ruled.rest.todo, 2):
        gap = ruled.rest.gap(one, other)
        if gap is None or (one.key, other.key) in ordered or (other.key, one.key) in ordered:
            continue
        for first in ruled.of(one.key):
            for second in ruled.of(other.key):
                before = model.new_bool_var("before")
                both = [first.present, second.present]
                model.add(first.end + gap <= second.start).only_enforce_if([before, *both])
                model.add(second.end + gap <= first.start).only_enforce_if([~before, *both])


def _one_at_a_time(ruled: Ruled, person: Person) -> None:
    """Give a person one thing at a time, within the hours."""
    model = ruled.model
    intervals = [
        model.new_optional_interval_var(
            piece.start, piece.size, piece.end, piece.persons[person.name], person.name
        )
        for piece in ruled.all_pieces
        if person.name in piece.persons
    ]
    for begin, end in _away(person, ruled.horizon):
        intervals.append(model.new_fixed_size_interval_var(begin, end - begin, "away"))
    for stint in ruled.rest.under_way:
        if person.name in stint.persons:
            begin = max(stint.start, ruled.rest.now)
            intervals.append(model.new_fixed_size_interval_var(begin, stint.end - begin, "held"))
    model.add_no_overlap(intervals)


def _away(person: Person, horizon: int) -> Iterator[tuple[int, int]]:
    """Yield the stretches in which a person is not at work."""
    if not person.hours:
        return
    last = 0
    for begin, end in person.hours:
        if begin > last:
            yield last, begin
        last = end
    if last < horizon:
        yield last, horizon


def _tools(ruled: Ruled, tool: str, capacity: int) -> None:
    """Hold no more of a shared tool at once than there are."""
    model = ruled.model
    intervals, amounts = [], []
    for piece in ruled.all_pieces:
        for way, mode in zip(piece.ways, piece.activity.modes, strict=True):
            if mode.uses.get(tool):
                intervals.append(
                    model.new_optional_interval_var(piece.start, piece.size, piece.end, way, tool)
                )
                amounts.append(mode.uses[tool])
    for stint in ruled.rest.under_way:
        amount = held(ruled.rest, stint, tool)
        if amount:
            begin = max(stint.start, ruled.rest.now)
            intervals.append(model.new_fixed_size_interval_var(begin, stint.end - begin, tool))
            amounts.append(amount)
    model.add_cumulative(intervals, amounts, capacity)


def held(rest: Rest, stint: Stint, tool: str) -> int:
    """Return how many of a shared tool a stint holds."""
    return rest.work.activity(stint.activity).modes[stint.mode].uses.get(tool, 0)
