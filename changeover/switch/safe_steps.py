"""The steps that make the planter safe, before any hand goes near it."""

from changeover.planter.places import PLANTER
from changeover.planter.settings import WorkPlace
from changeover.switch.plan import Plan
from changeover.switch.tasks import MachineState, Task, TaskKind

STOPPED, RAISED = "safe_stopped", "safe_raised"


def stop_task(plan: Plan) -> Task:
    """Return the step before work with the power off."""
    return plan.task(
        STOPPED,
        WorkPlace.CAB,
        "Safe for tanks and meters: planter down, brake on, engine off, key out, wheels blocked",
        (PLANTER,),
        ["make_safe"],
        ["stopped"],
        kind=TaskKind.SAFE,
        state=MachineState.POWER_OFF,
        steps=("Wait until fans and drives stand still", "Key in one person's pocket"),
    )


def raise_task(plan: Plan) -> Task:
    """Return the step before work on raised row units."""
    return plan.task(
        RAISED,
        WorkPlace.CAB,
        "Safe for row units: raise, cylinder locks in, stands under, engine off, key out",
        (PLANTER,),
        ["raise_and_lock"],
        ["raised", "oil"],
        kind=TaskKind.SAFE,
        state=MachineState.RAISED,
        steps=("Nobody behind while it lifts", "Locks in on every cylinder, then let it rest"),
    )
