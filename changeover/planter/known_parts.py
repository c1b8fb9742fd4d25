"""Part codes as they are typed: taken only when a part of that sort has the code."""

from collections.abc import Iterable
from difflib import get_close_matches

from changeover.planter.names import alike
from changeover.planter.parts import Part
from changeover.quantities import Refusal

_NAMED = 3


def known_code(parts: Iterable[Part], sort: str, typed: str, where: str) -> str:
    """Return the code of the part that is meant, capitals and blanks aside.

    ``where`` says where it was typed. Raises Refusal for a code that no part of the sort has; it
    names the nearest ones.
    """
    listed = tuple(parts)
    codes = [part.code for part in listed if part.sort == sort]
    if typed in codes:
        return typed
    for code in codes:
        if alike(code, typed):
            return code
    raise Refusal(
        f"{where}: {_what_it_is(listed, sort, typed)}; {_what_to_do(codes, sort, typed)}."
    )


def _what_it_is(parts: Iterable[Part], sort: str, typed: str) -> str:
    other = next((part for part in parts if alike(part.code, typed)), None)
    if other is not None:
        return f"“{typed}” is a {other.sort} and no {sort}"
    return f"there is no {sort} “{typed}”"


def _what_to_do(codes: list[str], sort: str, typed: str) -> str:
    nearest = nearest_codes(codes, typed)
    if not nearest:
        return f"no {sort} is entered yet: add it on the Shelf page first"
    *others, last = nearest
    there = f"{', '.join(others)} or {last}" if others else last
    return f"choose {there}, or add the {sort} on the Shelf page first"


def nearest_codes(codes: Iterable[str], typed: str) -> tuple[str, ...]:
    """Return the few codes nearest to a typed one, the nearest first; the first ones if none is."""
    by_folded = {code.casefold(): code for code in sorted(codes)}
    near = get_close_matches(typed.casefold(), list(by_folded), _NAMED, cutoff=0.4)
    return tuple(by_folded[one] for one in near or list(by_folded)[:_NAMED])
