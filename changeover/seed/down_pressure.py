"""Down pressure: gauge-wheel load against a row's own setting, and the published load classes."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf, isfinite

import numpy as np

from changeover.quantities import Q, Quantity, Refusal
from changeover.seed import bounds
from changeover.seed.calibration_line import CalibrationLine, fit_line

# Hanna, Steward & Aldinger 2010, Appl. Eng. Agric. 26(4):551-556.
LOAD_SOURCE = "Hanna, Steward & Aldinger 2010, Appl. Eng. Agric. 26(4):551-556"
LIGHT_LOAD = Q(180.0, "N")
MEDIUM_LOAD = Q(490.0, "N")
HEAVY_LOAD = Q(890.0, "N")
# Appl. Eng. Agric. 22(6):801-808, 2006: cotton in dry soil emerged best at this closing force.
COTTON_CLOSING_FORCE = (Q(178.0, "N"), Q(267.0, "N"))


@dataclass(frozen=True)
class LoadLine:
    """Gauge-wheel load in newtons against the setting of one row, in the setting's own figures."""

    line: CalibrationLine

    def load(self, setting: float) -> Quantity:
        """Return the load that the line expects at a setting; never below zero on the ground."""
        return Q(max(self.line.at(setting), 0.0), "N")


@dataclass(frozen=True)
class SettingChoice:
    """The setting that gives a target load, and half the 95 % interval of the load there."""

    setting: float
    load: Quantity
    half_width: Quantity | None


def fit_load_line(settings: Sequence[float], loads: Quantity) -> LoadLine:
    """Fit one row's gauge-wheel load against its down-pressure setting.

    ``settings`` are spring positions or pressures in one unit, ``loads`` forces. Raises Refusal
    for loads out of bounds, readings at one setting, or a load that does not grow. Method:
    least squares.
    """
    line = fit_line(settings, np.atleast_1d(bounds.LOAD.of(loads)), "Down-pressure calibration")
    if line.slope <= 0:
        raise Refusal(
            "Down-pressure calibration: the load does not grow with the setting; check which "
            "reading belongs to which setting."
        )
    return LoadLine(line)


def setting_for_load(line: LoadLine, target: Quantity, least: float, most: float) -> SettingChoice:
    """Return the setting between ``least`` and ``most`` at which the line reaches a load.

    Raises Refusal when the target lies beyond what the settings give.
    """
    setting = line.line.solve(float(bounds.LOAD.of(target)))
    if not least <= setting <= most:
        low, high = line.load(least).to(target.units), line.load(most).to(target.units)
        raise Refusal(
            f"Gauge-wheel load {target:.3g~P} cannot be reached: the settings give "
            f"{low:.3g~P} to {high:.3g~P}; choose a load between."
        )
    half = line.line.half_width(setting)
    return SettingChoice(setting, line.load(setting), Q(half, "N") if isfinite(half) else None)


@dataclass(frozen=True)
class SettingBand:
    """The settings whose load may lie within the bounds of a target, and what limits them.

    ``from_line`` says that the scatter of the readings is in the band; without it only the
    target's bounds are, as when two readings leave no scatter to see. ``held_low`` and
    ``held_high`` say that the band ends where the readings end; ``bounded`` is False where they
    scatter so widely that nothing else ends it.
    """

    low: float
    high: float
    from_line: bool
    held_low: bool
    held_high: bool
    bounded: bool = True


def band_for_load(
    line: LoadLine, low: Quantity, high: Quantity | None, least: float, most: float
) -> SettingBand:
    """Return the band of settings for a load between ``low`` and ``high``, None without an end.

    It reaches from the least setting at which a single reading may give ``low`` to the greatest
    at which it may give ``high``, each by the 95 % prediction interval of the line turned about;
    never beyond the settings that were read, ``least`` to ``most``. Where the readings scatter
    so widely that the interval has no end, the band is all of them. Raises Refusal for loads out
    of bounds.
    """
    start = float(bounds.LOAD.of(low))
    end = None if high is None else float(bounds.LOAD.of(high))
    fitted, bounded = line.line, True
    if fitted.freedom < 1:
        from_low, to_high = fitted.solve(start), inf if end is None else fitted.solve(end)
    else:
        at_start = fitted.reached_at(start)
        at_end = fitted.reached_at(start if end is None else end)
        bounded = at_start is not None and at_end is not None
        from_low = -inf if at_start is None else at_start[0]
        to_high = inf if at_end is None or end is None else at_end[1]
    return SettingBand(
        max(from_low, least),
        min(to_high, most),
        fitted.freedom >= 1,
        from_low < least,
        to_high > most,
        bounded,
    )


def load_class(load: Quantity) -> str:
    """Return the published class of a gauge-wheel load: too light, light, medium or heavy.

    Light 180-490 N, medium 490-890 N, heavy above 890 N. Raises Refusal for a load out of
    bounds. Hanna, Steward & Aldinger 2010; below 180 N the paper gives no class, hence too light.
    """
    newtons = float(bounds.LOAD.of(load))
    if newtons < LIGHT_LOAD.magnitude:
        return "too light"
    if newtons < MEDIUM_LOAD.magnitude:
        return "light"
    return "medium" if newtons <= HEAVY_LOAD.magnitude else "heavy"
