"""``changeover worklist``: the work from the setup as found to a proposal, written to files."""

import argparse
import sys
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from changeover.commands.answers import write_json, write_pairs
from changeover.commands.arguments import Parsers, add_job
from changeover.commands.figures import write_notes
from changeover.commands.folders import made_folder
from changeover.commands.job_arguments import add_job_arguments, opened, read_job
from changeover.commands.timetable import crew_of, read_clock
from changeover.commands.worklist_more import more_json

if TYPE_CHECKING:
    from changeover.desk.board import Board
    from changeover.desk.plan_switch import WorkView
    from changeover.quantities import Quantity
    from changeover.switch.tasks import Change, KitLine, PartCount, Task


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    parser = add_job(parsers, "worklist", "Write the worklist for a seed lot and a field.", run)
    add_job_arguments(parser)
    parser.add_argument(
        "--out",
        required=True,
        type=Path,
        metavar="DIR",
        help="folder for the files, made if needed",
    )
    parser.add_argument(
        "--crew", metavar="NAMES", help='share the work out, such as among "Ann, Bo"'
    )
    parser.add_argument("--at", metavar="H:MM", help="when the crew begins (default: now)")


def run(args: argparse.Namespace) -> int:
    """Write the files and say which; raises Refusal when a name or the folder is not there."""
    from changeover.desk.export import print_note, write_view
    from changeover.desk.open_kits import with_shared_kit
    from changeover.desk.plan_switch import work_view_for
    from changeover.desk.supply_list import supplies_with
    from changeover.desk.who_does_what import question_of, solve
    from changeover.quantities import Units

    units = Units(args.units)
    with opened(args) as store:
        job = read_job(args, store, units)
        view = work_view_for(store, args.planter, job, units)
        met = supplies_with(store, view)
        view = with_shared_kit(view, met)
        crew = crew_of(store, args.crew)
    plan = solve(question_of(view, crew, read_clock(args.at))) if args.crew else None
    files, note = write_view(view, made_folder(args.out)), print_note(view)
    if args.json:
        named = {"planter": args.planter, "lot": job.lot, "field": args.field}
        more = more_json(view, met, plan)
        written = [str(path) for path in files]
        whole = {**named, **worklist_json(view), **more, "files": written, "print_note": note}
        write_json(whole)
    else:
        _write_text(view, files)
        write_notes([note] if note else [])
    return 0


def worklist_json(view: "WorkView") -> dict[str, Any]:
    """Return the work under the keys ``tasks``, ``kit``, ``minutes``, ``cautions``."""
    from changeover.switch.sections import task_numbers

    tasks, numbers = view.worklist.tasks, task_numbers(view.worklist)
    return {
        "tasks": [_task_json(view.board, numbers[task.key], task) for task in tasks],
        "kit": [_kit_json(line) for line in view.kit.lines],
        "minutes": _minutes(sum(_in_minutes(task.minutes) * task.persons for task in tasks)),
        "cautions": list(view.worklist.cautions),
    }


def _task_json(board: "Board", number: int, task: "Task") -> dict[str, Any]:
    changes = [change for place in task.places for change in task.changes.get(place, ())]
    return {
        "number": number,
        "key": task.key,
        "kind": str(task.kind),
        "at": str(task.work_place),
        "title": task.title,
        "places": [place.label for place in task.places],
        "changes": [_change_json(board, change) for change in changes],
        "minutes": _minutes(_in_minutes(task.minutes)),
        "persons": task.persons,
        "state": str(task.state),
        "tools": list(task.tools),
        "steps": list(task.steps),
        "cautions": list(task.cautions),
        "parts_in": [_part_json(one) for one in task.parts_in],
        "parts_out": [_part_json(one) for one in task.parts_out],
        "needs": list(task.needs),
        "why": task.why,
    }


def _change_json(board: "Board", change: "Change") -> dict[str, Any]:
    from changeover.planter.entry import show_value

    setting = next(one for one in board.settings if one.key == change.cell.setting)
    place = change.cell.place
    before, after = (
        show_value(setting, board.planter, place, value, board.units, sign=True)
        for value in (change.before, change.after)
    )
    return {"setting": setting.key, "place": place.label, "from": before, "to": after}


def _part_json(one: "PartCount") -> dict[str, Any]:
    return {"part": one.part, "count": one.count}


def _kit_json(line: "KitLine") -> dict[str, Any]:
    return {
        "part": line.part,
        "name": line.name,
        "needed": line.needed,
        "on_shelf": line.on_shelf,
        "short": line.short,
        "to_inspect": line.to_inspect,
        "bins": list(line.bins),
        "released": line.released,
        "taken": line.taken,
        "coming": line.coming,
        "others": [
            {"planter": one.planter, "needed": one.needed, "short": one.short}
            for one in line.claims
        ],
    }


def _in_minutes(time: "Quantity") -> float:
    return float(time.to("min").magnitude)


def _minutes(value: float) -> dict[str, float | str]:
    return {"value": value, "unit": "min"}


def _write_text(view: "WorkView", files: Sequence[Path]) -> None:
    from changeover.switch.sections import task_numbers
    from changeover.switch.wording import places_text

    numbers = task_numbers(view.worklist)
    answer = worklist_json(view)
    tasks = view.worklist.tasks
    write_pairs(
        [
            ("Tasks", str(len(tasks))),
            ("Working time", f"{answer['minutes']['value']:.0f} min"),
            ("Short of parts", _shortages(view.kit.lines)),
        ]
    )
    for task in tasks:
        sys.stdout.write(f"{numbers[task.key]:>3}  {task.title}: {places_text(task.places)}\n")
    write_notes(f"Caution: {caution}" for caution in view.worklist.cautions)
    write_notes(f"Written: {path}" for path in files)


def _shortages(kit: Iterable["KitLine"]) -> str:
    """Say what is short here or, through this, on another planter."""
    return "; ".join(_short(one) for one in kit if one.short_together) or "none"


def _short(line: "KitLine") -> str:
    from changeover.switch.shared_kit import others_text

    waiting = f"{line.to_inspect} to inspect" if line.to_inspect else ""
    more = ", ".join(words for words in (waiting, others_text(line)) if words)
    short = f"{line.short or 'none'} × {line.part}"
    return f"{short} ({more})" if more else short
