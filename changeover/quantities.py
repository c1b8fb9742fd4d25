"""The one registry of units, reading quantities from text, and showing them as US or metric."""

import contextlib
import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

import pint
from typing_extensions import TypeIs

from changeover.bundled import bundled

if TYPE_CHECKING:
    from pint.facets.plain import PlainUnit

ureg: pint.UnitRegistry[Any] = pint.UnitRegistry(str(bundled("resources", "units.txt")))
Quantity = pint.Quantity[Any]
Q = ureg.Quantity


@lru_cache(maxsize=256)
def unit_of(text: str) -> pint.Unit:
    """Return the unit of a name that the program itself uses; reading it takes time, so once."""
    return ureg.Unit(text)


@lru_cache(maxsize=1024)
def scale_to(given: "PlainUnit", wanted: "str | PlainUnit") -> float | None:
    """Return how many of the unit wanted one of the unit given is; reckoned once for each pair.

    None where the two count from different zeros, as degrees do. Raises
    ``pint.DimensionalityError`` for units of different kinds.
    """
    unit = unit_of(wanted) if isinstance(wanted, str) else wanted
    zero, one = (Q(figure, given).to(unit).magnitude for figure in (0.0, 1.0))
    return float(one) if zero == 0.0 else None


def figure_of(quantity: "Quantity", wanted: "str | PlainUnit") -> float:
    """Return the figure of one quantity in a unit, its scale reckoned once for all alike.

    Raises ``pint.DimensionalityError`` for a unit of another kind.
    """
    scale = scale_to(quantity.units, wanted)
    if scale is not None:
        return float(quantity.magnitude) * scale
    return float(quantity.to(unit_of(wanted) if isinstance(wanted, str) else wanted).magnitude)


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
        "depth_step": Shown("in", 3, "mm", 2),
        "hub_spacing": Shown("in", 3, "mm", 1),
        "seed_size": Shown("mm", 2, "mm", 2),
        "diameter": Shown("in", 2, "mm", 0),
        "row_length": Shown("ft", 1, "m", 2),
        "distance": Shown("mi", 1, "km", 1),
        "area": Shown("acre", 1, "hectare", 1),
        "test_area": Shown("ft^2", 0, "m^2", 1),
        "seed_rate": Shown("seed/acre", 0, "seed/hectare", 0),
        "mass_rate": Shown("lb/acre", 1, "kg/hectare", 1),
        "seeds_per_length": Shown("seed/ft", 2, "seed/m", 2),
        "seeds_per_mass": Shown("seed/lb", 0, "seed/kg", 0),
        "thousand_seed_mass": Shown("g", 1, "g", 1),
        "mass": Shown("lb", 1, "kg", 1),
        "volume": Shown("bu", 1, "l", 0),
        "bulk_density": Shown("lb/bu", 1, "kg/m^3", 0),
        "displacement": Shown("in^3", 2, "cm^3", 1),
        "ratio": Shown("count", 3, "count", 3),
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
        "kg/m^3": "kg/m³",
        "in^3": "in³",
        "ft^2": "ft²",
        "m^2": "m²",
        "cm^3": "cm³",
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

# What is written of each measure on a farm, in either system: the examples in refusals.
_EXAMPLES: Mapping[str, tuple[str, str]] = MappingProxyType(
    {
        "row_spacing": ("30 in", "75 cm"),
        "spacing": ("6.5 in", "16.5 cm"),
        "depth": ("1.75 in", "45 mm"),
        "depth_step": ("0.25 in", "6.35 mm"),
        "hub_spacing": ("0.05 in", "1.2 mm"),
        "seed_size": ("7.5 mm", "7.5 mm"),
        "diameter": ("8 in", "200 mm"),
        "row_length": ("17.5 ft", "5.3 m"),
        "distance": ("5 mi", "8 km"),
        "area": ("80 ac", "32 ha"),
        "test_area": ("50 ft²", "5 m²"),
        "seed_rate": ("32000 seeds/ac", "79000 seeds/ha"),
        "mass_rate": ("50 lb/ac", "56 kg/ha"),
        "seeds_per_length": ("1.8 seeds/ft", "6 seeds/m"),
        "seeds_per_mass": ("1600 seeds/lb", "3500 seeds/kg"),
        "thousand_seed_mass": ("280 g", "280 g"),
        "mass": ("50 lb", "25 kg"),
        "volume": ("40 bu", "1400 l"),
        "bulk_density": ("56 lb/bu", "720 kg/m³"),
        "displacement": ("2.5 in³", "41 cm³"),
        "ratio": ("2.5", "2.5"),
        "speed": ("5 mph", "8 km/h"),
        "pressure": ("15 inH₂O", "4 kPa"),
        "oil_pressure": ("2000 psi", "140 bar"),
        "oil_flow": ("8 gal/min", "30 l/min"),
        "force": ("150 lbf", "700 N"),
        "disc_speed": ("27 rpm", "27 rpm"),
        "seeds_per_second": ("14 seeds/s", "14 seeds/s"),
        "temperature": ("50 °F", "10 °C"),
        "time": ("30 min", "30 min"),
        "field_capacity": ("13 ac/h", "5 ha/h"),
        "share": ("95 %", "95 %"),
        "count": ("12", "12"),
    }
)
# What kind of thing a measure is, where its own name says less than that.
_KINDS: Mapping[str, str] = MappingProxyType(
    {"row_length": "length", "disc_speed": "turning speed", "seed_size": "size"}
)

