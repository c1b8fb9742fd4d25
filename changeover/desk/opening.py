"""Opening a store, for the window and the command line, which reach it only through the desk."""

from pathlib import Path

from changeover.store.connecting import is_address
from changeover.store.inspection import check_file
from changeover.store.opening import Store, open_store

__all__ = ["Store", "check_store", "open_store"]


def check_store(where: str | Path) -> None:
    """Refuse what cannot be a store, without opening it. Raises Refusal; touches nothing."""
    if not is_address(where):
        check_file(Path(where), create=False)
