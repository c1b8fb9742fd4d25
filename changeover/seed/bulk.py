"""Proposals for many planters in one call: the numeric settings as arrays, reasons by reference."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
from pint import Unit

from changeover.planter.machine import Planter
from changeover.planter.parts import Part
from changeover.planter.settings import standard
from changeover.planter.setup import Cell, Setup
from changeover.quantities import Q, Quantity, Refusal, is_quantity
from changeover.seed import bounds
from changeover.seed.bounds import Floats
from changeover.seed.case import Case
from changeover.seed.choices import answer_at, choose_with
from changeover.seed.closing import closing_share
from changeover.seed.depth import soil_of, target_depth
from changeover.seed.depth_rows import propose_depth
from changeover.seed.fleet_arrays import Counts, Fleet, Marks
from changeover.seed.hub_spacing import propose_hub_spacing
from changeover.seed.reasons import Proposed
from changeover.seed.row_locks import SAME_WITHIN, plan_rows
from changeover.seed.seed_rate import asked_for, rate_wanted
from changeover.seed.singulator import share_wanted
from changeover.seed.trust_order import manual_entry
from changeover.seed.vacuum_start import start_of

SETTINGS = ("depth", "singulator", "closing", "vacuum", "hub_spacing", "seed_rate", "cells")
NONE = 0  # where a position or a notch is not proposed


@dataclass(frozen=True)
class Ask:
    """What one lot and job ask of any planter: the case and the disc chosen for it."""

    case: Case
    disc: Part | None = None


@dataclass(frozen=True)
class ManyProposals:
    """Proposed values of p planters of at most r rows; a reason comes on asking.

    ``working`` (p, r) marks the rows that plant. ``notch`` (p, r) and the positions
    ``singulator`` and ``closing`` (p,) are 0 where there is no proposal; other arrays hold NaN
    there. ``vacuum`` in kPa, ``hub_spacing`` (p, r) in mm, ``seed_rate`` in seeds/m²,
    ``spacing`` in m, ``seeds_per_second`` a row, ``disc_speed`` in rpm, ``mass_rate`` in kg/m².
    """

    fleet: Fleet
    asks: tuple[Ask, ...]
    which: Counts
    working: Marks
    notch: Counts
    singulator: Counts
    closing: Counts
    vacuum: Floats
    hub_spacing: Floats
    seed_rate: Floats
    spacing: Floats
    seeds_per_second: Floats
    disc_speed: Floats
    mass_rate: Floats

    def proposed(self, planter: int, setting: str, row: int = 1) -> Proposed:
        """Return the whole proposal for one setting of one planter's row, with its reason.

        ``planter`` counts from 0, ``row`` from 1. Raises Refusal for a setting that the bulk
        look-up does not propose, or a row that does not plant.
        """
        if setting not in SETTINGS or not self.working[planter, row - 1]:
            raise Refusal(f"Bulk look-up: {setting} of row {row} has no proposal here.")
        ask = self.asks[int(self.which[planter])]
        case = _on(self.fleet.planters[planter], ask)
        cells = {"depth": propose_depth(case, standard("depth"))[0]} if setting == "depth" else {}
        if setting == "hub_spacing":
            code = ask.disc.code if ask.disc else None
            cells[setting] = propose_hub_spacing(case, standard(setting), code)
        place = case.planter.place(standard(setting).scope, row)
        cell = Cell(setting, place)
        if setting in cells:
            return cells[setting][cell]
        answer = answer_at(standard(setting), place, (choose_with(case, ask.disc),))
        return Proposed(cell, answer.value, answer.reason, answer.low, answer.high)


def propose_many(fleet: Fleet, asks: Sequence[Ask], which: Counts) -> ManyProposals:
    """Return the numeric proposals for every row of every planter, ``which`` asks which (p,).

    Each distinct ask is looked up once; then all planters and rows are reckoned as arrays. Agrees
    with ``propose`` row by row, for planters of which nothing is found, without records and
    without manual values that name one planter. Raises Refusal for inputs out of bounds.
    """
    if len(which) != len(fleet.planters) or not 0 <= which.min() <= which.max() < len(asks):
        raise Refusal("Bulk look-up: give one ask, by its number, for each planter.")
    asked = {key: column[which] for key, column in _asked(asks).items()}
    working, spacing = _working(fleet, asked["row_spacing"])
    rate = asked["rate"]
    per_second = rate * spacing * asked["speed"]
    return ManyProposals(
        fleet,
        tuple(asks),
        which,
        working,
        np.where(working, _notches(fleet, asked["depth"], asked["notch"]), NONE),
        _positions(fleet, asked["open_share"], asked["position"]),
        _closing(fleet, asked["force"], asked["closing"]),
        _vacuum(fleet, asked["vacuum"], asked["vacuum_low"]),
        np.where(working, _hubs(fleet, asked["hub"]), np.nan),
        rate,
        1.0 / (rate * spacing),
        per_second,
        per_second * 60.0 / asked["cells"],
        rate / asked["seeds_per_mass"],
    )


def _on(planter: Planter, ask: Ask) -> Case:
    """Return the case of an ask on one planter of which nothing is found."""
    case = ask.case
    plan = plan_rows(planter, Setup(), case.job.row_spacing, case.units)
    manual = tuple(one for one in case.manual if one.planter is None)
    return replace(
        case,
        planter=planter,
        as_found=Setup(),
        rows=plan.rows,
        row_spacing=plan.spacing,
        records=(),
        manual=manual,
    )


def _asked(asks: Sequence[Ask]) -> dict[str, Floats]:
    """Return the figures of each ask as columns, NaN where one has none."""
    lines = [_figures(ask) for ask in asks]
    columns = {key: np.array([line[key] for line in lines]) for key in lines[0]}
    known = columns["rate"][np.isfinite(columns["rate"])]
    bounds.RATE.of(Q(known, "seed/m^2"))
    bounds.SPEED.of(Q(columns["speed"], "m/s"))
    return columns


def _figures(ask: Ask) -> dict[str, float]:
    case = replace(ask.case, manual=tuple(one for one in ask.case.manual if one.planter is None))
    target = target_depth(case.crop, soil_of(case))
    open_share, force = share_wanted(case), closing_share(case.crop.rules, soil_of(case))
    per_mass = case.seeds_per_mass
    rate = _manual(case, "seed_rate", "seed/m^2") if not asked_for(case) else np.nan
    vacuum, low = _start(case, ask.disc)
    depth = _manual(case, "depth", "mm")
    by_rule = target is not None and np.isnan(depth)
    return {
        "rate": _size(rate_wanted(case), "seed/m^2") if np.isnan(rate) else rate,
        "speed": _size(case.job.speed, "m/s"),
        "row_spacing": _size(case.job.row_spacing, "m"),
        "cells": float(ask.disc.cells) if ask.disc and ask.disc.cells else np.nan,
        "seeds_per_mass": _size(per_mass[0] if per_mass else None, "seed/kg"),
        "depth": _size(target.depth, "mm") if by_rule and target else depth,
        "notch": _position(case, "depth"),
        "open_share": open_share.gives if open_share else np.nan,
        "position": _position(case, "singulator", ask.disc),
        "force": force[0] if force else np.nan,
        "closing": _position(case, "closing", ask.disc),
        "vacuum": vacuum,
        "vacuum_low": low,
        "hub": _manual(case, "hub_spacing", "mm", ask.disc),
    }


def _size(quantity: Quantity | None, unit: str) -> float:
    return np.nan if quantity is None else float(quantity.magnitude) * _factor(quantity.units, unit)


@lru_cache(maxsize=256)
def _factor(given: Unit, wanted: str) -> float:
    """Return how many of the unit wanted one of the unit given is; none of them has an offset."""
    return float(Q(1.0, given).to(wanted).magnitude)


def _manual(case: Case, key: str, unit: str, disc: Part | None = None) -> float:
    entered = manual_entry(case, key, disc.code if disc else None)
    known = entered is not None and is_quantity(entered.value)
    return _size(entered.value, unit) if known and entered else np.nan  # type: ignore[arg-type]


def _position(case: Case, key: str, disc: Part | None = None) -> float:
    entered = manual_entry(case, key, disc.code if disc else None)
    return float(entered.value) if entered and isinstance(entered.value, int) else np.nan


def _start(case: Case, disc: Part | None) -> tuple[float, float]:
    """Return the vacuum to start from and the least that will do, kPa; the user's own is both."""
    own = _manual(case, "vacuum", "kPa", disc)
    if not np.isnan(own):
        return own, own
    band = start_of(case, disc)
    if band is None:
        return np.nan, np.nan
    return _size(band.start, "kPa"), _size(band.low, "kPa")


