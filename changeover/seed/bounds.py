"""The physical bounds of each input, and the one sentence that refuses a figure outside them."""

from dataclasses import dataclass
from typing import Any, TypeAlias

import numpy as np
import pint
from numpy.typing import NDArray

from changeover.quantities import Q, Quantity, Refusal, grouped, scale_to, unit_of, unit_sign

Floats: TypeAlias = NDArray[np.float64]
Magnitude: TypeAlias = Any  # a float or an array of floats, in the unit of the bound


@dataclass(frozen=True)
class Bound:
    """What an input is called, the unit it is reckoned in, and its least and greatest value.

    The limits are set far outside farm practice (from memory): they catch slips of the pen such
    as a wrong unit, not unusual planting.
    """

    what: str
    unit: str
    low: float
    high: float

    def of(self, value: Quantity | float | Floats) -> Magnitude:
        """Return the magnitude of ``value`` in this bound's unit, a float or an array of floats.

        A bare figure is taken as a count or share and is refused where a unit is needed. Raises
        Refusal for another kind of unit, for a figure that is not finite, or one out of bounds.
        """
        quantity = value if isinstance(value, pint.Quantity) else Q(value, "count")
        try:
            size = _size(quantity, self.unit)
        except pint.DimensionalityError as error:
            raise Refusal(self._wrong_kind(quantity)) from error
        figures = np.asarray(size, dtype=np.float64)
        if figures.size and not (figures.min() >= self.low and figures.max() <= self.high):
            raise Refusal(self._outside(quantity, figures))
        return float(figures) if figures.ndim == 0 else figures

    def _wrong_kind(self, quantity: Quantity) -> str:
        given = f"{quantity.units:~P}" or "a bare number"
        example = unit_sign(self.unit).replace("^2", "²").replace("^3", "³")
        return f"{self._name}: {given} is the wrong kind of unit; for example use {example}."

    def _outside(self, quantity: Quantity, figures: Floats) -> str:
        wrong = ~((figures >= self.low) & (figures <= self.high))
        place = int(np.argmax(wrong))
        units = quantity.units
        given = np.atleast_1d(quantity.magnitude).ravel()[place]
        low, high = (Q(limit, self.unit).to(units).magnitude for limit in (self.low, self.high))
        where = f" (entry {place + 1})" if figures.ndim else ""
        sign = self._counted(unit_sign(f"{units:~P}".replace(" ", "")))
        return (
            f"{self._name}{where}: {_figure(given)} {sign}".rstrip()
            + f" is not possible; enter {_figure(low)} to {_figure(high)} {sign}".rstrip()
            + "."
        )

    def _counted(self, sign: str) -> str:
        """Return a sign that names what is counted: ``seeds/ac`` where ``/acre`` was typed."""
        noun, per, _ = self.unit.partition("/")
        first, _, over = sign.partition("/")
        return f"{noun}s/{over}" if per and first in ("count", noun) else sign

    @property
    def _name(self) -> str:
        return self.what[0].upper() + self.what[1:]


def _size(quantity: Quantity, unit: str) -> Magnitude:
    scale = scale_to(quantity.units, unit)
    return quantity.to(unit_of(unit)).magnitude if scale is None else quantity.magnitude * scale


def _figure(value: float) -> str:
    return grouped(value, 0) if abs(value) >= 1000 and np.isfinite(value) else f"{value:.3g}"


ROW_SPACING = Bound("row spacing", "m", 0.02, 10.0)
SPACING = Bound("spacing in the row", "m", 0.0005, 20.0)
RATE = Bound("seed rate", "seed/m^2", 0.02, 1250.0)  # 81 to 5 million an acre
STAND = Bound("stand", "plant/m^2", 0.001, 5000.0)
MASS_RATE = Bound("mass rate", "kg/hectare", 0.001, 5000.0)
SEEDS_PER_MASS = Bound("seeds per mass", "seed/kg", 100.0, 2e7)
THOUSAND_SEED_MASS = Bound("thousand-seed mass", "g", 0.05, 10_000.0)
SPEED = Bound("ground speed", "m/s", 0.05, 15.0)
CELLS = Bound("cells of the disc", "cell", 1.0, 1000.0)
SEEDS_PER_SECOND = Bound("seeds per second", "seed/s", 0.001, 5000.0)
DISC_SPEED = Bound("disc speed", "rpm", 0.001, 5000.0)
DIAMETER = Bound("diameter", "m", 0.001, 3.0)
COUNT = Bound("count of seeds", "seed", 1.0, 1e9)
MASS = Bound("mass", "g", 1e-4, 1e9)
GERMINATION = Bound("germination", "percent", 1.0, 100.0)
EMERGENCE = Bound("emergence", "percent", 1.0, 100.0)
METER_ERROR = Bound("meter error", "percent", -50.0, 50.0)
RATIO = Bound("ratio", "count", 1e-3, 1000.0)
TEETH = Bound("teeth", "count", 5.0, 200.0)
SLIP = Bound("slip", "percent", -20.0, 50.0)
CIRCUMFERENCE = Bound("rolling circumference", "m", 0.1, 15.0)
DISTANCE = Bound("distance", "m", 0.1, 1e5)
TURNS = Bound("turns", "turn", 0.1, 1e6)
ROWS = Bound("rows", "count", 1.0, 200.0)
DISPLACEMENT = Bound("displacement per turn", "l", 1e-4, 10.0)
EFFICIENCY = Bound("efficiency", "percent", 5.0, 100.0)
MOTOR_SPEED = Bound("motor speed", "rpm", 0.01, 20_000.0)
OIL_FLOW = Bound("oil flow", "l/min", 0.001, 2000.0)
OIL_PRESSURE = Bound("oil pressure", "bar", 0.1, 700.0)
AREA = Bound("area", "hectare", 1e-4, 1e6)
WIDTH = Bound("working width", "m", 0.02, 100.0)
OVERLAP = Bound("overlap", "percent", 0.0, 100.0)
VOLUME = Bound("volume", "l", 0.01, 1e6)
BULK_DENSITY = Bound("bulk density", "kg/m^3", 50.0, 2000.0)
FIELD_CAPACITY = Bound("field capacity", "hectare/h", 0.01, 200.0)
PRESSURE = Bound("pressure", "kPa", 0.01, 60.0)
HOLE = Bound("hole diameter", "mm", 0.2, 30.0)
ALTITUDE = Bound("altitude", "m", -450.0, 5500.0)
FRICTION = Bound("coefficient of friction", "count", 0.05, 2.0)
PACKAGE_SEEDS = Bound("seeds per package", "seed", 100.0, 1e9)
PACKAGE_MASS = Bound("mass of a package", "g", 10.0, 1e7)
RESERVE = Bound("reserve", "percent", 0.0, 90.0)
RUN_LENGTH = Bound("length of a run", "m", 5.0, 20_000.0)
DEPTH = Bound("depth", "mm", 0.0, 200.0)
LOAD = Bound("gauge-wheel load", "N", 0.0, 20_000.0)
ROW_SHARE = Bound("share of the rows", "percent", 0.1, 100.0)
SEEDS_PER_LENGTH = Bound("seeds per length", "seed/m", 0.001, 5000.0)
SEED_MASS = Bound("mass of one seed", "g", 5e-5, 10.0)
PERIPHERAL_SPEED = Bound("speed of the cells", "m/s", 0.0, 20.0)
