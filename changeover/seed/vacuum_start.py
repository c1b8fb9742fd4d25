"""Vacuum to start from: your own figure, or the published optima with an honest band, per fan."""

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from changeover.planter.parts import Part
from changeover.planter.places import Place
from changeover.planter.settings import Setting
from changeover.quantities import Q, Quantity, Refusal, Units, is_quantity, show
from changeover.seed import rate
from changeover.seed.bench_seen import BY_BENCH, vacuum_by_bench
from changeover.seed.case import Case
from changeover.seed.crops import Crop, CropFigure
from changeover.seed.reasons import Input, Reason, Trust
from changeover.seed.trust_order import (
    BENCH_DECIDES,
    NO_GROUND,
    Answer,
    no_ground,
    reasoned,
    settle,
)
from changeover.seed.vacuum import (
    VacuumBand,
    altitude_note,
    band_about,
    least_holding_vacuum,
    shared_level,
    start_from_optima,
    start_from_seed,
)

RULE = "vacuum from published optima"
BY_WEIGHT = "vacuum from seed weight and hole"
# Two figures in print that differ by this much or more are both shown, with why.
DISAGREE = 1.5
TUNE = "A start, not a setting: tune it by bench runs. More vacuum: fewer skips, more doubles."

Charge = tuple[Case, Part | None]


def answer_vacuum(setting: Setting, place: Place, charges: Sequence[Charge]) -> Answer:
    """Return the vacuum of one fan for the lots and discs that it serves.

    One lot: the manual's value, a proved setup's, or the start from print. Several: the level
    that serves every band, or none and a sentence. A fan limit below the start is said aloud.
    """
    case = charges[0][0]
    return _at_altitude(case, _of_fan(setting, place, charges))


def _at_altitude(case: Case, answer: Answer) -> Answer:
    """Add what the field's altitude does to the fan; the level on the gauge stays."""
    height = case.job.field.altitude
    if height is None or answer.value is None:
        return answer
    reason, note = answer.reason, altitude_note(height, case.units)
    shown = show(height, "row_length", case.units)
    inputs = (*reason.inputs, Input("altitude", shown))
    how = f"{reason.how.rstrip('.')}. {note}".removeprefix(". ")
    return replace(answer, reason=replace(reason, how=how, inputs=inputs))


def _of_fan(setting: Setting, place: Place, charges: Sequence[Charge]) -> Answer:
    case = charges[0][0]
    answers = [_for_one(setting, place, case, disc) for case, disc in charges]
    if len(answers) == 1:
        return _within_limit(case, place, answers[0])
    if any(not is_quantity(answer.value) for answer in answers):
        return next(answer for answer in answers if not is_quantity(answer.value))
    return _shared(case, place, charges, answers)


def _for_one(setting: Setting, place: Place, case: Case, disc: Part | None) -> Answer:
    printed = _from_print(case, disc)
    own = vacuum_by_bench(case, place, disc, printed) if case.bench else printed
    aside = BENCH_DECIDES if own.value is not None and own.reason.rule == BY_BENCH else ""
    code = disc.code if disc else None
    answer = settle(case, setting, place, own, disc=code, record_aside=aside)
    if is_quantity(answer.value) and answer.low is None:
        band = band_about(answer.value)
        return replace(answer, low=band.low, high=band.high)
    return answer


def start_of(case: Case, disc: Part | None) -> VacuumBand | None:
    """Return the start and band by rule alone: the published optima, else seed weight and hole.

    None where neither is known, or where no vacuum holds so heavy a seed at so small a hole.
    """
    if case.crop.of("vacuum"):
        return _printed_start(case.crop)
    mass = _seed_mass(case)
    if disc is None or disc.hole is None or mass is None:
        return None
    return _start_by_weight(mass, disc.hole)


@lru_cache(maxsize=64)
def _printed_start(crop: Crop) -> VacuumBand:
    return start_from_optima([figure.middle for figure in crop.of("vacuum")])


