"""The season as lines to read: each job with its window and where the plan puts it, and orders."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date

from changeover.desk.edits import PutJob
from changeover.desk.season.plan import SeasonAnswer
from changeover.desk.who_does_what import length_text
from changeover.quantities import Quantity, Refusal, Units, show
from changeover.seed.fields import Field
from changeover.store.opening import Store
from changeover.store.values import PlannedJob
from changeover.switch.season.model import Order, SeasonStatus, Slot

LOOSENED = (
    "A fixed job cannot begin first thing on its day, so the fixed ones are planned from "
    "their day on."
)

NOT_PLANNED = "not planned"

MOST_LATENESS_COST = 1e9
"""The most that a day late may cost, in any currency: our own choice, against slips of the pen."""


@dataclass(frozen=True)
class JobLine:
    """One job of the list: ``planned`` says where and when, ``late`` whether after its window."""

    job: PlannedJob
    area: Quantity | None
    where: str = ""
    planned: str = ""
    late: bool = False
    fixed: bool = False


def job_lines(
    jobs: Sequence[PlannedJob],
    fields: Sequence[Field],
    answer: SeasonAnswer | None,
    order: Order | None,
) -> tuple[JobLine, ...]:
    """Return every job, done ones last, with its slot in an order where there is one."""
    known = {field.name: field for field in fields}
    slots = {slot.job: slot for slot in order.slots} if order is not None else {}
    lines = []
    for job in sorted(jobs, key=lambda job: job.done):
        field = known.get(job.field or "")
        area = job.area if job.area is not None else field.area if field is not None else None
        line = JobLine(job, area, field.where if field is not None else "")
        slot = slots.get(job.name)
        if answer is not None and slot is not None and not job.done:
            fixed = answer.fixed(job.name)
            line = replace(line, planned=planned_text(answer, slot), late=slot.late_days > 0)
            line = replace(line, fixed=fixed)
        elif answer is not None and job.name in answer.left_out:
            line = replace(line, planned=NOT_PLANNED, late=True)
        lines.append(line)
    return tuple(lines)


def jobs_entered(store: Store) -> tuple[tuple[PlannedJob, ...], tuple[Field, ...]]:
    """Return the jobs in the order in which they were entered, and the fields."""
    with store.read() as work:
        return work.jobs.entered(), work.fields.all()


def planned_text(answer: SeasonAnswer, slot: Slot) -> str:
    """Say where and when a slot is: ``Old Fiddle 24, 5-6 May``; ``2 days late`` where it is."""
    late = f", {slot.late_days} day{'s' if slot.late_days > 1 else ''} late"
    days = days_text(*answer.days(slot))
    return f"{slot.planter}, {days}{late if slot.late_days else ''}"


def days_text(first: date, last: date) -> str:
    """Write days as ``5 May``, ``5-6 May`` or ``30 Apr-2 May``."""
    if first == last:
        return day_text(first)
    if first.month == last.month:
        return f"{first.day}-{day_text(last)}"
    return f"{day_text(first)}-{day_text(last)}"


def day_text(day: date) -> str:
    """Write a day as ``5 May``."""
    return f"{day.day} {day:%b}"


def window_text(job: PlannedJob) -> str:
    """Write a job's window of days; empty where it has none."""
    if job.first_day is not None and job.last_day is not None:
        return days_text(job.first_day, job.last_day)
    if job.last_day is not None:
        return f"until {day_text(job.last_day)}"
    return f"from {day_text(job.first_day)}" if job.first_day is not None else ""


def area_text(line: JobLine, units: Units) -> str:
    """Write the area of a job; empty when it is not known."""
    return "" if line.area is None else show(line.area, "area", units)


def money_text(cost: float) -> str:
    """Write money in the user's own currency, which is not named."""
    return f"{cost:,.0f}".replace(",", "\u202f")


def order_text(order: Order | None) -> str:
    """Say what an order costs: lateness, then switching and moving."""
    if order is None:
        return "cannot keep the fixed jobs"
    late = f"lateness {money_text(order.late_cost)}" if order.late_cost else "nothing late"
    return f"{late}, {length_text(order.switch)} switching, {length_text(order.move)} on the way"


def proof_text(answer: SeasonAnswer) -> str:
    """Say what is proved of a plan, lateness first."""
    said = _proved(answer)
    return f"{said}. {LOOSENED}" if answer.loosened else said


def _proved(answer: SeasonAnswer) -> str:
    plan = answer.plan
    if plan.status is SeasonStatus.OPTIMAL:
        return "best possible, proven: no plan is less late, nor as early with less between jobs"
    bound = f"bound on lateness {money_text(plan.late_bound)}"
    late = "proven least" if plan.late_gap <= 0 else f"{bound}, {percent(plan.late_gap)} above it"
    between = f"at least {length_text(plan.between_bound)}, {percent(plan.between_gap)} above it"
    return f"lateness: {late}; between jobs: {between}"


def percent(share: float) -> str:
    """Write a share as whole percent, rounded up, so that no gap is made out smaller than it is."""
    return f"{-int(-100 * share // 1)} %"


def read_lateness_cost(text: str) -> float | None:
    """Read the cost of a day late in money, none when empty. Raises Refusal."""
    typed = "".join(text.replace(",", "").split())
    if not typed:
        return None
    try:
        cost = float(typed)
    except ValueError as error:
        raise Refusal(f"“{text}” is no amount of money; write it like 600.") from error
    if not 0 <= cost <= MOST_LATENESS_COST:
        most = money_text(MOST_LATENESS_COST)
        raise Refusal(f"A day late: “{text}” cannot be its cost; enter 0 to {most}, such as 600.")
    return cost


def mark_done(job: PlannedJob) -> PutJob:
    """Return the edit that marks a job planted, or takes that back."""
    return PutJob(replace(job, done=not job.done), before=job)
