"""The folder that a command writes its files to."""

import errno
from pathlib import Path

_BECAUSE = {
    errno.EEXIST: "a file of that name is there",
    errno.ENOTDIR: "there is a file where a folder above it should be",
    errno.EACCES: "the folder above it cannot be written to",
    errno.EPERM: "the folder above it cannot be written to",
    errno.EROFS: "the disk is read-only",
    errno.ENOSPC: "the disk is full",
    errno.ENAMETOOLONG: "its name is too long",
}


def made_folder(path: Path) -> Path:
    """Return a folder, made if needed. Raises Refusal when it cannot be made."""
    from changeover.quantities import Refusal

    try:
        path.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        because = _BECAUSE.get(error.errno or 0, error.strerror or type(error).__name__)
        raise Refusal(
            f"The folder {path} cannot be made: {because}; choose another folder."
        ) from error
    return path
