"""Planning the season: which planter plants which field when, with its real switch times."""

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from types import MappingProxyType

from changeover.desk.crew import Crew
from changeover.desk.look_up import Known, read_known
from changeover.desk.season.parts import scarce_parts
from changeover.desk.season.rules import rules_in
from changeover.desk.switch_times import SwitchTimes
from changeover.planter.setup import Setup
from changeover.quantities import Q, Quantity, Refusal
from changeover.seed.fields import Field
from changeover.store.opening import Store
from changeover.store.season_values import Fixing, SeasonRules
from changeover.store.values import PlannedJob
from changeover.switch.costs import field_capacity
from changeover.switch.search import Limits
from changeover.switch.season.model import (
    YARD,
    Fixed,
    Order,
    Season,
    SeasonJob,
    SeasonPlan,
    SeasonPlanter,
    Slot,
)
from changeover.switch.season.solve import season_plan
from changeover.switch.tasks import StandardTime

SECONDS = 20.0
"""How long a plan is looked for from the window: our own choice."""

PLAIN_COST = 1.0
"""What a day late counts where no cost is entered, so that a last day is kept when it can be."""

Tell = Callable[[float], None]


@dataclass(frozen=True)
class SeasonInputs:
    """What a season is planned from, read once; ``jobs`` are those to be done, as entered."""

    jobs: tuple[PlannedJob, ...]
    fields: tuple[Field, ...]
    fleet: tuple[Known, ...]
    times: tuple[StandardTime, ...]
    rules: SeasonRules
    fixings: tuple[Fixing, ...]
    crew: Crew
    begins: date

    def field(self, job: PlannedJob) -> Field:
        """Return the field of a job. Raises Refusal for a job without one."""
        for one in self.fields:
            if one.name == job.field:
                return one
        raise Refusal(f"Job {job.name} has no field; choose one, so that its area is known.")

    def area(self, job: PlannedJob) -> Quantity:
        """Return the area of a job: its own, or that of its field. Raises Refusal."""
        return job.area if job.area is not None else self.field(job).area

    def day(self, number: int) -> date:
        """Return the calendar day of a number of days from the beginning."""
        return self.begins + timedelta(days=number)


@dataclass(frozen=True)
class SeasonAnswer:
    """A plan found for a season, with what it was planned from.

    ``loosened`` says that a fixed job cannot begin first thing on its day, so that those with
    a day are planned from their day on, on their planter. ``left_out`` says of each job that
    could not be planned why not, by its name; ``inputs`` are without those.
    """

    inputs: SeasonInputs
    season: Season
    plan: SeasonPlan
    loosened: bool = False
    left_out: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))

    def job(self, key: str) -> PlannedJob:
        """Return a job by its name. Raises KeyError."""
        return {job.name: job for job in self.inputs.jobs}[key]

    def orders(self) -> Mapping[str, Order | None]:
        """Return the plan and the two simple orders beside it, by their words."""
        return {
            "best found": self.plan.best,
            "as entered": self.plan.as_entered,
            "nearest due date": self.plan.nearest_due,
        }

    def fixed(self, key: str) -> bool:
        """Say whether a person has fixed a job."""
        return any(fixing.job == key for fixing in self.inputs.fixings)

    def days(self, slot: Slot) -> tuple[date, date]:
        """Return the first and the last day of a slot."""
        return self.inputs.day(slot.first_day), self.inputs.day(slot.last_day)


def read_inputs(store: Store, today: date | None = None) -> SeasonInputs:
    """Read what a season is planned from; ``today`` is the day on the wall when not given."""
    with store.read() as work:
        names, rules = work.planters.names(), rules_in(work)
        jobs = tuple(job for job in work.jobs.entered() if not job.done)
        fields, times = work.fields.all(), work.times.all()
        held = {job.name for job in jobs}
        fixed = tuple(one for one in work.fixings.all() if one.job in held)
        crew = Crew(work.crew.all(), work.tools.all())
    fleet = tuple(read_known(store, name) for name in names)
    begins = rules.begins or today or date.today()  # noqa: DTZ011 -- the calendar on the wall
    return SeasonInputs(jobs, fields, fleet, times, rules, fixed, crew, begins)


def season_of(
    inputs: SeasonInputs, times: SwitchTimes | None = None, tell: Tell | None = None
) -> Season:
    """Return the season in the plain values that it is planned from.

    ``times`` may carry switch times reckoned before; ``tell`` hears how far this is, 0 to 1.
    Raises Refusal for a window that has passed, and for a job without a field.
    """
    for job in inputs.jobs:
        _refuse_passed(job, inputs)
    known = times or times_of(inputs)
    setups = _all_setups(inputs, known, tell)
    parts = scarce_parts(inputs.fleet, setups)
    return Season(
        jobs=tuple(
            SeasonJob(
                key=job.name,
                minutes=_minutes(inputs, job, setups),
                release=max(0, _number(inputs, job.first_day) or 0),
                due=_number(inputs, job.last_day),
                late_cost=PLAIN_COST if job.lateness_cost is None else job.lateness_cost,
                parts=parts.get(job.name, frozenset()),
            )
            for job in inputs.jobs
        ),
        planters=tuple(_planter(inputs, one, setups, known, tell) for one in inputs.fleet),
        hours_per_day=inputs.rules.hours,
        suitable_share=inputs.rules.suitable,
        fixed=tuple(_fixed(inputs, one) for one in inputs.fixings),
    )


def times_of(inputs: SeasonInputs) -> SwitchTimes:
    """Return an empty keeper of switch times for these inputs."""
    lots = inputs.fleet[0].lots if inputs.fleet else ()
    return SwitchTimes(lots, inputs.times, inputs.crew)


