"""Tasks of one's own: those added to a switch and those split off, as typed texts and edits."""

import re
from collections.abc import Iterable

from changeover.desk.edits import PutOwnWork
from changeover.desk.plan_switch import WorkView
from changeover.planter.group_text import read_rows, show_rows
from changeover.planter.machine import Planter
from changeover.planter.places import PLANTER, Place
from changeover.quantities import Refusal
from changeover.store.opening import Store
from changeover.switch.own_tasks import OwnTask, Split
from changeover.switch.tasks import Task
from changeover.switch.wording import places_text
from changeover.switch.work_bounds import check_minutes, check_persons

OwnWork = OwnTask | Split


def own_work(store: Store, planter: str) -> tuple[OwnWork, ...]:
    """Return what was added to a planter's open switch, then what was split off."""
    with store.read() as work:
        return (*work.own_work.tasks(planter), *work.own_work.splits(planter))


def read_places(planter: Planter, text: str) -> tuple[Place, ...]:
    """Read rows such as ``1-8, 17``, or names of groups; empty means the planter as a whole.

    Raises Refusal for what the planter does not have.
    """
    typed = text.strip()
    if not typed:
        return (PLANTER,)
    if not typed[0].isdigit():
        return tuple(_group(planter, name.strip()) for name in typed.split(","))
    places = tuple(Place.of_row(row) for row in dict.fromkeys(read_rows(typed, "Rows")))
    for place in places:
        planter.rows_of(place)
    return places


def _group(planter: Planter, name: str) -> Place:
    for group in planter.groups:
        if group.name.casefold() == name.casefold():
            return group.place
    there = ", ".join(group.name for group in planter.groups)
    raise Refusal(
        f"{planter.name} has no “{name}”; write rows like 1-8, or {there or 'leave it empty'}."
    )


def typed_places(places: Iterable[Place]) -> str:
    """Write places the way ``read_places`` reads them."""
    every = tuple(places)
    rows = [place.row for place in every if place.row is not None]
    if len(rows) == len(every):
        return show_rows(rows)
    return "" if every == (PLANTER,) else ", ".join(place.name for place in every)


def name_for(title: str, taken: Iterable[str]) -> str:
    """Return a short name for a task that no other has, made of its first words."""
    words = re.findall(r"\w+", title.lower())[:4]
    stem, known = "_".join(words) or "task", set(taken)
    names = (stem if number == 1 else f"{stem}_{number}" for number in range(1, len(known) + 2))
    return next(name for name in names if name not in known)


def check_own_task(task: OwnTask) -> OwnTask:
    """Return a task of one's own that can be done. Raises Refusal for what no task takes."""
    what = f"“{task.title}”"
    check_minutes(task.minutes_fixed, f"{what}, minutes once")
    check_minutes(task.minutes_each, f"{what}, minutes at each")
    check_persons(task.persons, f"{what}, persons")
    return task


def families(view: WorkView) -> tuple[Task, ...]:
    """Return one task of each family, in the order of work: what a task can come after."""
    first: dict[str, Task] = {}
    for task in view.worklist.tasks:
        first.setdefault(task.family, task)
    return tuple(first.values())


def splittable(view: WorkView) -> tuple[Task, ...]:
    """Return the tasks that are done at several places, one of each family."""
    return tuple(task for task in families(view) if len(task.places) > 1)


def remove(planter: str, value: OwnWork) -> PutOwnWork:
    """Return the edit that takes a task of one's own, or a split, away again."""
    return PutOwnWork(planter, None, before=value)


def own_text(value: OwnWork) -> str:
    """Say what a task of one's own is, or which places are split off for whom."""
    if isinstance(value, OwnTask):
        return f"{value.title}: {places_text(value.places)}"
    ordered = sorted(value.places, key=lambda place: (place.row or 0, place.name))
    return f"{value.name} apart: {places_text(ordered)} of {value.family.partition('.')[0]}"