def _working(fleet: Fleet, wanted: Floats) -> tuple[Marks, Floats]:
    """Return the rows that plant (p, r) and the spacing between them (p,), in metres."""
    wide = fleet.row_spacing
    narrow = np.where(fleet.split, wide / 2.0, wide)
    as_narrow = fleet.split & (np.abs(wanted - narrow) <= SAME_WITHIN * narrow)
    locked = fleet.split & ~as_narrow & (np.abs(wanted - wide) <= SAME_WITHIN * wide)
    working = fleet.exists & ~(fleet.between & locked[:, None])
    return working, np.where(locked, wide, narrow)


def _notches(fleet: Fleet, depth: Floats, fixed: Floats) -> Counts:
    """Return the notch nearest to a depth in mm at every row (p, r), 0 beyond the scale."""
    from_first = (depth - fleet.depth_first)[:, None] - fleet.offset
    nearest = np.rint(from_first / fleet.depth_step[:, None] + 1.0 + 1e-9)
    nearest = np.where(np.isnan(fixed)[:, None], nearest, fixed[:, None])
    reached = (nearest >= 1.0) & (nearest <= fleet.notches[:, None])
    return np.where(reached, nearest, NONE).astype(np.int64)


def _positions(fleet: Fleet, share: Floats, fixed: Floats) -> Counts:
    """Return the singulator position nearest to a share (p,), 0 without ground."""
    gaps = np.abs(fleet.open_share - share[:, None])
    known = ~np.isnan(gaps)
    nearest = np.where(known, gaps, np.inf).argmin(axis=1) + 1
    by_rule = np.where(known.any(axis=1), nearest, NONE)
    return _fixed(by_rule, fixed, np.count_nonzero(fleet.positions, axis=1))


