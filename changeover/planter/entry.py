"""Reading a typed text as the value of a setting, checking it, and showing it again."""

import re
from functools import lru_cache

import pint

from changeover.planter.drive import GroundDrive
from changeover.planter.machine import Planter
from changeover.planter.names import check_name
from changeover.planter.places import Place
from changeover.planter.scales import Index
from changeover.planter.settings import Kind, Setting
from changeover.planter.setup import Value
from changeover.quantities import (
    MEASURES,
    Q,
    Quantity,
    Refusal,
    Units,
    figure_of,
    is_quantity,
    read_quantity,
    show,
    unit_of,
    unit_sign,
)

_BOUNDS: dict[str, tuple[float, float, str]] = {
    "vacuum": (0.0, 80.0, "inH2O"),
    "seed_rate": (100.0, 5_000_000.0, "seed/acre"),
    "hub_spacing": (-5.0, 25.0, "mm"),
    "seed_left": (0.0, 20_000.0, "lb"),
}

_NOTCH = re.compile(r"(?:notch|n|#) ?(?P<number>[0-9]{1,3})", re.IGNORECASE)


def index_of(setting: Setting, planter: Planter) -> Index | None:
    """Return the named positions of an index setting; None for depth, which is in notches."""
    if setting.key == "singulator":
        return planter.singulator
    if setting.key == "closing":
        return planter.closing
    return Index.of(*setting.options) if setting.options else None


def options_of(setting: Setting, planter: Planter, place: Place) -> tuple[str, ...]:
    """Return the texts that can be chosen for a setting, empty when any value may be typed."""
    if setting.key == "sprockets":
        drive = planter.drives.get(place.name)
        return drive.pairs if isinstance(drive, GroundDrive) else ()
    index = index_of(setting, planter)
    if setting.kind is Kind.INDEX and index is not None:
        return tuple(position.name for position in index.positions)
    return setting.options


def read_value(
    setting: Setting, planter: Planter, place: Place, text: str, units: Units = Units.US
) -> Value | None:
    """Read what a person typed for a setting at a place; empty text is None, not known.

    A depth is typed as a depth (``1.75 in``, taken to the nearest notch of that row) or as a
    notch (``n5``, ``notch 5``). Raises Refusal with what, where and what to do.
    """
    typed = text.strip()
    if not typed:
        return None
    where = f"{setting.name}, {place.label}"
    if setting.kind is Kind.QUANTITY:
        value: Value = read_quantity(typed, setting.measure or "count", units, where)
    elif setting.kind is Kind.COUNT:
        value = _whole(typed, where)
    elif setting.kind is Kind.INDEX:
        value = _position(setting, planter, place, typed, units)
    else:
        value = _choice(options_of(setting, planter, place), typed)
    check_value(setting, planter, place, value, units)
    return value


def check_value(
    setting: Setting, planter: Planter, place: Place, value: Value, units: Units = Units.US
) -> None:
    """Refuse a value that the planter cannot have. Raises Refusal, its figures in ``units``."""
    where = f"{setting.name}, {place.label}"
    if is_quantity(value) or setting.kind is Kind.QUANTITY:
        _check_quantity(setting, planter, value, where, units)
    elif setting.kind in (Kind.COUNT, Kind.INDEX) and not isinstance(value, int):
        raise Refusal(f"{where}: “{value}” is not a whole number; choose one.")
    elif setting.kind is Kind.COUNT:
        if not 1 <= int(value) <= 400:
            raise Refusal(f"{where}: {value} is not possible; enter 1 to 400.")
    elif setting.kind is Kind.INDEX:
        index = index_of(setting, planter)
        most = len(index) if index is not None else planter.depth.count
        if not 1 <= int(value) <= most:
            raise Refusal(f"{where}: position {value} does not exist; there are 1 to {most}.")
    else:
        options = options_of(setting, planter, place)
        if options and value not in options:
            raise Refusal(f"{where}: “{value}” is not a choice; choose {_listed(options)}.")
        check_name(where, str(value))


def show_value(
    setting: Setting,
    planter: Planter,
    place: Place,
    value: Value | None,
    units: Units,
    *,
    sign: bool = False,
) -> str:
    """Show a value as it stands in the matrix; an unknown one is empty."""
    if value is None:
        return ""
    if is_quantity(value):
        return show(value, setting.measure or "count", units, sign=sign)
    if setting.kind is Kind.INDEX:
        index = index_of(setting, planter)
        if index is not None:
            return index.name(int(value))
        row = place.row or 1
        return show(planter.depth.depth(int(value), row), "depth", units, sign=sign)
    return str(value)


def _whole(text: str, where: str) -> int:
    try:
        return int(text.replace(" ", ""))
    except ValueError as error:
        raise Refusal(f"{where}: “{text}” is not a whole number; write it like 30.") from error


