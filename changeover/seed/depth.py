"""Depth: the target from crop and soil within published bounds, and each row's own notch."""

from dataclasses import dataclass, replace
from functools import lru_cache

from changeover.planter.settings import Setting
from changeover.planter.setup import Value
from changeover.quantities import Q, Quantity, Units, is_quantity, show
from changeover.seed.case import Case
from changeover.seed.crops import ANY_SOIL, Crop, CropFigure
from changeover.seed.fields import Moisture, Texture, Tillage
from changeover.seed.reasons import Input, Trust
from changeover.seed.rules import Rule
from changeover.seed.trust_order import (
    SOIL_DECIDES,
    Answer,
    ladder,
    manual_entry,
    no_ground,
    proof_of,
    reasoned,
)

# A soil within this much of the least temperature counts as cold (from memory).
COLD_WITHIN = Q(5.0 * 5.0 / 9.0, "kelvin")
RULE = "depth by crop and soil"


@dataclass(frozen=True)
class Soil:
    """The soil of the day at seed depth."""

    moisture: Moisture = Moisture.MOIST
    texture: Texture = Texture.LOAM
    tillage: Tillage = Tillage.TILLED
    temperature: Quantity | None = None

    @property
    def words(self) -> str:
        return f"{self.moisture} {self.texture}, {self.tillage}"


@dataclass(frozen=True)
class DepthTarget:
    """The depth wanted, its bounds in print, the figure behind it and the steps taken."""

    depth: Quantity
    low: Quantity | None
    high: Quantity | None
    figure: CropFigure
    steps: tuple[Rule, ...] = ()


def soil_of(case: Case) -> Soil:
    """Return the soil of a case's field on the day."""
    job = case.job
    return Soil(job.moisture, job.field.texture, job.tillage, job.soil_temperature)


@lru_cache(maxsize=256)
def target_depth(crop: Crop, soil: Soil) -> DepthTarget | None:
    """Return the depth to plant a crop at in a soil, with its bounds; None when none is printed.

    A figure of the crop for just this soil is taken as it stands. Else the steps that hold are
    added up, each a share of the way from the typical depth to its least or greatest, and the
    sum is held between those; towards an end that is not printed no step is taken. Sources stand
    in the crop table and in the rules of depth.
    """
    day = (soil.moisture, soil.texture, soil.tillage)
    fitting = [figure for figure in crop.of("depth") if figure.when.fits(*day)]
    if not fitting:
        return None
    own = max(fitting, key=lambda figure: figure.when.narrowness)
    if own.when.narrowness:
        general = crop.best("depth") or own
        low, high = own.low or general.low, own.high or general.high
        return DepthTarget(own.middle, low, high, own)
    steps = crop.rules.all("depth", _things(crop, soil))
    way = max(-1.0, min(1.0, sum(rule.gives for rule in steps)))
    end = own.high if way > 0 else own.low
    depth = own.middle if end is None else own.middle + abs(way) * (end - own.middle)
    moved = () if way and end is None else steps
    return DepthTarget(depth, own.low, own.high, own, moved)


def is_cold(crop: Crop, temperature: Quantity | None) -> bool:
    """Say whether a soil is within 5 °F of the crop's least temperature, or below it."""
    least = crop.best("least_soil_temperature")
    if temperature is None or least is None:
        return False
    limit = least.middle.to("kelvin") + COLD_WITHIN
    return bool(temperature.to("kelvin") < limit)


def cold_warning(crop: Crop, temperature: Quantity | None, units: Units) -> str | None:
    """Return a sentence with its sources when the soil is colder than any in print asks for."""
    if temperature is None:
        return None
    known = temperature.to("kelvin")
    missed = [one for one in crop.of("least_soil_temperature") if known < one.middle.to("kelvin")]
    if not missed:
        return None
    asked = "; ".join(
        f"at least {show(one.middle, 'temperature', units)}"
        + (f" ({one.note})" if one.note else "")
        + f" by {one.source}"
        for one in missed
    )
    return (
        f"The soil is {show(temperature, 'temperature', units)}; {crop.name} wants {asked}: wait, "
        "or expect slow and uneven emergence."
    )


def depth_wanted(case: Case, setting: Setting) -> Answer:
    """Return the depth wanted as a length, or the manual's own notch, with its reason."""
    soil = soil_of(case)
    target = target_depth(case.crop, soil)
    own = _by_rule(case, target, soil) if target else no_ground(RULE, "No depth is printed for it.")
    says = {rung.trust: rung.says for rung in own.reason.evidence}
    proved = proof_of(case, setting.key)
    if proved is not None:
        shown = _depth_text(case, proved.values[setting.key])
        says[Trust.RECORD] = f"{shown} in “{proved.name}”; not used, {SOIL_DECIDES}"
    entered = manual_entry(case, setting.key)
    if entered is None:
        used = own.reason.trust if own.value is not None else None
        return replace(own, reason=replace(own.reason, evidence=ladder(used, says)))
    shown = _depth_text(case, entered.value)
    says[Trust.MANUAL] = shown
    note = entered.note or "entered by you from the machine’s manual"
    why = f"Your manual says {shown} for {case.name}."
    reason = reasoned("manual value", why, note, Trust.MANUAL, how="taken as entered", says=says)
    return Answer(entered.value, reason, own.low, own.high)


def _by_rule(case: Case, target: DepthTarget, soil: Soil) -> Answer:
    units, figure = case.units, target.figure
    shown = show(target.depth, "depth", units)
    steps = " ".join(rule.why for rule in target.steps)
    printed = figure.text(units) + (f" ({figure.note})" if figure.note else "")
    whence = "From memory" if figure.trust is Trust.MEMORY else "In print"
    why = f"{case.crop.name} in {soil.words}: {shown}. {whence}: {printed}. {steps}".strip()
    signs = ", ".join(f"{rule.gives:+g}" for rule in target.steps)
    how = f"typical depth {show(figure.middle, 'depth', units)}"
    if target.steps:
        how += f"; shares of the way to the bound {signs}, held between the bounds → {shown}"
    elif figure.when.narrowness:
        how += ", printed for this soil"
    inputs = (
        Input("soil", soil.words),
        Input("soil temperature", _temperature(soil, units)),
    )
    says = {figure.trust: _all_in_print(case, figure, printed)}
    if target.steps:
        says[target.steps[0].trust] = f"steps by soil: {steps}"
    reason = reasoned(RULE, why, figure.source, figure.trust, how=how, inputs=inputs, says=says)
    return Answer(target.depth, reason, target.low, target.high)


def _all_in_print(case: Case, used: CropFigure, printed: str) -> str:
    """Return what each source says, the one that is used first."""
    others = [
        one
        for one in case.crop.of("depth")
        if one is not used and one.when == ANY_SOIL and one.trust is used.trust
    ]
    said = [f"{printed} ({used.source})"]
    return "; ".join(said + [f"{one.text(case.units)} ({one.source})" for one in others])


def _things(crop: Crop, soil: Soil) -> dict[str, str]:
    return {
        "moisture": soil.moisture.value,
        "texture": soil.texture.value,
        "tillage": soil.tillage.value,
        "warmth": "cold" if is_cold(crop, soil.temperature) else "warm",
    }


def _depth_text(case: Case, value: Value) -> str:
    return show(value, "depth", case.units) if is_quantity(value) else f"notch {value}"


def _temperature(soil: Soil, units: Units) -> str:
    known = soil.temperature
    return "not given" if known is None else show(known, "temperature", units)
