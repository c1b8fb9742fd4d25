"""The command line: opens the window, or does one job without it."""

import contextlib
import os
import sys
from collections.abc import Sequence
from pathlib import Path

from changeover import __version__
from changeover.commands import (
    bench,
    depth,
    drive_start,
    proposal,
    rate,
    seed_need,
    shots,
    spacing,
    sprockets,
    tune,
    vacuum,
    worklist,
)
from changeover.commands.arguments import Parser, one_line

# A job without a window: one module of changeover.commands, with add(parsers).
JOBS = (
    worklist,
    proposal,
    rate,
    spacing,
    bench,
    depth,
    drive_start,
    seed_need,
    sprockets,
    vacuum,
    tune,
)


def main(argv: Sequence[str] | None = None) -> int:
    """Do what the arguments ask and return the exit status: 0, or 2 for a refusal."""
    for stream in (sys.stdout, sys.stderr):
        with contextlib.suppress(AttributeError):
            stream.reconfigure(errors="replace")  # type: ignore[union-attr]
    given = list(sys.argv[1:] if argv is None else argv)
    try:
        if not given or names_a_store(given[0]):
            return open_window(given)
        args = build_parser().parse_args(given)
        return int(args.run(args))
    except BrokenPipeError:  # the reader of a pipe has gone, as with `| head`
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    except ValueError as error:
        if not _is_refusal(error):
            raise
        sys.stderr.write(f"changeover: {one_line(str(error))}\n")
        return 2


def names_a_store(argument: str) -> bool:
    """Say whether an argument is the path or address of a store, not a command."""
    return "://" in argument or argument.endswith(".sqlite") or Path(argument).is_file()


def open_window(arguments: Sequence[str]) -> int:
    """Open the window on a store, by default the one opened last."""
    from changeover.app import run

    return run(*arguments[:1])


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
    return parser


def _is_refusal(error: ValueError) -> bool:
    from changeover.quantities import Refusal

    return isinstance(error, Refusal)


if __name__ == "__main__":
    sys.exit(main())
