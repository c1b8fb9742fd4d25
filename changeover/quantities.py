"""The one registry of units, reading quantities from text, and showing them as US or metric."""

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType
from typing import Any

import pint
from typing_extensions import TypeIs

from changeover.bundled import bundled

ureg: pint.UnitRegistry[Any] = pint.UnitRegistry(str(bundled("resources", "units.txt")))
Quantity = pint.Quantity[Any]
Q = ureg.Quantity


def is_quantity(value: object) -> TypeIs[Quantity]:
    """Say whether a value carries a unit."""
    return isinstance(value, pint.Quantity)


class Refusal(ValueError):
    """Input that is refused; its message is one sentence: what, where and what to do."""


class Units(StrEnum):
    """The two systems in which quantities are shown."""

    US = "us"
    METRIC = "metric"


@dataclass(frozen=True)
class Shown:
    """How one measure is shown: its unit and decimals in each system."""

    us: str
    us_digits: int
    metric: str
    metric_digits: int

    def unit(self, units: Units) -> str:
        return self.us if units is Units.US else self.metric

    def digits(self, units: Units) -> int:
        return self.us_digits if units is Units.US else self.metric_digits


MEASURES: Mapping[str, Shown] = MappingProxyType(
    {
        "row_spacing": Shown("in", 1, "cm", 1),
        "spacing": Shown("in", 2, "cm", 2),
        "depth": Shown("in", 2, "mm", 0),
        "hub_spacing": Shown("in", 3, "mm", 1),
        "seed_size": Shown("mm", 2, "mm", 2),
        "diameter": Shown("in", 2, "mm", 0),
        "row_length": Shown("ft", 1, "m", 2),
        "distance": Shown("mi", 1, "km", 1),
        "area": Shown("acre", 1, "hectare", 1),
        "seed_rate": Shown("seed/acre", 0, "seed/hectare", 0),
        "mass_rate": Shown("lb/acre", 1, "kg/hectare", 1),
        "seeds_per_length": Shown("seed/ft", 2, "seed/m", 2),
        "seeds_per_mass": Shown("seed/lb", 0, "seed/kg", 0),
        "thousand_seed_mass": Shown("g", 1, "g", 1),
        "mass": Shown("lb", 1, "kg", 1),
        "volume": Shown("bu", 1, "l", 0),
        "speed": Shown("mph", 1, "km/h", 1),
        "pressure": Shown("inH2O", 1, "kPa", 2),
        "oil_pressure": Shown("psi", 0, "bar", 0),
        "oil_flow": Shown("gal/min", 2, "l/min", 1),
        "force": Shown("lbf", 0, "N", 0),
        "disc_speed": Shown("rpm", 1, "rpm", 1),
        "seeds_per_second": Shown("seed/s", 1, "seed/s", 1),
        "temperature": Shown("degF", 0, "degC", 0),
        "time": Shown("min", 0, "min", 0),
        "field_capacity": Shown("acre/h", 1, "hectare/h", 1),
        "share": Shown("percent", 1, "percent", 1),
        "count": Shown("count", 0, "count", 0),
    }
)

_UNIT_SIGNS: Mapping[str, str] = MappingProxyType(
    {
        "seed/acre": "seeds/ac",
        "seed/hectare": "seeds/ha",
        "seed/ft": "seeds/ft",
        "seed/m": "seeds/m",
        "seed/lb": "seeds/lb",
        "seed/kg": "seeds/kg",
        "seed/s": "seeds/s",
        "lb/acre": "lb/ac",
        "kg/hectare": "kg/ha",
        "acre": "ac",
        "hectare": "ha",
        "acre/h": "ac/h",
        "hectare/h": "ha/h",
        "inH2O": "inH₂O",
        "degF": "°F",
        "degC": "°C",
        "percent": "%",
        "count": "",
    }
)

