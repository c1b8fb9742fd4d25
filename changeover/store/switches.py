"""Keeping switches: the job chosen next, the setup as found before it, and the ticks."""

from collections.abc import Iterable, Mapping
from dataclasses import fields
from functools import cached_property
from types import MappingProxyType
from typing import TYPE_CHECKING

from sqlalchemy import delete, func, insert, select
from sqlalchemy.orm import Session

from changeover.planter.setup import Cell, Setup, Value
from changeover.quantities import Refusal
from changeover.store.journal import Journal
from changeover.store.machine_tables import PlanterRow
from changeover.store.planters import Planters
from changeover.store.sqltypes import place_of
from changeover.store.switch_tables import BeforeRow, SwitchRow, TickRow
from changeover.store.values import NextJob, OpenSwitch
from changeover.switch.tasks import Tick

if TYPE_CHECKING:
    from changeover.store.part_moves import PartMoves

OPEN, CLOSED, ABANDONED = "open", "closed", "abandoned"
_INPUTS = tuple(one.name for one in fields(NextJob))


class Switches:
    """The switches of the planters in a store; at most one of each planter is open."""

    def __init__(self, session: Session, journal: Journal | None, planters: Planters) -> None:
        self._session, self._journal, self._planters = session, journal, planters

    @cached_property
    def part_moves(self) -> "PartMoves":
        from changeover.store.part_moves import PartMoves

        return PartMoves(self._session, self._journal)

    def open(self, planter: str) -> OpenSwitch | None:
        """Return the open switch of a planter, or None."""
        row = self._row(planter, OPEN)
        return None if row is None else self._value(row)

    def last_worked_on(self) -> str | None:
        """Return the planter in use whose open switch was worked on last, None if none is open.

        A switch is worked on when it is begun and with every tick.
        """
        worked = func.max(func.coalesce(TickRow.when, SwitchRow.started))
        query = (
            select(PlanterRow.name)
            .join(SwitchRow, SwitchRow.planter_id == PlanterRow.id)
            .outerjoin(TickRow, TickRow.switch_id == SwitchRow.id)
            .where(SwitchRow.state == OPEN, ~PlanterRow.retired)
            .group_by(PlanterRow.id, PlanterRow.name)
            .order_by(worked.desc(), func.max(SwitchRow.id).desc())
            .limit(1)
        )
        return self._session.scalar(query)

    def require(self, planter: str) -> OpenSwitch:
        """Return the open switch of a planter. Raises Refusal when there is none."""
        found = self.open(planter)
        if found is None:
            raise Refusal(f"{planter}: no next lot is chosen; choose one first.")
        return found

    def number(self, planter: str) -> int:
        """Return the number of a planter's open switch, 0 when none is open."""
        row = self._row(planter, OPEN)
        return 0 if row is None else row.id

    def begin(self, planter: str, switch: OpenSwitch) -> None:
        """Begin a switch, with its ticks if it has any. Raises Refusal when one is open."""
        if self._row(planter, OPEN) is not None:
            raise Refusal(f"{planter}: a switch is open already; sign it off or give it up first.")
        owner = self._planters.number(planter)
        row = SwitchRow(planter_id=owner, state=OPEN, started=switch.started, ended=None)
        _put_job(row, switch.job)
        self._session.add(row)
        self._session.flush()
        self._add_before(row.id, switch.before.values)
        self._add_ticks(row.id, switch.ticks)
        self._note(planter, None, switch.job)
        for tick in switch.ticks:
            self._note_tick(planter, tick, gone=False)

    def choose(self, planter: str, job: NextJob) -> None:
        """Change the job of the open switch; before and ticks stay. Raises Refusal."""
        row = self._require_row(planter)
        old = _job(row)
        _put_job(row, job)
        self._session.flush()
        self._note(planter, old, job)

    def end(self, planter: str, state: str, when: str) -> None:
        """Close or abandon the open switch. Raises Refusal when none is open."""
        row = self._require_row(planter)
        row.state, row.ended = state, when
        self._session.flush()
        if self._journal is not None:
            self._journal.note("switch", OPEN, state, planter=planter)

    def reopen(self, planter: str) -> None:
        """Open the switch that was closed last. Raises Refusal when there is none."""
        row = self._row(planter, CLOSED)
        if row is None or self._row(planter, OPEN) is not None:
            raise Refusal(
                f"{planter}: no signed-off switch can be opened again; choose the lot anew."
            )
        self._open_again(planter, row)

    def restore(self, planter: str, switch: OpenSwitch) -> None:
        """Bring an abandoned switch back, with all that hangs on it. Raises Refusal."""
        row = self._row(planter, ABANDONED)
        if row is None or self._row(planter, OPEN) is not None or self._value(row) != switch:
            self.begin(planter, switch)
        else:
            self._open_again(planter, row)

    def _open_again(self, planter: str, row: SwitchRow) -> None:
        old = row.state
        row.state, row.ended = OPEN, None
        self._session.flush()
        if self._journal is not None:
            self._journal.note("switch", old, OPEN, planter=planter)

    def tick(self, planter: str, ticks: Iterable[Tick]) -> None:
        """Add ticks to the open switch. Raises Refusal when none is open."""
        added = tuple(ticks)
        self._add_ticks(self._require_row(planter).id, added)
        for tick in added:
            self._note_tick(planter, tick, gone=False)

    def go_from(self, planter: str, values: Mapping[Cell, Value | None]) -> None:
        """Let cells of the open switch go from other values than those found when it began.

        So it is after a new plan midway: what was ticked off for the plan before comes off next.
        """
        number = self._require_row(planter).id
        for cell in values:
            self._session.execute(
                delete(BeforeRow).where(
                    BeforeRow.switch_id == number,
                    BeforeRow.setting == cell.setting,
                    BeforeRow.place == str(cell.place),
                )
            )
        known = {cell: value for cell, value in values.items() if value is not None}
        self._add_before(number, known)

    def untick(self, planter: str, ticks: Iterable[Tick]) -> None:
        """Take ticks of the open switch back. Raises Refusal when none is open."""
        number = self._require_row(planter).id
        for tick in ticks:
            self._session.execute(
                delete(TickRow).where(
                    TickRow.switch_id == number,
                    TickRow.task == tick.task,
                    TickRow.place == str(tick.place),
                )
            )
            self._note_tick(planter, tick, gone=True)

    def _add_before(self, number: int, values: Mapping[Cell, Value]) -> None:
        lines = [
            {"switch_id": number, "setting": cell.setting, "place": str(cell.place), "value": value}
            for cell, value in values.items()
        ]
        if lines:
            self._session.execute(insert(BeforeRow), lines)

    def _add_ticks(self, number: int, ticks: Iterable[Tick]) -> None:
        lines = [
            {
                "switch_id": number,
                "task": one.task,
                "place": str(one.place),
                "who": one.who,
                "when": one.when,
            }
            for one in ticks
        ]
        if lines:
            self._session.execute(insert(TickRow), lines)

    def _require_row(self, planter: str) -> SwitchRow:
        row = self._row(planter, OPEN)
        if row is None:
            raise Refusal(f"{planter}: no next lot is chosen; choose one first.")
        return row

    def _row(self, planter: str, state: str) -> SwitchRow | None:
        query = (
            select(SwitchRow)
            .where(SwitchRow.planter_id == self._planters.number(planter), SwitchRow.state == state)
            .order_by(SwitchRow.id.desc())
            .limit(1)
        )
        return self._session.scalars(query).one_or_none()

    def _value(self, row: SwitchRow) -> OpenSwitch:
        cells = self._session.execute(
            select(BeforeRow.setting, BeforeRow.place, BeforeRow.value)
            .where(BeforeRow.switch_id == row.id)
            .order_by(BeforeRow.id)
        )
        before = {Cell(setting, place_of(place)): value for setting, place, value in cells}
        ticks = self._session.execute(
            select(TickRow.task, TickRow.place, TickRow.who, TickRow.when)
            .where(TickRow.switch_id == row.id)
            .order_by(TickRow.id)
        )
        return OpenSwitch(
            job=_job(row),
            before=Setup(MappingProxyType(before)),
            started=row.started,
            ticks=tuple(Tick(task, place_of(p), who, when) for task, p, who, when in ticks),
        )

    def _note(self, planter: str, old: NextJob | None, new: NextJob) -> None:
        if self._journal is not None:
            self._journal.note_fields("next", old, new, planter=planter)

    def _note_tick(self, planter: str, tick: Tick, *, gone: bool) -> None:
        if self._journal is not None:
            old, new = ("done", "open") if gone else ("open", "done")
            self._journal.note(
                "tick", old, new, planter=planter, setting=tick.task, place=str(tick.place)
            )


def _job(row: SwitchRow) -> NextJob:
    return NextJob(**{name: getattr(row, name) for name in _INPUTS})


def _put_job(row: SwitchRow, job: NextJob) -> None:
    for name in _INPUTS:
        setattr(row, name, getattr(job, name))
