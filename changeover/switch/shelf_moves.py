"""Parts that leave the shelf and reach it when they are swapped on a planter."""

from collections.abc import Iterable
from dataclasses import dataclass

from changeover.planter.parts import Condition, ShelfCount
from changeover.switch.kit import COMES_BACK_AS

LAID_OUT = (Condition.GOOD, Condition.NEW, Condition.INSPECT)
"""The order in which parts leave the shelf: what was used before goes out first.

When no usable one is left, the one that went on was one of those that waited to be inspected.
"""

TAKEN_BACK = (COMES_BACK_AS, Condition.GOOD, Condition.NEW)
"""Where to look for a part that came off and goes back on: where it was put, then among others."""


@dataclass(frozen=True)
class Swap:
    """One part off a planter and one on, in one cell.

    ``off`` and ``on`` are codes, None where there is no part. ``off_to`` is what the one came
    back as, ``on_from`` what the other was on the shelf. None there means that the counts stay:
    the shop does not keep such a part, or the shelf had none of it when it went on.
    """

    off: str | None = None
    off_to: Condition | None = None
    on: str | None = None
    on_from: Condition | None = None

    def back(self) -> "Swap":
        """Return the swap that takes this one back."""
        return Swap(self.on, self.on_from, self.off, self.off_to)


class ShelfInHand:
    """The counts of a shelf while parts are taken off it and put on it.

    Codes that are none of ``kept`` are not counted: taking or putting them changes nothing.
    """

    def __init__(self, counts: Iterable[ShelfCount], kept: Iterable[str]) -> None:
        self.kept = frozenset(kept)
        self._before = {(one.part, one.condition): one for one in counts}
        self._now = {key: one.count for key, one in self._before.items()}

    def take(self, part: str, order: Iterable[Condition]) -> Condition | None:
        """Take one away in the first condition that has any; None, and no change, if none has."""
        for condition in order if part in self.kept else ():
            left = self._now.get((part, condition), 0)
            if left:
                self._now[part, condition] = left - 1
                return condition
        return None

    def put(self, part: str, condition: Condition) -> Condition | None:
        """Put one back in a condition, and return it; None, and no change, if it is not kept."""
        if part not in self.kept:
            return None
        self._now[part, condition] = self._now.get((part, condition), 0) + 1
        return condition

    def changes(self) -> tuple[tuple[ShelfCount | None, ShelfCount | None], ...]:
        """Return each count that is new or other than before, as new and old.

        A count of parts to inspect that falls to none and has no bin goes (new is None), for it
        began with a part that came off.
        """
        return tuple(
            (self._count(key), self._before.get(key))
            for key, count in self._now.items()
            if count != (self._before[key].count if key in self._before else 0)
        )

    def _count(self, key: tuple[str, Condition]) -> ShelfCount | None:
        part, condition = key
        where = self._before[key].bin if key in self._before else ""
        count = self._now[key]
        if not count and not where and condition is COMES_BACK_AS:
            return None
        return ShelfCount(part, condition, count, where)


def make_swap(shelf: ShelfInHand, wanted: Swap, order: Iterable[Condition]) -> Swap:
    """Make a swap with the shelf, and return what was done.

    What goes on is looked for as ``on_from``, then in ``order``.
    """
    first = (wanted.on_from,) if wanted.on_from is not None else ()
    came_from = shelf.take(wanted.on, (*first, *order)) if wanted.on is not None else None
    went_to = None
    if wanted.off is not None and wanted.off_to is not None:
        went_to = shelf.put(wanted.off, wanted.off_to)
    return Swap(wanted.off, went_to, wanted.on, came_from)
