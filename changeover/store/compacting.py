"""Making a store in a file as small as it can be: one file, no log beside it, no free pages."""

import sqlite3
from contextlib import closing
from pathlib import Path


def compact(path: Path) -> None:
    """Compact a store that nobody has open. Raises sqlite3.Error when somebody has."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("PRAGMA journal_mode = DELETE")
        connection.execute("VACUUM")


def content(path: Path) -> str:
    """Return all that a store in a file holds, as the statements that would make it again."""
    with closing(sqlite3.connect(path)) as connection:
        return "\n".join(connection.iterdump())
