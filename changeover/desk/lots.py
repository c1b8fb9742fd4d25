"""Seed lots: the list, one lot, and the edits that add, change or remove one."""

from changeover.desk.edits import PutLot
from changeover.seed.lots import SeedLot
from changeover.store.opening import Store


def lots(store: Store) -> tuple[SeedLot, ...]:
    """Return every seed lot, sorted by number."""
    with store.read() as work:
        return work.lots.all()


def lot(store: Store, number: str) -> SeedLot:
    """Return one seed lot. Raises Refusal when there is none of that number."""
    with store.read() as work:
        return work.lots.get(number)


def remove_lot(store: Store, number: str) -> PutLot:
    """Return the edit that removes a lot. Raises Refusal when there is none of that number."""
    return PutLot(None, before=lot(store, number))
