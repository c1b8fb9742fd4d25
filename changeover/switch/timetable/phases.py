"""The work of each machine state taken alone: a proven least time, and a timetable put together."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import permutations

from changeover.switch.search import Clock, Meanwhile, ask
from changeover.switch.timetable.apart import kept_apart
from changeover.switch.timetable.bounds import (
    add_heads_and_tails,
    add_least_time,
    add_tool_before,
)
from changeover.switch.timetable.closure import with_all_before
from changeover.switch.timetable.earliest import Earliest, Parts
from changeover.switch.timetable.greedy import Board, first_timetable
from changeover.switch.timetable.hint import add_hint, read_stints
from changeover.switch.timetable.model import Activity, Stint
from changeover.switch.timetable.rest import Rest
from changeover.switch.timetable.rules import Ruled, ruled_model
from changeover.switch.timetable.runs import runs_of
from changeover.switch.timetable.symmetry import add_symmetry, one_of_alike

ORDERED = 5
"""Up to this many runs are tried in every order; our own choice, to keep it under 50 ms."""


RELAXED_SHARE = 0.1
"""The share of the time left for each first try with linear relaxations; our own, by trial."""


@dataclass(frozen=True)
class Phases:
    """Proven least minutes of the work in a machine state alone, and timetables of its runs.

    ``least`` holds them by state, ``parts`` by the keys of all work in a state and of each run.
    """

    least: Mapping[str, int]
    parts: Parts
    runs: Sequence[Sequence[Stint]]


def strong_model(rest: Rest, horizon: int, least: Mapping[str, int], earliest: Earliest) -> Ruled:
    """Return the model of a timetable with all that quickens its proof."""
    ruled = ruled_model(rest, horizon)
    ruled.model.add(ruled.length >= earliest.end)
    for piece in ruled.all_pieces:
        key = piece.activity.key
        ruled.model.add(piece.start >= earliest.head(key)).only_enforce_if(piece.present)
        ruled.model.add(piece.end + earliest.tail(key) <= ruled.length).only_enforce_if(
            piece.present
        )
    add_least_time(ruled, least)
    add_heads_and_tails(ruled)
    add_tool_before(ruled)
    add_symmetry(ruled)
    ruled.model.minimize(ruled.length)
    return ruled


def phases_of(rest: Rest, clock: Clock, until: float, meanwhile: Meanwhile | None = None) -> Phases:
    """Solve the work of each state alone, as if nothing else were there, hours left aside.

    While work in one state goes on, no other state's work does: cutting those other times out
    of any timetable leaves one for this state alone, so that its least length is a bound. Where
    a state must be left and come back to, its runs are solved one by one as well. Those that are
    not proven soon are asked for again with ``meanwhile`` beside, until a moment on the clock.
    """
    runs = runs_of(rest)
    whole: dict[str, frozenset[str]] = {
        state: frozenset(each.key for each in rest.todo if each.state == state)
        for state in dict.fromkeys(each.state for each in rest.todo)
        if state is not None
    }
    parts = sorted({*whole.values(), *runs}, key=lambda part: (len(part), sorted(part)))
    alone = {part: _Alone(_only(rest, part)) for part in parts}
    for each in alone.values():
        each.ask(clock, RELAXED_SHARE * (until - clock.spent))
    hard = [each for each in alone.values() if not each.proven]
    for place, each in enumerate(hard):
        share = (until - clock.spent) / (len(hard) - place)
        each.ask(clock, share, relax=False, meanwhile=meanwhile)
    least = {state: alone[part].least for state, part in whole.items()}
    parts_least = {part: each.least for part, each in alone.items()}
    return Phases(least, parts_least, [alone[run].stints for run in runs])


def _only(rest: Rest, part: frozenset[str]) -> Rest:
    crew = tuple(replace(person, hours=()) for person in rest.work.crew)
    closed = with_all_before(rest.todo)
    todo = tuple(activity for activity in closed if activity.key in part)
    return Rest(replace(rest.work, crew=crew), (), todo, 0)


class _Alone:
    """Some work taken alone: its proven least minutes, and the shortest timetable of it found."""

    def __init__(self, rest: Rest) -> None:
        self.stints: Sequence[Stint] = first_timetable(rest) or []
        self.least, self.proven = Earliest(rest, {}).end, False
        self._rest = rest

    def ask(
        self,
        clock: Clock,
        seconds: float,
        *,
        relax: bool = True,
        meanwhile: Meanwhile | None = None,
    ) -> None:
        """Ask the solver for so many seconds, unless the least is found."""
        horizon = max(stint.end for stint in self.stints)
        self.proven = self.proven or horizon == self.least
        if self.proven:
            return
        ruled = strong_model(self._rest, horizon, {}, Earliest(self._rest, {}))
        add_hint(ruled, one_of_alike(self._rest, self.stints))
        workers = clock.limits.workers - (meanwhile is not None)
        answer = ask(ruled.model, clock, seconds, workers, relax=relax, meanwhile=meanwhile)
        self.least, self.proven = max(self.least, answer.whole_bound), answer.proven
        if answer.found:
            self.stints = read_stints(ruled, answer)


def put_together(rest: Rest, phases: Phases) -> list[Stint] | None:
    """Return the shortest timetable that does one run after another, the rest fitted between.

    None when the prerequisites or the hours do not allow whole runs one after another.
    """
    if any(person.hours for person in rest.work.crew):
        return None
    orders = permutations(phases.runs) if len(phases.runs) <= ORDERED else [tuple(phases.runs)]
    tries = (_in_order(rest, order) for order in orders)
    right = [each for each in tries if each is not None and kept_apart(rest.todo, each)]
    return min(right, key=lambda each: max(stint.end for stint in each), default=None)


def _in_order(rest: Rest, runs: Sequence[Sequence[Stint]]) -> list[Stint] | None:
    """Place runs in an order, each as early as it can, and stateless work in between."""
    board = Board(rest)
    loose = [activity for activity in rest.todo if activity.state is None]
    for run in runs:
        loose = _place_loose(board, loose, _needed(rest, {stint.activity for stint in run}))
        if not board.place_together(run):
            return None
    loose = _place_loose(board, loose, {activity.key for activity in loose})
    return None if loose else board.new


def _needed(rest: Rest, keys: set[str]) -> set[str]:
    """Return all that must come before some activities, however indirectly."""
    needed: set[str] = set()
    nearest = [activity for activity in rest.todo if activity.key in keys]
    while nearest:
        before = {key for each in nearest for key in (*each.after, *each.after_by_row)} - needed
        needed |= before
        nearest = [activity for activity in rest.todo if activity.key in before]
    return needed


def _place_loose(board: Board, loose: Sequence[Activity], wanted: set[str]) -> list[Activity]:
    """Place wanted stateless work as early as it fits; return what is left."""
    left = list(loose)
    ready = [each for each in left if each.key in wanted and board.ready(each)]
    while ready:
        board.place(max(ready, key=lambda each: each.modes[0].duration(len(each.rows))))
        left = [each for each in left if not board.has(each.key)]
        ready = [each for each in left if each.key in wanted and board.ready(each)]
    return left
