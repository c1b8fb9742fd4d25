"""Looking at a store before it is trusted: is it one, is it whole, and which revision is it."""

import stat
from pathlib import Path

from sqlalchemy import Connection, text
from sqlalchemy import inspect as look_at

from changeover.quantities import Refusal
from changeover.store.revisions import REVISIONS

_HEADER = b"SQLite format 3\x00"
_MARK = "about"


def check_file(path: Path, *, create: bool) -> None:
    """Refuse a file that cannot be a store. Raises Refusal; touches nothing."""
    if not path.parent.is_dir():
        raise Refusal(f"The folder {path.parent} does not exist; make it or choose another.")
    if path.is_dir():
        raise Refusal(f"{path.name} is a folder, not a store; choose a file.")
    if not path.exists():
        if create:
            return
        raise Refusal(f"There is no store {path.name} in {path.parent}; check the name.")
    if not path.stat().st_mode & (stat.S_IWUSR | stat.S_IWGRP | stat.S_IWOTH):
        raise Refusal(f"The store {path.name} is read-only; allow writing to it or open a copy.")
    with path.open("rb") as file:
        head = file.read(len(_HEADER))
    if head != _HEADER and not (create and not head):
        raise Refusal(f"{path.name} is not a store of Changeover; choose another file.")


def check_tables(connection: Connection, name: str, *, create: bool) -> str | None:
    """Return the revision of a store, None for an empty one that is to be created.

    Raises Refusal when it is damaged, not a store, or newer than this program.
    """
    if connection.dialect.name == "sqlite":
        found = connection.exec_driver_sql("PRAGMA quick_check(1)").scalar()
        if found != "ok":
            raise Refusal(
                f"The store {name} is damaged; open its latest backup from the folder beside it."
            )
    tables = set(look_at(connection).get_table_names())
    if not tables and create:
        return None
    if "alembic_version" not in tables or _MARK not in tables:
        raise Refusal(f"{name} is not a store of Changeover; choose another file.")
    revision = connection.execute(text("SELECT version_num FROM alembic_version")).scalar()
    if revision not in REVISIONS:
        raise Refusal(
            f"The store {name} was made by a newer Changeover; update this program to open it."
        )
    return str(revision)
