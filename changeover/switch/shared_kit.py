"""A kit among those of other planters: what the shelf has left, and who else needs it."""

from collections.abc import Iterable
from dataclasses import replace

from changeover.switch.supply import SHELF, Supply
from changeover.switch.tasks import Claim, Kit, KitLine
from changeover.switch.wording import listed


def shared_kit(kit: Kit, planter: str, met: Iterable[Supply]) -> Kit:
    """Return a planter's kit with what the switches of other planters leave it.

    ``met`` is how every part of every switch is met, that of this planter among them; a line
    that is not met there stays as it is. Lines that are short come first, then those that
    another planter will lack, then the most needed.
    """
    every = tuple(met)
    lines = sorted((_line(line, planter, every) for line in kit.lines), key=_order)
    return replace(kit, lines=tuple(lines))


def _line(line: KitLine, planter: str, met: tuple[Supply, ...]) -> KitLine:
    of_part = [one for one in met if one.part == line.part]
    mine = [one for one in of_part if one.planter == planter]
    if not mine:
        return line
    first = of_part[: of_part.index(mine[0])]
    return replace(
        line,
        taken=sum(_from_shelf(one) for one in first),
        coming=sum(s.count for one in mine for s in one.sources if s.name != SHELF),
        claims=tuple(
            Claim(one.planter, one.needed, one.short)
            for one in of_part
            if one.planter != planter and one.needed
        ),
    )


def _from_shelf(one: Supply) -> int:
    return sum(source.count for source in one.sources if source.name == SHELF)


def _order(line: KitLine) -> tuple[bool, bool, int, str]:
    return line.short == 0, line.short_together == 0, -line.needed, line.part


def at_hand(line: KitLine) -> str:
    """Say where the parts of a kit line are, what is short, and who else needs them.

    ``on the shelf, bin B2``; ``3 of 15 on the shelf left, 9 short; Old Fiddle 24 needs 12 too:
    9 short``.
    """
    where = f", bin {', '.join(line.bins)}" if line.bins else ""
    come = f", {line.coming} come off another planter" if line.coming else ""
    if not line.short:
        rest = f", but {others_text(line)}" if line.short_together else ""
        return f"on the shelf{where}{come}{rest}"
    waiting = f", {line.to_inspect} to inspect" if line.to_inspect else ""
    left = f"{line.free} of {line.on_shelf} on the shelf left" if line.taken else ""
    others = f"; {others_text(line)}" if line.claims else ""
    there = left or f"{line.on_shelf} on the shelf"
    return f"{there}{come}, {line.short} short{where}{waiting}{others}"


def others_text(line: KitLine) -> str:
    """Say which other planters need the part and what is short for all of them together.

    ``Old Fiddle 24 needs 15 too: 12 short``; empty when no other needs it.
    """
    if not line.claims:
        return ""
    who = listed(f"{claim.planter} needs {claim.needed}" for claim in line.claims)
    return f"{who} too: {line.short_together or 'none'} short"
