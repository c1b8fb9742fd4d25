"""What one lot and job ask of many planters: the figures of each distinct look-up, as columns."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from changeover.planter.entry import check_value
from changeover.planter.machine import Planter
from changeover.planter.parts import Part
from changeover.planter.places import Place, Scope
from changeover.planter.settings import Kind, Setting, standard
from changeover.planter.setup import Value
from changeover.quantities import Q, Quantity, Refusal, is_quantity, scale_to
from changeover.seed import bounds
from changeover.seed.bounds import Floats
from changeover.seed.case import Case
from changeover.seed.closing import closing_share
from changeover.seed.depth import soil_of, target_depth
from changeover.seed.fleet_arrays import Counts, Fleet
from changeover.seed.load_target import load_target
from changeover.seed.need_figures import package_size
from changeover.seed.row_locks import plan_rows
from changeover.seed.seed_rate import asked_for, rate_wanted, shares_of
from changeover.seed.singulator import share_wanted
from changeover.seed.trust_order import manual_entry, proof_of
from changeover.seed.vacuum_start import start_of

NOT_GIVEN, CANNOT_BE = np.nan, np.inf


@dataclass(frozen=True)
class Ask:
    """What one lot and job ask of any planter: the case and the disc chosen for it."""

    case: Case
    disc: Part | None = None


def on_planter(fleet: Fleet, number: int, ask: Ask) -> Case:
    """Return the case of an ask on one planter of a fleet, with what is found of it."""
    case, planter, found = ask.case, fleet.planters[number], fleet.found[number]
    plan = plan_rows(planter, found, case.job.row_spacing, case.units)
    return replace(
        case,
        planter=planter,
        as_found=found,
        rows=plan.rows,
        row_spacing=plan.spacing,
        meters=fleet.meters,
        bench=(),
    )


def columns(fleet: Fleet, asks: Sequence[Ask], which: Counts) -> dict[str, Floats]:
    """Return the figures that each planter is asked for (p,), NaN where there is none.

    Each distinct ask is looked up once; a planter that a manual value or a proved setup names is
    looked up by itself. Raises Refusal for inputs out of bounds.
    """
    keys = _keys(fleet, asks, which)
    numbers: dict[tuple[int, str], int] = {}
    lines: list[dict[str, float]] = []
    line_of = np.empty(len(which), dtype=np.int64)
    for number, key in enumerate(keys):
        if key not in numbers:
            numbers[key] = len(lines)
            case = replace(asks[key[0]].case, planter=fleet.planters[number])
            lines.append(_figures(case, asks[key[0]].disc, fleet.load.setting))
        line_of[number] = numbers[key]
    found = {name: np.array([line[name] for line in lines]) for name in lines[0]}
    _check(found)
    return {name: column[line_of] for name, column in found.items()}


def _keys(fleet: Fleet, asks: Sequence[Ask], which: Counts) -> Sequence[tuple[int, str]]:
    """Return for each planter its ask, with its name where something is known of it alone."""
    named = [
        {one.planter for one in ask.case.manual} | {one.planter for one in ask.case.records}
        for ask in asks
    ]
    return [
        (ask, planter.name if planter.name in named[ask] else "")
        for ask, planter in zip(which.tolist(), fleet.planters, strict=True)
    ]


def _check(found: dict[str, Floats]) -> None:
    rate = found["rate"]
    bounds.RATE.of(Q(rate[np.isfinite(rate)], "seed/m^2"))
    bounds.SPEED.of(Q(found["speed"], "m/s"))


def _figures(case: Case, disc: Part | None, load: Setting | None) -> dict[str, float]:
    soil, rules = soil_of(case), case.crop.rules
    target, open_share = target_depth(case.crop, soil), share_wanted(case)
    forces = [closing_share(rules, soil, wheel_track=track) for track in (False, True)]
    loads = [load_target(rules, soil, wheel_track=track) for track in (False, True)]
    per_mass, package, shares = case.seeds_per_mass, package_size(case), shares_of(case)
    job, planter = case.job, case.planter
    if planter.fan_limit is not None:  # each planter's own limit is held to in the arrays
        case = replace(case, planter=replace(planter, fan_limit=None))
    return {
        "rate": _rate(case),
        "speed": _size(job.speed, "m/s"),
        "row_spacing": _size(job.row_spacing, "m"),
        "cells": float(disc.cells) if disc and disc.cells else np.nan,
        "cells_own": _own(case, standard("cells"), disc),
        "seeds_per_mass": _size(per_mass[0] if per_mass else None, "seed/kg"),
        "package": np.nan if package is None else float(package),
        "come_up": shares.standing,
        "area": _size(job.planted_area, "m^2") * (1.0 + (job.overlap or 0.0)),
        "dropped": 1.0 - shares.meter_error,
        "depth": _size(target.depth if target else None, "mm"),
        "open_share": open_share.gives if open_share else np.nan,
        "position": _own(case, standard("singulator"), disc, record=True),
        "force": forces[0][0] if forces[0] else np.nan,
        "force_in_track": forces[1][0] if forces[1] else np.nan,
        "closing": _own(case, standard("closing"), disc),
        "load": _size(loads[0].load if loads[0] else None, "N"),
        "load_in_track": _size(loads[1].load if loads[1] else None, "N"),
        "hub": _own(case, standard("hub_spacing"), disc),
        **_depth_own(case),
        **_start(case, disc),
        **_load_own(case, load, disc),
    }


def _rate(case: Case) -> float:
    own = NOT_GIVEN if asked_for(case) else _own(case, standard("seed_rate"), None)
    if np.isnan(own):
        return _size(rate_wanted(case), "seed/m^2")
    return own if np.isfinite(own) else np.nan


def _depth_own(case: Case) -> dict[str, float]:
    """Return the manual's depth in mm or its notch, whichever it gives."""
    entered = manual_entry(case, "depth")
    value = entered.value if entered else None
    notch = float(value) if isinstance(value, int) else NOT_GIVEN
    return {"depth_own": _size(value, "mm") if is_quantity(value) else NOT_GIVEN, "notch": notch}