def _notch(text: str, where: str) -> int:
    """Read ``n5``, ``#5`` or ``notch 5``."""
    found = _NOTCH.fullmatch(text)
    if found is None:
        raise Refusal(f"{where}: “{text}” is no notch; write it like n5.")
    return int(found["number"])


def _position(setting: Setting, planter: Planter, place: Place, text: str, units: Units) -> int:
    index = index_of(setting, planter)
    where = f"{setting.name}, {place.label}"
    if index is not None:
        number = index.number(text)
        if number is None:
            options = tuple(position.name for position in index.positions)
            raise Refusal(f"{where}: “{text}” is not a position; choose {_listed(options)}.")
        return number
    if text[0] in "nN#":
        return _notch(text, where)
    depth = read_quantity(text, "depth", units, where)
    return planter.depth.notch(depth, place.row or 1, units)


def rounding(
    setting: Setting, planter: Planter, place: Place, text: str, units: Units
) -> tuple[str, str] | None:
    """Return a typed depth and that of the notch it is taken to, where they show differently.

    None for a notch that was typed as one, for a depth that a notch gives, and for every other
    setting. Raises Refusal as ``read_value`` does.
    """
    typed = text.strip()
    depth_of = setting.kind is Kind.INDEX and index_of(setting, planter) is None
    if not typed or not depth_of or typed[0] in "nN#":
        return None
    row = place.row or 1
    depth = read_quantity(typed, "depth", units, f"{setting.name}, {place.label}")
    taken = planter.depth.depth(planter.depth.notch(depth, row, units), row)
    unit, digits = unit_of(MEASURES["depth"].unit(units)), MEASURES["depth"].digits(units)
    off = abs(float((depth - taken).to(unit).magnitude))
    if off <= 0.5 * 10**-digits + 1e-9:
        return None
    return show(depth, "depth", units), show(taken, "depth", units)


def _choice(options: tuple[str, ...], text: str) -> str:
    folded = text.casefold()
    return next((option for option in options if option.casefold() == folded), text)


def _check_quantity(
    setting: Setting, planter: Planter, value: Value, where: str, units: Units
) -> None:
    measure = setting.measure or "count"
    asked, unit = setting.kind is Kind.QUANTITY, unit_of(MEASURES[measure].us)
    if not (asked and is_quantity(value) and value.is_compatible_with(unit)):
        kind = measure.replace("_", " ") if asked else str(setting.kind)
        raise Refusal(f"{where}: “{value}” is not a value of the kind {kind}; enter it anew.")
    bounds = _BOUNDS.get(setting.key)
    if bounds is not None:
        low, high, name = bounds
        if not low <= value.to(unit_of(name)).magnitude <= high:
            reach = _reach(Q(low, name), Q(high, name), measure, units)
            raise Refusal(f"{where}: outside {reach}; check the figure.")
    if setting.key == "vacuum" and planter.fan_limit is not None and value > planter.fan_limit:
        limit = show(planter.fan_limit, "pressure", units)
        raise Refusal(f"{where}: above the fan limit of {limit}; enter less or raise the limit.")


def _reach(low: Quantity, high: Quantity, measure: str, units: Units) -> str:
    """Return bounds in the units shown, without idle noughts: ``0 to 80 inH₂O``."""
    least, most = (show(one, measure, units, sign=False) for one in (low, high))
    sign = unit_sign(MEASURES[measure].unit(units))
    return f"{_without_noughts(least)} to {_without_noughts(most)} {sign}"


def _without_noughts(figure: str) -> str:
    return figure.rstrip("0").rstrip(".") if "." in figure else figure


def _listed(options: tuple[str, ...]) -> str:
    return ", ".join(options[:-1]) + f" or {options[-1]}" if len(options) > 1 else options[0]


def same_value(setting: Setting, one: Value | None, other: Value | None) -> bool:
    """Say whether two values of a setting count as the same, within its tolerance.

    Quantities without a tolerance of their own are the same within a twentieth of a percent,
    or within half of the last digit shown in the finer of the two unit systems, whichever is
    more: that absorbs conversion between them, and what no screen could show is no difference.
    """
    if one is None or other is None:
        return one is other
    if is_quantity(one) and is_quantity(other):
        unit = one.units
        gap = abs(float(one.magnitude) - figure_of(other, unit))
        if setting.tolerance is not None:
            return gap <= figure_of(setting.tolerance, unit)
        unseen = _unseen(setting.measure, unit) if setting.measure else 0.0
        return gap <= max(abs(float(one.magnitude)) * 5e-4, unseen, 1e-9)
    return one == other


@lru_cache(maxsize=256)
def _unseen(measure: str, unit: pint.Unit) -> float:
    """Return the least half digit in which a measure is shown, as a figure in a unit."""
    shown = MEASURES[measure]
    halves = (Q(0.5 * 10 ** -shown.digits(units), shown.unit(units)) for units in Units)
    return min(float(half.to(unit).magnitude) for half in halves)
