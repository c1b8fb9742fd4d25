"""One planter: its rows, groups, drives, scales and limits."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from changeover.planter.drive import Drive, GroundDrive
from changeover.planter.groups import Group, check_groups
from changeover.planter.load_reading import LoadReading
from changeover.planter.names import check_name
from changeover.planter.places import PLANTER, Place, Scope
from changeover.planter.scales import DepthScale, Index, Position
from changeover.quantities import Q, Quantity, Refusal, check_kind, how_many

MOST_ROWS = 64

DEFAULT_SINGULATOR = Index(
    (
        Position("1/4", 0.25),
        Position("1/2", 0.5),
        Position("3/4", 0.75),
        Position("open", 1.0),
    )
)
DEFAULT_CLOSING = Index.of("float", "1", "2", "3", "4")


def check_row_count(rows: int) -> None:
    """Refuse a number of rows that no planter has. Raises Refusal."""
    if not 1 <= rows <= MOST_ROWS:
        raise Refusal(f"A planter cannot have {how_many(rows, 'row')}; enter 1 to {MOST_ROWS}.")


@dataclass(frozen=True)
class Planter:
    """A planter seen from behind, its rows numbered from the left.

    ``row_spacing`` is the spacing of the main rows; ``split_rows`` are the rows between them
    that can be locked up. On a planter with ``twin_rows`` every two neighbouring rows make a
    pair, and ``row_spacing`` is that of the pairs. ``drives`` is keyed by the name of the drive
    group. ``fan_limit`` is the most vacuum that the fans reach, ``tank_capacity`` the volume of
    each tank or row hopper, both None when not entered. ``wheel_track_rows`` run behind a tire;
    ``load_readings`` are the down-pressure calibration. Raises Refusal when the parts do not
    make one machine.
    """

    name: str
    rows: int
    row_spacing: Quantity
    groups: tuple[Group, ...] = ()
    drives: Mapping[str, Drive] = field(default_factory=lambda: MappingProxyType({}))
    split_rows: frozenset[int] = frozenset()
    depth: DepthScale = field(default_factory=lambda: DepthScale(Q(0.5, "in"), Q(0.25, "in"), 13))
    singulator: Index = DEFAULT_SINGULATOR
    closing: Index = DEFAULT_CLOSING
    hub_spacing_step: Quantity = field(default_factory=lambda: Q(0.1, "mm"))
    fan_limit: Quantity | None = None
    sensors_per_controller: int = 24
    tank_capacity: Quantity | None = None
    wheel_track_rows: frozenset[int] = frozenset()
    twin_rows: bool = False
    load_readings: tuple[LoadReading, ...] = ()

    def __post_init__(self) -> None:
        if not self.name.strip():
            raise Refusal("The planter has no name; give it one.")
        check_name("The planter", self.name)
        check_row_count(self.rows)
        self._check_kinds()
        if not 5 <= self.row_spacing.to("in").magnitude <= 60:
            raise Refusal("The row spacing must be from 5 to 60 in (13 to 152 cm).")
        if self.hub_spacing_step.to("mm").magnitude <= 0:
            raise Refusal("The hub spacing step must be above zero.")
        if self.sensors_per_controller < 1:
            raise Refusal("A controller must read at least one seed sensor.")
        if self.fan_limit is not None and self.fan_limit.to("kPa").magnitude <= 0:
            raise Refusal("The fan limit must be above zero.")
        if self.tank_capacity is not None and not 1 <= self.tank_capacity.to("l").magnitude <= 2e4:
            raise Refusal("A tank or row hopper holds 1 to 20 000 l (0.03 to 570 bu).")
        check_groups(self.groups, self.rows)
        self._check_split_rows()
        self._check_tracks_and_twins()
        self._check_drives()

    def _check_kinds(self) -> None:
        check_kind(self.row_spacing, "row_spacing", f"The row spacing of {self.name}")
        check_kind(self.hub_spacing_step, "hub_spacing", f"The hub spacing step of {self.name}")
        check_kind(self.fan_limit, "pressure", f"The fan limit of {self.name}")
        check_kind(self.tank_capacity, "volume", f"The tank capacity of {self.name}")

    def _check_split_rows(self) -> None:
        for row in sorted(self.split_rows):
            if not 1 <= row <= self.rows:
                there = how_many(self.rows, "row")
                raise Refusal(f"Row {row} cannot be locked up: the planter has {there}.")
        if len(self.split_rows) >= self.rows:
            raise Refusal("At least one row must stay down; not every row can be locked up.")

    def _check_tracks_and_twins(self) -> None:
        for row in sorted(self.wheel_track_rows):
            if not 1 <= row <= self.rows:
                raise Refusal(
                    f"Row {row} cannot run in a wheel track: the planter has "
                    f"{how_many(self.rows, 'row')}."
                )
        if self.twin_rows and (self.split_rows or self.rows % 2):
            raise Refusal("Twin rows come in pairs: their number is even, and none locks up.")
        for reading in self.load_readings:
            self.rows_of(reading.place)

    def _check_drives(self) -> None:
        names = {group.name for group in self.groups_of(Scope.DRIVE)}
        for name in self.drives:
            if name not in names:
                raise Refusal(f"A drive is entered for “{name}”, but no drive group has that name.")

    @property
    def row_numbers(self) -> range:
        return range(1, self.rows + 1)

    @property
    def main_rows(self) -> tuple[int, ...]:
        """The rows that are never locked up."""
        return tuple(row for row in self.row_numbers if row not in self.split_rows)

    @property
    def width(self) -> Quantity:
        """The pass width: main rows times their spacing, whether rows between are down or not.

        Twin rows count by the pair.
        """
        rows = len(self.main_rows) / 2 if self.twin_rows else len(self.main_rows)
        width: Quantity = rows * self.row_spacing
        return width

    @property
    def narrow_spacing(self) -> Quantity:
        """The row spacing with every row down; of twin rows the mean over the pairs."""
        return self.row_spacing / 2 if self.split_rows or self.twin_rows else self.row_spacing

    @property
    def controllers(self) -> int:
        """How many controllers it takes to read a seed sensor on every row."""
        return -(-self.rows // self.sensors_per_controller)

    @property
    def ground_driven(self) -> bool:
        return any(isinstance(drive, GroundDrive) for drive in self.drives.values())

    def groups_of(self, sort: Scope) -> tuple[Group, ...]:
        return tuple(group for group in self.groups if group.sort is sort)

    def scope(self, wanted: Scope) -> Scope:
        """Return the scope that a setting has here.

        A planter without tanks keeps its seed in row hoppers, so tank settings are per row;
        any other sort of group that it lacks is the whole planter's.
        """
        if wanted in (Scope.ROW, Scope.PLANTER) or self.groups_of(wanted):
            return wanted
        return Scope.ROW if wanted is Scope.TANK else Scope.PLANTER

    def places(self, wanted: Scope) -> tuple[Place, ...]:
        """Return every place of a scope, from the left."""
        scope = self.scope(wanted)
        if scope is Scope.ROW:
            return tuple(Place.of_row(row) for row in self.row_numbers)
        if scope is Scope.PLANTER:
            return (PLANTER,)
        return tuple(group.place for group in self.groups_of(scope))

    def place(self, wanted: Scope, row: int) -> Place:
        """Return the place of a scope that holds a row."""
        scope = self.scope(wanted)
        if scope is Scope.ROW:
            return Place.of_row(row)
        if scope is Scope.PLANTER:
            return PLANTER
        return next(group.place for group in self.groups_of(scope) if row in group.rows)

    def rows_of(self, place: Place) -> tuple[int, ...]:
        """Return the rows that a place covers. Raises Refusal when there is no such place."""
        if place.scope is Scope.PLANTER:
            return tuple(self.row_numbers)
        if place.row is not None and place.row in self.row_numbers:
            return (place.row,)
        for group in self.groups_of(place.scope):
            if group.name == place.name:
                return group.rows
        raise Refusal(f"{self.name} has no {place.label}; check the row numbers and groups.")
