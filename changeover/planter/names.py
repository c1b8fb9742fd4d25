"""Names that people give: any script and sign, on one line, short enough to be read on a screen."""

import unicodedata

from changeover.quantities import Refusal

MOST_CHARACTERS = 120


def folded(name: str) -> str:
    """Return a name without what people do not tell names apart by: capitals and odd blanks."""
    return " ".join(name.split()).casefold()


def alike(one: str, other: str) -> bool:
    """Say whether two names differ in capitals and blanks at most."""
    return folded(one) == folded(other)


def check_name(what: str, name: str) -> None:
    """Refuse a name with line ends or other signs that cannot be seen, or too long to be read.

    ``what`` is what has the name, such as ``The planter``. Raises Refusal.
    """
    if len(name) > MOST_CHARACTERS:
        raise Refusal(
            f"{what} has a name of {len(name)} characters; {MOST_CHARACTERS} is the most."
        )
    if any(unicodedata.category(sign) in ("Cc", "Cs", "Zl", "Zp") for sign in name):
        raise Refusal(f"{what} has a line end or a hidden sign in its name; type the name anew.")
