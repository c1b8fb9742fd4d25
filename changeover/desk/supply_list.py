"""Parts over all open switches, by date: where each comes from, what is short, when to order."""

from collections.abc import Iterable, Mapping
from datetime import date

from changeover.desk.open_kits import day_of, planned_switches, today_or
from changeover.desk.plan_switch import WorkView
from changeover.desk.season.plan import SeasonAnswer
from changeover.desk.shop_edits import PutDelivery
from changeover.desk.switch_times import SwitchTimes
from changeover.quantities import Refusal
from changeover.store.opening import Store
from changeover.store.season_values import Delivery
from changeover.store.unit_of_work import UnitOfWork
from changeover.switch.supply import PlannedSwitch, Supply, supply
from changeover.switch.tasks import Kit


def supplies(store: Store, today: date | None = None) -> tuple[Supply, ...]:
    """Return how each part of every switch is met, by day: those open, and targets set by hand."""
    with store.read() as work:
        return supplies_in(work, today)


def supplies_in(
    work: UnitOfWork, today: date | None = None, kits: Mapping[str, Kit] | None = None
) -> tuple[Supply, ...]:
    """Return the same within an open unit of work; ``kits`` are those known, by planter."""
    switches = planned_switches(work, today_or(today), kits or {})
    return supply(switches, work.shelf.all(), lead_days(work))


def supplies_with(store: Store, view: WorkView, today: date | None = None) -> tuple[Supply, ...]:
    """Return how each part of a switch that need not be saved is met, among the open ones.

    Its day is the first of its job, or today.
    """
    day, mine = today_or(today), view.board.planter.name
    planned = PlannedSwitch(mine, day_of(view.board.next_job, day), view.kit)
    with store.read() as work:
        every = planned_switches(work, day, {mine: view.kit})
        others = [one for one in every if one.planter != mine]
        return supply([*others, planned], work.shelf.all(), lead_days(work))


def lead_days(work: UnitOfWork) -> dict[str, int]:
    """Return the days that each part takes to be delivered, where they are known."""
    return {one.part: one.days for one in work.deliveries.all()}


def season_supplies(
    answer: SeasonAnswer, times: SwitchTimes, lead: Mapping[str, int]
) -> tuple[Supply, ...]:
    """Return how each part of every switch of a season's plan is met, by day."""
    switches: list[PlannedSwitch] = []
    for known in answer.inputs.fleet:
        before = known.as_found
        for slot in answer.plan.best.on(known.planter.name):
            job = answer.job(slot.job)
            target = times.setup(known, job)
            if target is not None:
                kit = times.kit(known, before, target, job.lot)
                switches.append(PlannedSwitch(known.planter.name, answer.days(slot)[0], kit))
                before = target
    shelf = answer.inputs.fleet[0].shelf if answer.inputs.fleet else ()
    return supply(switches, shelf, lead)


def read_lead_days(store: Store) -> dict[str, int]:
    """Return the days that each part takes to be delivered, where they are known."""
    with store.read() as work:
        return lead_days(work)


def set_delivery(part: str, before: int | None, text: str) -> PutDelivery:
    """Return the edit for typed days to deliver, none when empty. Raises Refusal."""
    typed = text.strip().removesuffix("days").removesuffix("day").strip()
    if typed and not typed.removeprefix("-").isdecimal():
        raise Refusal(f"Part {part}: “{text}” is no number of days; write it like 10.")
    value = Delivery(part, int(typed)) if typed else None
    return PutDelivery(value, before=None if before is None else Delivery(part, before))


def order_text(made: Iterable[Supply], part: str, today: date) -> str:
    """Say until when to order a part that is short for an open switch; empty where none is."""
    days = [one.order_by for one in made if one.part == part and one.order_by is not None]
    if not days:
        return ""
    from changeover.desk.season.lines import day_text

    return f"! now, due {day_text(min(days))}" if min(days) < today else day_text(min(days))


def short_lines(made: Iterable[Supply], today: date) -> tuple[str, ...]:
    """Say what is short: for which planter, on which day, and until when to order it."""
    return tuple(short_text(one, today) for one in made if one.short)


def short_text(one: Supply, today: date) -> str:
    """Say of one part of one switch how many are short and until when to order them."""
    from changeover.desk.season.lines import day_text

    said = f"{one.short} {one.part} short for {one.planter} on {day_text(one.day)}"
    if one.to_inspect:
        there = f"the {one.to_inspect} that wait" if one.to_inspect > 1 else "the one that waits"
        said += f", inspect {there} on the shelf first"
        if one.to_inspect >= one.short:
            return f"{said}."
    if one.order_by is None:
        return f"{said}; enter the days to deliver, and the last day to order is told."
    if one.order_by < today:
        return f"{said}; it should have been ordered by {day_text(one.order_by)}: order now."
    return f"{said}; order by {day_text(one.order_by)}."
