"""Proposals for many planters in one call: the numeric settings as arrays, reasons by reference."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from changeover.planter.settings import Setting, standard
from changeover.planter.setup import Cell
from changeover.quantities import Refusal
from changeover.seed.bounds import Floats
from changeover.seed.bulk_ask import Ask, columns, on_planter
from changeover.seed.choices import answer_at, choose_with
from changeover.seed.depth_rows import propose_depth
from changeover.seed.fleet_arrays import Counts, Fleet, Marks
from changeover.seed.hub_spacing import propose_hub_spacing
from changeover.seed.need import whole_packages
from changeover.seed.reasons import Proposed
from changeover.seed.row_locks import SAME_WITHIN

__all__ = ["SETTINGS", "Ask", "ManyProposals", "propose_many"]

SETTINGS = ("depth", "singulator", "closing", "vacuum", "hub_spacing", "seed_rate", "cells")
NONE = 0  # where a position or a notch is not proposed


@dataclass(frozen=True)
class ManyProposals:
    """Proposed values of p planters of at most r rows; a reason comes on asking.

    ``working`` (p, r) marks the rows that plant. Positions are 0 where there is no proposal:
    ``notch`` and ``closing`` (p, r), ``singulator`` (p,), ``cells`` (p,); other arrays hold NaN
    there. ``vacuum`` in kPa, ``hub_spacing`` (p, r) in mm, ``down_pressure`` (p, circuits) in the
    unit of ``fleet.load``, ``seed_rate`` in seeds/m², ``spacing`` in m, ``seeds_per_second`` a
    row, ``disc_speed`` in rpm, ``stand`` in plants/m², ``mass_rate`` in kg/m²; ``seeds`` and
    ``packages`` for the whole job, overlap counted in.
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
    down_pressure: Floats
    cells: Counts
    seed_rate: Floats
    spacing: Floats
    seeds_per_second: Floats
    disc_speed: Floats
    stand: Floats
    mass_rate: Floats
    seeds: Floats
    packages: Floats

    def proposed(self, planter: int, setting: str, row: int = 1) -> Proposed:
        """Return the whole proposal for one setting of one planter's row, with its reason.

        ``planter`` counts from 0, ``row`` from 1. Raises Refusal for a setting that the bulk
        look-up does not propose, or a row that does not plant.
        """
        asked = self._setting(setting)
        if asked is None or not self.working[planter, row - 1]:
            raise Refusal(f"Bulk look-up: {setting} of row {row} has no proposal here.")
        ask = self.asks[int(self.which[planter])]
        case = on_planter(self.fleet, planter, ask)
        cell = Cell(setting, case.planter.place(asked.scope, row))
        if setting == "depth":
            return propose_depth(case, asked)[0][cell]
        if setting == "hub_spacing":
            return propose_hub_spacing(case, asked, ask.disc.code if ask.disc else None)[cell]
        answer = answer_at(asked, cell.place, (choose_with(case, ask.disc),))
        return Proposed(cell, answer.value, answer.reason, answer.low, answer.high)

    def _setting(self, key: str) -> Setting | None:
        load = self.fleet.load.setting
        if load is not None and load.key == key:
            return load
        return standard(key) if key in SETTINGS else None


def propose_many(fleet: Fleet, asks: Sequence[Ask], which: Counts) -> ManyProposals:
    """Return the numeric proposals for every row of every planter, ``which`` asks which (p,).

    Each distinct ask is looked up once; then all planters and rows are reckoned as arrays. Agrees
    with ``propose`` row by row, with a disc that is given and one lot on each planter; bench
    runs, which belong to one planter's rows, are left to ``propose``. Raises Refusal for inputs
    out of bounds.
    """
    if len(which) != len(fleet.planters) or not 0 <= which.min() <= which.max() < len(asks):
        raise Refusal("Bulk look-up: give one ask, by its number, for each planter.")
    asked = columns(fleet, asks, which)
    working, spacing = _working(fleet, asked["row_spacing"])
    rate = asked["rate"]
    per_second = rate * spacing * asked["speed"]
    drawn = rate * asked["dropped"] * spacing * working.sum(axis=1) / fleet.width
    seeds = asked["area"] * drawn
    return ManyProposals(
        fleet,
        tuple(asks),
        which,
        working,
        np.where(working, _notches(fleet, asked), NONE),
        _positions(fleet, asked["open_share"], asked["position"]),
        np.where(working, _closing(fleet, asked), NONE),
        _vacuum(fleet, asked["vacuum"], asked["vacuum_low"]),
        np.where(working, _hubs(fleet, asked["hub"]), np.nan),
        _down_pressure(fleet, asked, working),
        _cells(asked),
        rate,
        1.0 / (rate * spacing),
        per_second,
        per_second * 60.0 / asked["cells"],
        rate * asked["come_up"],
        rate / asked["seeds_per_mass"],
        seeds,
        whole_packages(seeds, asked["package"]),
    )


