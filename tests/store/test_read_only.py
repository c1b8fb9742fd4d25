"""A store that cannot be written to is read whole from a copy, refuses changes, stays as it is."""

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path

import pytest

from changeover.quantities import Refusal
from changeover.store.opening import Store, open_store

REVISIONS = Path(__file__).parent / "revisions"


@pytest.fixture
def folder(tmp_path: Path) -> Iterator[Path]:
    made = tmp_path / "yard"
    made.mkdir()
    yield made
    made.chmod(0o755)


@pytest.fixture
def locked(folder: Path, planter) -> Path:
    """Give a store with one planter; the file and its folder are read-only."""
    path = folder / "s.sqlite"
    with closing(open_store(path, create=True)) as store, store.work("Ada") as work:
        work.planters.put(planter, None)
    return _lock(path)


def _lock(path: Path) -> Path:
    path.chmod(0o444)
    path.parent.chmod(0o555)
    return path


def _there(path: Path) -> dict[str, bytes]:
    return {one.name: one.read_bytes() for one in path.parent.iterdir()}


def _names(store: Store) -> tuple[str, ...]:
    with store.read() as work:
        return work.planters.names()


def test_everything_is_read_and_the_folder_stays_as_it_was(locked: Path) -> None:
    before = _there(locked)
    with closing(open_store(locked, reading=True)) as store:
        assert store.read_only
        assert _names(store) == ("Small Bar",)
    assert _there(locked) == before


@pytest.mark.parametrize("mode", [(0o444, 0o755), (0o644, 0o555)])
def test_a_read_only_file_or_folder_alone_is_read_too(locked: Path, mode) -> None:
    locked.parent.chmod(0o755)
    locked.chmod(mode[0])
    locked.parent.chmod(mode[1])
    with closing(open_store(locked, reading=True)) as store:
        assert store.read_only
        assert _names(store) == ("Small Bar",)


def test_a_change_is_refused_in_a_sentence(locked: Path, planter) -> None:
    with closing(open_store(locked, reading=True)) as store:
        says = "s.sqlite is read-only, so nothing was changed; allow writing to it and its folder"
        with pytest.raises(Refusal, match=says), store.work("Ada") as work:
            work.planters.put(None, planter)
        assert _names(store) == ("Small Bar",)


def test_opening_it_to_work_is_refused(locked: Path) -> None:
    with pytest.raises(Refusal, match=r"s\.sqlite is read-only; allow writing"):
        open_store(locked)


def test_what_was_written_last_and_stands_in_the_log_is_read(folder: Path, planter) -> None:
    path = folder / "s.sqlite"
    with closing(open_store(path, create=True)):
        pass
    writer = open_store(path)
    with writer.work("Ada") as work:
        work.planters.put(planter, None)
    assert (folder / "s.sqlite-wal").stat().st_size
    _lock(path)
    with closing(open_store(path, reading=True)) as store:
        assert _names(store) == ("Small Bar",)
    folder.chmod(0o755)
    writer.close()


def test_one_of_an_older_program_is_read_as_it_would_be_upgraded(folder: Path) -> None:
    path, script = folder / "old.sqlite", (REVISIONS / "0005.sql").read_text()
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript(script)
    before = _there(_lock(path))
    with closing(open_store(path, reading=True)) as store:
        assert _names(store)
    assert _there(path) == before


@pytest.mark.parametrize("spoil", [lambda _old: b"notes", lambda old: old[:20_000]])
def test_a_read_only_file_that_is_no_store_is_refused(
    locked: Path, spoil: Callable[[bytes], bytes]
) -> None:
    locked.chmod(0o644)
    locked.write_bytes(spoil(locked.read_bytes()))
    _lock(locked)
    with pytest.raises(Refusal, match=r"not a store|damaged"):
        open_store(locked, reading=True)
