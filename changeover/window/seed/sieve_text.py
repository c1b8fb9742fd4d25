"""Sieve grades as people write them, in sixty-fourths of an inch."""

import re

from changeover.quantities import Refusal

_PART = r"\s*([0-9]+(?:\.[0-9]+)?)\s*(?:/\s*64)?\s*"
_GRADE = re.compile(rf"{_PART}(?:(?:-|–|to|/|,){_PART})?(?:in|inch|\")?\s*", re.IGNORECASE)


def read_sieve(text: str) -> tuple[float, float] | None:
    """Read ``18 to 20``, ``18/64-20/64`` or ``19``; empty text is None. Raises Refusal."""
    if not text.strip():
        return None
    match = _GRADE.fullmatch(text)
    if match is None:
        raise Refusal(
            f"Sieve grade: “{text.strip()[:30]}” is not a grade; write it in sixty-fourths of an "
            "inch, like 18 to 20."
        )
    low = float(match[1])
    return low, float(match[2]) if match[2] else low


def show_sieve(sieve: tuple[float, float] | None) -> str:
    """Return a sieve grade as it is typed."""
    if sieve is None:
        return ""
    low, high = sieve
    return f"{low:g}" if low == high else f"{low:g} to {high:g}"
