"""The wear limits that travel with the program, read from text."""

import tomllib
from collections.abc import Mapping
from functools import lru_cache
from typing import Any

from changeover.bundled import bundled
from changeover.proof.source import Source
from changeover.proof.wear import Kind, WearLimit
from changeover.quantities import Quantity, read_quantity
from changeover.seed.reasons import Trust


@lru_cache(maxsize=1)
def bundled_wear_limits() -> tuple[WearLimit, ...]:
    """Return the limits of ``resources/wear.toml``, each with its source and trust."""
    text = bundled("resources", "wear.toml").read_text(encoding="utf-8")
    return tuple(wear_limit(entry) for entry in tomllib.loads(text)["limit"])


def wear_limit(entry: Mapping[str, Any]) -> WearLimit:
    """Return the limit of one entry; raises Refusal for a unit or bound that cannot be read."""
    name = entry["name"]
    possible = entry.get("possible")
    return WearLimit(
        part=entry["part"],
        name=name,
        kind=Kind(entry["kind"]),
        source=Source(entry["source"], Trust(entry["trust"])),
        action=entry["action"],
        applies=entry.get("applies", ""),
        low=_length(entry.get("low"), name),
        high=_length(entry.get("high"), name),
        new=_length(entry.get("new"), name),
        possible=None if possible is None else (_size(possible[0], name), _size(possible[1], name)),
    )


def _length(text: str | None, name: str) -> Quantity | None:
    return None if text is None else _size(text, name)


def _size(text: str, name: str) -> Quantity:
    return read_quantity(text, "diameter", what=name)
