"""Hub spacing: the manual's figure from each meter's own zero, to the planter's step."""

from dataclasses import replace
from math import floor

from changeover.planter.parts import Meter
from changeover.planter.places import Place
from changeover.planter.settings import Setting
from changeover.planter.setup import Cell, Value
from changeover.quantities import Q, Quantity, is_quantity, show
from changeover.seed.case import Case
from changeover.seed.reasons import Input, Proposed, Reason, Trust
from changeover.seed.trust_order import NO_GROUND, Answer, ladder, no_ground, settle

RULE = "hub spacing"
ITS_OWN_ZERO = "each meter has its own zero"
KEPT = "No neutral figure for hub spacing exists; kept as found. Check it against your manual."


def rounded_to_step(distance: Quantity, step: Quantity) -> Quantity:
    """Return a distance to the nearest step of the planter's hub-spacing scale, halves up.

    Both are lengths, scalars; the result is in millimetres.
    """
    size = step.to("mm").magnitude
    return Q(floor(distance.to("mm").magnitude / size + 0.5 + 1e-9) * size, "mm")


def propose_hub_spacing(case: Case, setting: Setting, disc: str | None) -> dict[Cell, Proposed]:
    """Return the hub spacing of every row: the figure from its meter's own zero, or as found."""
    first = Place.of_row(case.rows[0]) if case.rows else Place.of_row(1)
    answer = settle(case, setting, first, no_ground(RULE), disc=disc, record_aside=ITS_OWN_ZERO)
    zeros = _zeros(case)
    cells: dict[Cell, Proposed] = {}
    shared: dict[Quantity | None, tuple[Quantity, Reason]] = {}
    kept: dict[bool, Reason] = {}
    for row in case.rows:
        cell = Cell(setting.key, Place.of_row(row))
        if answer.value is None or not is_quantity(answer.value):
            found = case.as_found.get(cell)
            known = found is not None
            if known not in kept:
                kept[known] = _kept_reason(answer, found)
            cells[cell] = Proposed(cell, found, kept[known])
            continue
        zero = zeros.get(row)
        if zero not in shared:
            shared[zero] = _from_zero(case, answer, answer.value, zero)
        value, reason = shared[zero]
        cells[cell] = Proposed(cell, value, reason)
    return cells


def _zeros(case: Case) -> dict[int, Quantity]:
    return {
        meter.row: meter.hub_zero
        for meter in case.meters
        if _here(meter, case) and meter.row is not None and meter.hub_zero is not None
    }


def _here(meter: Meter, case: Case) -> bool:
    return meter.planter == case.planter.name


def _from_zero(
    case: Case, answer: Answer, figure: Quantity, zero: Quantity | None
) -> tuple[Quantity, Reason]:
    step = case.planter.hub_spacing_step
    value = rounded_to_step(figure + zero if zero is not None else figure, step)
    units = case.units
    start = show(zero, "hub_spacing", units) if zero is not None else "not entered, taken as 0"
    how = (
        f"{show(figure, 'hub_spacing', units)} from the meter’s own zero ({start}), to the "
        f"nearest {show(step, 'hub_spacing', units)} → {show(value, 'hub_spacing', units)}"
    )
    inputs = (*answer.reason.inputs, Input("meter’s zero", start))
    return value, replace(answer.reason, how=how, inputs=inputs)


def _kept_reason(answer: Answer, found: Value | None) -> Reason:
    says = {rung.trust: rung.says for rung in answer.reason.evidence}
    cautions = answer.reason.cautions
    if found is None:
        why = f"{NO_GROUND} No neutral figure for hub spacing exists."
        return replace(answer.reason, why=why)
    says[Trust.RECORD] = "kept as found"
    evidence = ladder(Trust.RECORD, says)
    return Reason(RULE, KEPT, "as found", Trust.RECORD, "", (), cautions, evidence)
