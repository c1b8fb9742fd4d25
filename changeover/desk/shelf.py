"""Parts and the shelf: what kinds there are, how many lie where, in which condition."""

from changeover.desk.edits import SetShelf
from changeover.planter.parts import Condition, Part, ShelfCount
from changeover.store.opening import Store


def parts(store: Store) -> tuple[Part, ...]:
    """Return every kind of part, sorted by code."""
    with store.read() as work:
        return work.parts.all()


def shelf(store: Store) -> tuple[ShelfCount, ...]:
    """Return the counts on the shelf, sorted by part and condition."""
    with store.read() as work:
        return work.shelf.all()


def set_count(
    store: Store, part: str, condition: Condition, count: int, bin_: str = ""
) -> SetShelf:
    """Return the edit that sets a count on the shelf. Raises Refusal for a count below zero."""
    with store.read() as work:
        before = work.shelf.find((part, condition))
    bin_name = bin_ or (before.bin if before is not None else "")
    return SetShelf(ShelfCount(part, condition, count, bin_name), before=before)
