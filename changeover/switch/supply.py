"""Parts over several switches: shelf and parts released by earlier ones, shortages by date."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta

from changeover.planter.parts import ShelfCount
from changeover.quantities import Refusal
from changeover.switch.kit import usable, waiting
from changeover.switch.tasks import Kit

INSPECTED_IN = 1  # days until parts that came off are inspected: common practice, no source
SHELF = "shelf"


@dataclass(frozen=True)
class PlannedSwitch:
    """One switch on a day: whose planter, and its kit."""

    planter: str
    day: date
    kit: Kit


@dataclass(frozen=True)
class Source:
    """Where some of a part come from: the shelf, or a planter that released them by a day."""

    name: str
    count: int
    ready: date | None = None


@dataclass(frozen=True)
class Supply:
    """How one part of one switch is met; ``order_by`` is the latest day to order what is short.

    ``to_inspect`` of it wait on the shelf to be inspected; they meet nothing until then.
    """

    planter: str
    day: date
    part: str
    needed: int
    sources: tuple[Source, ...]
    order_by: date | None = None
    to_inspect: int = 0

    @property
    def short(self) -> int:
        return self.needed - sum(source.count for source in self.sources)


@dataclass
class _Stock:
    """What is at hand of one part: on the shelf, and released with the day it may be used."""

    on_shelf: int
    released: list[Source]

    def take(self, wanted: int, day: date) -> list[Source]:
        taken = [Source(SHELF, min(wanted, self.on_shelf))]
        self.on_shelf -= taken[0].count
        left = wanted - taken[0].count
        kept: list[Source] = []
        for source in sorted(self.released, key=lambda source: (str(source.ready), source.name)):
            used = min(left, source.count) if source.ready and source.ready <= day else 0
            taken.append(Source(source.name, used, source.ready))
            kept.append(Source(source.name, source.count - used, source.ready))
            left -= used
        self.released = [source for source in kept if source.count]
        return [source for source in taken if source.count]


def supply(
    switches: Iterable[PlannedSwitch],
    shelf: Iterable[ShelfCount],
    lead_days: Mapping[str, int],
    inspected_in: int = INSPECTED_IN,
) -> tuple[Supply, ...]:
    """Return how every part of every switch is met, by day.

    First from the usable ones on the shelf, then from parts that an earlier switch released at
    least ``inspected_in`` days before and that are taken to pass their inspection. A part in
    ``lead_days`` gets the latest day to order what is short. No part is counted twice. Raises
    Refusal for days below zero.
    """
    if inspected_in < 0 or any(days < 0 for days in lead_days.values()):
        raise Refusal("Days to inspect or to deliver a part cannot be below zero; enter 0 or more.")
    counted = tuple(shelf)
    stocks: dict[str, _Stock] = {}
    met: list[Supply] = []
    for switch in sorted(switches, key=lambda one: (one.day, one.planter)):
        for line in switch.kit.lines:
            stock = stocks.setdefault(line.part, _Stock(usable(line.part, counted), []))
            sources = tuple(stock.take(line.needed, switch.day))
            one = _met(switch, line.part, line.needed, sources, lead_days)
            met.append(replace(one, to_inspect=waiting(line.part, counted)))
        for back in switch.kit.back:
            stock = stocks.setdefault(back.part, _Stock(usable(back.part, counted), []))
            ready = switch.day + timedelta(days=inspected_in)
            stock.released.append(Source(switch.planter, back.count, ready))
    return tuple(met)


def _met(
    switch: PlannedSwitch,
    part: str,
    needed: int,
    sources: tuple[Source, ...],
    lead_days: Mapping[str, int],
) -> Supply:
    short = needed - sum(source.count for source in sources)
    order_by = None
    if short and part in lead_days:
        order_by = switch.day - timedelta(days=lead_days[part])
    return Supply(switch.planter, switch.day, part, needed, sources, order_by)


def to_order(supplies: Iterable[Supply]) -> Mapping[str, int]:
    """Return how many of each part are short over all switches."""
    short: Counter[str] = Counter()
    for one in supplies:
        short[one.part] += one.short
    return {part: count for part, count in short.items() if count}
