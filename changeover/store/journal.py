"""The history: one entry for each transaction, one line for each thing that changed."""

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from enum import StrEnum
from typing import Any

from sqlalchemy import insert
from sqlalchemy.orm import Session

from changeover.planter.places import Place
from changeover.quantities import is_quantity, unit_sign

MOST_LISTED = 64  # as many as a planter has rows; longer lists are counted
MOST_SIGNS, REMOVED = 60, "removed"


def in_words(value: Any) -> str:
    """Return a value as history keeps it: a text for people, empty for nothing."""
    if value is None:
        return ""
    if is_quantity(value):
        sign = unit_sign(f"{value.units:~C}".replace("**", "^"))
        return f"{value.magnitude:g} {sign}".rstrip()
    if isinstance(value, StrEnum):
        return value.value
    if isinstance(value, bytes):
        return f"{len(value)} bytes"
    if isinstance(value, Place):
        return value.label
    if isinstance(value, frozenset):
        return ", ".join(sorted(in_words(one) for one in value))
    if hasattr(value, "in_brief"):
        return str(value.in_brief)
    if isinstance(value, tuple) and len(value) > MOST_LISTED:
        return f"{len(value)} entries"
    if isinstance(value, tuple):
        return ", ".join(in_words(one) for one in value)
    if isinstance(value, dict) or hasattr(value, "items"):
        return ", ".join(f"{key}: {in_words(one)}" for key, one in value.items())
    if is_dataclass(value):
        named = ((f.name, getattr(value, f.name)) for f in fields(value))
        return ", ".join(f"{name} {in_words(one)}" for name, one in named if one is not None)
    return str(value)


def differing(mine: Any, stored: Any, before: Any) -> tuple[str, str]:
    """Return the texts of two values of one thing, told by the fields in which they differ.

    A value that is gone is ``removed``, and the other is told by what changed in it ``before``.
    """
    if mine is None or stored is None:
        there = stored if mine is None else mine
        words = REMOVED if there is None else _told(there, _other_fields(there, before))
        return (REMOVED, words) if mine is None else (words, REMOVED)
    names = _other_fields(mine, stored)
    return _told(mine, names), _told(stored, names)


def _other_fields(one: Any, other: Any) -> tuple[str, ...]:
    names = tuple(each.name for each in fields(one))
    if type(one) is not type(other):
        return names
    return tuple(name for name in names if getattr(one, name) != getattr(other, name))


def _told(value: Any, names: tuple[str, ...]) -> str:
    told = ((name.replace("_", " "), in_words(getattr(value, name))) for name in names)
    return ", ".join(f"{name} {_clipped(words) or 'empty'}" for name, words in told) or "as it was"


def _clipped(words: str) -> str:
    return words if len(words) <= MOST_SIGNS else f"{words[: MOST_SIGNS - 1]}…"


class Journal:
    """Collects the changes of one unit of work and writes them as one entry."""

    def __init__(self, session: Session, who: str, why: str, when: str) -> None:
        self._session = session
        self.who, self.why, self.when = who, why, when
        self._lines: list[dict[str, Any]] = []
        self.entry = 0

    def note(
        self,
        what: str,
        old: Any,
        new: Any,
        *,
        planter: str = "",
        setting: str = "",
        place: str = "",
    ) -> None:
        """Note one change; ``old`` and ``new`` are values, None for nothing."""
        words = {"old": in_words(old), "new": in_words(new)}
        where = {"planter": planter, "setting": setting, "place": place}
        self._lines.append({"what": what, **where, **words})

    def note_fields(self, what: str, old: Any, new: Any, *, planter: str = "") -> None:
        """Note each field in which two dataclass values differ; one of them may be None."""
        shape = old if old is not None else new
        for one in fields(shape):
            before = getattr(old, one.name) if old is not None else None
            after = getattr(new, one.name) if new is not None else None
            if before != after:
                self.note(what, before, after, planter=planter, setting=one.name)

    @property
    def pending(self) -> tuple[Mapping[str, Any], ...]:
        """The lines noted and not yet written."""
        return tuple(self._lines)

    def write(self) -> None:
        """Write what was noted; a unit of work without changes leaves no entry."""
        if not self._lines:
            return
        from changeover.store.history_tables import ChangeRow, EntryRow

        entry = EntryRow(when=self.when, who=self.who, why=self.why)
        self._session.add(entry)
        self._session.flush()
        self.entry = entry.id
        self._session.execute(
            insert(ChangeRow), [{"entry_id": entry.id, **line} for line in self._lines]
        )
        self._lines = []
