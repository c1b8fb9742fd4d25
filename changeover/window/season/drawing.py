"""A season as lanes to draw: one for each planter, bars for jobs and for the switches before."""

from datetime import date

from changeover.desk.season.lines import day_text, money_text, planned_text, window_text
from changeover.desk.season.plan import SeasonAnswer
from changeover.desk.who_does_what import length_text
from changeover.switch.season.model import Order, Slot
from changeover.window.timetable.lanes import Bar, Lane, Lanes, Look

STEPS = (1.0, 2.0, 7.0, 14.0, 28.0, 56.0)


def season_lanes(answer: SeasonAnswer, order: Order, today: date | None = None) -> Lanes:
    """Return the lanes of an order, in days counted as ``date.toordinal`` does."""
    begins = answer.inputs.begins.toordinal()
    per_day = answer.season.minutes_per_day
    lanes = tuple(
        Lane(planter.name, _bars(answer, order, planter.name, begins, per_day))
        for planter in answer.season.planters
    )
    last = max((slot.end / per_day for slot in order.slots), default=1.0)
    now = None if today is None else float(today.toordinal())
    return Lanes(lanes, begins, begins + int(last) + 2, STEPS, tell_day, now, spill=True)


def tell_day(value: float) -> str:
    """Write a day of the axis."""
    return day_text(date.fromordinal(max(1, round(value))))


def switch_key(job: str) -> str:
    """Return what the bar of the switch before a job is known by."""
    return f"switch before {job}"


def _bars(
    answer: SeasonAnswer, order: Order, planter: str, begins: int, per_day: int
) -> tuple[Bar, ...]:
    bars: list[Bar] = []
    for slot in order.on(planter):
        if slot.switch + slot.move:
            bars.append(_between(slot, begins, per_day))
        bars.append(_job(answer, slot, begins, per_day))
    return tuple(bars)


def _between(slot: Slot, begins: int, per_day: int) -> Bar:
    start = max(0, slot.start - slot.switch - slot.move)
    tip = f"Before {slot.job}: {length_text(slot.switch)} switching, {length_text(slot.move)} away"
    return Bar(
        switch_key(slot.job),
        begins + start / per_day,
        begins + slot.start / per_day,
        "",
        tip,
        Look.THIN,
    )


def _job(answer: SeasonAnswer, slot: Slot, begins: int, per_day: int) -> Bar:
    job = answer.job(slot.job)
    late = f" Late costs {money_text(slot.late_cost)}." if slot.late_cost else ""
    window = window_text(job)
    tip = (
        f"{slot.job}: {planned_text(answer, slot)}, {length_text(slot.end - slot.start)} planting."
    )
    return Bar(
        slot.job,
        begins + slot.start / per_day,
        begins + slot.end / per_day,
        f"late: {slot.job}" if slot.late_days else slot.job,
        f"{tip}{f' Window {window}.' if window else ''}{late}",
        Look.WARN if slot.late_days else Look.MAIN,
        held=answer.fixed(slot.job),
        movable=True,
    )
