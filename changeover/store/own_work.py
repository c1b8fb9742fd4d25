"""Keeping what a person adds to the work of a switch: tasks of their own, and tasks split off."""

from collections.abc import Iterable
from dataclasses import fields
from typing import Any, TypeAlias

from sqlalchemy import select
from sqlalchemy.orm import Session

from changeover.planter.places import Place
from changeover.quantities import Refusal
from changeover.store.journal import Journal, differing
from changeover.store.own_work_tables import OwnTaskRow, SplitRow
from changeover.store.refusals import Conflict
from changeover.store.switches import Switches
from changeover.switch.own_tasks import OwnTask, Split
from changeover.switch.wording import places_text

OwnWork: TypeAlias = OwnTask | Split
_Row: TypeAlias = OwnTaskRow | SplitRow
_TASK = tuple(one.name for one in fields(OwnTask))


class OwnWorkOf:
    """The own tasks and splits of the open switches in a store."""

    def __init__(self, session: Session, journal: Journal | None, switches: Switches) -> None:
        self._session, self._journal, self._switches = session, journal, switches

    def tasks(self, planter: str) -> tuple[OwnTask, ...]:
        """Return the tasks that were added to a planter's open switch, in the order added."""
        number = self._switches.number(planter)
        query = select(OwnTaskRow).where(OwnTaskRow.switch_id == number).order_by(OwnTaskRow.id)
        return tuple(_task(row) for row in self._session.scalars(query))

    def splits(self, planter: str) -> tuple[Split, ...]:
        """Return the splits of a planter's open switch, in the order made."""
        number = self._switches.number(planter)
        query = select(SplitRow).where(SplitRow.switch_id == number).order_by(SplitRow.id)
        return tuple(_split(row) for row in self._session.scalars(query))

    def put(self, planter: str, value: OwnWork | None, before: OwnWork | None) -> None:
        """Add (``before`` None), change, or remove (``value`` None) an own task or a split.

        Raises Conflict when what is stored is not ``before``, Refusal when the name is taken or
        no switch is open.
        """
        self._switches.require(planter)
        if before is not None:
            row = self._row(planter, before)
            stored = None if row is None else _value(row)
            if row is None or stored != before:
                raise Conflict(f"Task {before.name}", *differing(value, stored, before), stored)
            self._session.delete(row)
            self._session.flush()
        if value is not None:
            if self._row(planter, value) is not None:
                raise Refusal(f"“{value.name}” is there already; choose another name.")
            self._session.add(_new(value, self._switches.number(planter)))
            self._session.flush()
        self._note(planter, before, value)

    def _row(self, planter: str, value: OwnWork) -> _Row | None:
        number = self._switches.number(planter)
        if isinstance(value, OwnTask):
            query = select(OwnTaskRow).where(
                OwnTaskRow.switch_id == number, OwnTaskRow.name == value.name
            )
            return self._session.scalars(query).one_or_none()
        splits = select(SplitRow).where(
            SplitRow.switch_id == number,
            SplitRow.family == value.family,
            SplitRow.name == value.name,
        )
        return self._session.scalars(splits).one_or_none()

    def _note(self, planter: str, before: OwnWork | None, value: OwnWork | None) -> None:
        if self._journal is not None:
            one: Any = value if value is not None else before
            if isinstance(one, Split):
                work = one.family.partition(".")[0].replace("_", " ")
                what = f"work at {work} split off for {one.name}"
                self._journal.note(what, _where(before), _where(value), planter=planter)
            else:
                self._journal.note_fields(f"own task {one.name}", before, value, planter=planter)


def _where(split: OwnWork | None) -> str | None:
    """Return the places of a split as history tells them, None when there is none."""
    return places_text(_sorted(split.places)) if split is not None else None


def _sorted(places: Iterable[Place]) -> tuple[Place, ...]:
    return tuple(sorted(places, key=lambda place: (place.row or 0, str(place))))


def _value(row: _Row) -> OwnWork:
    return _task(row) if isinstance(row, OwnTaskRow) else _split(row)


def _task(row: OwnTaskRow) -> OwnTask:
    return OwnTask(**{name: getattr(row, name) for name in _TASK})


def _split(row: SplitRow) -> Split:
    return Split(row.family, row.name, frozenset(row.places))


def _new(value: OwnWork, switch: int) -> _Row:
    if isinstance(value, OwnTask):
        return OwnTaskRow(switch_id=switch, **{name: getattr(value, name) for name in _TASK})
    return SplitRow(
        switch_id=switch, family=value.family, name=value.name, places=_sorted(value.places)
    )
