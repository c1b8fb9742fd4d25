"""Gauge-wheel load wanted by soil, and the down-pressure setting that gives it where measured."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

from changeover.planter.load_reading import LoadReading
from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.planter.settings import Kind, Setting
from changeover.planter.setup import Cell
from changeover.quantities import MEASURES, Q, Quantity, Refusal, show
from changeover.seed.case import Case
from changeover.seed.depth import Soil, soil_of
from changeover.seed.down_pressure import (
    HEAVY_LOAD,
    LIGHT_LOAD,
    LOAD_SOURCE,
    MEDIUM_LOAD,
    SettingBand,
    band_for_load,
    fit_load_line,
    setting_for_load,
)
from changeover.seed.reasons import Input, Trust
from changeover.seed.rules import Rule, Rules
from changeover.seed.trust_order import Answer, no_ground, reasoned

RULE = "down pressure from gauge-wheel load"
LOOK = "Stop in the field: every gauge wheel must turn hard by hand, none must leave a deep track."
# Where along the shares of the rules a class ends (from memory).
_LIGHT_TO, _MEDIUM_TO = 1 / 3, 0.85


@dataclass(frozen=True)
class LoadTarget:
    """A published class of gauge-wheel load, the load to aim at, its bounds, and the rules held."""

    name: str
    load: Quantity
    low: Quantity
    high: Quantity | None
    rules: tuple[Rule, ...]


def is_load_setting(setting: Setting) -> bool:
    """Say whether a setting is a down pressure that a load can be reckoned for."""
    measured = setting.measure in ("force", "oil_pressure")
    return setting.kind is Kind.QUANTITY and setting.scope is Scope.DOWN_PRESSURE and measured


def load_target(rules: Rules, soil: Soil, *, wheel_track: bool = False) -> LoadTarget | None:
    """Return the class of load for a soil, None when no rule holds.

    Light 180 to 490 N, medium 490 to 890 N, heavy above 890 N (Hanna, Steward & Aldinger 2010);
    which class suits which soil is common practice. The load aimed at is the middle of a class,
    of heavy its least.
    """
    things = {
        "moisture": soil.moisture.value,
        "texture": soil.texture.value,
        "tillage": soil.tillage.value,
        "wheel_track": "yes" if wheel_track else "no",
    }
    held = rules.all("load", things)
    if not held:
        return None
    share = max(0.0, min(1.0, sum(rule.gives for rule in held)))
    if share >= _MEDIUM_TO:
        return LoadTarget("heavy", HEAVY_LOAD, HEAVY_LOAD, None, held)
    name, low, high = (
        ("light", LIGHT_LOAD, MEDIUM_LOAD)
        if share < _LIGHT_TO
        else ("medium", MEDIUM_LOAD, HEAVY_LOAD)
    )
    return LoadTarget(name, (low + high) / 2, low, high, held)


def answer_load(case: Case, setting: Setting, place: Place) -> Answer:
    """Return the down pressure of a circuit by its own calibration; else it is kept as found.

    Its band holds the settings whose load may lie within the class, by the scatter of the
    readings. Without two readings at different settings there is no ground for a value; the
    class of load is stated as evidence.
    """
    track = set(case.planter.rows_of(place)) <= case.planter.wheel_track_rows
    target = load_target(case.crop.rules, soil_of(case), wheel_track=track)
    if target is None:
        return _kept(case, setting, place, {}, "No rule holds for this soil.")
    says = {
        Trust.PUBLISHED: f"classes of load, {_bounds(case, target)} for {target.name} "
        f"({LOAD_SOURCE})",
        Trust.PRACTICE: f"{target.name} load for {soil_of(case).words}",
    }
    readings = readings_for(case.planter, setting, place)
    try:
        return _by_line(case, setting, target, readings, says)
    except Refusal as refused:
        return _kept(case, setting, place, says, str(refused) if readings else NOT_MEASURED)


NOT_MEASURED = (
    "The load on its gauge wheels was not measured: enter two readings at different settings."
)


def by_calibration(answer: Answer) -> bool:
    """Say whether an answer rests on a place's own calibration, so that the soil decides."""
    return answer.value is not None and answer.reason.rule == RULE


