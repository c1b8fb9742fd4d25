"""Opening a store, for the window and the command line, which reach it only through the desk."""

from changeover.store.opening import Store, open_store

__all__ = ["Store", "open_store"]
