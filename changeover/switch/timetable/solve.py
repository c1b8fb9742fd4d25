"""The crew timetable: who does what on which rows and when, in the least time with proven bound.

    work = Work(
        activities=(
            Activity("clean", (Mode(minutes_per_row=2, uses={"vacuum": 1}),), rows=rows),
            Activity("swap discs", (Mode(3, 1.5),), rows=rows, after_by_row=("clean",)),
        ),
        crew=(Person("Ann"), Person("Bo")),
        tools={"vacuum": 1},
    )
    plan = timetable(work)
    plan.starts, plan.who, plan.length, plan.bound, plan.status

Durations, prerequisites, shared tools with capacities and ways to do a thing make this a general
project-scheduling solver: leave out the crew and give each Mode ``persons=0`` for the pure form.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from changeover.switch.search import Clock, Limits, Progress, ask
from changeover.switch.timetable.apart import cases
from changeover.switch.timetable.hint import add_hint
from changeover.switch.timetable.model import (
    Activity,
    Mode,
    Person,
    SearchStatus,
    Stint,
    Timetable,
    Work,
)
from changeover.switch.timetable.refusals import refuse_impossible, refuse_too_few
from changeover.switch.timetable.rest import Rest, rest_of
from changeover.switch.timetable.rules import ruled_model
from changeover.switch.timetable.shortest import shortest
from changeover.switch.timetable.walk import add_walking, walk_of

__all__ = [
    "Activity",
    "Limits",
    "Mode",
    "Person",
    "Progress",
    "SearchStatus",
    "Stint",
    "Timetable",
    "WhatIf",
    "Work",
    "timetable",
    "walk_of",
    "what_if",
]

WALK_SHARE = 0.06
"""The share of the time limit kept for shortening the walk; our own choice, by trial."""


def timetable(
    work: Work,
    limits: Limits | None = None,
    *,
    done: Sequence[Stint] = (),
    now: int = 0,
) -> Timetable:
    """Return the shortest timetable found, and among those of its length the least walk found.

    ``done`` holds the stints that are done or under way at minute ``now``; they stay as they
    are and everything else begins at ``now`` or later. The search ends when nothing is better,
    at the time limit, or when it is stopped, with its best so far. Raises Refusal for circular
    prerequisites, a missing skill or tool, too few persons for work that others must not have
    done, and work that does not fit in the crew's hours.
    """
    refuse_impossible(work, done, now)
    rest = rest_of(work, done, now)
    refuse_too_few(rest)
    found = cases(work.crew, rest.todo)
    if len(found) == 1:
        rest = replace(rest, todo=found[0])
    clock = Clock(limits or Limits())
    if not rest.todo:
        return _told(rest, [], _Proof(_length(rest, [])), clock)
    share = 1 - WALK_SHARE if work.crew else 1.0
    best = shortest(rest, clock, clock.limits.seconds * share)
    proof = _Proof(best.bound)
    if not work.crew or clock.stopped:
        walk = walk_of(work, [*rest.fixed, *best.stints]) if work.crew else 0
        return _told(rest, best.stints, replace(proof, walk=0 if walk else None), clock)
    nearest, walk_bound = _least_walk(rest, best.stints, clock)
    return _told(rest, nearest, replace(proof, walk=walk_bound), clock)


@dataclass(frozen=True)
class _Proof:
    """The proven least length, and the proven least walk (None: as walked)."""

    length: int
    walk: int | None = None


def _length(rest: Rest, stints: Sequence[Stint]) -> int:
    return max((stint.end for stint in (*rest.fixed, *stints)), default=rest.now)


def _told(rest: Rest, new: Sequence[Stint], proof: _Proof, clock: Clock) -> Timetable:
    stints = sorted((*rest.fixed, *new), key=lambda each: (each.start, each.end, each.persons))
    length = _length(rest, new)
    walk = walk_of(rest.work, stints)
    return Timetable(
        stints=tuple(stints),
        length=length,
        bound=proof.length,
        walk=walk,
        walk_bound=walk if proof.walk is None else proof.walk,
        status=SearchStatus.OPTIMAL if length == proof.length else SearchStatus.FEASIBLE,
        stopped=clock.stopped,
    )


def _least_walk(
    rest: Rest, stints: Sequence[Stint], clock: Clock
) -> tuple[Sequence[Stint], int | None]:
    """Return stints no longer in all with the least walk found, and its proven bound."""
    before = walk_of(rest.work, [*rest.fixed, *stints])
    ruled = ruled_model(rest, _length(rest, stints))
    walking = add_walking(ruled)
    add_hint(ruled, stints)
    ruled.model.minimize(walking.total)
    answer = ask(ruled.model, clock, clock.left)
    walked = walk_of(rest.work, rest.fixed)
    bound = walked + max(0, answer.whole_bound)
    if not answer.found:
        return stints, min(bound, before)
    found = [walking.stint(piece, answer.solver) for piece in ruled.all_pieces]
    walked_less = [stint for stint in found if stint is not None]
    after = walk_of(rest.work, [*rest.fixed, *walked_less])
    return (walked_less if after <= before else stints), min(bound, before)


@dataclass(frozen=True)
class WhatIf:
    """A timetable as it is, and as it would be with more persons or tools."""

    now: Timetable
    then: Timetable

    @property
    def minutes_saved(self) -> int:
        return self.now.length - self.then.length


def what_if(
    work: Work,
    limits: Limits | None = None,
    *,
    persons: Sequence[Person] = (),
    tools: Mapping[str, int] | None = None,
    done: Sequence[Stint] = (),
    now: int = 0,
) -> WhatIf:
    """Compare the timetable with the one that ``persons`` more and ``tools`` more would allow.

    ``tools`` maps the name of a shared tool to how many more there would be. Raises Refusal as
    ``timetable`` does.
    """
    more = {
        tool: work.tools.get(tool, 0) + (tools or {}).get(tool, 0)
        for tool in {*work.tools, *(tools or {})}
    }
    wider = replace(work, crew=(*work.crew, *persons), tools=more)
    return WhatIf(
        timetable(work, limits, done=done, now=now), timetable(wider, limits, done=done, now=now)
    )