@lru_cache(maxsize=256)
def _start_by_weight(mass: Quantity, hole: Quantity) -> VacuumBand | None:
    try:
        return start_from_seed(mass, hole)
    except Refusal:
        return None


def _from_print(case: Case, disc: Part | None) -> Answer:
    figures, band = case.crop.of("vacuum"), start_of(case, disc)
    if band is None:
        return no_ground(RULE, _why_none(case, disc))
    if figures:
        return _from_optima(case, disc, figures, band)
    level = show(band.start, "pressure", case.units)
    why = (
        f"No optimum for {case.name} is in print. {level} holds the seed as firmly for its weight "
        "as the optima printed for other crops do."
    )
    source = "derived from ten published optima: holding force 29 times the weight, 13 to 106"
    reason = reasoned(
        BY_WEIGHT,
        why,
        source,
        Trust.MEMORY,
        how=f"29 · weight / hole area = {level}; band ×½ to ×2. {_bound(case, disc)}".strip(),
        inputs=_inputs(case, disc),
        cautions=(TUNE,),
        says={Trust.MEMORY: f"{level}, by weight and hole"},
    )
    return Answer(band.start, reason, band.low, band.high)


def _why_none(case: Case, disc: Part | None) -> str:
    """Say why there is no start: what is not known, or that no vacuum would hold the seed."""
    if disc is None or disc.hole is None or _seed_mass(case) is None:
        return "No optimum is printed for it, and seed weight or hole is not known."
    hole = show(disc.hole, "seed_size", case.units)
    return f"A hole of {hole} is too small to hold so heavy a seed: take a disc with larger holes."


def _from_optima(
    case: Case, disc: Part | None, figures: tuple[CropFigure, ...], band: VacuumBand
) -> Answer:
    units = case.units
    printed = "; ".join(
        f"{show(figure.middle, 'pressure', units)} ({figure.source}"
        + (f", {figure.note})" if figure.note else ")")
        for figure in figures
    )
    level = show(band.start, "pressure", units)
    low, high = show(band.low, "pressure", units, sign=False), show(band.high, "pressure", units)
    how = f"geometric mean of the optima = {level}; band {low} to {high}. {_bound(case, disc)}"
    why = f"{_spread(figures, units)} Start at {level}, between {low} and {high}."
    reason = reasoned(
        RULE,
        why,
        "; ".join(dict.fromkeys(figure.source for figure in figures)),
        figures[0].trust,
        how=how.strip(),
        inputs=_inputs(case, disc),
        cautions=(TUNE,),
        says={figures[0].trust: printed},
    )
    return Answer(band.start, reason, band.low, band.high)


def _spread(figures: tuple[CropFigure, ...], units: Units) -> str:
    """Say whether the sources agree, and if not, what sets them apart."""
    ordered = sorted(figures, key=lambda figure: float(figure.middle.to("kPa").magnitude))
    low, high = ordered[0], ordered[-1]
    shown = [show(figure.middle, "pressure", units) for figure in (low, high)]
    ratio = float((high.middle / low.middle).to("count").magnitude)
    if ratio < DISAGREE:
        return f"In print: {' and '.join(dict.fromkeys(shown))}."
    notes = [f"{one} ({figure.note})" for one, figure in zip(shown, (low, high), strict=True)]
    return f"The figures in print differ by {ratio:.2g}: {notes[0]} and {notes[1]}."


