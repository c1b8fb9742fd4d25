"""Keeping the list of settings in the user's order: the standard ones and the user's own."""

from collections import Counter
from dataclasses import fields

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from changeover.planter.settings import ALWAYS_THERE, STANDARD, Setting
from changeover.quantities import Refusal
from changeover.store.journal import Journal
from changeover.store.refusals import Conflict
from changeover.store.stock_tables import SettingRow

_COLUMNS = tuple(one.name for one in fields(Setting))


class SettingsList:
    """The settings of a store."""

    def __init__(self, session: Session, journal: Journal | None) -> None:
        self._session, self._journal = session, journal

    def all(self) -> tuple[Setting, ...]:
        """Return every setting in the user's order, hidden ones too."""
        return tuple(_value(row) for row in self._rows())

    def begin(self) -> None:
        """Fill the list of a new store with the standard settings."""
        if self._session.scalar(select(func.count()).select_from(SettingRow)) == 0:
            self._add(STANDARD, 0)

    def put(self, settings: tuple[Setting, ...], before: tuple[Setting, ...]) -> None:
        """Put the whole list in its new order.

        Raises Conflict when the stored list is not ``before``, Refusal when two settings share
        a name or a key, or when one of the settings that are always there is missing.
        """
        rows = {row.key: row for row in self._rows()}
        stored = tuple(_value(row) for row in rows.values())
        if stored != before:
            raise Conflict("The list of settings", _names(settings), _names(stored))
        _check(settings)
        wanted = {setting.key for setting in settings}
        for key, row in rows.items():
            if key not in wanted:
                self._session.delete(row)
        self._session.flush()
        for position, setting in enumerate(settings):
            if setting.key in rows:
                row = rows[setting.key]
                row.position = position
                for name in _COLUMNS:
                    setattr(row, name, getattr(setting, name))
            else:
                self._add((setting,), position)
        self._session.flush()
        self._note(before, settings)

    def _add(self, settings: tuple[Setting, ...], first: int) -> None:
        for position, setting in enumerate(settings, start=first):
            values = {name: getattr(setting, name) for name in _COLUMNS}
            self._session.add(SettingRow(position=position, **values))
        self._session.flush()

    def _rows(self) -> list[SettingRow]:
        query = select(SettingRow).order_by(SettingRow.position, SettingRow.id)
        return list(self._session.scalars(query))

    def _note(self, before: tuple[Setting, ...], settings: tuple[Setting, ...]) -> None:
        if self._journal is None:
            return
        old, new = ({one.key: one for one in some} for some in (before, settings))
        for key in {**old, **new}:
            self._journal.note_fields(f"setting {key}", old.get(key), new.get(key))
        if [key for key in old if key in new] != [key for key in new if key in old]:
            self._journal.note("order of settings", _names(before), _names(settings))


def _value(row: SettingRow) -> Setting:
    return Setting(**{name: getattr(row, name) for name in _COLUMNS})


def _names(settings: tuple[Setting, ...]) -> str:
    return ", ".join(setting.name for setting in settings)


def _check(settings: tuple[Setting, ...]) -> None:
    for what, texts in (
        ("name", [setting.name.strip().casefold() for setting in settings]),
        ("key", [setting.key for setting in settings]),
    ):
        text, times = Counter(texts).most_common(1)[0] if texts else ("", 0)
        if times > 1:
            raise Refusal(f"Two settings share the {what} “{text}”; change one of them.")
    keys = {setting.key for setting in settings}
    for setting in STANDARD:
        if setting.key not in keys:
            how = "" if setting.key in ALWAYS_THERE else "; hide it instead"
            raise Refusal(f"The setting “{setting.name}” is always there{how}.")
