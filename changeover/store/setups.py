"""Keeping saved setups, which are never overwritten, and reading the proved ones as records."""

from collections import Counter
from datetime import datetime
from types import MappingProxyType

from sqlalchemy import insert, select
from sqlalchemy.orm import Session

from changeover.planter.names import alike
from changeover.planter.setup import Cell, Setup, Value
from changeover.quantities import Refusal
from changeover.seed.manual import ProvedSetup
from changeover.store.journal import Journal
from changeover.store.machine_tables import PlanterRow
from changeover.store.planters import Planters
from changeover.store.sqltypes import place_of
from changeover.store.switch_tables import SetupCellRow, SetupRow
from changeover.store.values import SavedSetup

_COLUMNS = ("name", "saved", "who", "lot", "crop", "field", "note", "proved", "signed")


class Setups:
    """The saved setups of the planters in a store."""

    def __init__(self, session: Session, journal: Journal | None, planters: Planters) -> None:
        self._session, self._journal, self._planters = session, journal, planters

    def of(self, planter: str) -> tuple[SavedSetup, ...]:
        """Return the setups of a planter that are not withdrawn, latest first."""
        rows = self._rows(planter)
        return tuple(self._value(planter, row) for row in rows)

    def get(self, planter: str, name: str) -> SavedSetup:
        """Return one setup. Raises Refusal when the planter has none of that name."""
        return self._value(planter, self._row(planter, name, withdrawn=False))

    def last_signed(self, planter: str) -> SavedSetup | None:
        """Return the setup with which a switch was signed off last, without its cells."""
        row = next((row for row in self._rows(planter) if row.signed), None)
        return None if row is None else self._value(planter, row, cells=False)

    def add(self, saved: SavedSetup) -> None:
        """Save a setup. Raises Refusal for an empty name or one that the planter has already."""
        if not saved.name.strip():
            raise Refusal("The setup has no name; give it one, such as the crop and the field.")
        owner = self._planters.number(saved.planter)
        there = next(
            (row.name for row in self._rows(saved.planter) if alike(row.name, saved.name)), ""
        )
        if there:
            raise Refusal(
                f"{saved.planter} has a setup “{there}” already, and setups are never "
                "overwritten; choose another name."
            )
        row = SetupRow(
            planter_id=owner,
            withdrawn=False,
            seed_diameter=saved.seed_diameter,
            **{name: getattr(saved, name) for name in _COLUMNS},
        )
        self._session.add(row)
        self._session.flush()
        lines = [
            {"setup_id": row.id, "setting": c.setting, "place": str(c.place), "value": value}
            for c, value in saved.setup.values.items()
        ]
        if lines:
            self._session.execute(insert(SetupCellRow), lines)
        self._note(saved.planter, None, saved.name)

    def withdraw(self, planter: str, name: str, *, withdrawn: bool) -> None:
        """Withdraw a setup from the lists or bring it back. Raises Refusal."""
        self._row(planter, name, withdrawn=not withdrawn).withdrawn = withdrawn
        self._session.flush()
        self._note(planter, name if withdrawn else None, None if withdrawn else name)

    def records(self) -> tuple[ProvedSetup, ...]:
        """Return the setups of all planters that proved good, one record for each disc in them."""
        query = (
            select(SetupRow, PlanterRow.name)
            .join(PlanterRow, PlanterRow.id == SetupRow.planter_id)
            .where(SetupRow.proved != "", ~SetupRow.withdrawn)
            .order_by(SetupRow.id)  # not by the clock, which may have been set back
        )
        found: list[ProvedSetup] = []
        for row, planter in self._session.execute(query):
            found.append(_record(self._value(planter, row)))
        return tuple(found)

    def _rows(self, planter: str) -> list[SetupRow]:
        query = (
            select(SetupRow)
            .where(SetupRow.planter_id == self._planters.number(planter), ~SetupRow.withdrawn)
            .order_by(SetupRow.id.desc())
        )
        return list(self._session.scalars(query))

    def _row(self, planter: str, name: str, *, withdrawn: bool) -> SetupRow:
        row = self._find(self._planters.number(planter), name, withdrawn=withdrawn)
        if row is None:
            raise Refusal(f"{planter} has no setup “{name}”; choose one from the list.")
        return row

    def _find(self, owner: int, name: str, *, withdrawn: bool) -> SetupRow | None:
        query = (
            select(SetupRow)
            .where(SetupRow.planter_id == owner, SetupRow.name == name)
            .where(SetupRow.withdrawn.is_(withdrawn))
            .order_by(SetupRow.id.desc())
            .limit(1)
        )
        return self._session.scalars(query).one_or_none()

    def _value(self, planter: str, row: SetupRow, *, cells: bool = True) -> SavedSetup:
        return SavedSetup(
            planter=planter,
            setup=self._cells(row.id) if cells else Setup(),
            seed_diameter=row.seed_diameter,
            **{name: getattr(row, name) for name in _COLUMNS},
        )

    def _cells(self, number: int) -> Setup:
        query = (
            select(SetupCellRow.setting, SetupCellRow.place, SetupCellRow.value)
            .where(SetupCellRow.setup_id == number)
            .order_by(SetupCellRow.id)
        )
        found = {
            Cell(setting, place_of(place)): value
            for setting, place, value in self._session.execute(query)
        }
        return Setup(MappingProxyType(found))

    def _note(self, planter: str, old: str | None, new: str | None) -> None:
        if self._journal is not None:
            self._journal.note("setup", old, new, planter=planter)


def _record(saved: SavedSetup) -> ProvedSetup:
    """Return a proved setup as a record: of each setting the value that most places have."""
    by_setting: dict[str, Counter[str]] = {}
    values: dict[tuple[str, str], Value] = {}
    for cell, value in saved.setup.values.items():
        by_setting.setdefault(cell.setting, Counter())[repr(value)] += 1
        values[cell.setting, repr(value)] = value
    most = {
        setting: values[setting, counts.most_common(1)[0][0]]
        for setting, counts in by_setting.items()
    }
    disc = most.get("disc")
    return ProvedSetup(
        name=saved.name,
        crop=saved.crop or "",
        disc=str(disc) if disc is not None else None,
        seed_diameter=saved.seed_diameter,
        values=MappingProxyType(most),
        planter=saved.planter,
        day=datetime.fromisoformat(saved.saved).date(),
        proved=saved.proved,
    )
