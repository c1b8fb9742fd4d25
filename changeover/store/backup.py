"""Backups of a store in a file: one a day, and one before every change of its tables."""

import sqlite3
from contextlib import closing
from datetime import datetime
from pathlib import Path

KEPT = 10


def backup_folder(path: Path) -> Path:
    """Return the folder beside a store that holds its backups."""
    return path.with_name(f"{path.stem}-backups")


def backups_of(path: Path) -> tuple[Path, ...]:
    """Return the backups of a store in a file, the latest last; none when there are none."""
    return tuple(sorted(backup_folder(path).glob(f"{path.stem}-*{path.suffix}")))


def back_up(path: Path, now: datetime, *, always: bool) -> Path | None:
    """Copy a store into its backup folder and drop all but the newest ten copies.

    Unless ``always``, only the first time on a day. Returns the copy, None when none was due.
    Raises OSError or sqlite3.Error when it cannot be written.
    """
    folder = backup_folder(path)
    moment = f"{now:%Y-%m-%d}" if not always else f"{now:%Y-%m-%dT%H%M%S}"
    copy = folder / f"{path.stem}-{moment}{path.suffix}"
    if copy.exists() and not always:
        return None
    folder.mkdir(exist_ok=True)
    unfinished = copy.with_suffix(".unfinished")
    with closing(sqlite3.connect(path)) as source, closing(sqlite3.connect(unfinished)) as target:
        source.backup(target)
    unfinished.replace(copy)
    for old in backups_of(path)[:-KEPT]:
        old.unlink()
    return copy
