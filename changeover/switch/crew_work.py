"""From a worklist and a crew to the work of a timetable: what is left, for whom, with what."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from changeover.planter.machine import Planter
from changeover.planter.places import Place
from changeover.quantities import Refusal
from changeover.switch.crew import CrewMember, SharedTool
from changeover.switch.crew_second_look import who_cleaned, with_second_look
from changeover.switch.progress import Progress
from changeover.switch.sections import heading
from changeover.switch.tasks import MachineState, Task, Tick
from changeover.switch.timetable.model import Activity, Mode, Person, Stint, Work

STATE_MINUTES = 3
"""Minutes between two states of the machine: common practice, no source."""


@dataclass(frozen=True)
class CrewWork:
    """What is left of a worklist as the work of a timetable that begins at a minute of the day.

    ``places`` maps each task to its places left by the row number that stands for them;
    ``note`` says what a person must know of who is in it, empty where there is nothing.
    """

    work: Work
    begin: int
    tasks: Mapping[str, Task]
    places: Mapping[str, Mapping[int, Place]]
    note: str = ""

    def places_of(self, stint: Stint) -> tuple[Place, ...]:
        """Return the places of the worklist at which a stint is done, in the order of work."""
        at = self.places[stint.activity]
        return tuple(at[row] for row in stint.rows) if stint.rows else tuple(at.values())


def crew_work(
    planter: Planter,
    done: Progress,
    crew: Iterable[CrewMember],
    tools: Iterable[SharedTool],
    begin: int,
    ticks: Iterable[Tick] = (),
) -> CrewWork:
    """Return what is left to do for the persons who are here, from a minute of the day on.

    A task at several places, done by one person, is shared out in blocks of neighbours; work
    at a row waits there only for what comes before at that row. Whoever cleans, or has ticked
    cleaning off among the ``ticks``, does not look the clean-out over. Raises Refusal without a
    crew or when nobody's hours are left.
    """
    persons = tuple(_person(one, begin, planter) for one in _at_work(crew, begin))
    shared = {tool.name: tool.count for tool in tools}
    left = {task.key: task for task in done.worklist.tasks if done.left(task)}
    places = {key: _numbered(planter, done.left(task)) for key, task in left.items()}
    activities = tuple(_activity(task, left, places, shared) for task in left.values())
    held = with_second_look(activities, persons, left, who_cleaned(done.worklist, ticks))
    work = Work(held.activities, held.persons, shared, STATE_MINUTES)
    return CrewWork(work, begin, left, places, held.note)


def _at_work(crew: Iterable[CrewMember], begin: int) -> list[CrewMember]:
    here = [one for one in crew if one.here]
    if not here:
        raise Refusal("Nobody of the crew is here; enter who works, or say that they are here.")
    able = [one for one in here if not one.hours or one.hours[-1][1] > begin]
    if not able:
        names = ", ".join(one.name for one in here)
        raise Refusal(f"The hours of {names} are over for today; lengthen them or begin earlier.")
    return able


def _person(one: CrewMember, begin: int, planter: Planter) -> Person:
    """Return a person with hours from the beginning of the timetable, standing at the middle."""
    hours = tuple((max(0, a - begin), b - begin) for a, b in one.hours if b > begin)
    return Person(one.name, one.abilities, hours, place=(planter.rows + 1) // 2)


def _numbered(planter: Planter, places: Sequence[Place]) -> dict[int, Place]:
    """Return places by the row in their middle; several that share one are numbered onward."""
    found: dict[int, Place] = {}
    for place in places:
        rows = planter.rows_of(place)
        number = rows[len(rows) // 2]
        while number in found:
            number += 1
        found[number] = place
    return dict(sorted(found.items()))


def _activity(
    task: Task,
    left: Mapping[str, Task],
    places: Mapping[str, Mapping[int, Place]],
    shared: Mapping[str, int],
) -> Activity:
    fixed = float(task.minutes_fixed.to("min").magnitude)
    each = float(task.minutes_each.to("min").magnitude)
    uses = {tool: 1 for tool in task.tools if tool in shared}
    numbers = tuple(places[task.key])
    out = _shared_out(task)
    if not out:
        fixed, each = fixed + each * len(numbers), 0.0
    needs = [key for key in task.needs if key in left]
    by_row = [key for key in needs if out and _at_rows(task) and _at_rows(left[key])]
    return Activity(
        key=task.key,
        modes=(Mode(math.ceil(fixed - 1e-9), each, task.persons, uses),),
        rows=numbers if out else (),
        after=tuple(key for key in needs if key not in by_row),
        after_by_row=tuple(by_row),
        state=None if task.state is MachineState.ANY else task.state.value,
        skill=heading(task),
        place=None if out else numbers[len(numbers) // 2],
    )


def _shared_out(task: Task) -> bool:
    """Say whether several persons may each take places of a task, whatever is left of it."""
    return len(task.places) > 1 and task.persons == 1


def _at_rows(task: Task) -> bool:
    return _shared_out(task) and all(place.row is not None for place in task.places)
