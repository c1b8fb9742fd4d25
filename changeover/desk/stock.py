"""The shelf as a list: each kind of part with its counts, and what the open switches need."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from changeover.desk.edits import PutPart, SetShelf
from changeover.desk.plan_switch import view_of
from changeover.desk.supply_list import lead_days, order_text, supplies_in
from changeover.planter.parts import Condition, Part, ShelfCount
from changeover.quantities import Refusal, Units
from changeover.store.opening import Store

_COUNT = re.compile(r"(\d{1,6})(?:[\s,·]+(\S.*))?")


@dataclass(frozen=True)
class StockLine:
    """One kind of part: its counts by condition, and how many the planter in view still needs.

    ``days`` is how long it takes to be delivered, None when that was not entered; ``order_by``
    until when to order what the open switches of all planters are short of.
    """

    part: Part
    counts: Mapping[Condition, ShelfCount]
    needed: int
    short: int
    days: int | None = None
    order_by: str = ""


def stock(store: Store, planter: str, today: date | None = None) -> tuple[StockLine, ...]:
    """Return every kind of part by code; ``planter`` may be empty, then nothing is needed."""
    from changeover.desk.board import board_of

    with store.read() as work:
        counts: dict[str, dict[Condition, ShelfCount]] = {}
        for count in work.shelf.all():
            counts.setdefault(count.part, {})[count.condition] = count
        view = view_of(work, board_of(work, planter, Units.US, proposal=False)) if planter else None
        needed = {line.part: line for line in (view.kit.lines if view is not None else ())}
        day = today if today is not None else date.today()  # noqa: DTZ011 -- the day on the wall
        met = supplies_in(work, day, {} if view is None else {planter: view.kit})
        days = lead_days(work)
        return tuple(
            StockLine(
                part,
                counts.get(part.code, {}),
                needed[part.code].needed if part.code in needed else 0,
                needed[part.code].short if part.code in needed else 0,
                days.get(part.code),
                order_text(met, part.code, day),
            )
            for part in work.parts.all()
        )


def count_text(line: StockLine, condition: Condition) -> str:
    """Write how many lie in a condition, and in which bin: ``12  A3``; empty when none do."""
    count = line.counts.get(condition)
    if count is None or (not count.count and not count.bin):
        return ""
    return f"{count.count}  {count.bin}".rstrip()


def read_count(line: StockLine, condition: Condition, text: str) -> SetShelf:
    """Return the edit for a typed count, which may name its bin: ``12`` or ``12 A3``.

    Raises Refusal for anything else.
    """
    before = line.counts.get(condition)
    match = _COUNT.fullmatch(text.strip() or "0")
    if match is None:
        raise Refusal(
            f"Part {line.part.code}, {condition}: “{text}” is not a count; write it like 12, "
            "or 12 A3 with its bin."
        )
    where = match[2] or (before.bin if before is not None else "")
    return SetShelf(ShelfCount(line.part.code, condition, int(match[1]), where), before=before)


def remove_part(line: StockLine) -> PutPart:
    """Return the edit that removes a kind of part. Raises Refusal while any lie on the shelf."""
    held = sum(count.count for count in line.counts.values())
    if held:
        raise Refusal(f"Part {line.part.code}: the shelf holds {held}; set the count to 0 first.")
    return PutPart(None, before=line.part)
