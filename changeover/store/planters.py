"""Keeping planters: a planter as a value to and from its rows in several tables."""

from collections.abc import Callable
from types import MappingProxyType
from typing import Any

from sqlalchemy import inspect, select
from sqlalchemy.orm import Session, selectinload
from sqlalchemy.orm.attributes import flag_modified

from changeover.planter.drive import Drive, GroundDrive, MotorDrive, MotorKind
from changeover.planter.groups import Group
from changeover.planter.load_reading import LoadReading
from changeover.planter.machine import Planter
from changeover.planter.names import alike
from changeover.planter.scales import DepthScale, DugLine, Index, Position
from changeover.quantities import Refusal
from changeover.store.journal import Journal, differing
from changeover.store.machine_tables import (
    DepthOffsetRow,
    DriveRow,
    GroupRow,
    LoadReadingRow,
    PlanterRow,
    PositionRow,
)
from changeover.store.refusals import Conflict
from changeover.store.sqltypes import place_of

_GROUND = "ground"
_SINGULATOR, _CLOSING = "singulator", "closing"
_PLAIN = (
    *("name", "rows", "row_spacing", "hub_spacing_step", "fan_limit", "sensors_per_controller"),
    *("tank_capacity", "twin_rows"),
)

# The planters read last, by name, with the number and version under which they were read.
Seen = dict[str, tuple[tuple[int, ...], Planter]]


class Planters:
    """The planters of a store."""

    def __init__(self, session: Session, journal: Journal | None, seen: Seen | None = None) -> None:
        self._session, self._journal = session, journal
        self._numbers: dict[str, int] = {}
        self._seen: Seen = seen if seen is not None else {}

    def names(self) -> tuple[str, ...]:
        """Return the names of the planters that are not retired, sorted."""
        query = select(PlanterRow.name).where(~PlanterRow.retired).order_by(PlanterRow.name)
        return tuple(self._session.scalars(query))

    def get(self, name: str) -> Planter:
        """Return a planter. Raises Refusal when there is none of that name, or it is retired."""
        query = select(PlanterRow.id, PlanterRow.version).where(
            PlanterRow.name == name, ~PlanterRow.retired
        )
        standing = self._session.execute(query).one_or_none()
        if standing is None:
            raise self._unknown(name)
        known = self._seen.get(name)
        if known is not None and known[0] == tuple(standing):
            return known[1]
        planter = _value(self.row(name))
        self._seen[name] = (tuple(standing), planter)
        return planter

    def row(self, name: str) -> PlanterRow:
        """Return the row of a planter in use. Raises Refusal."""
        row = self._find(name)
        if row is None or row.retired:
            raise self._unknown(name)
        return row

    def number(self, name: str) -> int:
        """Return the number under which other tables know a planter in use. Raises Refusal."""
        if name not in self._numbers:
            query = select(PlanterRow.id).where(PlanterRow.name == name, ~PlanterRow.retired)
            found = self._session.scalar(query)
            if found is None:
                raise self._unknown(name)
            self._numbers[name] = found
        return self._numbers[name]

    def _unknown(self, name: str) -> Refusal:
        known = ", ".join(self.names()) or "none yet"
        return Refusal(f"There is no planter “{name}” in this store; it has {known}.")

    def put(self, planter: Planter | None, before: Planter | None) -> None:
        """Add, change, rename or (``planter`` None) retire a planter.

        Raises Conflict when the stored one is not ``before``, Refusal for a name that is taken.
        A retired planter of that name comes back with its settings.
        """
        self._numbers.clear()
        self._seen = {}  # what is not committed yet must not be remembered
        if before is None:
            if planter is not None:
                self._add(planter)
            return
        row = self.row(before.name)
        stored = _value(row)
        if stored != before:
            raise Conflict(f"Planter {before.name}", *differing(planter, stored, before), stored)
        if planter is None:
            row.retired = True
        else:
            self._refuse_taken(planter.name, row)
            _fill(self._session, row, planter)
        self._session.flush()
        self._note(before, planter)

    def _add(self, planter: Planter) -> None:
        self._refuse_alike(planter.name)
        row = self._find(planter.name)
        if row is None:
            row = PlanterRow()
            self._session.add(row)
        row.retired = False
        _fill(self._session, row, planter)
        self._session.flush()
        self._note(None, planter)

    def _refuse_taken(self, name: str, row: PlanterRow) -> None:
        other = self._find(name)
        if other is not None and other is not row:
            raise Refusal(f"A planter “{name}” is there already; choose another name.")
        self._refuse_alike(name, but=row.name)

    def _refuse_alike(self, name: str, but: str = "") -> None:
        """Refuse a name that differs from another only in capitals or blanks."""
        for other in self.names():
            if other != but and alike(other, name):
                raise Refusal(f"A planter “{other}” is there already; choose another name.")

    def _find(self, name: str) -> PlanterRow | None:
        query = (
            select(PlanterRow)
            .where(PlanterRow.name == name)
            .options(
                selectinload(PlanterRow.groups),
                selectinload(PlanterRow.drives),
                selectinload(PlanterRow.positions),
                selectinload(PlanterRow.offsets),
                selectinload(PlanterRow.load_readings),
            )
        )
        return self._session.scalars(query).one_or_none()

    def _note(self, before: Planter | None, planter: Planter | None) -> None:
        if self._journal is not None:
            one = planter if planter is not None else before
            name = one.name if one is not None else ""
            self._journal.note_fields("planter", before, planter, planter=name)


