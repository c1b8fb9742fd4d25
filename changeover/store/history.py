"""Reading the history back: what changed, newest first, under every name a planter had."""

from sqlalchemy import select
from sqlalchemy.orm import Session

from changeover.store.history_tables import ChangeRow, EntryRow
from changeover.store.values import HistoryLine


class History:
    """Reads the history back."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def latest(self, planter: str | None, limit: int) -> tuple[HistoryLine, ...]:
        """Return the newest changes first, of one planter or (None) of the whole store."""
        query = (
            select(
                EntryRow.id.label("entry"),
                EntryRow.when,
                EntryRow.who,
                EntryRow.why,
                ChangeRow.planter,
                ChangeRow.what,
                ChangeRow.setting,
                ChangeRow.place,
                ChangeRow.old,
                ChangeRow.new,
            )
            .join(EntryRow, EntryRow.id == ChangeRow.entry_id)
            .order_by(ChangeRow.id.desc())
            .limit(limit)
        )
        if planter is not None:
            query = query.where(ChangeRow.planter.in_(self.names(planter)))
        lines = self._session.execute(query).mappings()
        return tuple(HistoryLine(**line) for line in lines)

    def names(self, planter: str) -> set[str]:
        """Return every name under which a planter stands in the history."""
        names, found = {planter}, {planter}
        while found:
            query = select(ChangeRow.old).where(
                ChangeRow.what == "planter",
                ChangeRow.setting == "name",
                ChangeRow.old != "",
                ChangeRow.new.in_(found),
            )
            found = set(self._session.scalars(query)) - names
            names |= found
        return names
