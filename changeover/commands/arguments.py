"""Reading the arguments of the command line, each refusal in one line."""

import argparse
import re
from collections.abc import Callable
from typing import Any, NoReturn, TypeAlias

Job: TypeAlias = Callable[[argparse.Namespace], int]
Parsers: TypeAlias = "argparse._SubParsersAction[Parser]"  # noqa: SLF001 - argparse gives no public name


class Parser(argparse.ArgumentParser):
    """An argument parser that answers a mistake with one line and exit status 2.

    What begins with a minus and a figure is a value, such as ``-5 mph``, and no option.
    """

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self._negative_number_matcher = re.compile(r"-\.?[0-9]")

    def error(self, message: str) -> NoReturn:
        self.exit(2, f"{self.prog}: {one_line(message)}; {self.prog} --help tells the arguments.\n")


def one_line(text: str) -> str:
    """Return the text with every run of white space as one space."""
    return " ".join(text.split())


def add_job(parsers: Parsers, name: str, summary: str, run: Job) -> Parser:
    """Add a command under its name; ``run`` does it and returns the exit status."""
    parser = parsers.add_parser(name, help=summary, description=summary, allow_abbrev=False)
    parser.set_defaults(run=run)
    return parser


def add_units(parser: Parser) -> None:
    """Add ``--units us|metric``."""
    parser.add_argument(
        "--units", choices=("us", "metric"), default="us", help="units of the answer (default: us)"
    )


def add_json(parser: Parser) -> None:
    """Add ``--json``."""
    parser.add_argument(
        "--json", action="store_true", help="write JSON to standard output and nothing else"
    )
