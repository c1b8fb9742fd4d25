"""The folder that a command writes its files to."""

from pathlib import Path


def made_folder(path: Path) -> Path:
    """Return a folder, made if needed. Raises Refusal when it cannot be made."""
    from changeover.quantities import Refusal

    try:
        path.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise Refusal(f"The folder {path} cannot be made: {error.strerror}.") from error
    return path
