"""A worklist under the headings by which people share it out."""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import groupby

from changeover.planter.settings import WorkPlace
from changeover.switch import clean_ticks
from changeover.switch.clean_log import INSPECTION
from changeover.switch.tasks import MachineState, Task, TaskKind, Worklist

NAMES: Mapping[WorkPlace, str] = {
    WorkPlace.TANK: "Tanks",
    WorkPlace.METER: "Meters",
    WorkPlace.ROW_UNIT: "Row units",
    WorkPlace.FAN: "Fans",
    WorkPlace.DRIVE: "Drive",
    WorkPlace.CAB: "Cab",
}
MAKE_SAFE, FILL, PROOF = "Make safe", "Inspection and filling", "Proof"
ORDER = (
    MAKE_SAFE,
    NAMES[WorkPlace.TANK],
    NAMES[WorkPlace.METER],
    NAMES[WorkPlace.DRIVE],
    NAMES[WorkPlace.ROW_UNIT],
    FILL,
    NAMES[WorkPlace.CAB],
    NAMES[WorkPlace.FAN],
    PROOF,
)
"""All headings, which are also what a person of the crew can do."""

AT_FILLING = (INSPECTION, clean_ticks.FILL)


@dataclass(frozen=True)
class Section:
    """Tasks under one heading, in the order of work."""

    name: str
    tasks: tuple[Task, ...]


def heading(task: Task) -> str:
    """Return the heading a task belongs to, and so what a person must be able to do for it."""
    if task.kind is TaskKind.SAFE:
        return MAKE_SAFE
    if task.family.partition(".")[0] in AT_FILLING:
        return FILL
    return PROOF if task.kind is TaskKind.PROVE else NAMES[task.work_place]


def _stands_under(task: Task) -> str:
    """Return where a task stands: raising comes before the row units, not before all work."""
    raising = task.kind is TaskKind.SAFE and task.state is MachineState.RAISED
    return NAMES[WorkPlace.ROW_UNIT] if raising else heading(task)


def sections(worklist: Worklist) -> tuple[Section, ...]:
    """Return the tasks by heading, in the very order of work, which the numbers follow.

    A heading that comes again says so, as when a task of one's own is done after all else.
    """
    found: list[Section] = []
    for name, tasks in groupby(worklist.tasks, _stands_under):
        again = any(section.name == name for section in found)
        found.append(Section(_later(name, found) if again else name, tuple(tasks)))
    return tuple(found)


def _later(name: str, found: list[Section]) -> str:
    """Return a heading that comes again, each time another one: ``Meters, later``."""
    times = sum(section.name.startswith(f"{name}, later") for section in found)
    return f"{name}, later" + (f" ({times + 1})" if times else "")


def task_numbers(worklist: Worklist) -> Mapping[str, int]:
    """Return the number of each task by its key, the same on screen, on paper and in files."""
    return {task.key: number for number, task in enumerate(worklist.tasks, start=1)}