def _fill(session: Session, row: PlanterRow, planter: Planter) -> None:
    """Write a planter into its row; what hangs on it is written anew where it differs."""
    stored = _value(row) if inspect(row).persistent else None
    with session.no_autoflush:
        for name in _PLAIN:
            setattr(row, name, getattr(planter, name))
        row.split_rows = tuple(sorted(planter.split_rows))
        row.wheel_track_rows = tuple(sorted(planter.wheel_track_rows))
        row.depth_first, row.depth_step = planter.depth.first, planter.depth.step
        row.depth_count = planter.depth.count
        for name, (content, make) in _HANGING.items():
            if stored is None:
                getattr(row, name).extend(make(planter))
            elif content(stored) != content(planter):
                flag_modified(row, "name")  # counts the version up, though only this hangs on it
                getattr(row, name).clear()
                session.flush()  # old rows go before new ones of the same name come
                getattr(row, name).extend(make(planter))


def _group_rows(planter: Planter) -> list[GroupRow]:
    return [GroupRow(sort=g.sort, name=g.name, rows=g.rows) for g in planter.groups]


def _drive_rows(planter: Planter) -> list[DriveRow]:
    return [_drive_row(name, drive) for name, drive in planter.drives.items()]


def _drive_row(name: str, drive: Drive) -> DriveRow:
    if isinstance(drive, GroundDrive):
        return DriveRow(
            group_name=name,
            kind=_GROUND,
            ratio=drive.ratio,
            driver=drive.driver,
            driven=drive.driven,
            rolling_circumference=drive.rolling_circumference,
            slip=drive.slip,
        )
    return DriveRow(
        group_name=name,
        kind=drive.kind.value,
        ratio=drive.ratio,
        least_speed=drive.least_speed,
        most_speed=drive.most_speed,
        displacement=drive.displacement,
    )


def _position_rows(planter: Planter) -> list[PositionRow]:
    return [
        PositionRow(scale=scale, number=number, name=one.name, open_share=one.open_share)
        for scale, index in ((_SINGULATOR, planter.singulator), (_CLOSING, planter.closing))
        for number, one in enumerate(index.positions, start=1)
    ]


def _offset_rows(planter: Planter) -> list[DepthOffsetRow]:
    return [_offset_row(planter.depth, row) for row in sorted(planter.depth.offsets)]


def _offset_row(scale: DepthScale, row: int) -> DepthOffsetRow:
    dug = scale.digs.get(row)
    return DepthOffsetRow(
        row=row,
        offset=scale.offsets[row],
        step=scale.steps.get(row),
        digs=dug.digs if dug else None,
        middle=dug.middle if dug else None,
        squares=dug.squares if dug else None,
        spread=dug.spread if dug else None,
    )


def _reading_rows(planter: Planter) -> list[LoadReadingRow]:
    return [
        LoadReadingRow(place=str(one.place), setting=one.setting, load=one.load)
        for one in planter.load_readings
    ]


_Content = Callable[[Planter], Any]
_HANGING: dict[str, tuple[_Content, Callable[[Planter], list[Any]]]] = {
    "groups": (lambda planter: planter.groups, _group_rows),
    "drives": (lambda planter: planter.drives, _drive_rows),
    "positions": (lambda planter: (planter.singulator, planter.closing), _position_rows),
    "offsets": (
        lambda planter: (planter.depth.offsets, planter.depth.steps, planter.depth.digs),
        _offset_rows,
    ),
    "load_readings": (lambda planter: planter.load_readings, _reading_rows),
}


def _value(row: PlanterRow) -> Planter:
    return Planter(
        groups=tuple(Group(one.sort, one.name, one.rows) for one in row.groups),
        drives=MappingProxyType({one.group_name: _drive(one) for one in row.drives}),
        split_rows=frozenset(row.split_rows),
        wheel_track_rows=frozenset(row.wheel_track_rows),
        load_readings=tuple(
            LoadReading(place_of(one.place), one.setting, one.load) for one in row.load_readings
        ),
        depth=_depth(row),
        singulator=_index(row, _SINGULATOR),
        closing=_index(row, _CLOSING),
        **{name: getattr(row, name) for name in _PLAIN},
    )


def _depth(row: PlanterRow) -> DepthScale:
    steps = {one.row: one.step for one in row.offsets if one.step is not None}
    digs = {
        one.row: DugLine(one.digs, one.middle, one.squares or 0.0, one.spread)
        for one in row.offsets
        if one.digs is not None and one.middle is not None
    }
    return DepthScale(
        row.depth_first,
        row.depth_step,
        row.depth_count,
        MappingProxyType({one.row: one.offset for one in row.offsets}),
        MappingProxyType(steps),
        MappingProxyType(digs),
    )


def _index(row: PlanterRow, scale: str) -> Index:
    named = [Position(p.name, p.open_share) for p in row.positions if p.scale == scale]
    return Index(tuple(named))


def _drive(row: DriveRow) -> Drive:
    if row.kind == _GROUND:
        if row.rolling_circumference is None:
            raise Refusal(
                f"Drive “{row.group_name}” has no rolling circumference; the store is damaged."
            )
        return GroundDrive(
            row.driver or (),
            row.driven or (),
            row.rolling_circumference,
            row.ratio,
            row.slip or 0.0,
        )
    if row.least_speed is None or row.most_speed is None:
        raise Refusal(f"Drive “{row.group_name}” has no motor speeds; the store is damaged.")
    return MotorDrive(
        MotorKind(row.kind), row.ratio, row.least_speed, row.most_speed, row.displacement
    )
