"""``changeover timetable``: who of the crew does what and when, for what is left of a switch."""

import argparse
import sys
from collections.abc import Collection, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from changeover.commands.answers import write_json, write_pairs
from changeover.commands.arguments import Parser, Parsers, add_job, add_json, add_units
from changeover.commands.job_arguments import opened
from changeover.commands.progress_bar import progress_bar

if TYPE_CHECKING:
    from changeover.desk.crew import Crew
    from changeover.desk.opening import Store
    from changeover.desk.plan_switch import WorkView
    from changeover.desk.who_does_what import CrewPlan
    from changeover.switch.timetable.model import Stint


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    parser = add_job(parsers, "timetable", "Share the work of a switch out among a crew.", run)
    parser.add_argument("store", metavar="STORE", help="the store: a file, or a PostgreSQL address")
    parser.add_argument("--planter", required=True, metavar="NAME", help="planter in the store")
    _add_crew(parser)
    parser.add_argument("--at", metavar="H:MM", help="when it begins (default: now)")
    parser.add_argument("--out", type=Path, metavar="FILE.pdf", help="also print it, a page each")
    add_seconds(parser, 5.0)
    add_units(parser)
    add_json(parser)


def _add_crew(parser: Parser) -> None:
    parser.add_argument(
        "--crew",
        metavar="NAMES",
        help='who works, such as "Ann, Bo"; a name not in the store can do everything all day '
        "(default: everybody in the store who is here)",
    )
    parser.add_argument(
        "--tool",
        action="append",
        default=[],
        metavar="NAME=COUNT",
        help='how many there are of a shared tool, such as "seed vacuum=2"; may be repeated',
    )


def add_seconds(parser: Parser, seconds: float) -> None:
    """Add ``--seconds``, the time limit of a search."""
    parser.add_argument(
        "--seconds",
        type=float,
        default=seconds,
        metavar="N",
        help=f"time limit of the search (default: {seconds:g})",
    )


def run(args: argparse.Namespace) -> int:
    """Find the timetable and write it. Raises Refusal when the crew cannot do the work."""
    from changeover.desk.plan_switch import work_view
    from changeover.desk.who_does_what import question_of, solve
    from changeover.quantities import Units
    from changeover.switch.search import Limits

    begin, tools = read_clock(args.at), read_tools(args.tool)
    limits = read_limits(args.seconds)
    with opened(args) as store:
        view = work_view(store, args.planter, Units(args.units))
        used = {tool for task in view.worklist.tasks for tool in task.tools}
        crew = crew_of(store, args.crew, tools, used)
    with progress_bar() as bar:
        report = bar.search if bar is not None else None
        plan = solve(question_of(view, crew, begin), Limits(limits, report=report))
    written = _printed(args, view, plan)
    if args.json:
        write_json({**timetable_json(plan), "files": [str(path) for path in written]})
    else:
        _write_text(plan, written)
    return 0


def crew_of(
    store: "Store",
    typed: str | None,
    tools: Mapping[str, int] | None = None,
    used: Collection[str] = (),
) -> "Crew":
    """Return the crew of a store, or those of the names typed, with other counts of tools.

    ``used`` are the tools that the work needs. Raises Refusal for a tool that is neither among
    them nor in the store, and for names that cannot be.
    """
    from dataclasses import replace

    from changeover.desk.crew import crew
    from changeover.switch.crew import SharedTool, named

    there = crew(store)
    names = read_names(typed)
    _refuse_unknown_tools(tools or {}, {*used, *(tool.name for tool in there.tools)})
    counts = {**{tool.name: tool.count for tool in there.tools}, **(tools or {})}
    shared = tuple(SharedTool(name, count) for name, count in counts.items())
    members = named(there.members, names) if names else there.members
    if names:
        members = tuple(replace(one, here=True) for one in members)
    return replace(there, members=members, tools=shared)


