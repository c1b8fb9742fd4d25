"""Writing figures that carry their reasons, as text or JSON, with the reasons when asked for."""

import sys
from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING

from changeover.commands.answers import write_json, write_pairs
from changeover.commands.arguments import Parser

if TYPE_CHECKING:
    from changeover.quantities import Units
    from changeover.seed.reasons import Figure, Reason


def add_why(parser: Parser) -> None:
    """Add ``--why``."""
    parser.add_argument(
        "--why", action="store_true", help="give the reason, formula and source of each figure"
    )


def write_figures(
    figures: Sequence["Figure"],
    units: "Units",
    *,
    as_json: bool,
    why: bool,
    notes: Sequence[str] = (),
    more: Mapping[str, object] | None = None,
) -> None:
    """Write figures, then sentences that go with them; ``more`` stands in the JSON only.

    JSON holds one key a figure, ``notes`` where there are any, and with ``why`` the key
    ``reasons`` with the whole reason under each figure's key.
    """
    from changeover.quantities import as_json as quantity_json
    from changeover.quantities import show

    if as_json:
        answer: dict[str, object] = {
            one.key: quantity_json(one.quantity, one.measure, units) for one in figures
        }
        answer |= dict(more or {})
        if notes:
            answer["notes"] = list(notes)
        if why:
            answer["reasons"] = {one.key: reason_json(one.reason) for one in figures}
        write_json(answer)
        return
    write_pairs((one.name, show(one.quantity, one.measure, units)) for one in figures)
    write_notes(notes)
    if why:
        write_notes(f"{one.name}: {reason_text(one.reason)}" for one in figures)


def write_notes(notes: Iterable[str]) -> None:
    """Write each sentence on a line of its own."""
    for note in notes:
        sys.stdout.write(f"{note}\n")


def reason_json(reason: "Reason") -> dict[str, object]:
    """Return a reason as JSON holds it."""
    return {
        "rule": reason.rule,
        "why": reason.why,
        "how": reason.how,
        "inputs": [{"name": one.name, "text": one.text} for one in reason.inputs],
        "source": reason.source,
        "trust": str(reason.trust),
        "cautions": list(reason.cautions),
    }


def reason_text(reason: "Reason") -> str:
    """Return a reason as one line of text."""
    how = f" {reason.how[0].upper()}{reason.how[1:]}." if reason.how else ""
    return f"{reason.why}{how} ({reason.source}; {reason.trust})"
