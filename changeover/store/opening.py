"""Opening a store: checked, backed up, brought to today's tables; or refused and left untouched."""

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from sqlalchemy import Engine
from sqlalchemy.exc import SQLAlchemyError
from sqlalchemy.orm import Session

from changeover.quantities import Refusal
from changeover.store.connecting import WRITES, engine_of, is_address, use_write_ahead_log
from changeover.store.failures import SPOILT, refusal_of
from changeover.store.inspection import ALLOW_WRITING, check_file, check_tables
from changeover.store.journal import Journal
from changeover.store.migrating import migrate
from changeover.store.planters import Seen
from changeover.store.read_only import copy_to_read, may_write
from changeover.store.revisions import HEAD
from changeover.store.unit_of_work import UnitOfWork

Clock = Callable[[], datetime]


def _now() -> datetime:
    return datetime.now(UTC)


class Store:
    """An open store; reading and writing go through its units of work.

    One that is ``read_only`` stands in a copy, in a folder that goes when it is closed.
    """

    def __init__(
        self,
        engine: Engine,
        name: str,
        clock: Clock = _now,
        copied_to: TemporaryDirectory[str] | None = None,
        path: Path | None = None,
    ) -> None:
        self._engine, self.name, self._clock, self._path = engine, name, clock, path
        self._seen: Seen = {}
        self._copied_to = copied_to

    @property
    def read_only(self) -> bool:
        return self._copied_to is not None

    @contextmanager
    def read(self) -> Iterator[UnitOfWork]:
        """Give a unit of work that sees one state of the store and keeps no change."""
        try:
            with Session(self._engine, expire_on_commit=False) as session:
                yield UnitOfWork(session, seen=self._seen)
        except (SQLAlchemyError, *SPOILT) as error:
            raise refusal_of(error, self.name, self._path) from error

    @contextmanager
    def work(self, who: str, why: str = "") -> Iterator[UnitOfWork]:
        """Give a unit of work that is kept, with its history entry, when it ends without error.

        Raises Refusal when the store cannot be written; then nothing is kept.
        """
        if self.read_only:
            raise Refusal(
                f"The store {self.name} is read-only, so nothing was changed; {ALLOW_WRITING}."
            )
        when = self._clock().astimezone(UTC).isoformat(timespec="seconds")
        engine = self._engine.execution_options(**{WRITES: True})
        try:
            with Session(engine, expire_on_commit=False) as session, session.begin():
                journal = Journal(session, who, why, when)
                yield UnitOfWork(session, journal, self._seen)
                journal.write()
        except (SQLAlchemyError, *SPOILT) as error:
            raise refusal_of(error, self.name, self._path) from error

    def close(self) -> None:
        """Close every connection; a store in a file is then one file again."""
        self._engine.dispose()
        if self._copied_to is not None:
            self._copied_to.cleanup()


def open_store(
    where: str | Path, *, create: bool = False, reading: bool = False, clock: Clock = _now
) -> Store:
    """Open a store in a file or at a PostgreSQL address.

    With ``create`` a missing one is made. ``reading`` promises that nothing will be changed, so
    the file stays as it is and the day's backup is left for whoever changes something; a file
    that is read-only is then read from a copy. Raises Refusal, and leaves the file as it was,
    when it is missing, not a store, read-only, damaged, locked, or from a newer program.
    """
    name, path = _name(where), None if is_address(where) else Path(where)
    if path is not None:
        check_file(path, create=create, reading=reading)
        if reading and not may_write(path):
            return _read_from_copy(path, clock)
    engine = engine_of(where)
    try:
        _make_ready(engine, name, path, create=create, reading=reading, clock=clock)
    except (SQLAlchemyError, sqlite3.Error, OSError, *SPOILT) as error:
        engine.dispose()
        raise refusal_of(error, name, path) from error
    except Refusal:
        engine.dispose()
        raise
    return Store(engine, name, clock, path=path)


def _read_from_copy(path: Path, clock: Clock) -> Store:
    """Open a copy of a read-only store, brought to today's tables where the file is older."""
    try:
        copy, folder = copy_to_read(path)
    except OSError as error:
        raise refusal_of(error, path.name, path) from error
    engine = engine_of(copy)
    try:
        with engine.connect() as connection:
            revision = check_tables(connection, path.name, create=False, path=path)
        if revision != HEAD:
            _to_head(engine)
    except (SQLAlchemyError, sqlite3.Error, OSError, Refusal, *SPOILT) as error:
        engine.dispose()
        folder.cleanup()
        if isinstance(error, Refusal):
            raise
        raise refusal_of(error, path.name, path) from error
    return Store(engine, path.name, clock, folder, path)


def _make_ready(
    engine: Engine, name: str, path: Path | None, *, create: bool, reading: bool, clock: Clock
) -> None:
    with engine.connect() as connection:
        revision = check_tables(connection, name, create=create, path=path)
    if reading and revision == HEAD:
        return
    if engine.dialect.name == "sqlite":
        use_write_ahead_log(engine)
    if revision is not None and engine.dialect.name == "sqlite":
        from changeover.store.backup import back_up

        back_up(Path(engine.url.database or ""), clock(), always=revision != HEAD)
    if revision != HEAD:
        _to_head(engine)


def _to_head(engine: Engine) -> None:
    """Bring a store to today's tables, in one transaction."""
    with engine.execution_options(**{WRITES: True}).begin() as connection:
        migrate(connection)
        with Session(connection) as session:
            UnitOfWork(session).settings.begin()


def _name(where: str | Path) -> str:
    """Return the words for a store in a message: its file, or its address without a password."""
    if is_address(where):
        return str(where).rpartition("@")[2] or str(where)
    return Path(where).name
