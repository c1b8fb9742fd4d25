"""How proofs are put into JSON and lines: shares in percent, intervals, verdicts."""

import argparse
from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING

from changeover.commands.arguments import Parser

if TYPE_CHECKING:
    from changeover.proof.advice import Advice
    from changeover.proof.intervals import Interval
    from changeover.quantities import Quantity


def percent_of(share: float | None) -> float | None:
    """Return a share 0 to 1 as a percentage, None as it is."""
    return None if share is None else 100.0 * share


def interval_json(interval: "Interval | None", factor: float = 100.0) -> dict[str, float] | None:
    """Return the bounds of an interval times ``factor``, and its level in percent."""
    if interval is None:
        return None
    return {
        "low": interval.low * factor,
        "high": interval.high * factor,
        "level": 100.0 * interval.level,
    }


def advice_json(advice: "Iterable[Advice]") -> list[dict[str, str]]:
    """Return advice with its source, trust and caution."""
    return [
        {
            "text": one.text,
            "source": one.source.text,
            "trust": str(one.source.trust),
            "caution": one.caution,
        }
        for one in advice
    ]


def add_share(parser: Parser, name: str, what: str) -> None:
    """Add an argument that holds a share, such as ``98%``."""
    parser.add_argument(name, metavar="SHARE", help=f"{what}, such as 98%%")


def share_of(args: argparse.Namespace, name: str) -> float | None:
    """Return a share given as an argument, 0 to 1, None when it was not; raises Refusal."""
    from changeover.quantities import read_quantity

    text = getattr(args, name)
    if text is None:
        return None
    quantity = read_quantity(text, "share", what="--" + name.replace("_", "-"))
    return float(quantity.to("count").magnitude)


def length_of(text: str, measure: str, what: str) -> "Quantity":
    """Return a length given as an argument; raises Refusal unless it is above zero."""
    from changeover.quantities import Refusal, read_quantity

    length = read_quantity(text, measure, what=what)
    if not length.magnitude > 0:
        raise Refusal(f"{what}: “{text}” is not possible; enter a length above zero.")
    return length


def lines_of(header: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """Return a table as text, its columns as wide as they need to be, figures to the right."""
    table = [list(header), *(list(row) for row in rows)]
    widths = [max(len(row[i]) for row in table) for i in range(len(header))]
    lines = ("  ".join(cell.rjust(w) for cell, w in zip(row, widths, strict=True)) for row in table)
    return "\n".join(line.rstrip() for line in lines) + "\n"


def shown(figure: float | None, digits: int = 1) -> str:
    """Return a figure for a table, a dash where there is none."""
    return "–" if figure is None else f"{figure:.{digits}f}"


def no_none(entries: Mapping[str, object]) -> dict[str, object]:
    """Return the entries that have a value."""
    return {key: value for key, value in entries.items() if value is not None}
