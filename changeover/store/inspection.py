"""Looking at a store before it is trusted: is it one, is it whole, and which revision is it."""

from pathlib import Path

from sqlalchemy import Connection, text
from sqlalchemy import inspect as look_at

from changeover.quantities import Refusal
from changeover.store.failures import from_backup
from changeover.store.read_only import may_write
from changeover.store.revisions import REVISIONS

_HEADER = b"SQLite format 3\x00"
_MARK = "about"
ALLOW_WRITING = "allow writing to it and its folder, or open a copy"


def check_file(path: Path, *, create: bool, reading: bool = False) -> None:
    """Refuse a file that cannot be a store; a read-only one too, unless it is only to be read.

    Raises Refusal; touches nothing.
    """
    if not path.parent.is_dir():
        raise Refusal(f"The folder {path.parent} does not exist; make it or choose another.")
    if path.is_dir():
        raise Refusal(f"{path.name} is a folder, not a store; choose a file.")
    if not path.exists():
        if create:
            return
        where = "this folder" if path.parent == Path() else str(path.parent)
        raise Refusal(f"There is no store {path.name} in {where}; check the name.")
    if not reading and not may_write(path):
        raise Refusal(f"The store {path.name} is read-only; {ALLOW_WRITING}.")
    head = _head(path)
    if head != _HEADER and not (create and not head):
        raise Refusal(f"{path.name} is not a store of Changeover; choose another file.")


def _head(path: Path) -> bytes:
    try:
        with path.open("rb") as file:
            return file.read(len(_HEADER))
    except OSError as error:
        because = error.strerror or "no reason given"
        raise Refusal(f"The store {path.name} cannot be read ({because}); allow it.") from error


def check_tables(
    connection: Connection, name: str, *, create: bool, path: Path | None = None
) -> str | None:
    """Return the revision of a store, None for an empty one that is to be created.

    ``path`` is its file, None on a server.
    Raises Refusal when it is damaged, not a store, or newer than this program.
    """
    if connection.dialect.name == "sqlite":
        found = connection.exec_driver_sql("PRAGMA quick_check(1)").scalar()
        if found != "ok":
            raise Refusal(f"The store {name} is damaged; {from_backup(path)}.")
    tables = set(look_at(connection).get_table_names())
    if not tables and create:
        return None
    if "alembic_version" not in tables or _MARK not in tables:
        raise Refusal(f"{name} is not a store of Changeover; choose another file.")
    revision = connection.execute(text("SELECT version_num FROM alembic_version")).scalar()
    if revision is None:
        raise Refusal(
            f"The store {name} is damaged: the mark of its version is gone; {from_backup(path)}."
        )
    if revision not in REVISIONS:
        raise Refusal(
            f"The store {name} was made by a newer Changeover; update this program to open it."
        )
    return str(revision)
