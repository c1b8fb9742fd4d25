"""The command ``shots``: every screen as a picture, light and dark and in two sizes."""

import argparse
import sys
import tempfile
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TypeAlias

from changeover.commands.arguments import Parsers, add_job
from changeover.commands.folders import made_folder

TakeShots: TypeAlias = Callable[[str, str, Path], Sequence[Path]]
"""Takes the pictures: store, planter (empty for the first), folder."""


def add(parsers: Parsers, take: TakeShots) -> None:
    """Add the command; ``take`` is given by the start-up, which alone knows the window."""
    parser = add_job(
        parsers,
        "shots",
        "Draw every screen, light and dark, at 1280×720 and 1920×1080.",
        lambda args: run(args, take),
    )
    parser.add_argument("folder", metavar="DIR", help="the folder to write the pictures to")
    parser.add_argument("--store", default="", help="the store to show (default: the demo)")
    parser.add_argument("--planter", default="", help="the planter to show (default: the first)")


def run(args: argparse.Namespace, take: TakeShots) -> int:
    """Write the pictures and say how many there are and where."""
    folder = made_folder(Path(args.folder))
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as spare:
        store = args.store or _demo(Path(spare))
        taken = take(store, args.planter, folder)
    sys.stdout.write(f"{len(taken)} pictures in {folder}\n")
    return 0


def _demo(folder: Path) -> str:
    from changeover.desk.demo.working_copy import working_copy

    return str(working_copy(folder))
