"""Work ticked before what comes first: which tasks those are, and how a person is asked."""

from collections.abc import Iterable
from dataclasses import dataclass

from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.switch.clean_log import INSPECTION
from changeover.switch.clean_ticks import FILL
from changeover.switch.progress import Progress
from changeover.switch.tasks import Task, TaskKind
from changeover.switch.wording import listed


@dataclass(frozen=True)
class Question:
    """What is asked before a task is ticked out of order: a sentence, more, and the yes."""

    text: str
    detail: str
    yes: str = "Tick it all the same"


def comes_first(
    done: Progress, planter: Planter, task: Task, places: Iterable[Place]
) -> tuple[Task, ...]:
    """Return the tasks that come before a task at some places and are still open there.

    Work at other rows does not count; work on the planter as a whole counts everywhere.
    """
    rows = {row for place in places for row in planter.rows_of(place)}
    return tuple(
        one
        for one in done.waits_for(task)
        if any(
            place.scope is Scope.PLANTER or rows & set(planter.rows_of(place))
            for place in done.left(one)
        )
    )


def question(task: Task, first: tuple[Task, ...]) -> Question | None:
    """Return what to ask before ticking a task of which others come first; None without any.

    Filling before the clean-out is done and inspected is asked in the strongest words, then work
    on a planter that is not made safe.
    """
    if not first:
        return None
    names = listed(f"“{one.title}”" for one in first)
    inspection = any(_is(one, INSPECTION) for one in first)
    if _is(task, FILL) and (inspection or any(one.kind is TaskKind.CLEAN for one in first)):
        lacks = "inspected" if inspection else "done"
        return Question(
            f"Stop: the clean-out is not {lacks}, and filling puts the new lot on whatever is left "
            "of the old one.",
            "Once filled, nobody can inspect it any more, and one lot may be mixed with the other. "
            f"Open is {names}.",
            "Filled without inspection" if inspection else "Filled without clean-out",
        )
    if any(one.kind is TaskKind.SAFE for one in first):
        return Question(
            f"The planter is not ticked as made safe, and “{task.title}” comes after that.",
            f"Somebody may get hurt. Open is {names}. Was it made safe, and this is done?",
        )
    after = "Fill" if _is(task, FILL) else f"“{task.title}”"
    return Question(f"{after} comes after {names}.", "Was it done first all the same?")


def _is(task: Task, head: str) -> bool:
    return task.family.partition(".")[0] == head
