"""The texts of a task card: title, chips, place, minutes, and the steps behind it."""

from dataclasses import dataclass

from changeover.planter.places import Place
from changeover.switch.tasks import MachineState, Task
from changeover.switch.wording import places_text


@dataclass(frozen=True)
class Line:
    """One line behind a task; a caution is drawn with its mark."""

    text: str
    caution: bool = False


@dataclass(frozen=True)
class TaskWords:
    """A task as its card says it; ``chips`` are the texts of the ``places`` to tick."""

    key: str
    title: str
    places: tuple[Place, ...]
    chips: tuple[str, ...]
    where: str
    minutes: str
    details: tuple[Line, ...]


def task_words(task: Task, number: int | None = None) -> TaskWords:
    """Put a task into the words of its card, with its number on the worklist where it has one."""
    return TaskWords(
        key=task.key,
        title=task.title if number is None else f"{number}. {task.title}",
        places=task.places,
        chips=tuple(place.name or place.label for place in task.places),
        where=places_text(task.places),
        minutes=_minutes(task),
        details=_details(task),
    )


def minutes_text(minutes: float) -> str:
    """Say a time in minutes, hours from 90 on: ``½ min``, ``12 min``, ``2 h 10 min``."""
    if minutes < 90:
        halves = round(minutes * 2) / 2
        whole, half = int(halves), "½" if halves % 1 else ""
        return f"{whole or half or 0}{half if whole else ''} min"
    hours, rest = divmod(round(minutes), 60)
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def _minutes(task: Task) -> str:
    each, fixed = (float(t.to("min").magnitude) for t in (task.minutes_each, task.minutes_fixed))
    if len(task.places) < 2 or not each:
        return minutes_text(fixed + each * len(task.places))
    said = f"{minutes_text(each)} a row" if task.places[0].row else f"{minutes_text(each)} each"
    return f"{said} + {minutes_text(fixed)}" if fixed else said


def _details(task: Task) -> tuple[Line, ...]:
    lines = [Line(f"{number}.  {step}") for number, step in enumerate(task.steps, start=1)]
    if task.state is not MachineState.ANY:
        lines.append(Line(f"Planter: {task.state.value}."))
    if task.tools:
        lines.append(Line(f"Tools: {', '.join(task.tools)}."))
    if task.why:
        lines.append(Line(f"Why: {task.why}"))
    return (*lines, *(Line(caution, caution=True) for caution in task.cautions))
