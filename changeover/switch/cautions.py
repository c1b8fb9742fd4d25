"""Cautions for work that can hurt, each with its source and deferring to the machine's manual."""

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from changeover.quantities import Refusal


@dataclass(frozen=True)
class Caution:
    """One caution: what to heed, and who says so."""

    key: str
    text: str
    source: str


@dataclass(frozen=True)
class Cautions:
    """All cautions by key; ``deference`` is the sentence that ends every list of them."""

    by_key: Mapping[str, Caution]
    deference: str

    def texts(self, keys: Iterable[str]) -> tuple[str, ...]:
        """Return the sentences of some cautions, without repeats, in the order asked for."""
        return tuple(self.by_key[key].text for key in dict.fromkeys(keys))

    def whole(self, keys: Iterable[str]) -> tuple[str, ...]:
        """Return the sentences with the deference at the end, for the head of a worklist."""
        return (*self.texts(keys), self.deference)


def read_cautions(text: str) -> Cautions:
    """Read the cautions (TOML text). Raises Refusal when one has no text or no source."""
    table = tomllib.loads(text)
    deference = str(table.pop("deference"))
    return Cautions({key: _caution(key, entry) for key, entry in table.items()}, deference)


def _caution(key: str, entry: Mapping[str, object]) -> Caution:
    if not entry.get("text") or not entry.get("source"):
        raise Refusal(f"The caution “{key}” lacks its text or its source; give both.")
    return Caution(key, str(entry["text"]), str(entry["source"]))
