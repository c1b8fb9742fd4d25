"""Connecting to a store: one engine for a SQLite file or for a PostgreSQL address."""

from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event, make_url
from sqlalchemy.exc import ArgumentError

from changeover.quantities import Refusal

LOCK_SECONDS = 2.0
WRITES = "writes"


def is_address(where: str | Path) -> bool:
    """Say whether a store is named by the address of a server and not by a file."""
    return isinstance(where, str) and "://" in where


def engine_of(where: str | Path) -> Engine:
    """Return an engine; nothing is opened yet. Raises Refusal for an address of another kind."""
    return _server(str(where)) if is_address(where) else _file(Path(where))


def _server(address: str) -> Engine:
    try:
        url = make_url(address)
    except ArgumentError as error:
        raise Refusal(f"“{address}” is not the address of a store; check it.") from error
    if url.get_backend_name() == "sqlite":
        return _file(Path(url.database or ""))
    if url.get_backend_name() != "postgresql":
        raise Refusal(f"A store cannot be kept on {url.get_backend_name()}; use PostgreSQL.")
    try:
        return create_engine(
            url.set(drivername="postgresql+psycopg"), isolation_level="REPEATABLE READ"
        )
    except ImportError as error:
        raise Refusal(
            "Opening a store on PostgreSQL needs psycopg; install changeover[postgres]."
        ) from error


def _file(path: Path) -> Engine:
    engine = create_engine(f"sqlite:///{path}", connect_args={"timeout": LOCK_SECONDS})
    event.listen(engine, "connect", _prepare)
    event.listen(engine, "begin", _begin)
    return engine


def _prepare(connection: Any, _record: Any) -> None:
    """Safe rather than fast: foreign keys held, every commit on the disk."""
    connection.isolation_level = None  # transactions begin where _begin says, nowhere else
    cursor = connection.cursor()
    for pragma in ("foreign_keys = ON", "synchronous = FULL"):
        cursor.execute(f"PRAGMA {pragma}")
    cursor.close()


def use_write_ahead_log(engine: Engine) -> None:
    """Let people read a store in a file while one writes; the file keeps this from then on."""
    connection = engine.raw_connection()
    try:
        cursor = connection.cursor()
        cursor.execute("PRAGMA journal_mode = WAL")
        cursor.close()
    finally:
        connection.close()


def _begin(connection: Connection) -> None:
    """Take the write lock at once when writing, so that what was read cannot change before."""
    writes = connection.get_execution_options().get(WRITES, False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")
