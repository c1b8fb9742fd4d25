"""The demo: a working copy to try things on, so that the one that travels along stays as it is."""

import shutil
from contextlib import suppress
from pathlib import Path

from changeover.bundled import bundled
from changeover.quantities import Refusal
from changeover.store.failures import refusal_of

DEMO = "demo.sqlite"
_BESIDE = ("-wal", "-shm", "-journal")


def working_copy(folder: Path) -> Path:
    """Return the working copy of the demo in a folder, made when it is not there yet.

    Raises Refusal when the folder cannot be written to or the disk is full.
    """
    path = folder / DEMO
    return path if path.exists() else start_again(path)


def spared(where: str, folder: Path) -> str:
    """Return the store to open for ``where``: for the demo that travels along its working copy.

    Every other store is returned as it is. Raises Refusal as ``working_copy`` does.
    """
    with suppress(OSError, FileNotFoundError):
        if bundled(DEMO).samefile(where):
            return str(working_copy(folder))
    return where


def start_again(path: Path) -> Path:
    """Put a fresh copy of the demo in place of a working copy, whose store must be closed.

    Raises Refusal when it cannot be written; the old copy then stays as it was.
    """
    fresh = path.with_suffix(".fresh")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(_original(), fresh)
        for ending in _BESIDE:
            path.with_name(path.name + ending).unlink(missing_ok=True)
        fresh.replace(path)
    except OSError as error:
        with suppress(OSError):
            fresh.unlink(missing_ok=True)
        raise refusal_of(error, path.name) from error
    return path


def _original() -> Path:
    try:
        return bundled(DEMO)
    except FileNotFoundError as error:
        raise Refusal("The demo is missing from this installation; install again.") from error
