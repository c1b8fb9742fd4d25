"""Text that people typed is never taken for a formula by a spreadsheet."""

import re

STARTS_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
_NOT_TEXT = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\ufffe\uffff]|[\ud800-\udfff]")
_LINE_END = re.compile(r"\r\n?|[\x85\u2028\u2029]")
MOST_CHARACTERS = 32_000  # a cell of the Office Open XML spreadsheet holds 32 767


def clean_text(text: str) -> str:
    """Return a text without characters that a spreadsheet file cannot hold.

    Every sort of line end becomes a line feed, other control characters spaces. A text too long
    for a cell is cut, which an ellipsis shows.
    """
    plain = _NOT_TEXT.sub(" ", _LINE_END.sub("\n", text))
    return plain if len(plain) <= MOST_CHARACTERS else plain[: MOST_CHARACTERS - 1] + "…"


def starts_formula(text: str) -> bool:
    """Say whether a spreadsheet might take a text for a formula, spaces before it aside."""
    return text.startswith(STARTS_FORMULA) or text.lstrip(" \u00a0\u202f").startswith(
        STARTS_FORMULA
    )


def guarded(text: str) -> str:
    """Return a text as it is written to CSV: with an apostrophe before what starts a formula.

    Spreadsheets read the apostrophe as the mark of text. Figures are written as figures, so a
    negative one keeps its sign.
    """
    plain = clean_text(text)
    return f"'{plain}" if starts_formula(plain) else plain
