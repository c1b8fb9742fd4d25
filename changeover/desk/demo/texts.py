"""Reading the demo's text files into plain values of the trade."""

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import fields
from types import MappingProxyType
from typing import Any, TypeVar

from changeover.bundled import bundled
from changeover.planter.drive import Drive, GroundDrive, MotorDrive, MotorKind
from changeover.planter.entry import read_value
from changeover.planter.groups import Group
from changeover.planter.machine import Planter
from changeover.planter.parts import Condition, Meter, Part, ShelfCount
from changeover.planter.places import Scope
from changeover.planter.scales import DepthScale
from changeover.planter.settings import Kind, Setting, WorkPlace
from changeover.planter.setup import Cell, Value, applies
from changeover.quantities import Q, Quantity, Refusal, read_quantity
from changeover.seed.fields import Field, Moisture, Texture, Tillage
from changeover.seed.lots import Purity, SeedLot, Treatment
from changeover.store.values import PlannedJob

Table = Mapping[str, Any]
Made = TypeVar("Made")

_MEASURES = {
    "thousand_seed_mass": "thousand_seed_mass",
    "length": "seed_size",
    "width": "seed_size",
    "thickness": "seed_size",
    "package_mass": "mass",
    "area": "area",
    "speed": "speed",
    "seed_rate": "seed_rate",
    "stand": "seed_rate",
    "row_spacing": "row_spacing",
    "soil_temperature": "temperature",
    "hole": "seed_size",
    "cell_circle": "diameter",
    "hub_spacing_step": "hub_spacing",
    "fan_limit": "pressure",
    "tank_capacity": "volume",
    "bulk_density": "bulk_density",
    "lubricant": "mass",
    "run_length": "row_length",
    "altitude": "row_length",
    "rolling_circumference": "diameter",
    "least_speed": "disc_speed",
    "most_speed": "disc_speed",
}
_CHOICES: Mapping[str, type] = {
    "kind": Kind,
    "scope": Scope,
    "work_place": WorkPlace,
    "treatment": Treatment,
    "purity": Purity,
    "texture": Texture,
    "moisture": Moisture,
    "tillage": Tillage,
}


def demo_table(name: str) -> Table:
    """Return one of the demo's text files. Raises Refusal when it cannot be read."""
    path = bundled("resources", "demo", f"{name}.toml")
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except tomllib.TOMLDecodeError as error:
        raise Refusal(f"{path.name} cannot be read ({error}); restore it.") from error


def made(kind: type[Made], table: Table) -> Made:
    """Return a value of one kind from a table whose keys are its fields."""
    known = {one.name for one in fields(kind)}  # type: ignore[arg-type]
    return kind(**{key: _content(key, text) for key, text in table.items() if key in known})


def _content(key: str, text: Any) -> Any:
    if key in _MEASURES:
        return read_quantity(text, _MEASURES[key], what=key)
    if key in _CHOICES:
        return _CHOICES[key](text)
    if key == "suits":
        return frozenset(text)
    return tuple(text) if isinstance(text, list) else text


def own_settings(shop: Table) -> tuple[Setting, ...]:
    """Return the demo's own settings."""
    return tuple(made(Setting, {**table, "own": True}) for table in shop["setting"])


def parts_and_shelf(shop: Table) -> tuple[tuple[Part, ...], tuple[ShelfCount, ...]]:
    """Return the parts and what lies of them on the shelf."""
    parts = tuple(made(Part, table) for table in shop["part"])
    shelf = tuple(
        ShelfCount(table["code"], Condition(condition), count, where)
        for table in shop["part"]
        for condition, count, where in table.get("shelf", ())
    )
    return parts, shelf


def lots(shop: Table) -> tuple[SeedLot, ...]:
    """Return the seed lots."""
    return tuple(made(SeedLot, table) for table in shop["lot"])


def fields_of(shop: Table) -> tuple[Field, ...]:
    """Return the fields."""
    return tuple(made(Field, table) for table in shop["field"])


def jobs(shop: Table) -> tuple[PlannedJob, ...]:
    """Return the field jobs of the season."""
    return tuple(made(PlannedJob, table) for table in shop["job"])


def planter(table: Table) -> Planter:
    """Return a planter from its table."""
    rows = int(table["rows"])
    groups = tuple(_group(one) for one in table["group"])
    drive = _drive(table)
    names = [group.name for group in groups if group.sort is Scope.DRIVE]
    depth = table["depth"]
    offsets = {int(row): _depth(text) for row, text in depth.get("offsets", {}).items()}
    more = {key: table[key] for key in ("sensors_per_controller", "twin_rows") if key in table}
    if "tank_capacity" in table:
        more["tank_capacity"] = _content("tank_capacity", table["tank_capacity"])
    return Planter(
        name=table["name"],
        rows=rows,
        row_spacing=_content("row_spacing", table["row_spacing"]),
        groups=groups,
        drives=MappingProxyType(dict.fromkeys(names, drive)),
        split_rows=frozenset(range(2, rows, 2)) if table.get("split") else frozenset(),
        depth=DepthScale(
            _depth(depth["first"]), _depth(depth["step"]), depth["count"], MappingProxyType(offsets)
        ),
        hub_spacing_step=_content("hub_spacing_step", table["hub_spacing_step"]),
        fan_limit=_content("fan_limit", table["fan_limit"]),
        wheel_track_rows=frozenset(table.get("wheel_track_rows", ())),
        **more,
    )


def _group(table: Table) -> Group:
    low, high = table["rows"]
    return Group(Scope(table["sort"]), table["name"], tuple(range(low, high + 1)))


def _depth(text: str) -> Quantity:
    return read_quantity(text, "depth", what="depth")


def _drive(table: Table) -> Drive:
    if "ground_drive" in table:
        return made(GroundDrive, table["ground_drive"])
    motor = dict(table["motor_drive"])
    displacement = motor.pop("displacement", None)
    return MotorDrive(
        MotorKind(motor.pop("kind")),
        motor.pop("ratio"),
        **{key: _content(key, text) for key, text in motor.items()},
        displacement=Q(displacement) if displacement else None,
    )


def meters(table: Table) -> tuple[Meter, ...]:
    """Return the meters of a planter's table: one on each row, zeros in turn as listed."""
    zeros = table["hub_zeros"]
    return tuple(
        Meter(
            serial=table["serials"] % row,
            planter=table["name"],
            row=row,
            hub_zero=read_quantity(zeros[(row - 1) % len(zeros)], "hub_spacing", what="hub zero"),
            hours=table["hours"],
        )
        for row in range(1, table["rows"] + 1)
    )


def cells(
    machine: Planter, settings: Iterable[Setting], values: Table, at: Table
) -> dict[Cell, Value]:
    """Return the cells of a setup: ``values`` for every place, ``at`` for one place each."""
    found: dict[Cell, Value] = {}
    for setting in settings:
        if not applies(machine, setting):
            continue
        for place in machine.places(setting.scope):
            text = at.get(str(place), {}).get(setting.key, values.get(setting.key))
            value = read_value(setting, machine, place, text) if text else None
            if value is not None:
                found[Cell(setting.key, place)] = value
    return found


def above_zero(text: str, meter: Meter) -> Quantity:
    """Return the hub spacing that lies this far above a meter's own zero."""
    above = read_quantity(text, "hub_spacing", what="hub spacing")
    zero = meter.hub_zero if meter.hub_zero is not None else Q(0.0, "mm")
    return Q(round(float((above + zero).to("mm").magnitude), 3), "mm")
