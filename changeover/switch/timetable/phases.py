"""The work of each machine state taken alone: a proven least time, and a timetable put together."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import permutations

from changeover.switch.search import Clock, ask
from changeover.switch.timetable.apart import kept_apart
from changeover.switch.timetable.bounds import (
    add_heads_and_tails,
    add_least_time,
    add_order_of_persons,
    add_tool_before,
    in_order_of_persons,
)
from changeover.switch.timetable.closure import with_all_before
from changeover.switch.timetable.greedy import Board, first_timetable
from changeover.switch.timetable.hint import add_hint, read_stints
from changeover.switch.timetable.model import Activity, Stint
from changeover.switch.timetable.rest import Rest
from changeover.switch.timetable.rules import Ruled, ruled_model
from changeover.switch.timetable.runs import least_changes, runs_of

ORDERED = 5
"""Up to this many runs are tried in every order; our own choice, to keep it under 50 ms."""


@dataclass(frozen=True)
class Phases:
    """The proven least minutes of each machine state's work alone, and timetables of its runs."""

    least: Mapping[str, int]
    runs: Sequence[Sequence[Stint]]


def strong_model(rest: Rest, horizon: int, least: Mapping[str, int]) -> Ruled:
    """Return the model of a timetable with all that quickens its proof."""
    ruled = ruled_model(rest, horizon)
    add_least_time(ruled, least)
    add_heads_and_tails(ruled)
    add_tool_before(ruled)
    add_order_of_persons(ruled)
    ruled.model.minimize(ruled.length)
    return ruled


def least_length(rest: Rest, least: Mapping[str, int]) -> int:
    """Return a length that no timetable beats: states take turns, each for its least time."""
    waits = rest.work.state_minutes * least_changes(rest)
    over = max((stint.end for stint in rest.fixed), default=rest.now)
    return max(over, rest.now + sum(least.values()) + waits)


def phases_of(rest: Rest, clock: Clock, seconds: float) -> Phases:
    """Solve the work of each state alone, as if nothing else were there, hours left aside.

    While work in one state goes on, no other state's work does: cutting those other times out
    of any timetable leaves one for this state alone, so that its least length is a bound. Where
    a state must be left and come back to, its runs are solved one by one as well.
    """
    runs = runs_of(rest)
    whole: dict[str, frozenset[str]] = {
        state: frozenset(each.key for each in rest.todo if each.state == state)
        for state in dict.fromkeys(each.state for each in rest.todo)
        if state is not None
    }
    parts = sorted({*whole.values(), *runs}, key=lambda part: (len(part), sorted(part)))
    solved: dict[frozenset[str], tuple[int, Sequence[Stint]]] = {}
    for place, part in enumerate(parts):
        share = (seconds - clock.spent) / (len(parts) - place)
        solved[part] = _alone(_only(rest, part), clock, share)
    least = {state: solved[part][0] for state, part in whole.items()}
    return Phases(least, [solved[run][1] for run in runs])


def _only(rest: Rest, part: frozenset[str]) -> Rest:
    crew = tuple(replace(person, hours=()) for person in rest.work.crew)
    closed = with_all_before(rest.todo)
    todo = tuple(activity for activity in closed if activity.key in part)
    return Rest(replace(rest.work, crew=crew), (), todo, 0)


def _alone(rest: Rest, clock: Clock, seconds: float) -> tuple[int, Sequence[Stint]]:
    first = first_timetable(rest) or []
    horizon = max(stint.end for stint in first)
    ruled = strong_model(rest, horizon, {})
    add_hint(ruled, in_order_of_persons(rest, first))
    answer = ask(ruled.model, clock, seconds)
    return max(0, answer.whole_bound), read_stints(ruled, answer) if answer.found else first


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
