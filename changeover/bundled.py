"""Where the files lie that travel with the program: beside the package, or inside it."""

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def bundled(*parts: str) -> Path:
    """Return the path of a bundled file or folder, such as ``bundled("resources", "units.txt")``.

    Raises FileNotFoundError when neither place has it: then the installation is not whole.
    """
    for root in (_PACKAGE, _PACKAGE.parent):
        path = root.joinpath(*parts)
        if path.exists():
            return path
    raise FileNotFoundError(f"{'/'.join(parts)} is missing from this installation; install again.")
