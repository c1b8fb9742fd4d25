"""The worklist: every task of a switch, in the order of work, each with what it needs first."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from changeover.planter.machine import Planter
from changeover.planter.parts import Part
from changeover.planter.settings import Setting, WorkPlace
from changeover.planter.setup import Cell, Setup
from changeover.quantities import Units
from changeover.seed.lots import SeedLot
from changeover.switch.clean_tasks import (
    floor_tasks,
    hose_tasks,
    inspection_tasks,
    tank_tasks,
    tube_tasks,
)
from changeover.switch.clean_ticks import words_of_levels
from changeover.switch.difference import difference, work_settings
from changeover.switch.meter_work import meter_tasks
from changeover.switch.plan import Plan
from changeover.switch.proof_steps import proof_tasks
from changeover.switch.row_unit_work import let_down_tasks, lock_up_tasks, row_unit_tasks
from changeover.switch.rules import SwitchRules
from changeover.switch.running_work import (
    cab_tasks,
    drive_tasks,
    fan_tasks,
    fill_tasks,
    tank_setting_tasks,
)
from changeover.switch.safe_steps import raise_task, stop_task
from changeover.switch.setting_work import setting_tasks
from changeover.switch.standard_minutes import Minutes
from changeover.switch.tasks import Change, MachineState, StandardTime, Task, Worklist
from changeover.switch.unset import unset_words
from changeover.switch.wording import Words

CLEAN = ("tank", "hose", "meter", "tube", "floor")
BEFORE: Mapping[str, tuple[str, ...]] = {
    "stopped": (),
    "tank": ("stopped",),
    "hose": ("stopped", "tank"),
    "meter": ("stopped", "tank", "hose"),
    "meter_other": ("stopped",),
    "drive": ("stopped",),
    "raised": (),
    "let_down": ("raised",),
    "tube": ("raised", "tank", "hose", "meter"),
    "lock_up": ("raised", "meter", "tube"),
    "row_unit": ("raised", "let_down"),
    "floor": ("stopped", "tank", "hose", "meter", "tube"),
    "inspect": CLEAN,
    "tank_other": ("stopped", "tank"),
    "fill": (*CLEAN, "inspect", "tank_other"),
    "cab": (),
    "fan": ("meter", "meter_other", "fill"),
}
BEFORE_PROOF: Mapping[MachineState, tuple[str, ...]] = {
    MachineState.FAN_RUNNING: ("fill", "fan"),
    MachineState.LOWERED: ("fill", "fan", "cab"),
}


def plan_worklist(
    planter: Planter,
    settings: tuple[Setting, ...],
    before: Setup,
    target: Setup,
    old_lots: Mapping[str, SeedLot],
    new_lot: SeedLot | None,
    parts: tuple[Part, ...],
    times: Iterable[StandardTime],
    units: Units,
    rules: SwitchRules,
) -> Worklist:
    """Return the tasks that take a planter from one setup to another and one lot to the next.

    ``before`` is the setup when the next lot was chosen, so that work done stays on the list.
    ``old_lots`` holds the lots by number, more than are needed does no harm; a tank whose lot
    is not among them is cleaned as not known. ``new_lot`` is None while none is chosen: then
    nothing is cleaned. ``times`` are the user's own minutes. Texts show ``units``.
    Every cell that changes stands in exactly one task. Raises Refusal when the rules lack
    standard minutes.
    """
    lots = {**old_lots, **({new_lot.number: new_lot} if new_lot else {})}
    plan = Plan(
        planter=planter,
        settings=work_settings(planter, settings),
        before=before,
        target=target,
        difference=difference(planter, settings, before, target),
        lots=lots,
        new_lot=new_lot,
        parts={part.code: part for part in parts},
        words=Words(planter, units),
        minutes=Minutes.of(rules.minutes, times),
        rules=rules,
    )
    tasks = _in_order(_stages(plan))
    open_ones = unset_words(planter, settings, target) if new_lot is not None else ()
    heads = rules.cautions.whole(_head_cautions(plan, tasks)) if tasks else ()
    return Worklist(tasks, (*open_ones, *heads), words_of_levels(rules.clean_out))


def _stages(plan: Plan) -> dict[str, list[Task]]:
    groups = plan.clean_groups()
    meters = meter_tasks(plan, groups)
    inside = frozenset(change.cell.setting for task in meters for change in _changes(task))
    stages = {
        "tank": tank_tasks(plan, groups),
        "hose": hose_tasks(plan, groups),
        "meter": meters,
        "meter_other": setting_tasks(plan, WorkPlace.METER, inside),
        "drive": drive_tasks(plan),
        "let_down": let_down_tasks(plan),
        "tube": tube_tasks(plan, groups),
        "lock_up": lock_up_tasks(plan),
        "row_unit": row_unit_tasks(plan),
        "floor": floor_tasks(plan, groups),
        "inspect": inspection_tasks(plan, groups),
        "tank_other": tank_setting_tasks(plan),
        "fill": fill_tasks(plan),
        "cab": cab_tasks(plan),
        "fan": fan_tasks(plan),
        "proof": proof_tasks(plan),
    }
    return {**stages, **_safe(plan, stages)}


def _changes(task: Task) -> Iterable[Change]:
    return (change for changes in task.changes.values() for change in changes)


def _safe(plan: Plan, stages: Mapping[str, list[Task]]) -> dict[str, list[Task]]:
    """Return the steps that make safe, those alone whose state any task needs."""
    states = {task.state for tasks in stages.values() for task in tasks}
    return {
        "stopped": [stop_task(plan)] if MachineState.POWER_OFF in states else [],
        "raised": [raise_task(plan)] if MachineState.RAISED in states else [],
    }


def _in_order(stages: Mapping[str, list[Task]]) -> tuple[Task, ...]:
    placed = [
        replace(task, needs=_keys(stages, BEFORE[stage]))
        for stage in BEFORE
        for task in stages[stage]
    ]
    made = {change.cell: task.key for task in placed for change in _changes(task)}
    proofs = [_after_proved(proof, made, stages) for proof in stages["proof"]]
    return _with_nearest_needs([*placed, *proofs])


def _with_nearest_needs(tasks: list[Task]) -> tuple[Task, ...]:
    """Leave out of a task's needs what its other needs wait for anyway."""
    earlier: dict[str, frozenset[str]] = {}
    for task in tasks:
        earlier[task.key] = frozenset(task.needs).union(*(earlier[key] for key in task.needs))
    return tuple(
        replace(
            task,
            needs=tuple(k for k in task.needs if not any(k in earlier[n] for n in task.needs)),
        )
        for task in tasks
    )


def _after_proved(proof: Task, made: Mapping[Cell, str], stages: Mapping[str, list[Task]]) -> Task:
    """Set a proof after the tasks that change what it proves, and after what it runs on."""
    keys = {made[cell] for cell in proof.proves if cell in made}
    first = [key for key in dict.fromkeys(made.values()) if key in keys]
    running = _keys(stages, BEFORE_PROOF.get(proof.state, ()))
    return replace(proof, needs=tuple(dict.fromkeys([*first, *running])))


def _keys(stages: Mapping[str, list[Task]], names: Iterable[str]) -> tuple[str, ...]:
    return tuple(task.key for name in names for task in stages[name])


def _head_cautions(plan: Plan, tasks: tuple[Task, ...]) -> list[str]:
    """Return the cautions that hold for the whole list."""
    states = {task.state for task in tasks}
    keys = {
        "stopped": MachineState.POWER_OFF in states,
        "raised": MachineState.RAISED in states,
        "fan": MachineState.FAN_RUNNING in states,
        "treated": plan.treated,
        "pinch": True,
    }
    return [key for key, holds in keys.items() if holds]
