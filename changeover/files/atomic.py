"""Writing a file whole or not at all: to a temporary one beside it, then moved into place."""

import errno
import os
import tempfile
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from changeover.quantities import Refusal

_SENTENCES = {
    errno.ENOSPC: "the disk is full; make room and write again.",
    errno.EDQUOT: "the disk quota is used up; make room and write again.",
    errno.EACCES: "it may not be written there; choose another folder.",
    errno.EPERM: "it may not be written there; choose another folder.",
    errno.EROFS: "the disk is read-only; choose another folder.",
    errno.ENAMETOOLONG: "the name is too long; choose a shorter one.",
    errno.EISDIR: "a folder has that name; choose another name.",
}


def write_whole(path: Path, write: Callable[[Path], None]) -> Path:
    """Write a file through ``write``, which gets a temporary path in the same folder.

    The file is moved into place when ``write`` has returned, so that ``path`` holds the old
    file or the whole new one. Raises Refusal when the folder is missing, read-only or full, or
    when the file is open elsewhere; then nothing is left behind.
    """
    folder = path.parent
    if not folder.is_dir():
        raise Refusal(f"{path.name} was not written: the folder {folder} is missing; make it.")
    try:
        return _write(path, write)
    except OSError as error:
        raise Refusal(f"{path.name} was not written to {folder}: {_because(error)}") from error


def _write(path: Path, write: Callable[[Path], None]) -> Path:
    handle, name = tempfile.mkstemp(prefix=".writing-", suffix=path.suffix, dir=path.parent)
    os.close(handle)
    temporary = Path(name)
    try:
        write(temporary)
        _to_disk(temporary)
        temporary.chmod(_usual_mode())
        temporary.replace(path)
    finally:
        with suppress(OSError):
            temporary.unlink(missing_ok=True)
    return path


def _usual_mode() -> int:
    """Return the mode that a new file has here; a temporary one is for its owner only."""
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask


def _to_disk(path: Path) -> None:
    """Wait until the bytes are on the disk, so that a full one shows before the move."""
    handle = os.open(path, os.O_RDWR)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _because(error: OSError) -> str:
    reason = error.strerror or type(error).__name__
    return _SENTENCES.get(error.errno or 0, f"{reason}; choose another folder or close the file.")


def write_bytes(path: Path, content: bytes) -> Path:
    """Write bytes whole or not at all. Raises Refusal as ``write_whole`` does."""
    return write_whole(path, lambda temporary: _put(temporary, content))


def _put(path: Path, content: bytes) -> None:
    path.write_bytes(content)
