"""Load readings as people write them: ``springs: 100 lbf = 70 lbf, 200 lbf = 150 lbf``."""

from collections.abc import Iterable

from changeover.planter.load_reading import LoadReading
from changeover.planter.places import PLANTER, Place, Scope
from changeover.quantities import Quantity, Refusal, Units, read_quantity, show

EXAMPLE = "write it like row 5: 100 lbf = 70 lbf, 200 lbf = 150 lbf"


def read_loads(text: str, circuits: Iterable[str], units: Units) -> tuple[LoadReading, ...]:
    """Read what settings of the down pressure put on the gauge wheels, place by place.

    ``circuits`` are the names of the down-pressure groups; a place is one of them, a row such as
    ``row 5``, or the planter. Raises Refusal for anything else.
    """
    names = set(circuits)
    readings: list[LoadReading] = []
    for piece in filter(None, (part.strip() for part in text.split(";"))):
        name, colon, pairs = piece.partition(":")
        if not colon:
            raise Refusal(f"Gauge-wheel load: “{piece}” has no place; {EXAMPLE}.")
        place = _place(name.strip(), names)
        for pair in filter(None, (one.strip() for one in pairs.split(","))):
            setting, equals, load = pair.partition("=")
            if not equals:
                raise Refusal(f"Gauge-wheel load: “{pair}” has no load; {EXAMPLE}.")
            measured = read_quantity(load, "force", units, "Gauge-wheel load")
            readings.append(LoadReading(place, _setting(setting, units), measured))
    return tuple(readings)


def show_loads(readings: Iterable[LoadReading], units: Units) -> str:
    """Write load readings the way ``read_loads`` reads them."""
    at: dict[Place, list[str]] = {}
    for one in readings:
        measure = "force" if one.setting.is_compatible_with("N") else "oil_pressure"
        setting = show(one.setting, measure, units)
        at.setdefault(one.place, []).append(f"{setting} = {show(one.load, 'force', units)}")
    return "; ".join(f"{place.label}: {', '.join(pairs)}" for place, pairs in at.items())


def _place(name: str, circuits: set[str]) -> Place:
    if name in circuits:
        return Place(Scope.DOWN_PRESSURE, name)
    if name == PLANTER.label:
        return PLANTER
    word, _, number = name.partition(" ")
    if word == "row" and number.isdigit():
        return Place.of_row(int(number))
    there = ", ".join(sorted(circuits)) or "none"
    raise Refusal(f"Gauge-wheel load: “{name}” is no row and no circuit (of these: {there}).")


def _setting(text: str, units: Units) -> Quantity:
    """Read a setting, a force or else a pressure. Raises Refusal."""
    try:
        return read_quantity(text, "force", units, "Down-pressure setting")
    except Refusal as refused:
        try:
            return read_quantity(text, "oil_pressure", units, "Down-pressure setting")
        except Refusal:
            raise refused from None
