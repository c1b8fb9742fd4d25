"""Opening a store, for the window and the command line, which reach it only through the desk."""

from pathlib import Path

from changeover.store.connecting import is_address
from changeover.store.inspection import check_file
from changeover.store.opening import Store, open_store
from changeover.store.read_only import may_write

__all__ = ["Store", "check_store", "open_or_read", "open_store"]


def check_store(where: str | Path) -> None:
    """Refuse what cannot be a store, without opening it. Raises Refusal; touches nothing."""
    if not is_address(where):
        check_file(Path(where), create=False, reading=True)


def open_or_read(where: str | Path, *, create: bool = False) -> Store:
    """Open a store to work in; where the file is read-only, to be seen alone. Raises Refusal."""
    reading = not is_address(where) and not may_write(Path(where))
    return open_store(where, create=create and not reading, reading=reading)
