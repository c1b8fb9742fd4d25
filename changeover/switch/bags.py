"""The kit shared out: a bag of parts for each row, and what each person carries."""

from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass

from changeover.planter.places import Place
from changeover.switch.progress import Progress
from changeover.switch.tasks import Change, PartCount, Task, Worklist

Whose = Callable[[str, Place], str]


@dataclass(frozen=True)
class Bag:
    """The parts for one place, and who fits them there, empty when it is not shared out."""

    place: Place
    person: str
    parts: tuple[PartCount, ...]


def nobody(_task: str, _place: Place) -> str:
    """Stand for work that is not shared out."""
    return ""


def bags(work: Worklist | Progress, whose: Whose = nobody) -> tuple[Bag, ...]:
    """Return a bag for every place where parts go on, rows first and from the left.

    Of a whole worklist, or of what is left when given its progress. ``whose`` says who does a
    task, by its key, at a place. Two persons at one place have a bag each.
    """
    held: dict[tuple[Place, str], Counter[str]] = {}
    tasks = work.worklist.tasks if isinstance(work, Progress) else work.tasks
    for task, place in ((one, place) for one in tasks for place in one.places):
        for change in _changes(work, task, place):
            if change.part:
                person = whose(task.key, place)
                held.setdefault((place, person), Counter())[str(change.after)] += 1
    made = [Bag(place, person, _counts(parts)) for (place, person), parts in held.items()]
    return tuple(sorted(made, key=lambda bag: (bag.place.row or 1_000, bag.place.name)))


def _changes(work: Worklist | Progress, task: Task, place: Place) -> tuple[Change, ...]:
    if isinstance(work, Progress):
        return work.changes_left(task, place)
    return task.changes.get(place, ())


def carried(made: Iterable[Bag]) -> dict[str, tuple[PartCount, ...]]:
    """Return what each person carries, all bags together."""
    whole: dict[str, Counter[str]] = {}
    for bag in made:
        for part in bag.parts:
            whole.setdefault(bag.person, Counter())[part.part] += part.count
    return {person: _counts(parts) for person, parts in whole.items()}


def _counts(parts: Counter[str]) -> tuple[PartCount, ...]:
    return tuple(PartCount(part, count) for part, count in sorted(parts.items()))
