"""The shelf as a list: each kind of part with its counts, and what the open switches need."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date

from changeover.desk.edits import PutPart, SetShelf
from changeover.desk.open_kits import today_or
from changeover.desk.supply_list import lead_days, order_text, supplies_in
from changeover.planter.parts import Condition, Part, ShelfCount
from changeover.quantities import Refusal
from changeover.store.opening import Store
from changeover.switch.supply import Supply
from changeover.switch.wording import listed

_COUNT = re.compile(r"(\d{1,6})(?:[\s,·]+(\S.*))?")


@dataclass(frozen=True)
class StockLine:
    """One kind of part: its counts by condition, and how many all planters' switches still need.

    ``needed`` and ``short`` are those of all switches together; ``wanted`` says whose. ``days``
    is how long it takes to be delivered, None when that was not entered; ``order_by`` until when
    to order what is short.
    """

    part: Part
    counts: Mapping[Condition, ShelfCount]
    needed: int
    short: int
    days: int | None = None
    order_by: str = ""
    wanted: str = ""


def stock(store: Store, today: date | None = None) -> tuple[StockLine, ...]:
    """Return every kind of part by code, with what the switches of all planters need."""
    with store.read() as work:
        counts: dict[str, dict[Condition, ShelfCount]] = {}
        for count in work.shelf.all():
            counts.setdefault(count.part, {})[count.condition] = count
        day = today_or(today)
        met = supplies_in(work, day)
        days = lead_days(work)
        return tuple(
            _line(part, counts.get(part.code, {}), met, days.get(part.code), day)
            for part in work.parts.all()
        )


def _line(
    part: Part,
    counts: Mapping[Condition, ShelfCount],
    met: Iterable[Supply],
    days: int | None,
    day: date,
) -> StockLine:
    mine = [one for one in met if one.part == part.code and one.needed]
    return StockLine(
        part,
        counts,
        sum(one.needed for one in mine),
        sum(one.short for one in mine),
        days,
        order_text(mine, part.code, day),
        listed(f"{one.needed} for {one.planter}" for one in mine),
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
