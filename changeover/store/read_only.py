"""A store that cannot be written to is read from a copy, so that the file stays as it is."""

import os
import shutil
import stat
from pathlib import Path
from tempfile import TemporaryDirectory

_ANYONE = stat.S_IWUSR | stat.S_IWGRP | stat.S_IWOTH
_LOG = "-wal"  # what was written last and not yet brought into the file itself


def may_write(path: Path) -> bool:
    """Say whether a store in a file can be changed: both the file and its folder are needed."""
    return not path.exists() or all(_writable(one) for one in (path, path.parent))


def _writable(path: Path) -> bool:
    return bool(path.stat().st_mode & _ANYONE) and os.access(path, os.W_OK)


def copy_to_read(path: Path) -> tuple[Path, TemporaryDirectory[str]]:
    """Return a copy of a store and the folder that holds it until it is cleaned up.

    Raises OSError when there is no room for it or the file cannot be read.
    """
    folder = TemporaryDirectory(prefix="changeover-", ignore_cleanup_errors=True)
    copy = Path(folder.name) / path.name
    try:
        for tail in ("", _LOG):
            source = path.with_name(path.name + tail)
            if source.exists():
                shutil.copyfile(source, copy.with_name(copy.name + tail))
    except OSError:
        folder.cleanup()
        raise
    return copy, folder
