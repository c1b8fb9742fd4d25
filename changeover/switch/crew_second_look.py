"""The second look at a clean-out: by somebody other than whoever cleaned, or from outside."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from changeover.switch.clean_log import INSPECTION, cleans
from changeover.switch.tasks import Task, Tick, Worklist
from changeover.switch.timetable.apart import cases
from changeover.switch.timetable.model import Activity, Person

SOMEBODY = "somebody else"
"""Stands in the timetable for a person from outside the crew."""

NOTE = (
    "Whoever cleans must not look the clean-out over, and nobody else of the crew is left for "
    f"that; “{SOMEBODY}” stands for a person from outside, under whose name it is ticked off."
)


@dataclass(frozen=True)
class Shared:
    """Activities and the persons for them; ``note`` says why somebody from outside is needed."""

    activities: tuple[Activity, ...]
    persons: tuple[Person, ...]
    note: str = ""


def with_second_look(
    activities: Sequence[Activity],
    persons: Sequence[Person],
    left: Mapping[str, Task],
    cleaners: Iterable[str],
) -> Shared:
    """Keep whoever cleans, or is among the ``cleaners`` already, from looking it over.

    ``left`` are the tasks of the activities by key. Where the crew has nobody else for it, a
    person from outside is added who does that and nothing more.
    """
    looks = {key for key, task in left.items() if task.family.partition(".")[0] == INSPECTION}
    if not looks:
        return Shared(tuple(activities), tuple(persons))
    cleaning = tuple(key for key, task in left.items() if cleans(task))
    barred = frozenset(cleaners)
    held = tuple(
        replace(each, not_by=cleaning, barred=barred) if each.key in looks else each
        for each in activities
    )
    if not _nobody_left(held, persons, looks):
        return Shared(held, tuple(persons))
    skills = {each.skill for each in held if each.key in looks and each.skill is not None}
    outside = Person(SOMEBODY, frozenset(skills), place=persons[0].place)
    others = tuple(
        each if each.key in looks else replace(each, barred=each.barred | {SOMEBODY})
        for each in held
    )
    return Shared(others, (*persons, outside), NOTE)


def who_cleaned(worklist: Worklist, ticks: Iterable[Tick]) -> frozenset[str]:
    """Return the names under which cleaning has been ticked off."""
    families = {task.family for task in worklist.tasks if cleans(task)}
    return frozenset(tick.who for tick in ticks if tick.task.partition("/")[0] in families)


def _nobody_left(held: Sequence[Activity], persons: Sequence[Person], looks: set[str]) -> bool:
    """Say whether all who can look must clean, while there are those who can do both."""
    beside = {key for each in held if each.key in looks for key in each.not_by}
    apart = [each for each in held if each.key in looks | beside]
    freely = [replace(each, not_by=(), barred=frozenset()) for each in apart]
    return bool(cases(persons, freely)) and not cases(persons, apart)