NARROW_SPACE = "\u202f"
# Each noun counts one kind of thing, so that bags per acre are never taken for seeds per acre.
_NOUNS: Mapping[str, str] = MappingProxyType(
    {
        "seed": "seed",
        "cell": "cell",
        "package": "package",
        "pulse": "pulse",
        "percent": "percent",
        "turn": "turn",
        "revolutions_per_minute": "turn",
    }
)

_FIGURE = r"[+-]?(?:[0-9]{1,3}(?:[, ][0-9]{3})+(?:\.[0-9]+)?|[0-9]+(?:\.[0-9]*)?|\.[0-9]+)"
_DECIMAL = re.compile(rf"(?P<figure>{_FIGURE}(?:[eE][+-]?[0-9]+)?)(?P<unit>(?![0-9.,]).*)")
_FRACTION = re.compile(
    r"(?P<sign>[+-]?)(?:(?P<whole>[0-9]+)[ -]+)?(?P<over>[0-9]+)/(?P<under>[0-9]+)"
    r"(?P<unit>[^0-9.,].*)?"
)
_NAME = r"(?:1|[^\W\d_]+(?:2O)?|°[CF]|%)(?:\^-?[1-4])?"
_UNIT = re.compile(rf"{_NAME}(?:(?: ?[/*·] ?| per | ){_NAME})*")
_PLAIN = dict.fromkeys("\u00a0\u2007\u2009\u202f\t\r\n", " ") | {
    "\u2212": "-",
    "\u2044": "/",
    "\u03bc": "µ",
    "²": "^2",
    "³": "^3",
    "₂": "2",
    **{sign: f" {over}/8" for sign, over in zip("⅛¼⅜½⅝¾⅞", range(1, 8), strict=True)},
}
_MARKS = {'"': "in", "″": "in", "”": "in", "'": "ft", "′": "ft", "’": "ft"}


def _figure_and_unit(text: str) -> tuple[float, str] | None:
    """Split ``1 3/4 in`` into 1.75 and ``in``; None when the text does not begin with a figure."""
    if match := _FRACTION.fullmatch(text):
        over, under = float(match["over"]), float(match["under"])
        if under == 0 or (match["whole"] and over >= under):
            return None
        size = float(match["whole"] or 0) + over / under
        value, unit = (-size if match["sign"] == "-" else size), match["unit"] or ""
    elif match := _DECIMAL.fullmatch(text):
        value, unit = float(re.sub("[, ]", "", match["figure"])), match["unit"]
    else:
        return None
    return (value, unit.strip()) if math.isfinite(value) else None


def read_quantity(
    text: str, measure: str, units: Units = Units.US, what: str = "value"
) -> Quantity:
    """Read a quantity such as ``1 3/4 in``, ``32 000/acre`` or ``4 kPa`` from text.

    A figure without a unit takes the unit in which ``measure`` is shown in ``units``.
    ``what`` names the input in the message. Raises Refusal when the text holds no figure, an
    unknown unit, or a unit of another kind, such as bags where seeds are counted.
    """
    default = unit_of(MEASURES[measure].unit(units))
    example = _example(measure, units)
    plain = " ".join("".join(_PLAIN.get(sign, sign) for sign in text).split())
    parts = _figure_and_unit(plain)
    if parts is None:
        raise Refusal(f"{what}: “{_clipped(text)}” is not a number with a unit; {example}.")
    value, written = parts
    if not written:
        return Q(value, default)
    unit = _unit(written)
    if unit is None:
        raise Refusal(f"{what}: the unit “{_clipped(written)}” is not known; {example}.")
    if not _is_of(unit, measure):
        kind = _kind(measure)
        raise Refusal(f"{what}: “{_clipped(written)}” is not a unit of {kind}; {example}.")
    return Q(value, unit)


