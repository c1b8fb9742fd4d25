"""Lines of gauge-wheel load against down pressure for every circuit of many planters, as arrays."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from changeover.planter.load_reading import LoadReading
from changeover.planter.machine import Planter
from changeover.planter.places import Place
from changeover.planter.settings import Setting
from changeover.planter.setup import Cell, Setup
from changeover.quantities import Q, Refusal, is_quantity
from changeover.seed.bounds import Floats
from changeover.seed.down_pressure import fit_load_line
from changeover.seed.load_target import readings_for

FIGURES = ("level", "slope", "middle", "least", "most", "factor")


@dataclass(frozen=True)
class LoadLines:
    """The lines of p planters with at most c circuits, NaN where a circuit has none, all (p, c).

    ``level`` (N), ``slope`` (N by one of the readings' own unit) about ``middle``, good from
    ``least`` to ``most``; ``factor`` turns the readings' unit into N or kPa, the unit of
    ``found``, what is set now. ``track`` marks circuits whose rows all run behind a tire;
    ``rows`` (p, c, r) the rows of each. Without a ``setting`` there is none.
    """

    setting: Setting | None
    level: Floats
    slope: Floats
    middle: Floats
    least: Floats
    most: Floats
    factor: Floats
    found: Floats
    track: NDArray[np.bool_]
    rows: NDArray[np.bool_]

    @staticmethod
    def of(
        planters: Sequence[Planter], setups: Sequence[Setup], setting: Setting | None
    ) -> "LoadLines":
        """Return the lines of every circuit; one whose readings give no line has none."""
        places = [planter.places(setting.scope) if setting else () for planter in planters]
        shape = len(planters), max(map(len, places))
        figures = {name: np.full(shape, np.nan) for name in (*FIGURES, "found")}
        most = max(planter.rows for planter in planters)
        track, rows = np.zeros(shape, np.bool_), np.zeros((*shape, most), np.bool_)
        for number, (planter, setup) in enumerate(zip(planters, setups, strict=True)):
            for circuit, place in enumerate(places[number]):
                if setting is None:
                    break
                at = number, circuit
                own = planter.rows_of(place)
                rows[number, circuit, [row - 1 for row in own]] = True
                track[at] = set(own) <= planter.wheel_track_rows
                for name, figure in _figures(planter, setup, setting, place).items():
                    figures[name][at] = figure
        return LoadLines(setting, **figures, track=track, rows=rows)

    @property
    def unit(self) -> str:
        """The unit of ``found`` and of what is proposed."""
        return "N" if self.setting is None or self.setting.measure == "force" else "kPa"

    def reached(self, loads: Floats) -> Floats:
        """Return the setting at which each line reaches a load in N (p, c), NaN beyond its ends.

        To a tenth of the readings' own unit, as the look-up of one planter gives it.
        """
        setting = self.middle + (loads - self.level) / self.slope
        inside = (self.least <= setting) & (setting <= self.most)
        return np.where(inside, np.round(setting, 1) * self.factor, np.nan)


def _figures(planter: Planter, setup: Setup, setting: Setting, place: Place) -> dict[str, float]:
    to = "N" if setting.measure == "force" else "kPa"
    value = setup.get(Cell(setting.key, place))
    known = is_quantity(value) and value.is_compatible_with(to)
    found = float(value.to(to).magnitude) if known and is_quantity(value) else np.nan
    readings = readings_for(planter, setting, place)
    line = _line(readings, to)
    return {"found": found, **line}


def _line(readings: Sequence[LoadReading], to: str) -> dict[str, float]:
    if not readings:
        return {}
    unit = readings[0].setting.units
    settings = [float(one.setting.to(unit).magnitude) for one in readings]
    loads = [float(one.load.to("N").magnitude) for one in readings]
    try:
        line = fit_load_line(settings, Q(loads, "N")).line
    except Refusal:
        return {}
    factor = float(Q(1.0, unit).to(to).magnitude)
    figures = line.level, line.slope, line.middle, min(settings), max(settings), factor
    return dict(zip(FIGURES, figures, strict=True))
