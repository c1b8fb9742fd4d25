"""The search for the shortest timetable: simple rules, each state alone, changes, exact model."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from changeover.quantities import Refusal
from changeover.switch.search import Answer, Clock, ask
from changeover.switch.timetable.apart import MOST, cases
from changeover.switch.timetable.decode import Decoder, blocks_of, told
from changeover.switch.timetable.earliest import Earliest, Parts
from changeover.switch.timetable.greedy import first_timetable
from changeover.switch.timetable.hint import add_hint, read_stints
from changeover.switch.timetable.improve import Improver
from changeover.switch.timetable.model import Stint
from changeover.switch.timetable.phases import Phases, phases_of, put_together, strong_model
from changeover.switch.timetable.rest import Rest
from changeover.switch.timetable.symmetry import one_of_alike

PHASE_SHARE = 0.6
"""The share of the time for the work of each machine state alone; our own choice, by trial."""

IMPROVE_SHARE = 0.75
"""The share after which one worker leaves changes for the model; our own choice, by trial."""


@dataclass(frozen=True)
class Found:
    """New stints, and the proven bound of the whole length."""

    stints: Sequence[Stint]
    bound: int


def shortest(rest: Rest, clock: Clock, seconds: float) -> Found:
    """Return the shortest new stints found until a moment on the clock, and the proven bound.

    With two workers or more one of them changes the best timetable at random beside the solver.
    Raises Refusal when nothing is found in the hours of the crew.
    """
    first = first_timetable(rest)
    bound = _least(rest, {})
    if first is not None and _length(rest, first) == bound:
        return Found(first, bound)
    if first is None or not rest.work.crew:
        return _exactly(rest, first, clock, seconds)
    return _Search(rest, first, clock, seconds).run()


def _least(rest: Rest, parts: Parts) -> int:
    """Return the minute before which no timetable ends, whoever does what others must not."""
    found = cases(rest.work.crew, rest.todo)
    if len(found) >= MOST:
        return Earliest(rest, parts).end
    return min(Earliest(replace(rest, todo=todo), parts).end for todo in found)


def _length(rest: Rest, stints: Sequence[Stint]) -> int:
    return max((stint.end for stint in (*rest.fixed, *stints)), default=rest.now)


def _exactly(rest: Rest, first: list[Stint] | None, clock: Clock, seconds: float) -> Found:
    """Search by the exact model alone, after each state by itself."""
    phases = phases_of(rest, clock, seconds * PHASE_SHARE)
    model = _Model(rest, phases, Earliest(rest, phases.parts))
    answer, stints = model.ask(first, clock, seconds)
    if first is None and not answer.found:
        raise Refusal(_unfit(answer, clock))
    return Found(stints, max(_least(rest, phases.parts), answer.whole_bound))


@dataclass(frozen=True)
class _Model:
    rest: Rest
    phases: Phases
    earliest: Earliest

    def ask(
        self,
        first: Sequence[Stint] | None,
        clock: Clock,
        until: float,
        beside: Improver | None = None,
    ) -> tuple[Answer, Sequence[Stint]]:
        """Ask the solver for something shorter than a first timetable, beside changes to it."""
        horizon = _horizon(self.rest) if first is None else _length(self.rest, first)
        ruled = strong_model(self.rest, horizon, self.phases.least, self.earliest)
        add_hint(ruled, one_of_alike(self.rest, first or []))
        workers = clock.limits.workers - (beside is not None)

        def meanwhile(more: float) -> bool:
            assert beside is not None
            return beside.work(min(until, clock.spent + more), self.earliest.end)

        answer = ask(
            ruled.model,
            clock,
            until - clock.spent,
            workers,
            meanwhile=meanwhile if beside is not None else None,
        )
        return answer, read_stints(ruled, answer) if answer.found else first or []


class _Search:
    """The search with a crew and a first timetable."""

    def __init__(self, rest: Rest, first: list[Stint], clock: Clock, seconds: float) -> None:
        self._rest, self._clock, self._seconds = rest, clock, seconds
        self._improver = Improver(rest, first, clock, seconds)
        self._together = clock.limits.workers > 1
        self._bound = _least(rest, {})

    def run(self) -> Found:
        """Search until nothing is shorter, the time is over, or it is stopped."""
        beside = self._beside if self._together else None
        phases = phases_of(self._rest, self._clock, self._seconds * PHASE_SHARE, beside)
        self._take_together(phases)
        earliest = Earliest(self._rest, phases.parts)
        self._bound = _least(self._rest, phases.parts)
        model = _Model(self._rest, phases, earliest)
        if not self._together:
            self._change(self._seconds * IMPROVE_SHARE)
        if self._open:
            beside_model = self._improver if self._together else None
            answer, stints = model.ask(
                self._improver.best, self._clock, self._seconds, beside_model
            )
            self._improver.offer(stints)
            self._bound = max(self._bound, answer.whole_bound)
            if answer.impossible:
                self._bound = self._length
        return Found(self._improver.best, min(self._bound, self._length))

    @property
    def _length(self) -> int:
        return _length(self._rest, self._improver.best)

    @property
    def _open(self) -> bool:
        return self._length > self._bound and not self._clock.stopped

    def _beside(self, more: float) -> bool:
        """Change the timetable while a state is solved alone; never enough for that."""
        self._improver.work(self._clock.spent + more, self._bound)
        return False

    def _change(self, until: float) -> None:
        while self._open and self._clock.spent < until:
            self._improver.work(min(until, self._clock.spent + 0.1), self._bound)
            self._clock.tick(self._length, self._bound)

    def _take_together(self, phases: Phases) -> None:
        """Go on from the runs put together, with the hours of the crew if there are any."""
        free = tuple(replace(person, hours=()) for person in self._rest.work.crew)
        unbound = replace(self._rest, work=replace(self._rest.work, crew=free))
        stints = put_together(unbound, phases)
        if stints is not None and any(person.hours for person in self._rest.work.crew):
            blocks = blocks_of(unbound, stints)
            starts = Decoder(self._rest).times(blocks)
            stints = told(blocks, starts) if starts is not None else None
        if stints is not None:
            self._improver.offer(stints)


def _unfit(answer: Answer, clock: Clock) -> str:
    if answer.impossible:
        return (
            "The work does not fit in the hours of the crew; lengthen the hours, add a person, "
            "or take work out."
        )
    return (
        f"No timetable that fits the hours of the crew was found in {clock.spent:.0f} s; "
        "allow more time, lengthen the hours, or add a person."
    )


def _horizon(rest: Rest) -> int:
    """Return a minute by which the work is over in any sensible timetable."""
    hours = [end for person in rest.work.crew for _, end in person.hours]
    minutes = sum(
        max(mode.duration(len(activity.rows)) for mode in activity.modes) + rest.work.state_minutes
        for activity in rest.todo
    )
    released = max(rest.release(activity) for activity in rest.todo)
    return max([released, *hours]) + minutes
