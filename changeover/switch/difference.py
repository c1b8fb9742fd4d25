"""The difference of two setups: every cell that must change, and the state of every row."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property

from changeover.planter.entry import same_value
from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.planter.settings import LOCKED_UP, Kind, Setting, WorkPlace
from changeover.planter.setup import Cell, Setup, Value, applies
from changeover.switch.tasks import Change

ROW_LOCK = "row_lock"
ROW_WORK = (WorkPlace.METER, WorkPlace.ROW_UNIT)


class RowState(StrEnum):
    """How far one row is: as wanted, with work to do, of unknown settings, or locked up."""

    READY = "ready"
    WORK = "work to do"
    UNKNOWN = "not known"
    LOCKED = "locked up"


@dataclass(frozen=True)
class Difference:
    """The cells of a planter that must change, in the order of the settings, then of the places.

    ``rows`` is how many rows the planter has, ``locked`` those that the target keeps up.
    """

    changes: Mapping[Cell, Change]
    rows: int
    locked: frozenset[int]
    states: Mapping[int, RowState]

    @cached_property
    def by_setting(self) -> Mapping[str, tuple[Change, ...]]:
        """The changes of each setting that has any, from the left."""
        found: dict[str, list[Change]] = {}
        for cell, change in self.changes.items():
            found.setdefault(cell.setting, []).append(change)
        return {key: tuple(changes) for key, changes in found.items()}

    @property
    def rows_that_differ(self) -> tuple[int, ...]:
        """The rows with work of their own: at their meter, row unit or hopper."""
        return tuple(sorted({c.place.row for c in self.changes if c.place.row is not None}))

    @property
    def rows_ready(self) -> tuple[int, ...]:
        return tuple(row for row, state in self.states.items() if state is RowState.READY)

    def row_state(self, row: int) -> RowState:
        """Return the state of a row by its meter and row unit. Raises KeyError."""
        return self.states[row]


def work_settings(planter: Planter, settings: tuple[Setting, ...]) -> tuple[Setting, ...]:
    """Return the settings that make work here: shown, never only a record, and on this planter."""
    return tuple(s for s in settings if not (s.hidden or s.record_only) and applies(planter, s))


def locked_rows(planter: Planter, setup: Setup) -> frozenset[int]:
    """Return the rows that a setup locks up."""
    up = (row for row in planter.split_rows if _is_up(setup, row))
    return frozenset(up)


def _is_up(setup: Setup, row: int) -> bool:
    return setup.get(Cell(ROW_LOCK, Place.of_row(row))) == LOCKED_UP


def difference(
    planter: Planter, settings: tuple[Setting, ...], before: Setup, target: Setup
) -> Difference:
    """Return what must change for a planter to go from one setup to another.

    A cell that the target leaves open changes nothing; one that is not known before changes.
    Rows that the target locks up change nothing but their lock. Values of a setting count as
    the same within its tolerance. Hidden and record-only settings make no work.
    """
    locked = locked_rows(planter, target)
    wanted = work_settings(planter, settings)
    places = {scope: planter.places(scope) for scope in {setting.scope for setting in wanted}}
    changes = {
        change.cell: change
        for setting in wanted
        for change in _changes(setting, places[setting.scope], before, target, locked)
    }
    states = _row_states(planter, wanted, changes, locked, _without_disc(places, before, target))
    return Difference(changes, planter.rows, locked, states)


def _changes(
    setting: Setting,
    places: tuple[Place, ...],
    before: Setup,
    target: Setup,
    locked: frozenset[int],
) -> list[Change]:
    found: list[Change] = []
    for place in places:
        cell = Cell(setting.key, place)
        after = target.values.get(cell)
        if after is None or (setting.key != ROW_LOCK and place.row in locked):
            continue
        now = before.values.get(cell)
        if not _same(setting, now, after):
            found.append(Change(cell, now, after, part=setting.kind is Kind.PART))
    return found


def _same(setting: Setting, now: Value | None, after: Value) -> bool:
    """Compare, sparing pint the comparison of a value with itself."""
    if now is after or now is None:
        return now is after
    return same_value(setting, now, after)


def _row_states(
    planter: Planter,
    settings: tuple[Setting, ...],
    changes: Mapping[Cell, Change],
    locked: frozenset[int],
    without_disc: frozenset[int],
) -> dict[int, RowState]:
    own = {s.key for s in settings if s.scope is Scope.ROW and s.work_place in ROW_WORK}
    of_row: dict[int, list[Change]] = {}
    for cell, change in changes.items():
        if cell.place.row is not None and cell.setting in own:
            of_row.setdefault(cell.place.row, []).append(change)
    return {
        row: RowState.LOCKED
        if row in locked and row not in of_row
        else _state(of_row.get(row, []), unknown=row in without_disc)
        for row in planter.row_numbers
    }


def _state(changes: list[Change], *, unknown: bool) -> RowState:
    if any(change.before is not None for change in changes):
        return RowState.WORK
    return RowState.UNKNOWN if changes or unknown else RowState.READY


def _without_disc(
    places: Mapping[Scope, tuple[Place, ...]], before: Setup, target: Setup
) -> frozenset[int]:
    """Return the rows whose disc is neither known nor wanted: they plant nothing as they are.

    Without any target there is no switch, and nothing is asked of a row.
    """
    if not target.values:
        return frozenset()
    cells = (Cell("disc", place) for place in places.get(Scope.ROW, ()))
    return frozenset(
        cell.place.row
        for cell in cells
        if cell.place.row and before.get(cell) is None and target.get(cell) is None
    )


def apply_difference(setup: Setup, change: Difference) -> Setup:
    """Return a setup with every change of a difference made."""
    return setup.with_values({cell: one.after for cell, one in change.changes.items()})
