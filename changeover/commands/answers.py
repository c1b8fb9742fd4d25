"""Writing a command's answer to standard output, as JSON or as lines of text."""

import json
import sys
from collections.abc import Iterable, Mapping


def write_json(answer: Mapping[str, object]) -> None:
    """Write one JSON object; signs beyond ASCII are escaped, so that any console can carry it."""
    sys.stdout.write(json.dumps(answer, indent=2, allow_nan=False) + "\n")


def write_pairs(pairs: Iterable[tuple[str, str]]) -> None:
    """Write one line for each name and value, the values in one column."""
    rows = list(pairs)
    width = max((len(name) for name, _ in rows), default=0)
    for name, value in rows:
        sys.stdout.write(f"{name:<{width}}  {value}\n")
