"""A crew's timetable as lanes to draw: one for each person, a bar for each stint."""

from collections.abc import Mapping
from types import MappingProxyType

from changeover.desk.stint_words import stint_text, stint_tip
from changeover.desk.who_does_what import CrewPlan, done_at
from changeover.planter.places import Place
from changeover.switch.crew import clock_text
from changeover.switch.tasks import Task, TaskKind
from changeover.switch.timetable.model import Stint
from changeover.window.timetable.lanes import Bar, Lane, Lanes, Look

STEPS = (5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 240.0, 480.0)


def crew_lanes(
    plan: CrewPlan,
    ticked: Mapping[str, frozenset[Place]],
    now: int | None = None,
    numbers: Mapping[str, int] = MappingProxyType({}),
) -> Lanes:
    """Return the lanes of a plan in minutes of the day; ``ticked`` is what is done since.

    ``numbers`` are those of the tasks on the worklist, which short bars bear.
    """
    begin = plan.begin
    lanes = tuple(
        Lane(name, tuple(_bar(plan, ticked, stint, numbers) for stint in plan.timetable.by(name)))
        for name in plan.names
    )
    return Lanes(
        lanes,
        begin,
        begin + max(1, plan.timetable.length),
        STEPS,
        lambda minute: clock_text(round(minute)),
        now,
    )


def stint_key(stint: Stint) -> str:
    """Return what a stint's bars are known by."""
    return f"{stint.activity}@{stint.start}@{'+'.join(stint.persons)}"


def _bar(
    plan: CrewPlan,
    ticked: Mapping[str, frozenset[Place]],
    stint: Stint,
    numbers: Mapping[str, int],
) -> Bar:
    return Bar(
        key=stint_key(stint),
        start=plan.begin + stint.start,
        end=plan.begin + stint.end,
        text=stint_text(plan, stint),
        tip=stint_tip(plan, stint),
        look=_look(plan.question.crew_work.tasks[stint.activity]),
        done=done_at(plan, ticked, stint),
        number=numbers.get(stint.activity),
    )


def _look(task: Task) -> Look:
    if task.kind is TaskKind.SAFE:
        return Look.WARN
    return Look.MAIN if task.family.startswith("meter.") else Look.PLAIN