def _closing(fleet: Fleet, share: Floats, fixed: Floats) -> Counts:
    """Return the closing position for a share of the index (p,), 0 without ground."""
    by_rule = np.nan_to_num(1.0 + np.rint(share * (fleet.closing - 1) + 1e-9), nan=NONE)
    return _fixed(by_rule.astype(np.int64), fixed, fleet.closing)


def _fixed(by_rule: Counts, fixed: Floats, most: Counts) -> Counts:
    """Return the user's own position where one is entered; 0 where the planter has no such."""
    own = np.where((fixed >= 1) & (fixed <= most), np.nan_to_num(fixed), NONE).astype(np.int64)
    return np.where(np.isnan(fixed), by_rule, own)


def _vacuum(fleet: Fleet, start: Floats, low: Floats) -> Floats:
    """Return the level to start from in kPa (p,): the fan limit where the band allows no more."""
    limit = fleet.fan_limit
    return np.where(start <= limit, start, np.where(low <= limit, limit, np.nan))


def _hubs(fleet: Fleet, figure: Floats) -> Floats:
    """Return the figure from each meter's own zero, to the planter's step (p, r), in mm."""
    step = fleet.hub_step[:, None]
    return np.floor((figure[:, None] + fleet.hub_zero) / step + 0.5 + 1e-9) * step