NARROW_SPACE = "\u202f"
_THOUSANDS = ",\u2009\u202f\u00a0 "
_FIGURE = rf"[+-]?(?:\d{{1,3}}(?:[{_THOUSANDS}]\d{{3}})+(?:\.\d+)?|\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?"
_FRACTION = re.compile(
    r"(?P<sign>[+-]?)(?:(?P<whole>\d+)[ -]+)?(?P<over>\d+)/(?P<under>[1-9]\d*)(?P<unit>[^\d].*)?"
)
_DECIMAL = re.compile(rf"(?P<figure>{_FIGURE})(?P<unit>.*)")


def _figure_and_unit(text: str) -> tuple[float, str] | None:
    """Split ``1 3/4 in`` into 1.75 and ``in``; None when the text does not begin with a figure."""
    if match := _FRACTION.fullmatch(text):
        size = int(match["whole"] or 0) + int(match["over"]) / int(match["under"])
        return (-size if match["sign"] == "-" else size), (match["unit"] or "").strip()
    if match := _DECIMAL.fullmatch(text):
        value = float(re.sub(f"[{_THOUSANDS}]", "", match["figure"]))
        return (value, match["unit"].strip()) if math.isfinite(value) else None
    return None


def read_quantity(
    text: str, measure: str, units: Units = Units.US, what: str = "value"
) -> Quantity:
    """Read a quantity such as ``1 3/4 in``, ``32 000/acre`` or ``4 kPa`` from text.

    A figure without a unit takes the unit in which ``measure`` is shown in ``units``.
    ``what`` names the input in the message. Raises Refusal when the text holds no figure, an
    unknown unit, or a unit of another kind.
    """
    shown = MEASURES[measure]
    default = shown.unit(units)
    example = f"for example 12.5 {unit_sign(default)}".rstrip()
    parts = _figure_and_unit(text.strip())
    if parts is None:
        raise Refusal(f"{what}: “{text.strip()}” is not a number with a unit; write it {example}.")
    value, unit = parts
    if not unit:
        return Q(value, default)
    try:
        quantity = Q(value, _unit(unit))
        quantity.to(default)
    except pint.DimensionalityError as error:
        raise Refusal(
            f"{what}: “{unit}” is not a unit of {measure.replace('_', ' ')}; write it {example}."
        ) from error
    except Exception as error:  # pint raises many kinds for a unit it cannot read
        raise Refusal(f"{what}: the unit “{unit}” is not known; write it {example}.") from error
    return quantity


def _unit(text: str) -> pint.Unit:
    """Read a unit as people write it, ``/acre`` and ``°F`` included."""
    plain = text.replace("°", "deg")
    if plain.startswith("/") and plain[1:2].isalpha():
        plain = f"count {plain}"
    return ureg.Unit(plain)


def unit_sign(unit: str) -> str:
    """Return the sign under which a unit is shown, ``inH₂O`` for ``inH2O``."""
    return _UNIT_SIGNS.get(unit, unit)


def grouped(value: float, digits: int) -> str:
    """Format a figure with a narrow no-break space between thousands: ``140\u202f000``."""
    text = f"{value:,.{digits}f}".replace(",", NARROW_SPACE)
    return text[1:] if text.startswith("-") and not text.strip("-0. ") else text


def show(quantity: Quantity, measure: str, units: Units, *, sign: bool = True) -> str:
    """Show a quantity in the display units of its measure, with or without the unit sign."""
    shown = MEASURES[measure]
    unit = shown.unit(units)
    text = grouped(float(quantity.to(unit).magnitude), shown.digits(units))
    mark = unit_sign(unit) if sign else ""
    return f"{text} {mark}".rstrip()


def as_json(quantity: Quantity, measure: str, units: Units) -> dict[str, float | str]:
    """Return ``{"value": …, "unit": "…"}`` in the display units of the measure, unrounded."""
    unit = MEASURES[measure].unit(units)
    return {"value": float(quantity.to(unit).magnitude), "unit": unit}
