"""First start: a new store, and a planter from the short form (rows, spacing, groups, steps)."""

from dataclasses import dataclass, field
from pathlib import Path
from types import MappingProxyType

from changeover.desk.edits import PutPlanter
from changeover.planter.drive import Drive
from changeover.planter.groups import Group, equal_groups
from changeover.planter.machine import (
    DEFAULT_CLOSING,
    DEFAULT_SINGULATOR,
    Planter,
    check_row_count,
)
from changeover.planter.places import GROUP_SORTS, Scope
from changeover.planter.scales import DepthScale, Index
from changeover.quantities import Q, Quantity, Refusal
from changeover.store.opening import Store, open_store


@dataclass(frozen=True)
class ShortForm:
    """What is asked about a new planter; the counts divide the rows evenly, 0 means none.

    ``split`` makes every second row one that can be locked up, as on a planter with a row
    between each pair of main rows. ``drive`` turns every drive group; None when not known yet.
    """

    name: str
    rows: int
    row_spacing: Quantity
    drives: int = 1
    fans: int = 1
    tanks: int = 0
    down_pressures: int = 0
    split: bool = False
    drive: Drive | None = None
    depth_first: Quantity = field(default_factory=lambda: Q(0.5, "in"))
    depth_step: Quantity = field(default_factory=lambda: Q(0.25, "in"))
    depth_count: int = 13
    singulator: Index = DEFAULT_SINGULATOR
    closing: Index = DEFAULT_CLOSING
    hub_spacing_step: Quantity = field(default_factory=lambda: Q(0.1, "mm"))
    fan_limit: Quantity | None = None
    sensors_per_controller: int = 24


def new_store(path: Path) -> Store:
    """Make a store in a file that is not there yet. Raises Refusal."""
    if path.exists():
        raise Refusal(f"There is a file {path.name} already; open it or choose another name.")
    return open_store(path, create=True)


def put_planter(form: ShortForm) -> PutPlanter:
    """Return the edit that adds the planter of a short form. Raises Refusal if impossible."""
    return PutPlanter(planter_from(form))


def planter_from(form: ShortForm) -> Planter:
    """Return the planter of a short form. Raises Refusal for an impossible one."""
    if form.split and form.rows % 2 == 0:
        raise Refusal(
            f"A planter with a row between each pair of main rows has an odd number of rows, "
            f"not {form.rows}; enter {form.rows - 1} or {form.rows + 1}."
        )
    check_row_count(form.rows)
    groups = _groups(form)
    turned = {group.name: form.drive for group in groups if group.sort is Scope.DRIVE}
    drives = {name: drive for name, drive in turned.items() if drive is not None}
    return Planter(
        name=form.name.strip(),
        rows=form.rows,
        row_spacing=form.row_spacing,
        groups=groups,
        drives=MappingProxyType(drives),
        split_rows=frozenset(range(2, form.rows, 2)) if form.split else frozenset(),
        depth=DepthScale(form.depth_first, form.depth_step, form.depth_count),
        singulator=form.singulator,
        closing=form.closing,
        hub_spacing_step=form.hub_spacing_step,
        fan_limit=form.fan_limit,
        sensors_per_controller=form.sensors_per_controller,
    )


def _groups(form: ShortForm) -> tuple[Group, ...]:
    counts = {
        Scope.DRIVE: form.drives,
        Scope.FAN: form.fans,
        Scope.TANK: form.tanks,
        Scope.DOWN_PRESSURE: form.down_pressures,
        Scope.CONTROLLER: -(-form.rows // max(form.sensors_per_controller, 1)),
    }
    return tuple(
        group
        for sort in GROUP_SORTS
        if counts[sort]
        for group in equal_groups(sort, counts[sort], form.rows)
    )
