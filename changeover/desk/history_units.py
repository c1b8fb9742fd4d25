"""History in the units chosen: its lines are kept as they were written and restated when read."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import lru_cache
from types import MappingProxyType

from changeover.planter.settings import Setting
from changeover.quantities import MEASURES, Refusal, Units, read_quantity, show, unit_of
from changeover.store.values import HistoryLine

# What the fields of planters, lots, fields, jobs, parts and the rest measure.
_FIELDS: Mapping[str, str] = MappingProxyType(
    {
        "row_spacing": "row_spacing",
        "hub_spacing_step": "hub_spacing",
        "fan_limit": "pressure",
        "tank_capacity": "volume",
        "depth": "depth_step",
        "drives": "row_length",
        "load_readings": "force",
        "thousand_seed_mass": "thousand_seed_mass",
        **dict.fromkeys(("length", "width", "thickness"), "seed_size"),
        "package_mass": "mass",
        "bulk_density": "bulk_density",
        "lubricant": "mass",
        "area": "area",
        **dict.fromkeys(("altitude", "run_length"), "row_length"),
        "speed": "speed",
        **dict.fromkeys(("seed_rate", "stand"), "seed_rate"),
        "soil_temperature": "temperature",
        **dict.fromkeys(("hole", "seed_from", "seed_to"), "seed_size"),
        "cell_circle": "diameter",
        "hub_zero": "hub_spacing",
        **dict.fromkeys(("low", "high", "new"), "diameter"),
    }
)
_MANUAL = "manual value "
_TOKEN = re.compile(r"(?<![\w.])[+-]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)? [^\s,;=\d][^\s,;=]*")


def in_units(
    lines: Iterable[HistoryLine], settings: Iterable[Setting], units: Units
) -> tuple[HistoryLine, ...]:
    """Return lines of the history with their quantities in the units chosen.

    A change too small to be seen in them stays as it was written.
    """
    measured = {one.key: one.measure for one in settings if one.measure is not None}
    return tuple(_line(line, {**_FIELDS, **measured}, units) for line in lines)


def _line(line: HistoryLine, measures: Mapping[str, str], units: Units) -> HistoryLine:
    key = line.setting
    if line.what.startswith(_MANUAL) and key == "value":
        key = line.what.removeprefix(_MANUAL).split(", ")[1]
    measure = (_FIELDS if line.what == "planter" else measures).get(key)
    if measure is None:
        return line
    old, new = restated(line.old, measure, units), restated(line.new, measure, units)
    return line if old == new else replace(line, old=old, new=new)


@lru_cache(maxsize=4096)
def restated(text: str, measure: str, units: Units) -> str:
    """Return a text with each quantity of a measure in it shown in the units chosen."""
    return _TOKEN.sub(lambda found: _shown(found[0], measure, units), text)


def _shown(token: str, measure: str, units: Units) -> str:
    try:
        quantity = read_quantity(token, measure, units)
    except Refusal:  # a number of notches, or of something else that has no unit
        return token
    unit = unit_of(MEASURES[measure].unit(units))
    text = show(quantity, measure, units)
    same = quantity.units == unit and read_quantity(text, measure, units) != quantity
    return token if same else text  # a figure is not rounded where its unit stays
