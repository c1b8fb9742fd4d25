"""The clean-out outside the meters: tanks, hoses, seed tubes, floor, and its inspection."""

from collections.abc import Iterable

from changeover.planter.places import PLANTER, Place
from changeover.planter.settings import WorkPlace
from changeover.switch.clean_rules import CleanPlace, How
from changeover.switch.clean_ticks import clean_key
from changeover.switch.meter_work import clean_tools
from changeover.switch.plan import CleanGroup, Plan
from changeover.switch.tasks import MachineState, Task, TaskKind

WORDS = {
    How.BRUSH: "brush",
    How.VACUUM: "vacuum",
    How.BLOW: "blow out",
    How.WASH: "wash",
    How.INSPECT: "look over",
}


def clean_words(group: CleanGroup, *places: CleanPlace) -> str:
    """Say how far the places are cleaned after emptying: ``brush, vacuum``."""
    hows = {how for place in places for how in group.clean.places.get(place, ())}
    return ", ".join(WORDS[how] for how in WORDS if how in hows)


def _steps(group: CleanGroup, *places: CleanPlace) -> tuple[str, ...]:
    return tuple(step for place in places for step in group.clean.steps.get(place, ()))


def _tools(group: CleanGroup, *places: CleanPlace) -> tuple[str, ...]:
    hows = {how for place in places for how in group.clean.places.get(place, ())}
    return clean_tools(how for how in How if how in hows)


def _rows(group: CleanGroup) -> tuple[Place, ...]:
    return tuple(Place.of_row(row) for row in group.rows)


def _whole_key(work: str, groups: Iterable[CleanGroup]) -> str:
    """Return the key of work that is done once for all groups."""
    every = tuple(groups)
    levels = [level for group in every for level in group.clean.levels]
    return clean_key(work, [group.old for group in every], levels)


def tank_tasks(plan: Plan, groups: tuple[CleanGroup, ...]) -> list[Task]:
    """Return the tasks that empty and clean the tanks, or the row hoppers where there are none."""
    return [_tank_task(plan, group) for group in groups]


def _tank_task(plan: Plan, group: CleanGroup) -> Task:
    place = CleanPlace.HOPPER if plan.row_hoppers else CleanPlace.TANK
    places = _rows(group) if plan.row_hoppers else group.tanks
    further = clean_words(group, place)
    what = "row hoppers" if plan.row_hoppers else "tank"
    steps = _steps(group, place)
    into = f"container “{group.old}”" if group.old else "a container marked “old seed”"
    return plan.task(
        group.key("clean_tank"),
        WorkPlace.TANK,
        f"Empty {what} into {into}" + (f", {further}" if further else ""),
        places,
        ["empty_hopper" if plan.row_hoppers else "empty_tank"],
        ["stopped", "climb", *group.clean.caution_keys],
        kind=TaskKind.CLEAN,
        cleans=group.cleans(place),
        tools=_tools(group, place),
        steps=(*steps[:1], *_back(group), *steps[1:]),
        why=f"{group.clean.why} ({group.clean.source})",
    )


def _back(group: CleanGroup) -> tuple[str, ...]:
    return (
        f"Label the container “{group.clean.into}” at once",
        "Weigh or count what came out and write it down; back to its own place in the seed shed",
    )


def hose_tasks(plan: Plan, groups: tuple[CleanGroup, ...]) -> list[Task]:
    """Return the tasks that clean delivery hoses and the small hoppers on the rows."""
    if plan.row_hoppers:
        return []
    return [_hose_task(plan, group) for group in groups if CleanPlace.HOSE in group.clean.places]


def _hose_task(plan: Plan, group: CleanGroup) -> Task:
    further = clean_words(group, CleanPlace.HOSE, CleanPlace.HOPPER)
    return plan.task(
        group.key("clean_hose"),
        WorkPlace.TANK,
        "Empty hose and row hopper" + (f", {further}" if further else ""),
        _rows(group),
        ["clean_hose"],
        ["stopped", *group.clean.caution_keys],
        kind=TaskKind.CLEAN,
        cleans=group.cleans(CleanPlace.HOSE, CleanPlace.HOPPER),
        tools=_tools(group, CleanPlace.HOSE, CleanPlace.HOPPER),
        steps=_steps(group, CleanPlace.HOSE, CleanPlace.HOPPER),
        why=group.clean.why,
    )


def tube_tasks(plan: Plan, groups: tuple[CleanGroup, ...]) -> list[Task]:
    """Return the tasks that clean seed tubes and seed sensors."""
    return [_tube_task(plan, group) for group in groups if CleanPlace.TUBE in group.clean.places]


def _tube_task(plan: Plan, group: CleanGroup) -> Task:
    further = clean_words(group, CleanPlace.TUBE, CleanPlace.SENSOR)
    sensor = " and sensor" if CleanPlace.SENSOR in group.clean.places else ""
    return plan.task(
        group.key("clean_tube"),
        WorkPlace.ROW_UNIT,
        f"Empty seed tube{sensor}" + (f", {further}" if further else ""),
        _rows(group),
        ["clean_tube"],
        ["raised", *group.clean.caution_keys],
        kind=TaskKind.CLEAN,
        cleans=group.cleans(CleanPlace.TUBE, CleanPlace.SENSOR),
        tools=_tools(group, CleanPlace.TUBE, CleanPlace.SENSOR),
        steps=_steps(group, CleanPlace.TUBE, CleanPlace.SENSOR),
        why=group.clean.why,
    )


def floor_tasks(plan: Plan, groups: tuple[CleanGroup, ...]) -> list[Task]:
    """Return the one task that clears the places where seed drips later, and the floor."""
    dirty = [group for group in groups if CleanPlace.FLOOR in group.clean.places]
    if not dirty:
        return []
    places = (CleanPlace.DRIP_POINT, CleanPlace.FLOOR)
    steps = dict.fromkeys(step for group in dirty for step in _steps(group, *places))
    tools = dict.fromkeys(tool for group in dirty for tool in _tools(group, *places))
    task = plan.task(
        _whole_key("clean_floor", dirty),
        WorkPlace.ROW_UNIT,
        "Clear ledges and drip points, then the floor",
        (PLANTER,),
        ["clean_floor"],
        ["stopped", *(key for group in dirty for key in group.clean.caution_keys)],
        kind=TaskKind.CLEAN,
        cleans=frozenset[str]().union(*(group.cleans(*places) for group in dirty)),
        state=MachineState.POWER_OFF,
        tools=tuple(tools),
        steps=tuple(steps),
        why=dirty[0].clean.why,
    )
    return [task]


def inspection_tasks(plan: Plan, groups: tuple[CleanGroup, ...]) -> list[Task]:
    """Return the second look that a contract or certifier asks for, with what to write down."""
    logged = [group for group in groups if group.clean.logged]
    if not logged:
        return []
    task = plan.task(
        _whole_key("inspect_clean", logged),
        WorkPlace.TANK,
        "A second person looks the clean-out over and signs the log",
        (PLANTER,),
        ["inspect_clean"],
        ["stopped"],
        kind=TaskKind.PROVE,
        cleans=frozenset[str]().union(*(group.cleans() for group in logged)),
        state=MachineState.POWER_OFF,
        tools=("lamp", "clean-out log"),
        steps=(
            "Top to bottom: tank, hoses, hoppers, meters, tubes, ledges, floor",
            "Log who and when: date and time, machine, rows, done by, inspected by, photos",
            "Log what: lot before and after with treatment, each step and how it was done",
            "Log where the seed recovered and the purge went",
        ),
        why=f"{logged[0].clean.why} ({logged[0].clean.source})",
    )
    return [task]
