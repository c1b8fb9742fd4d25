"""The command line: opens the window, or does one job without it."""

import contextlib
import os
import sys
from collections.abc import Sequence

from changeover import __version__
from changeover.commands import (
    bench,
    depth,
    drive_start,
    proposal,
    rate,
    seed_need,
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
    args = build_parser().parse_args(sys.argv[1:] if argv is None else argv)
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
    return parser


def _is_refusal(error: ValueError) -> bool:
    from changeover.quantities import Refusal

    return isinstance(error, Refusal)


if __name__ == "__main__":
    sys.exit(main())
