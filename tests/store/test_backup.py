"""A store is backed up once a day and before its tables change; ten copies are kept."""

import sqlite3
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

from changeover.store.backup import KEPT, backup_folder
from changeover.store.opening import open_store

OLD = Path(__file__).with_name("revisions") / "0003.sql"
MORNING = datetime(2026, 5, 4, 7, 0, tzinfo=UTC)


def _open_at(path: Path, moment: datetime, *, create: bool = False) -> None:
    open_store(path, create=create, clock=lambda: moment).close()


def _copies(path: Path) -> list[str]:
    return sorted(copy.name for copy in backup_folder(path).glob("*.sqlite"))


def test_the_first_opening_of_a_day_makes_a_copy_that_opens(tmp_path) -> None:
    path = tmp_path / "s.sqlite"
    _open_at(path, MORNING, create=True)
    for hours in (1, 2, 3, 25):
        _open_at(path, MORNING + timedelta(hours=hours))
    assert _copies(path) == ["s-2026-05-04.sqlite", "s-2026-05-05.sqlite"]
    open_store(backup_folder(path) / "s-2026-05-04.sqlite").close()


def test_reading_leaves_the_copy_of_the_day_to_others(tmp_path) -> None:
    path = tmp_path / "s.sqlite"
    _open_at(path, MORNING, create=True)
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("PRAGMA journal_mode = DELETE")
    before = path.read_bytes()
    store = open_store(path, reading=True)
    with store.read() as work:
        assert work.planters.names() == ()
    store.close()
    assert path.read_bytes() == before
    assert [one.name for one in tmp_path.iterdir()] == ["s.sqlite"]


def test_a_copy_is_made_before_the_tables_change(tmp_path) -> None:
    path = tmp_path / "s.sqlite"
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript(OLD.read_text(encoding="utf-8"))
    _open_at(path, MORNING)
    (copy,) = _copies(path)
    with closing(sqlite3.connect(backup_folder(path) / copy)) as connection:
        found = connection.execute("SELECT version_num FROM alembic_version").fetchone()
    assert found == ("0003",)


def test_only_the_newest_copies_are_kept(tmp_path) -> None:
    path = tmp_path / "s.sqlite"
    _open_at(path, MORNING, create=True)
    for day in range(KEPT + 3):
        _open_at(path, MORNING + timedelta(days=day))
    kept = _copies(path)
    assert len(kept) == KEPT
    assert kept[-1] == "s-2026-05-16.sqlite"
