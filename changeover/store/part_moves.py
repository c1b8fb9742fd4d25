"""Which part went where, as the history tells it: from the shelf to a planter and back."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from typing import TYPE_CHECKING, Any

from sqlalchemy import select
from sqlalchemy.orm import Session

from changeover.planter.parts import Condition
from changeover.planter.setup import Cell
from changeover.store.history import History
from changeover.store.history_tables import ChangeRow, EntryRow
from changeover.store.journal import Journal
from changeover.store.sqltypes import place_of

if TYPE_CHECKING:
    from changeover.switch.shelf_moves import Swap


ON, OFF = "shelf to planter", "planter to shelf"
HAD_NONE = "shelf had none"
NOT_COUNTED = "not counted"
_CONDITIONS = frozenset(Condition)


class PartMoves:
    """Notes swaps of parts in the history, and finds where a mounted part came from."""

    def __init__(self, session: Session, journal: Journal | None) -> None:
        self._session, self._journal = session, journal

    def note(self, planter: str, swaps: Mapping[Cell, Swap], kept: Collection[str]) -> None:
        """Note what came off each cell and what went on, with where from and where to.

        ``kept`` are the codes of the parts that the shop counts.
        """
        for cell, swap in swaps.items():
            if swap.off is not None:
                self._note(OFF, swap.off, swap.off_to or NOT_COUNTED, planter, cell)
            if swap.on is not None:
                none = HAD_NONE if swap.on in kept else NOT_COUNTED
                self._note(ON, swap.on_from or none, swap.on, planter, cell)

    def _note(self, what: str, old: str, new: str, planter: str, cell: Cell) -> None:
        if self._journal is not None:
            place = str(cell.place)
            self._journal.note(what, old, new, planter=planter, setting=cell.setting, place=place)

    def mounted_by_tick(
        self, planter: str, since: str
    ) -> Mapping[Cell, tuple[str, Condition | None]]:
        """Return the part that was swapped in last at each cell, and what it was on the shelf.

        Only swaps from ``since`` on count, and only cells where nothing came off afterwards.
        The condition is None when the shelf had none of it, or it is not counted.
        """
        found: dict[Cell, tuple[str, Condition | None]] = {}
        for what, setting, place, old, new in self._lines(planter, since):
            cell = Cell(setting, place_of(place))
            if what == OFF:
                found.pop(cell, None)
            else:
                found[cell] = new, Condition(old) if old in _CONDITIONS else None
        return found

    def _lines(self, planter: str, since: str) -> Iterable[tuple[Any, ...]]:
        names = History(self._session).names(planter)
        query = (
            select(ChangeRow.what, ChangeRow.setting, ChangeRow.place, ChangeRow.old, ChangeRow.new)
            .join(EntryRow, EntryRow.id == ChangeRow.entry_id)
            .where(
                ChangeRow.planter.in_(names),
                ChangeRow.what.in_((ON, OFF)),
                EntryRow.when >= since,
            )
            .order_by(ChangeRow.id)
        )
        yield from (tuple(line) for line in self._session.execute(query))
        for line in self._journal.pending if self._journal is not None else ():
            if line["planter"] in names and line["what"] in (ON, OFF):
                yield tuple(line[key] for key in ("what", "setting", "place", "old", "new"))