def readings_for(planter: Planter, setting: Setting, place: Place) -> tuple[LoadReading, ...]:
    """Return the readings of a place, else those of its rows, that fit the setting's measure."""
    unit = MEASURES[setting.measure or ""].us
    fit = [one for one in planter.load_readings if one.setting.is_compatible_with(unit)]
    own = tuple(one for one in fit if one.place == place)
    rows = set(planter.rows_of(place))
    return own or tuple(one for one in fit if one.place.row in rows)


def _by_line(
    case: Case,
    setting: Setting,
    target: LoadTarget,
    readings: Sequence[LoadReading],
    says: dict[Trust, str],
) -> Answer:
    """Solve the line through the readings for the load wanted. Raises Refusal."""
    if not readings:
        raise Refusal(NOT_MEASURED)
    unit = readings[0].setting.units
    settings = [float(one.setting.to(unit).magnitude) for one in readings]
    loads = [float(one.load.to("N").magnitude) for one in readings]
    line = fit_load_line(settings, Q(loads, "N"))
    choice = setting_for_load(line, target.load, min(settings), max(settings))
    value = Q(round(choice.setting, 1), unit)
    band = band_for_load(line, target.low, target.high, min(settings), max(settings))
    low = Q(min(floor(10 * band.low) / 10, value.magnitude), unit)
    high = Q(max(ceil(10 * band.high) / 10, value.magnitude), unit)
    measure = setting.measure or ""
    ends = f"{show(low, measure, case.units, sign=False)} to {show(high, measure, case.units)}"
    wanted = show(target.load, "force", case.units)
    half = choice.half_width
    sure = f" ± {show(half, 'force', case.units)}" if half is not None else ", interval not known"
    places = ", ".join(dict.fromkeys(one.place.label for one in readings))
    reason = reasoned(
        RULE,
        f"{_why(target)} It gives {wanted} on the gauge wheels, a {target.name} load.",
        f"your readings on {places}; {LOAD_SOURCE}",
        Trust.RECORD,
        how=f"least squares through {len(readings)} readings; load there {wanted}{sure}; "
        f"band {ends}, {_band_words(case, target, band)}",
        inputs=(Input("soil", soil_of(case).words), Input("load wanted", wanted)),
        cautions=(LOOK,),
        says={**says, Trust.RECORD: f"your readings on {places}"},
    )
    return Answer(value, reason, low, high)


def _band_words(case: Case, target: LoadTarget, band: SettingBand) -> str:
    """Say what the band of settings rests on, and what it leaves out."""
    words = f"the settings whose load may lie {_within(case, target)}"
    if not band.bounded:
        return f"{words}; the readings scatter too widely to bound them, so all that were read"
    if band.from_line:
        words += ", by the 95 % prediction interval of a reading"
    else:
        words += " on the line; two readings leave its own interval untold, a third would show it"
    ends = [name for name, held in (("low", band.held_low), ("high", band.held_high)) if held]
    if ends:
        words += f"; held to the settings that were read at the {' and '.join(ends)} end"
    return words


def _kept(
    case: Case, setting: Setting, place: Place, says: dict[Trust, str], missing: str
) -> Answer:
    found = case.as_found.get(Cell(setting.key, place))
    if found is None:
        return no_ground(RULE, missing, says)
    why = f"Kept as found. {missing}"
    reason = reasoned("kept as found", why, "as found", Trust.RECORD, cautions=(LOOK,), says=says)
    return Answer(found, reason)


def _within(case: Case, target: LoadTarget) -> str:
    bounds = _bounds(case, target)
    return bounds if target.high is None else f"from {bounds}"


def _bounds(case: Case, target: LoadTarget) -> str:
    low = show(target.low, "force", case.units)
    if target.high is None:
        return f"above {low}"
    return f"{low} to {show(target.high, 'force', case.units)}"


def _why(target: LoadTarget) -> str:
    return " ".join(rule.why for rule in target.rules)
