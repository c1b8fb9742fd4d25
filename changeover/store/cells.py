"""Keeping the cells of a planter's as-found and target setups."""

from collections.abc import Callable, Collection, Mapping
from types import MappingProxyType
from typing import Any

from sqlalchemy import bindparam, delete, insert, select, update
from sqlalchemy.orm import Session

from changeover.planter.setup import Cell, Setup, Value
from changeover.quantities import how_many
from changeover.store.journal import Journal, in_words
from changeover.store.machine_tables import CellRow
from changeover.store.planters import Planters
from changeover.store.refusals import Conflict
from changeover.store.sqltypes import place_of
from changeover.store.values import Side

Words = Callable[[Cell, Value | None], str]


def plain_words(_cell: Cell, value: Value | None) -> str:
    """Say a value without knowing its setting: a position is its number."""
    return in_words(value)


class Cells:
    """The as-found and target setups of the planters in a store."""

    def __init__(self, session: Session, journal: Journal | None, planters: Planters) -> None:
        self._session, self._journal, self._planters = session, journal, planters

    def read(self, planter: str, side: Side) -> Setup:
        """Return one setup of a planter. Raises Refusal when there is no such planter."""
        found = self._stored(self._planters.number(planter), side)
        return Setup(MappingProxyType({cell: value for cell, (_, value) in found.items()}))

    def set(
        self,
        planter: str,
        side: Side,
        values: Mapping[Cell, Value | None],
        before: Mapping[Cell, Value | None] | None = None,
        words: Words = plain_words,
    ) -> dict[Cell, Value | None]:
        """Set cells (None empties one) and return what stood in those that changed.

        ``words`` says a value of a cell for the history and for a conflict.
        Raises Conflict when a cell is not what ``before`` says, unless it is already as wanted.
        """
        owner = self._planters.number(planter)
        stored = self._stored(owner, side, {cell.setting for cell in values})
        old = {cell: stored[cell][1] if cell in stored else None for cell in values}
        if before is not None:
            _refuse_conflict(planter, values, before, old, words)
        changed = {cell: new for cell, new in values.items() if old[cell] != new}
        self._write(owner, side, changed, stored)
        if self._journal is not None:
            for cell, new in changed.items():
                self._journal.note(
                    side.value,
                    words(cell, old[cell]),
                    words(cell, new),
                    planter=planter,
                    setting=cell.setting,
                    place=str(cell.place),
                )
        return {cell: old[cell] for cell in changed}

    def replace(self, planter: str, side: Side, values: Mapping[Cell, Value]) -> None:
        """Make a setup hold just these values."""
        gone = {cell: None for cell in self.read(planter, side).values if cell not in values}
        self.set(planter, side, {**gone, **values})

    def _stored(
        self, owner: int, side: Side, settings: Collection[str] | None = None
    ) -> dict[Cell, tuple[int, Value]]:
        query = select(CellRow.id, CellRow.setting, CellRow.place, CellRow.value).where(
            CellRow.planter_id == owner, CellRow.side == side
        )
        if settings is not None:
            query = query.where(CellRow.setting.in_(sorted(settings)))
        return {
            Cell(setting, place_of(place)): (number, value)
            for number, setting, place, value in self._session.execute(query)
        }

    def _write(
        self,
        owner: int,
        side: Side,
        changed: Mapping[Cell, Value | None],
        stored: Mapping[Cell, tuple[int, Value]],
    ) -> None:
        new, altered, gone = [], [], []
        for cell, value in changed.items():
            if cell not in stored:
                new.append(_line(owner, side, cell, value))
            elif value is None:
                gone.append(stored[cell][0])
            else:
                altered.append({"number": stored[cell][0], "content": value})
        if new:
            self._session.execute(insert(CellRow), new)
        if altered:
            table = CellRow.__table__
            self._session.connection().execute(
                update(table)  # type: ignore[arg-type]
                .where(table.c.id == bindparam("number"))
                .values(value=bindparam("content", type_=table.c.value.type)),
                altered,
            )
        if gone:
            self._session.execute(delete(CellRow).where(CellRow.id.in_(gone)))


def _line(owner: int, side: Side, cell: Cell, value: Value | None) -> dict[str, Any]:
    place = str(cell.place)
    return {
        "planter_id": owner,
        "side": side,
        "setting": cell.setting,
        "place": place,
        "value": value,
    }


def _refuse_conflict(
    planter: str,
    values: Mapping[Cell, Value | None],
    before: Mapping[Cell, Value | None],
    old: Mapping[Cell, Value | None],
    words: Words,
) -> None:
    clashes = [cell for cell in values if old[cell] not in (before.get(cell), values[cell])]
    if clashes:
        first, others = clashes[0], len(clashes) - 1
        what = f"{planter}, {first.place.label}, {first.setting.replace('_', ' ')}"
        more = f" and {how_many(others, 'other cell')}" if others else ""
        texts = words(first, values[first]), words(first, old[first])
        raise Conflict(what + more, *texts, {cell: old[cell] for cell in values})
