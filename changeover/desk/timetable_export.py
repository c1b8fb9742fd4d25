"""Writing a crew's timetable as a printed sheet, one page for each person."""

from datetime import date
from pathlib import Path

from changeover.desk.plan_switch import WorkView
from changeover.desk.stint_words import stint_text
from changeover.desk.who_does_what import CrewPlan
from changeover.files.print_font import lost_words
from changeover.files.sheet import SheetPlace
from changeover.files.timetable_lines import PersonSheet, StintLine, TimetableSheet
from changeover.files.timetable_sheet import write_timetable_sheet
from changeover.switch.sections import task_numbers
from changeover.switch.tasks import MachineState, Task
from changeover.switch.timetable.model import Stint


def write_timetable(
    view: WorkView, plan: CrewPlan, path: Path, *, paper: str = "A4", made_on: date | None = None
) -> Path:
    """Write a plan as PDF and return the file.

    Raises Refusal for another paper, an empty plan, and when the folder cannot be written.
    """
    return write_timetable_sheet(timetable_sheet(view, plan, made_on), path, paper=paper)


def timetable_note(view: WorkView, plan: CrewPlan) -> str:
    """Say which signs of the names cannot be printed; empty when all can."""
    return lost_words(timetable_sheet(view, plan))


def timetable_sheet(view: WorkView, plan: CrewPlan, made_on: date | None = None) -> TimetableSheet:
    """Return a plan as it goes on paper; ``made_on`` is today when not given."""
    return TimetableSheet(
        planter=view.board.planter.name,
        about=view.board.label_next,
        says=plan.says,
        persons=tuple(
            PersonSheet(name, tuple(_line(view, plan, one) for one in plan.timetable.by(name)))
            for name in plan.names
        ),
        cautions=view.worklist.cautions,
        made_on=made_on if made_on is not None else date.today(),  # noqa: DTZ011
    )


def _line(view: WorkView, plan: CrewPlan, stint: Stint) -> StintLine:
    task = plan.task(stint)
    done = view.progress.done.get(stint.activity, frozenset())
    number = task_numbers(view.worklist).get(task.key)
    return StintLine(
        begin=plan.begin + stint.start,
        end=plan.begin + stint.end,
        when=plan.from_to(stint),
        title=task.title if number is None else f"{number}. {task.title}",
        short=stint_text(plan, stint),
        places=tuple(SheetPlace(place.name or place.label, place in done) for place in task.places),
        about=_about(task, stint),
        steps=task.steps,
        number=number,
    )


def _about(task: Task, stint: Stint) -> str:
    """Say who is with it, the state of the machine, tools, and parts to take along."""
    others = f"together: {', '.join(stint.persons)}" if len(stint.persons) > 1 else ""
    state = "" if task.state is MachineState.ANY else task.state.value
    parts = ", ".join(f"{part.count} × {part.part}" for part in task.parts_in)
    carry = f"take along {parts}" if parts else ""
    return " · ".join(text for text in (others, state, *task.tools, carry) if text)