def _bound(case: Case, disc: Part | None) -> str:
    """Say the least vacuum that holds the seed by a balance of forces, where all is known."""
    mass = _seed_mass(case)
    known = disc is not None and disc.hole is not None and disc.cell_circle is not None
    rate_wanted = case.job.seed_rate
    if disc is None or not known or mass is None or disc.cells is None or rate_wanted is None:
        return ""
    if disc.hole is None or disc.cell_circle is None:
        return ""
    per_second = rate.seeds_per_second(rate_wanted, case.row_spacing, case.job.speed)
    speed = rate.peripheral_speed(per_second, disc.cells, disc.cell_circle)
    least = least_holding_vacuum(mass, disc.hole, speed, disc.cell_circle)
    return (
        f"By weight and centripetal force alone at least {show(least, 'pressure', case.units)}, "
        "about a tenth of what is needed."
    )


def _seed_mass(case: Case) -> Quantity | None:
    if case.seeds_per_mass is None:
        return None
    per_kilogram = float(case.seeds_per_mass[0].to("seed/kg").magnitude)
    return Q(1000.0 / per_kilogram, "g")


def _within_limit(case: Case, place: Place, answer: Answer) -> Answer:
    """Hold a level to the fan limit: the limit where the band allows it, else no value; said so."""
    limit, value = case.planter.fan_limit, answer.value
    if limit is None or not is_quantity(value) or value <= limit:
        return answer
    units = case.units
    wanted, reach = show(value, "pressure", units), show(limit, "pressure", units)
    says = f"{_named(place)} reaches {reach}, but {case.name} wants {wanted} to start."
    enough = answer.low is not None and answer.low <= limit and _not_the_users(answer.reason)
    if enough:
        says = f"{says} {reach} is within the band: it is proposed instead."
    else:
        says = f"{says} Enter less, raise the limit, or change the disc."
    reason = replace(answer.reason, cautions=(says, *answer.reason.cautions))
    if not enough:
        reason = replace(reason, why=f"{NO_GROUND} {says}")
    value = limit if enough else None
    return replace(answer, value=value, reason=reason, high=limit, warnings=(says,))


def _not_the_users(reason: Reason) -> bool:
    return reason.trust not in (Trust.MANUAL, Trust.RECORD)


def _shared(
    case: Case, place: Place, charges: Sequence[Charge], answers: Sequence[Answer]
) -> Answer:
    """Return the level that serves several lots or discs under one fan."""
    bands, names = [], []
    for (one, disc), answer in zip(charges, answers, strict=True):
        if is_quantity(answer.value) and answer.low is not None and answer.high is not None:
            bands.append(VacuumBand(answer.low, answer.value, answer.high))
            on = f" on disc {disc.code}" if disc else ""
            names.append(f"{one.name} lot {one.lot.number}{on}")
    shared = shared_level(bands, names, case.planter.fan_limit, case.units)
    told = "; ".join(
        f"{name}: {show(band.start, 'pressure', case.units)}"
        for name, band in zip(names, bands, strict=True)
    )
    least = max(answers, key=lambda answer: list(Trust).index(answer.reason.trust)).reason
    if shared.band is None:
        answer = no_ground("one vacuum for several lots", shared.says)
        return replace(answer, warnings=(f"{_named(place)}: {shared.says}",))
    reason = reasoned(
        "one vacuum for several lots",
        f"{shared.says} {told}.",
        least.source,
        least.trust,
        how="geometric mean of the starts, kept within the overlap of the bands",
        inputs=tuple(Input("lot and disc", name) for name in names),
        cautions=(TUNE,),
    )
    return Answer(shared.band.start, reason, shared.band.low, shared.band.high)


def _named(place: Place) -> str:
    return f"{place.label[:1].upper()}{place.label[1:]}"


def _inputs(case: Case, disc: Part | None) -> tuple[Input, ...]:
    mass, units = _seed_mass(case), case.units
    hole = show(disc.hole, "seed_size", units) if disc and disc.hole is not None else "not known"
    weight = f"{float(mass.to('g').magnitude) * 1000:.0f} mg" if mass is not None else "not known"
    return (
        Input("crop", case.crop.name),
        Input("disc", disc.code if disc else "not known"),
        Input("hole", hole),
        Input("mass of one seed", weight),
    )