def _kind(measure: str) -> str:
    return _KINDS.get(measure, measure.replace("_", " "))


def example(measure: str, units: Units) -> str:
    """Return a figure with its unit, as a person may type one of a measure."""
    us, metric = _EXAMPLES[measure]
    return us if units is Units.US else metric


def _example(measure: str, units: Units) -> str:
    return f"write it for example {example(measure, units)}"


def figure_in(unit: str, value: object, measure: str, what: str) -> float:
    """Return the figure of a quantity in a unit, once it is known to be of a measure's kind.

    ``what`` names the quantity in the message. Raises Refusal for a plain figure, and for a
    quantity of another kind, such as a speed where a length is wanted.
    """
    if is_quantity(value) and _is_of(value.units, measure):
        return figure_of(value, unit)
    given = _clipped(in_own_units(value) if is_quantity(value) else str(value))
    raise Refusal(f"{what}: “{given}” is no {_kind(measure)}; {_example(measure, Units.US)}.")


def check_kind(value: object, measure: str, what: str) -> None:
    """Refuse a quantity that is not of a measure's kind; None, not known, is let pass."""
    if value is not None and not (is_quantity(value) and _is_of(value.units, measure)):
        figure_in(MEASURES[measure].us, value, measure, what)


@lru_cache(maxsize=512)
def _is_of(unit: pint.Unit, measure: str) -> bool:
    """Say whether a unit is one of a measure, counting the same kind of thing."""
    default = unit_of(MEASURES[measure].us)
    return unit.is_compatible_with(default) and _nouns(unit) <= _counted(default)


def in_own_units(quantity: Quantity) -> str:
    """Return a quantity in the unit that it carries, ``4 kPa``."""
    sign = unit_sign(f"{quantity.units:~C}".replace("**", "^"))
    return f"{quantity.magnitude:g} {sign}".rstrip()


def _clipped(text: str) -> str:
    plain = " ".join(text.split())
    return plain if len(plain) <= 40 else f"{plain[:39]}…"


def _unit(text: str) -> pint.Unit | None:
    """Read a unit as people write it, ``/acre``, ``30"`` and ``PSI`` included; None if unknown.

    The grammar admits no figures but small powers, so that no text makes pint reckon for long.
    """
    plain = _MARKS.get(text, text)
    if plain.startswith("/"):
        plain = f"count {plain}"
    if len(plain) > 60 or not _UNIT.fullmatch(plain):
        return None
    for spelling in (plain, plain.lower()):
        with contextlib.suppress(Exception):  # pint raises many kinds for what it cannot read
            return ureg.Unit(spelling.replace("°", "deg").replace("·", "*"))
    return None


def _nouns(unit: pint.Unit) -> set[str]:
    """Return the nouns that a unit counts: seed for seed/acre, none for inch."""
    return {_NOUNS[name] for name, _ in Q(1, unit).unit_items() if name in _NOUNS}


def _counted(default: pint.Unit) -> set[str]:
    """Return the nouns that may stand for those of a measure: any whole thing for a count."""
    if default == ureg.Unit("count"):
        return set(_NOUNS.values()) - {"percent"}
    return _nouns(default)


def unit_sign(unit: str) -> str:
    """Return the sign under which a unit is shown, ``inH₂O`` for ``inH2O``."""
    return _UNIT_SIGNS.get(unit, unit)


def how_many(count: int, one: str, many: str = "") -> str:
    """Say how many there are of a thing: ``1 row``, ``12 rows``, ``0 rows``."""
    return f"{count} {one if count == 1 else many or one + 's'}"


def grouped(value: float, digits: int) -> str:
    """Format a figure with a narrow no-break space between thousands: ``140\u202f000``."""
    text = f"{value:,.{digits}f}".replace(",", NARROW_SPACE)
    return text[1:] if text.startswith("-") and not text.strip("-0. ") else text


def show(quantity: Quantity, measure: str, units: Units, *, sign: bool = True) -> str:
    """Show a quantity in the display units of its measure, with or without the unit sign."""
    shown = MEASURES[measure]
    unit = shown.unit(units)
    text = grouped(figure_of(quantity, unit), shown.digits(units))
    mark = unit_sign(unit) if sign else ""
    return f"{text} {mark}".rstrip()


def as_json(quantity: Quantity, measure: str, units: Units) -> dict[str, float | str]:
    """Return ``{"value": …, "unit": "…"}`` in the display units of the measure, unrounded."""
    unit = MEASURES[measure].unit(units)
    return {"value": float(quantity.to(unit_of(unit)).magnitude), "unit": unit}