def solve_season(
    inputs: SeasonInputs,
    limits: Limits,
    times: SwitchTimes | None = None,
    tell: Tell | None = None,
) -> SeasonAnswer:
    """Look for the least late plan of the jobs that can be planned; the others are named.

    Raises Refusal when none can be, and as ``season_of`` and the solver do.
    """
    if not inputs.jobs:
        raise Refusal("There is no job left to plan; enter the fields to be planted first.")
    left = left_out(inputs)
    kept = _without(inputs, left)
    if not kept.jobs:
        raise Refusal(next(iter(left.values())))
    season = season_of(kept, times, tell)
    try:
        return SeasonAnswer(kept, season, season_plan(season, limits), left_out=left)
    except Refusal:
        loose = loosened(season)
        if loose == season:
            raise
        plan = season_plan(loose, limits)
        return SeasonAnswer(kept, loose, plan, loosened=True, left_out=left)


def left_out(inputs: SeasonInputs) -> Mapping[str, str]:
    """Return why each job that cannot be planned cannot, by the job's name."""
    left = {}
    for job in inputs.jobs:
        try:
            _refuse_passed(job, inputs)
            inputs.field(job)
        except Refusal as refusal:
            left[job.name] = str(refusal)
    return left


def _without(inputs: SeasonInputs, left: Collection[str]) -> SeasonInputs:
    return replace(
        inputs,
        jobs=tuple(job for job in inputs.jobs if job.name not in left),
        fixings=tuple(one for one in inputs.fixings if one.job not in left),
    )


def loosened(season: Season) -> Season:
    """Return a season whose fixed jobs stay on their planters, from their days on."""
    days = {
        fixed.job: fixed.start // season.minutes_per_day
        for fixed in season.fixed
        if fixed.start is not None
    }
    jobs = tuple(replace(job, release=max(job.release, _within(job, days))) for job in season.jobs)
    return replace(season, jobs=jobs, fixed=tuple(replace(one, start=None) for one in season.fixed))


def _within(job: SeasonJob, days: Mapping[str, int]) -> int:
    """Return the day from which a fixed job is planned: its own, but none after its window."""
    day = days.get(job.key, 0)
    return day if job.due is None else min(day, job.due)


Setups = Mapping[tuple[str, str], Setup]


def _all_setups(inputs: SeasonInputs, times: SwitchTimes, tell: Tell | None) -> Setups:
    found: dict[tuple[str, str], Setup] = {}
    every = [(known, job) for known in inputs.fleet for job in inputs.jobs]
    for number, (known, job) in enumerate(every):
        setup = times.setup(known, job)
        if setup is not None:
            found[known.planter.name, job.name] = setup
        if tell is not None:
            tell(0.5 * number / len(every))
    return found


def _refuse_passed(job: PlannedJob, inputs: SeasonInputs) -> None:
    if job.last_day is not None and job.last_day < inputs.begins:
        raise Refusal(
            f"The window of job {job.name} ended on {job.last_day.isoformat()} and the plan begins "
            f"on {inputs.begins.isoformat()}; give it a later last day, mark it done, or let the "
            "season begin earlier."
        )


def _number(inputs: SeasonInputs, day: date | None) -> int | None:
    return None if day is None else (day - inputs.begins).days


def _minutes(inputs: SeasonInputs, job: PlannedJob, setups: Setups) -> dict[str, int]:
    return {
        known.planter.name: planting_minutes(inputs, known, job)
        for known in inputs.fleet
        if (known.planter.name, job.name) in setups
    }


def planting_minutes(inputs: SeasonInputs, known: Known, job: PlannedJob) -> int:
    """Return the whole minutes that a planter takes to plant a job, at its field efficiency."""
    minutes = float((inputs.area(job) / capacity_of(inputs, known, job)).to("min").magnitude)
    return max(1, round(minutes))


def capacity_of(inputs: SeasonInputs, known: Known, job: PlannedJob) -> Quantity:
    """Return the area that a planter plants of a job in a time. Raises Refusal."""
    share = Q(100 * inputs.rules.efficiency, "percent")
    return field_capacity(known.planter.width, job.speed, share)


def _planter(
    inputs: SeasonInputs, known: Known, setups: Setups, times: SwitchTimes, tell: Tell | None
) -> SeasonPlanter:
    name = known.planter.name
    mine = {job.name: setups[name, job.name] for job in inputs.jobs if (name, job.name) in setups}
    lots = {job.name: job.lot for job in inputs.jobs}
    switch: dict[tuple[str, str], int] = {}
    for come, before in ((YARD, known.as_found), *mine.items()):
        for go, target in mine.items():
            if come != go:
                found = times.time(known, before, target, lots[go])
                switch[come, go] = found.elapsed
        if tell is not None:
            tell(0.5 + 0.5 * len(switch) / max(1, len(mine) ** 2))
    return SeasonPlanter(name, switch, _moves(inputs))


def _moves(inputs: SeasonInputs) -> dict[tuple[str, str], int]:
    places = {job.name: (inputs.field(job).where, job.field) for job in inputs.jobs}
    rules, moves = inputs.rules, dict[tuple[str, str], int]()
    for go, (where, here) in places.items():
        moves[YARD, go] = moves[go, YARD] = rules.move_minutes
        for come, (other, other_field) in places.items():
            if come != go and here != other_field:
                near = where != "" and where == other
                moves[come, go] = rules.near_minutes if near else rules.move_minutes
    return moves


def _fixed(inputs: SeasonInputs, fixing: Fixing) -> Fixed:
    number = _number(inputs, fixing.day)
    per_day = round(60 * inputs.rules.hours * inputs.rules.suitable)
    return Fixed(fixing.job, fixing.planter, None if number is None else max(0, number) * per_day)
