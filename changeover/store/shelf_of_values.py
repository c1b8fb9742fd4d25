"""Keeping values of one sort in one table: read them, put them, remove them, with history."""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Any, Generic, TypeVar

from sqlalchemy import select
from sqlalchemy.orm import Session

from changeover.planter.names import folded
from changeover.quantities import Refusal
from changeover.store.base import Counted
from changeover.store.journal import Journal, differing, in_words
from changeover.store.refusals import Conflict

Kept = TypeVar("Kept")
Key = tuple[Any, ...]


@dataclass(frozen=True)
class Sort(Generic[Kept]):
    """A sort of value: its class, its table, what it is called, and the fields that are its key."""

    value: type[Kept]
    table: type[Counted]
    what: str
    key: tuple[str, ...]

    def key_of(self, value: Kept) -> Key:
        return tuple(getattr(value, name) for name in self.key)


class Values(Generic[Kept]):
    """The values of one sort in a store."""

    def __init__(self, session: Session, journal: Journal | None, sort: Sort[Kept]) -> None:
        self._session, self._journal, self._sort = session, journal, sort

    def all(self) -> tuple[Kept, ...]:
        """Return every value, sorted by key."""
        columns = [getattr(self._sort.table, name) for name in self._sort.key]
        rows = self._session.scalars(select(self._sort.table).order_by(*columns))
        return tuple(self._value(row) for row in rows)

    def entered(self) -> tuple[Kept, ...]:
        """Return every value in the order in which they were entered."""
        rows = self._session.scalars(select(self._sort.table).order_by(self._sort.table.id))
        return tuple(self._value(row) for row in rows)

    def find(self, key: Key) -> Kept | None:
        """Return the value with a key, or None."""
        row = self._row(key)
        return None if row is None else self._value(row)

    def get(self, *key: Any) -> Kept:
        """Return the value with a key. Raises Refusal when there is none."""
        found = self.find(key)
        if found is None:
            other = self._alike(key, but=None)
            hint = "check the name" if other is None else f"it is written “{in_words(other)}”"
            raise Refusal(f"There is no {self._sort.what} “{in_words(key)}” in this store; {hint}.")
        return found

    def put(self, value: Kept | None, before: Kept | None) -> None:
        """Add (``before`` None), change, or remove (``value`` None) a value.

        Raises Conflict when what is stored is not ``before``, Refusal when a new value's key is
        taken, or differs from another in capitals and blanks alone.
        """
        if before is None:
            if value is not None:
                self._add(value)
            return
        row = self._row(self._sort.key_of(before))
        stored = None if row is None else self._value(row)
        if row is None or stored != before:
            name = in_words(self._sort.key_of(before))
            raise Conflict(f"{self._title} {name}", *differing(value, stored, before), stored)
        if value is None:
            self._session.delete(row)
        else:
            self._refuse_taken(value, before)
            for name, content in self._columns(value).items():
                setattr(row, name, content)
        self._session.flush()
        self._note(before, value)

    def _add(self, value: Kept) -> None:
        self._refuse_taken(value, None)
        self._session.add(self._sort.table(**self._columns(value)))
        self._session.flush()
        self._note(None, value)

    def _refuse_taken(self, value: Kept, before: Kept | None) -> None:
        key = self._sort.key_of(value)
        own = None if before is None else self._sort.key_of(before)
        if key == own:
            return
        if self._row(key) is not None:
            name = in_words(key)
            raise Refusal(f"{self._title} “{name}” is there already; choose another name.")
        other = self._alike(key, but=own)
        if other is not None:
            raise Refusal(
                f"{self._title} “{in_words(other)}” is there already, and “{in_words(key)}” "
                "differs in capitals or blanks alone; use that one or choose another name."
            )

    def _alike(self, key: Key, but: Key | None) -> Key | None:
        """Return a stored key that differs from one in capitals and blanks alone, or None."""
        columns = [getattr(self._sort.table, name) for name in self._sort.key]
        wanted = _folded(key)
        stored = (tuple(row) for row in self._session.execute(select(*columns)))
        return next((one for one in stored if one != but and _folded(one) == wanted), None)

    def _note(self, before: Kept | None, value: Kept | None) -> None:
        if self._journal is not None:
            one = value if value is not None else before
            name = in_words(self._sort.key_of(one)) if one is not None else ""
            planter = str(getattr(one, "planter", None) or "")
            what = f"{self._sort.what} {name}"
            self._journal.note_fields(what, before, value, planter=planter)

    @property
    def _title(self) -> str:
        return self._sort.what[0].upper() + self._sort.what[1:]

    def _row(self, key: Key) -> Counted | None:
        table = self._sort.table
        wanted = [
            getattr(table, name).is_(None) if one is None else getattr(table, name) == one
            for name, one in zip(self._sort.key, key, strict=True)
        ]
        return self._session.scalars(select(table).where(*wanted)).one_or_none()

    def _value(self, row: Counted) -> Kept:
        return self._sort.value(**{f.name: getattr(row, f.name) for f in _fields(self._sort.value)})

    def _columns(self, value: Kept) -> Mapping[str, Any]:
        return {f.name: getattr(value, f.name) for f in _fields(self._sort.value)}


def _folded(key: Key) -> Key:
    return tuple(folded(one) if type(one) is str else one for one in key)


def _fields(value: Any) -> Any:
    return fields(value)
