"""A worklist under the headings by which people share it out."""

from collections.abc import Mapping
from dataclasses import dataclass

from changeover.planter.settings import WorkPlace
from changeover.switch.tasks import Task, TaskKind, Worklist

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
AT_FILLING = ("inspect_clean", "fill")


@dataclass(frozen=True)
class Section:
    """Tasks under one heading, in the order of work."""

    name: str
    tasks: tuple[Task, ...]


def heading(task: Task) -> str:
    """Return the heading a task stands under."""
    if task.kind is TaskKind.SAFE:
        return MAKE_SAFE
    if task.family.partition(".")[0] in AT_FILLING:
        return FILL
    return PROOF if task.kind is TaskKind.PROVE else NAMES[task.work_place]


def sections(worklist: Worklist) -> tuple[Section, ...]:
    """Return the tasks by heading: making safe first, proof last, places in the order of work."""
    found = [
        Section(name, tuple(task for task in worklist.tasks if heading(task) == name))
        for name in ORDER
    ]
    return tuple(section for section in found if section.tasks)
