"""The command line: opens the window, or does one job without it."""

import argparse
import contextlib
import os
import sys
from collections.abc import Sequence
from pathlib import Path

from changeover import __version__
from changeover.commands import (
    appraise,
    bench,
    catch,
    depth,
    drive_start,
    field_need,
    proposal,
    rate,
    season,
    seed_need,
    shots,
    spacing,
    sprockets,
    timetable,
    tune,
    vacuum,
    worklist,
)
from changeover.commands.arguments import Parser, add_job, one_line

# A job without a window: one module of changeover.commands, with add(parsers).
JOBS = (
    worklist,
    timetable,
    season,
    proposal,
    rate,
    spacing,
    bench,
    depth,
    drive_start,
    appraise,
    seed_need,
    field_need,
    sprockets,
    catch,
    vacuum,
    tune,
)


def main(argv: Sequence[str] | None = None) -> int:
    """Do what the arguments ask and return the exit status: 0, or 2 for a refusal."""
    for stream in (sys.stdout, sys.stderr):
        with contextlib.suppress(AttributeError):
            stream.reconfigure(errors="replace")  # type: ignore[union-attr]
    given = list(sys.argv[1:] if argv is None else argv)
    if names_a_store(given):
        given.insert(0, "open")
    args = build_parser().parse_args(given)
    try:
        return int(args.run(args))
    except BrokenPipeError:  # the reader of a pipe has gone, as with `| head`
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    except ValueError as error:
        if not _is_refusal(error):
            raise
        sys.stderr.write(f"changeover: {one_line(str(error))}\n")
        return 2


def names_a_store(given: Sequence[str]) -> bool:
    """Say whether the arguments are ``[STORE]`` with no command in front."""
    if not given:
        return True
    first = given[0]
    return "://" in first or first.endswith(".sqlite") or Path(first).is_file()


def open_window(args: argparse.Namespace) -> int:
    """Open the window; what is no store is refused before there is a window to say so."""
    from changeover.quantities import Refusal

    if args.store:
        from changeover.desk.opening import check_store

        check_store(args.store)
    if not has_display():
        raise Refusal("There is no display to open a window on; changeover --help tells the rest.")
    from changeover.app import run

    return run(args.store)


def has_display() -> bool:
    """Say whether a window can be shown; elsewhere than on Linux it always can."""
    named = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
    return not sys.platform.startswith("linux") or any(os.environ.get(name) for name in named)


def take_shots(store: str, planter: str, folder: Path) -> Sequence[Path]:
    """Write a picture of every screen into a folder."""
    from changeover import app

    return app.take_shots(store, planter, folder)


def build_parser() -> Parser:
    """Return the parser of every command."""
    parser = Parser(
        prog="changeover",
        description="Take a planter set for one crop to a planter proven right for the next.",
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"changeover {__version__}")
    parsers = parser.add_subparsers(title="commands", metavar="COMMAND", required=True)
    for job in JOBS:
        job.add(parsers)
    shots.add(parsers, take_shots)
    window = add_job(parsers, "open", "Open the window; the word may be left out.", open_window)
    window.add_argument("store", nargs="?", default="", metavar="STORE", help="file or address")
    return parser


def _is_refusal(error: ValueError) -> bool:
    from changeover.quantities import Refusal

    return isinstance(error, Refusal)


if __name__ == "__main__":
    sys.exit(main())