def read_names(typed: str | None) -> list[str]:
    """Read names such as ``Ann, Bo``; none when nothing is typed. Raises Refusal."""
    from changeover.quantities import Refusal

    if typed is None:
        return []
    names = [name.strip() for name in typed.split(",")]
    if not all(names):
        raise Refusal(f"--crew “{typed}” leaves a name empty; write names like Ann, Bo.")
    folded = [name.casefold() for name in names]
    for number, name in enumerate(folded):
        if name in folded[:number]:
            raise Refusal(f"--crew names “{names[number]}” twice; write each person once.")
    return names


def _refuse_unknown_tools(tools: Mapping[str, int], known: set[str]) -> None:
    from changeover.quantities import Refusal

    for name in tools:
        if name not in known:
            there = ", ".join(sorted(known)) or "none"
            raise Refusal(f"--tool: no work here needs a “{name}”; its tools are {there}.")


def read_clock(text: str | None) -> int | None:
    """Read a time such as ``7:00`` as the minute of the day. Raises Refusal."""
    from changeover.quantities import Refusal

    if text is None:
        return None
    hours, colon, minutes = text.strip().partition(":")
    whole = hours.isdecimal() and (minutes.isdecimal() if colon else True)
    if not whole or int(hours) > 23 or int(minutes or 0) > 59:
        raise Refusal(f"“{text}” is no time of day; write it like 7:00.")
    return 60 * int(hours) + int(minutes or 0)


def read_tools(texts: list[str]) -> dict[str, int]:
    """Read counts such as ``seed vacuum=2``. Raises Refusal."""
    from changeover.quantities import Refusal

    found = {}
    for text in texts:
        name, sign, count = text.partition("=")
        if not name.strip() or not sign or not count.strip().removeprefix("-").isdecimal():
            raise Refusal(f"“{text}” does not count a tool; write it like seed vacuum=2.")
        found[name.strip()] = int(count)
    return found


def read_limits(seconds: float) -> float:
    """Return the seconds of a search. Raises Refusal where they are none."""
    from changeover.quantities import Refusal

    if not 0 < seconds <= 86_400:
        raise Refusal(f"A search of {seconds:g} s cannot be; give over 0 to 86400 seconds.")
    return seconds


def _printed(args: argparse.Namespace, view: "WorkView", plan: "CrewPlan") -> list[Path]:
    from changeover.desk.timetable_export import write_timetable

    return [write_timetable(view, plan, args.out)] if args.out is not None else []


def timetable_json(plan: "CrewPlan") -> dict[str, Any]:
    """Return a plan as JSON holds it."""
    from changeover.switch.crew import clock_text

    found = plan.timetable
    return {
        "planter": plan.question.planter,
        "begin": clock_text(plan.begin),
        "end": clock_text(plan.begin + found.length),
        "length": {"value": found.length, "unit": "min"},
        "bound": {"value": found.bound, "unit": "min"},
        "gap": found.gap,
        "status": str(found.status),
        "walk": found.walk,
        "walk_bound": found.walk_bound,
        "persons": [
            {"name": name, "stints": [_stint_json(plan, one) for one in found.by(name)]}
            for name in plan.names
        ],
    }


def _stint_json(plan: "CrewPlan", stint: "Stint") -> dict[str, Any]:
    task = plan.task(stint)
    start, _, end = plan.from_to(stint).partition("-")
    return {
        "from": start,
        "to": end,
        "start": {"value": stint.start, "unit": "min"},
        "end": {"value": stint.end, "unit": "min"},
        "task": task.key,
        "title": task.title,
        "places": [place.label for place in task.places],
        "persons": list(stint.persons),
    }


def _write_text(plan: "CrewPlan", written: list[Path]) -> None:
    from changeover.desk.stint_words import stint_tip
    from changeover.desk.who_does_what import walk_text
    from changeover.switch.crew import clock_text

    found = plan.timetable
    write_pairs(
        [
            ("Planter", plan.question.planter),
            ("Length", plan.says),
            ("Done at", clock_text(plan.begin + found.length)),
            ("Walk", walk_text(found)),
        ]
    )
    for name in plan.names:
        sys.stdout.write(f"{name}\n")
        for stint in found.by(name):
            sys.stdout.write(f"  {stint_tip(plan, stint)}\n")
    for path in written:
        sys.stdout.write(f"Written: {path}\n")