def _working(fleet: Fleet, wanted: Floats) -> tuple[Marks, Floats]:
    """Return the rows that plant (p, r) and the spacing between them (p,), in metres.

    Rows between the main rows stay as found where no spacing is wanted, or one that is not had.
    """
    wide, narrow = fleet.row_spacing, fleet.narrow
    all_down = fleet.split & (np.abs(wanted - narrow) <= SAME_WITHIN * narrow)
    all_up = fleet.split & ~all_down & (np.abs(wanted - wide) <= SAME_WITHIN * wide)
    as_found = fleet.split & ~all_down & ~all_up
    up = fleet.between & (all_up[:, None] | (as_found[:, None] & fleet.up))
    working = fleet.exists & ~up
    between = (working & fleet.between).any(axis=1)
    return working, np.where(fleet.twin | between, narrow, wide)


def _notches(fleet: Fleet, asked: dict[str, Floats]) -> Counts:
    """Return the notch nearest to the depth in mm at every row (p, r), 0 beyond the scale."""
    own, fixed = asked["depth_own"], asked["notch"]
    depth = np.where(np.isnan(own), asked["depth"], own)
    from_first = (depth - fleet.depth_first)[:, None] - fleet.offset
    nearest = np.rint(from_first / fleet.depth_step + 1.0 + 1e-9)
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


def _closing(fleet: Fleet, asked: dict[str, Floats]) -> Counts:
    """Return the closing position for a share of the index (p, r), 0 without ground."""
    force, most = (asked[key][:, None] for key in ("force", "force_in_track")), fleet.closing
    plain, in_track = (1.0 + np.rint(share * (most[:, None] - 1) + 1e-9) for share in force)
    by_rule = np.nan_to_num(np.where(fleet.track, in_track, plain), nan=NONE).astype(np.int64)
    return _fixed(by_rule, asked["closing"][:, None], most[:, None])


def _fixed(by_rule: Counts, fixed: Floats, most: Counts) -> Counts:
    """Return the user's own position where one is entered; 0 where the planter has no such."""
    had = (fixed >= 1) & (fixed <= most)
    own = np.where(had, fixed, NONE).astype(np.int64)
    return np.where(np.isnan(fixed), by_rule, own)


def _cells(asked: dict[str, Floats]) -> Counts:
    """Return the cells to enter in the cab (p,): one's own, else the disc's; 0 for none."""
    cells = np.where(np.isnan(asked["cells_own"]), asked["cells"], asked["cells_own"])
    return np.where(np.isfinite(cells), cells, NONE).astype(np.int64)


def _vacuum(fleet: Fleet, start: Floats, low: Floats) -> Floats:
    """Return the level to start from in kPa (p,): the fan limit where the band allows no more."""
    limit = fleet.fan_limit
    level = np.where(start <= limit, start, np.where(low <= limit, limit, np.nan))
    return np.where(np.isfinite(start), level, np.nan)


def _hubs(fleet: Fleet, figure: Floats) -> Floats:
    """Return the figure from each meter's own zero, to the planter's step (p, r), in mm.

    Without a figure that can be, it is kept as found.
    """
    step = fleet.hub_step[:, None]
    with_zero = np.where(np.isfinite(figure), figure, np.nan)[:, None] + fleet.hub_zero
    stepped = np.floor(with_zero / step + 0.5 + 1e-9) * step
    return np.where(np.isnan(stepped), fleet.hub_found, stepped)


def _down_pressure(fleet: Fleet, asked: dict[str, Floats], working: Marks) -> Floats:
    """Return the down pressure of each circuit (p, c): one's own, its line's, or as found.

    A circuit of which no row plants stays as found.
    """
    lines = fleet.load
    load = np.where(lines.track, asked["load_in_track"][:, None], asked["load"][:, None])
    by_line = lines.reached(load)
    manual, proved = asked["load_manual"][:, None], asked["load_proved"][:, None]
    kept = np.where(np.isnan(proved), lines.found, proved)
    found = np.where(np.isnan(manual), np.where(np.isnan(by_line), kept, by_line), manual)
    plants = (lines.rows & working[:, None, :]).any(axis=2)
    return np.where(plants, np.where(np.isfinite(found), found, np.nan), lines.found)
