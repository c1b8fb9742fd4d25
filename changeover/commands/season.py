"""``changeover season``: which planter plants which field when, with what that costs."""

import argparse
import sys
from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING, Any

from changeover.commands.answers import write_json, write_pairs
from changeover.commands.arguments import Parsers, add_job, add_json, add_units
from changeover.commands.figures import write_notes
from changeover.commands.job_arguments import opened
from changeover.commands.progress_bar import progress_bar
from changeover.commands.timetable import add_seconds, read_limits

if TYPE_CHECKING:
    from changeover.desk.season.costs import Choice, SwitchCost
    from changeover.desk.season.plan import SeasonAnswer
    from changeover.quantities import Units
    from changeover.switch.season.model import Order


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    parser = add_job(parsers, "season", "Plan the season's field jobs over the planters.", run)
    parser.add_argument("store", metavar="STORE", help="the store: a file, or a PostgreSQL address")
    parser.add_argument(
        "--from",
        dest="begins",
        metavar="DAY",
        help="first day of the plan, such as 2027-05-03 (default: that of the store, or today)",
    )
    add_seconds(parser, 60.0)
    add_units(parser)
    add_json(parser)


def run(args: argparse.Namespace) -> int:
    """Plan and write the plan. Raises Refusal when no job can be planned."""
    from dataclasses import replace

    from changeover.desk.season.costs import finish_or_change, switch_costs
    from changeover.desk.season.plan import read_inputs, solve_season, times_of
    from changeover.desk.season.seed import seed_lines, short_seed
    from changeover.desk.supply_list import read_lead_days, season_supplies, short_lines
    from changeover.quantities import Units
    from changeover.switch.search import Limits

    begins, seconds = read_day(args.begins), read_limits(args.seconds)
    with opened(args) as store:
        inputs, lead = read_inputs(store), read_lead_days(store)
    if begins is not None:
        inputs = replace(inputs, begins=begins)
    times = times_of(inputs)
    with progress_bar() as bar:
        report = bar.search if bar is not None else None
        tell = bar.share if bar is not None else None
        answer = solve_season(inputs, Limits(seconds, report=report), times, tell)
    costs, choices = switch_costs(answer, times), finish_or_change(answer)
    met = season_supplies(answer, times, lead)
    short = (*short_lines(met, inputs.begins), *seed_lines(short_seed(answer, times)))
    units = Units(args.units)
    if args.json:
        write_json(season_json(answer, costs, choices, short, units))
    else:
        _write_text(answer, costs, choices, short, units)
    return 0


def read_day(text: str | None) -> date | None:
    """Read a day such as ``2027-05-03``. Raises Refusal."""
    from changeover.quantities import Refusal

    if text is None:
        return None
    try:
        return date.fromisoformat(text)
    except ValueError as error:
        raise Refusal(f"“{text}” is not a day; write it like 2027-05-03.") from error


def season_json(
    answer: "SeasonAnswer",
    costs: Sequence["SwitchCost"],
    choices: Sequence["Choice"],
    short: Sequence[str],
    units: "Units",
) -> dict[str, Any]:
    """Return a plan with the simple orders beside it as JSON holds it."""
    from changeover.quantities import as_json

    plan = answer.plan
    return {
        "begins": answer.inputs.begins.isoformat(),
        "status": str(plan.status),
        "late_bound": plan.late_bound,
        "between_bound": _minutes(plan.between_bound),
        "late_gap": plan.late_gap,
        "between_gap": plan.between_gap,
        "plan": _order_json(answer, plan.best),
        "as_entered": _order_json(answer, plan.as_entered),
        "nearest_due": _order_json(answer, plan.nearest_due),
        "switches": [
            {
                "planter": one.planter,
                "before": one.job,
                "working": as_json(one.working, "time", units),
                "lost": as_json(one.lost, "time", units),
                "area": as_json(one.area, "area", units),
            }
            for one in costs
        ],
        "short": list(short),
        "left_out": dict(answer.left_out),
        "finish_or_change": [
            {
                "planter": one.planter,
                "crop": one.crop,
                "finish_first": one.finish,
                "late": one.late,
                "between": _minutes(one.between),
            }
            for one in choices
        ],
    }


def _order_json(answer: "SeasonAnswer", order: "Order | None") -> dict[str, Any] | None:
    if order is None:
        return None
    return {
        "late_cost": order.late_cost,
        "switch": _minutes(order.switch),
        "move": _minutes(order.move),
        "jobs": [
            {
                "job": slot.job,
                "planter": slot.planter,
                "first_day": answer.days(slot)[0].isoformat(),
                "last_day": answer.days(slot)[1].isoformat(),
                "planting": _minutes(slot.end - slot.start),
                "switch": _minutes(slot.switch),
                "move": _minutes(slot.move),
                "late_days": slot.late_days,
                "late_cost": slot.late_cost,
                "fixed": answer.fixed(slot.job),
            }
            for slot in sorted(order.slots, key=lambda slot: (slot.planter, slot.start))
        ],
    }


def _minutes(value: int) -> dict[str, int | str]:
    return {"value": value, "unit": "min"}


def _write_text(
    answer: "SeasonAnswer",
    costs: Sequence["SwitchCost"],
    choices: Sequence["Choice"],
    short: Sequence[str],
    units: "Units",
) -> None:
    from changeover.desk.season.costs import choice_text, cost_text
    from changeover.desk.season.lines import order_text, planned_text, proof_text

    names = {name.capitalize(): order_text(order) for name, order in answer.orders().items()}
    write_pairs([*names.items(), ("Proved", proof_text(answer))])
    for planter in answer.season.planters:
        for slot in answer.plan.best.on(planter.name):
            sys.stdout.write(f"  {slot.job}: {planned_text(answer, slot)}\n")
    write_notes(answer.left_out.values())
    write_notes(choice_text(choice) for choice in choices)
    write_notes(short)
    write_notes(cost_text(answer.inputs, cost, units) for cost in costs)