def _start(case: Case, disc: Part | None) -> dict[str, float]:
    """Return the vacuum to start from and the least that will do, kPa; one's own is both."""
    own = _own(case, standard("vacuum"), disc, record=True)
    if not np.isnan(own):
        return {"vacuum": own, "vacuum_low": own}
    band = start_of(case, disc)
    return {
        "vacuum": _size(band.start if band else None, "kPa"),
        "vacuum_low": _size(band.low if band else None, "kPa"),
    }


def _load_own(case: Case, load: Setting | None, disc: Part | None) -> dict[str, float]:
    """Return the down pressure of the manual, and of a proved setup, which a line outdoes."""
    if load is None:
        return {"load_manual": NOT_GIVEN, "load_proved": NOT_GIVEN}
    both = _own(case, load, disc, record=True)
    return {"load_manual": _own(case, load, disc), "load_proved": both}


_UNITS = {"seed_rate": "seed/m^2", "pressure": "kPa", "hub_spacing": "mm", "oil_pressure": "kPa"}


def _own(case: Case, setting: Setting, disc: Part | None, *, record: bool = False) -> float:
    """Return the user's own value in the unit of the arrays: the manual's, else a proved one.

    ``NOT_GIVEN`` without one; ``CANNOT_BE`` for one that no planter can have. How many positions
    a planter has is for the arrays to say.
    """
    code = disc.code if disc else None
    entered = manual_entry(case, setting.key, code)
    value: Value | None = entered.value if entered else None
    if value is None and record and (proved := proof_of(case, setting.key, code)) is not None:
        value = proved.values[setting.key]
    if value is None:
        return NOT_GIVEN
    if setting.kind is Kind.INDEX:
        return float(value) if isinstance(value, int) else CANNOT_BE
    try:
        check_value(setting, case.planter, _first_place(case.planter, setting.scope), value)
    except Refusal:
        return CANNOT_BE
    if is_quantity(value):
        return _size(value, _UNITS.get(setting.measure or "", "N"))
    return float(value) if isinstance(value, int) else CANNOT_BE


def _first_place(planter: Planter, scope: Scope) -> Place:
    return planter.places(scope)[0]


def _size(quantity: Quantity | None, unit: str) -> float:
    if quantity is None:
        return np.nan
    scale = scale_to(quantity.units, unit)
    return np.nan if scale is None else float(quantity.magnitude) * scale
