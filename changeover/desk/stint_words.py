"""The short words for a stint of a timetable: what, on which rows, and when."""

from collections.abc import Mapping

from changeover.desk.who_does_what import CrewPlan
from changeover.planter.places import Place
from changeover.switch.tasks import Task
from changeover.switch.timetable.model import Stint
from changeover.switch.wording import places_text

SHORT: Mapping[str, str] = {
    "safe_stopped": "safe",
    "safe_raised": "raise",
    "clean_tank": "tanks",
    "clean_hose": "hoses",
    "meter": "meters",
    "clean_tube": "tubes",
    "clean_floor": "floor",
    "inspect_clean": "look over",
    "fill": "fill",
    "cab_enter": "cab",
    "set_vacuum": "fans",
    "set_depth": "depth",
    "set_closing": "closing",
    "prove_vacuum": "gauge",
    "prove_meter": "bench",
    "prove_rate": "count",
    "prove_depth": "dig",
    "prove_closing": "furrow",
}


def short_name(task: Task) -> str:
    """Return a word for a task, as it fits on a bar."""
    head = task.family.partition(".")[0]
    return SHORT.get(head) or task.title.split(":")[0].split(" ")[0].strip(",").lower()


def rows_short(places: tuple[Place, ...]) -> str:
    """Return rows as ``1-8`` or ``7, 19``; empty where the places are no rows."""
    rows = sorted(place.row for place in places if place.row is not None)
    if len(rows) < len(places) or not rows:
        return ""
    return f"{rows[0]}-{rows[-1]}" if len(rows) > 1 else str(rows[0])


def stint_text(plan: CrewPlan, stint: Stint) -> str:
    """Return the words on a bar: ``meters 1-8``."""
    task = plan.task(stint)
    return f"{short_name(task)} {rows_short(task.places)}".rstrip()


def stint_tip(plan: CrewPlan, stint: Stint) -> str:
    """Return all that is to be said of a stint in one line."""
    task = plan.task(stint)
    who = " and ".join(stint.persons)
    return f"{plan.from_to(stint)}, {who}: {task.title}, {places_text(task.places)}"
