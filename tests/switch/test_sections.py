"""Headings follow the order of work, so that no number asks for what comes later."""

from changeover.planter.places import Place
from changeover.planter.settings import WorkPlace
from changeover.switch.own_tasks import OwnTask, with_own_tasks
from changeover.switch.sections import sections, task_numbers
from changeover.switch.tasks import MachineState
from tests.switch.switch_case import BEAN, LONG_ACRE, bean, corn, plan

WORK = plan(LONG_ACRE, corn(LONG_ACRE), bean(LONG_ACRE), BEAN)


def test_sections_hold_every_task_in_the_order_of_work() -> None:
    held = [task for section in sections(WORK) for task in section.tasks]
    assert held == list(WORK.tasks)
    names = [section.name for section in sections(WORK)]
    assert len(set(names)) == len(names)
    assert names[0] == "Make safe"
    assert names[-1] == "Proof"


def test_no_task_has_a_lower_number_than_what_it_needs() -> None:
    numbers = task_numbers(WORK)
    assert sorted(numbers.values()) == list(range(1, len(WORK.tasks) + 1))
    assert all(numbers[key] < numbers[task.key] for task in WORK.tasks for key in task.needs)


def test_the_planter_is_raised_after_the_work_that_wants_it_down_with_the_power_off() -> None:
    keys = [task.key for task in WORK.tasks]
    raised = keys.index("safe_raised")
    meters = [n for n, task in enumerate(WORK.tasks) if task.work_place is WorkPlace.METER]
    swaps = [n for n in meters if WORK.tasks[n].state is MachineState.POWER_OFF]
    assert max(swaps) < raised
    at_rows = next(s for s in sections(WORK) if s.name == "Row units")
    assert at_rows.tasks[0].key == "safe_raised"


def test_a_heading_that_comes_again_says_so() -> None:
    def own(name: str, at: WorkPlace, after: str) -> OwnTask:
        return OwnTask(name, name.capitalize(), at, (Place.of_row(1),), after=(after,))

    tasks = (own("oil", WorkPlace.METER, "prove_depth"), own("wipe", WorkPlace.CAB, "oil"))
    more = (*tasks, own("look", WorkPlace.METER, "wipe"))
    names = [section.name for section in sections(with_own_tasks(WORK, more))]
    assert names[-3:] == ["Meters, later", "Cab, later", "Meters, later (2)"]
    assert len(set(names)) == len(names)
