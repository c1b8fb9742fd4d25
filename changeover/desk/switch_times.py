"""How long a planter takes from one setup to another, from the very tasks of that switch."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from changeover.desk.crew import Crew
from changeover.desk.look_up import Known
from changeover.desk.tables import switch_rules
from changeover.planter.setup import Setup
from changeover.quantities import Refusal, Units
from changeover.seed.lots import SeedLot
from changeover.store.values import PlannedJob
from changeover.switch.crew import CrewMember
from changeover.switch.crew_work import crew_work
from changeover.switch.kit import kit
from changeover.switch.progress import Progress
from changeover.switch.tasks import Kit, StandardTime, Worklist
from changeover.switch.timetable.greedy import first_timetable
from changeover.switch.timetable.rest import rest_of
from changeover.switch.worklist import plan_worklist

ALONE = CrewMember("one person")


@dataclass(frozen=True)
class SwitchTime:
    """One switch: working minutes of all persons added up, and minutes until it is done."""

    working: float = 0.0
    elapsed: int = 0


Signature = tuple[tuple[str, str, str], ...]


@dataclass
class SwitchTimes:
    """Reckons switch times and keeps them, so that a plan made again is quick.

    ``lots``, ``times`` and ``crew`` are those of the store. Two jobs that ask the same of a
    planter are one setup.
    """

    lots: tuple[SeedLot, ...]
    times: tuple[StandardTime, ...]
    crew: Crew
    _setups: dict[tuple[str, PlannedJob], Setup | None] = field(default_factory=dict)
    _signs: dict[int, tuple[Setup, Signature]] = field(default_factory=dict)
    _found: dict[tuple[str, Signature, Signature], SwitchTime] = field(default_factory=dict)

    def setup(self, known: Known, job: PlannedJob) -> Setup | None:
        """Return what a planter is set to for a job, None where it cannot do it."""
        key = (known.planter.name, job)
        if key not in self._setups:
            self._setups[key] = _setup(known, job)
        return self._setups[key]

    def time(self, known: Known, before: Setup, target: Setup, lot: str) -> SwitchTime:
        """Return how long a planter takes from one setup to another with the next lot."""
        key = (known.planter.name, self._sign(before), self._sign(target))
        if key not in self._found:
            self._found[key] = self._time(self.worklist(known, before, target, lot), known)
        return self._found[key]

    def worklist(self, known: Known, before: Setup, target: Setup, lot: str) -> Worklist:
        """Return the tasks of a switch of a planter from one setup to another."""
        return plan_worklist(
            known.planter,
            known.settings,
            before,
            target,
            {one.number: one for one in self.lots},
            known.lot(lot),
            known.parts,
            self.times,
            Units.US,
            switch_rules(),
        )

    def kit(self, known: Known, before: Setup, target: Setup, lot: str) -> Kit:
        """Return the parts of a switch of a planter from one setup to another."""
        return kit(self.worklist(known, before, target, lot), known.parts, known.shelf)

    def _time(self, worklist: Worklist, known: Known) -> SwitchTime:
        working = sum(
            float(task.minutes.to("min").magnitude) * task.persons for task in worklist.tasks
        )
        if not worklist.tasks:
            return SwitchTime()
        done = Progress(worklist, {task.key: frozenset() for task in worklist.tasks})
        here = [CrewMember(one.name) for one in self.crew.members if one.here] or [ALONE]
        work = crew_work(known.planter, done, here, self.crew.tools, 0).work
        stints = first_timetable(rest_of(work, (), 0))
        if stints is None:
            return SwitchTime(working, round(working / len(here)))
        return SwitchTime(working, max(stint.end for stint in stints))

    def _sign(self, setup: Setup) -> Signature:
        """Return a setup as texts that can be compared."""
        key = id(setup)
        if key not in self._signs:
            self._signs[key] = (setup, _signature(setup))  # kept, so that its id stays its own
        return self._signs[key][1]


def _signature(setup: Setup) -> Signature:
    cells = setup.values.items()
    return tuple(sorted((cell.setting, str(cell.place), str(value)) for cell, value in cells))


def _setup(known: Known, job: PlannedJob) -> Setup | None:
    """Return the setup for a job; a planter that it is not for, or that is refused, has none."""
    if job.planter not in (None, known.planter.name) or not _spacing_fits(known, job):
        return None
    try:
        proposal = known.propose(job)
    except Refusal:
        return None
    return known.as_found.with_values(proposal.values())


def _spacing_fits(known: Known, job: PlannedJob) -> bool:
    if job.row_spacing is None:
        return True
    planter = known.planter
    wanted = float(job.row_spacing.to("in").magnitude)
    there: Iterable[float] = (
        float(spacing.to("in").magnitude)
        for spacing in (planter.row_spacing, planter.narrow_spacing)
    )
    return any(abs(wanted - spacing) < 0.1 for spacing in there)
