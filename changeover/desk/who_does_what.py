"""Who does what: the crew's timetable for what is left of a switch, from any moment on."""

import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from changeover.desk.crew import Crew
from changeover.desk.plan_switch import WorkView, view_of
from changeover.planter.places import Place
from changeover.quantities import Refusal, Units, how_many
from changeover.store.opening import Store
from changeover.switch.bags import Whose
from changeover.switch.crew import SKILLS, clock_text, named
from changeover.switch.crew_work import CrewWork, crew_work
from changeover.switch.own_tasks import at_places
from changeover.switch.search import Limits
from changeover.switch.tasks import Task
from changeover.switch.timetable.model import Mode, Person, SearchStatus, Stint, Timetable

SECONDS = 5.0
"""How long a timetable is looked for: our own choice."""

Widen = Callable[["Question"], "Question"]

ONE_MORE = "one more"
"""The name of the person who is there only for the sake of asking what if."""


@dataclass(frozen=True)
class Question:
    """What a timetable is asked for: the work left of one planter's switch and its crew."""

    planter: str
    crew_work: CrewWork


@dataclass(frozen=True)
class CrewPlan:
    """A timetable found for a question."""

    question: Question
    timetable: Timetable

    @property
    def begin(self) -> int:
        """The minute of the day at which it begins."""
        return self.question.crew_work.begin

    @property
    def names(self) -> tuple[str, ...]:
        """The persons in it."""
        return tuple(person.name for person in self.question.crew_work.work.crew)

    @property
    def says(self) -> str:
        """What is proved of it, and what a person must know of who is in it."""
        proved = proof_text(self.timetable)
        note = self.question.crew_work.note
        return f"{proved}. {note}" if note else proved

    def task(self, stint: Stint) -> Task:
        """Return the task of a stint, at the places of that stint only."""
        whole = self.question.crew_work.tasks[stint.activity]
        return at_places(whole, self.question.crew_work.places_of(stint))

    def whose(self) -> Whose:
        """Return who does a task, by its key, at a place; empty where nobody does."""
        found = {
            (stint.activity, place): " and ".join(stint.persons)
            for stint in self.timetable.stints
            for place in self.question.crew_work.places_of(stint)
        }
        return lambda task, place: found.get((task, place), "")

    def from_to(self, stint: Stint) -> str:
        """Write when a stint is: ``7:05-8:20``."""
        return f"{clock_text(self.begin + stint.start)}-{clock_text(self.begin + stint.end)}"


def minute_of_day(now: datetime | None = None) -> int:
    """Return the minute of the day, now if none is given."""
    moment = now if now is not None else datetime.now()  # noqa: DTZ005 -- the clock on the wall
    return moment.hour * 60 + moment.minute


def question(
    store: Store,
    planter: str,
    units: Units = Units.US,
    *,
    begin: int | None = None,
    names: Iterable[str] | None = None,
) -> Question:
    """Return what is left to share out, from a minute of the day (now, if None) on.

    ``names`` are the persons to count on, everybody who is here if None. Raises Refusal without
    work, without a crew, or when the crew's hours are over.
    """
    with store.read() as work:
        from changeover.desk.board import board_of

        view = view_of(work, board_of(work, planter, units, proposal=False))
        members, tools = work.crew.all(), work.tools.all()
    chosen = members if names is None else named(members, names)
    return question_of(view, Crew(chosen, tools), begin)


def question_of(view: WorkView, crew: Crew, begin: int | None = None) -> Question:
    """Return what is left of a work view to share out. Raises Refusal as ``question`` does."""
    name = view.board.planter.name
    if view.progress.finished:
        raise Refusal(f"{name}: no work is left to share out; choose the next lot first.")
    minute = minute_of_day() if begin is None else begin
    asked = crew_work(
        view.board.planter, view.progress, crew.members, crew.tools, minute, view.ticks
    )
    return Question(name, asked)


def solve(question: Question, limits: Limits | None = None) -> CrewPlan:
    """Look for the shortest timetable. Raises Refusal when the crew cannot do the work."""
    from changeover.switch.timetable.solve import timetable

    try:
        found = timetable(question.crew_work.work, limits or Limits(SECONDS))
    except Refusal as refusal:
        raise Refusal(_with_titles(str(refusal), question.crew_work.tasks)) from refusal
    return CrewPlan(question, found)


def _with_titles(sentence: str, tasks: Mapping[str, Task]) -> str:
    """Return a sentence that names tasks by their titles where it named them by their keys."""
    for key, task in tasks.items():
        sentence = sentence.replace(f"“{key}”", f"“{task.title.split(', ')[0]}”")
    return sentence


def with_more(question: Question, *, persons: int = 0, tool: str = "") -> Question:
    """Return a question with that many persons more, able to do everything, or one tool more."""
    work = question.crew_work.work
    more = tuple(
        Person(f"{ONE_MORE} {number}".removesuffix(" 1"), frozenset(SKILLS))
        for number in range(1, persons + 1)
    )
    tools = {**work.tools, tool: work.tools.get(tool, 0) + 1} if tool else work.tools
    wider = replace(work, crew=(*work.crew, *more), tools=tools)
    return replace(question, crew_work=replace(question.crew_work, work=wider))


def tools_waited_for(question: Question) -> tuple[str, ...]:
    """Return the shared tools that the work needs, the most used first."""
    work = question.crew_work.work
    minutes: dict[str, float] = {}
    for activity in work.activities:
        for mode in activity.modes[:1]:
            _add_use(minutes, mode, len(activity.rows))
    return tuple(sorted(minutes, key=lambda tool: -minutes[tool] / max(1, work.tools[tool])))


def _add_use(minutes: dict[str, float], mode: Mode, rows: int) -> None:
    for tool in mode.uses:
        minutes[tool] = minutes.get(tool, 0.0) + mode.duration(rows)


def length_text(minutes: int) -> str:
    """Write minutes as ``3 h 24 min``."""
    hours, rest = divmod(minutes, 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def proof_text(plan: Timetable) -> str:
    """Say how long a timetable is and what is proved of it."""
    if plan.status is SearchStatus.OPTIMAL:
        return f"shortest possible: {length_text(plan.length)}, proven"
    return f"{length_text(plan.length)}, within {_percent(plan.gap)} of the bound"


def walk_text(plan: Timetable) -> str:
    """Say how far the crew walks in all, and what is proved of that."""
    said = how_many(plan.walk, "row width")
    if plan.walk == plan.walk_bound:
        return f"{said}, the least possible in that time"
    proved = f"under {plan.walk_bound} cannot be" if plan.walk_bound else "less may be possible"
    return f"{said}, the least found; {proved}"


def _percent(share: float) -> str:
    """Write a share so that it is never made out smaller than it is: ``3 %``."""
    return f"{max(1, math.ceil(share * 100))} %"


def saved_text(now: Timetable, then: Timetable, what: str) -> str:
    """Say what a person or tool more would save."""
    saved = now.length - then.length
    if saved > 0:
        return f"{what}: {length_text(saved)} sooner, done in {length_text(then.length)}"
    return f"{what}: no sooner" + ("" if then.status is SearchStatus.OPTIMAL else " found")


def done_at(plan: CrewPlan, ticked: Mapping[str, frozenset[Place]], stint: Stint) -> bool:
    """Say whether a stint is done, by the places ticked off since at each task."""
    places = plan.question.crew_work.places_of(stint)
    return frozenset(places) <= ticked.get(stint.activity, frozenset())
