"""Proposals: a thousand planters of 36 rows against bare numpy, and one planter of 48 rows."""

from collections.abc import Iterable

import numpy as np

from changeover.planter.load_reading import LoadReading
from changeover.planter.places import Place, Scope
from changeover.planter.scales import DepthScale, DugLine
from changeover.planter.settings import Kind, Setting, WorkPlace
from changeover.quantities import Q
from changeover.seed.bulk import Ask, propose_many
from changeover.seed.fleet_arrays import Fleet
from changeover.seed.manual import ManualValue
from tests.bench.timing import Ratio, Spell, seconds_of
from tests.seed.made_up import SOY_DISC, case, job, planter, proposal

PLANTERS, ROWS = 1000, 36
DOWN_PRESSURE = Setting(
    "down",
    "Down pressure",
    Kind.QUANTITY,
    Scope.DOWN_PRESSURE,
    WorkPlace.ROW_UNIT,
    measure="force",
    own=True,
)
READINGS = tuple(
    LoadReading(Place.of_row(5), Q(setting, "lbf"), Q(load, "lbf"))
    for setting, load in ((100, 70), (200, 150), (300, 238))
)
DUG = DugLine(10, 6.0, 40.0, Q(0.05, "in"))
CROPS = ("corn", "soybean", "sorghum", "sunflower", "cotton")


def bare_arithmetic(fleet: Fleet) -> None:
    """Reckon the same figures for every row, without checks, choices or reasons."""
    shape = (PLANTERS, ROWS)
    rate, spacing = np.full(shape, 34.6), np.full(shape, 0.762)
    depth, level = np.full(shape, 31.75), np.full(shape, 4.2)
    per_second = rate * spacing * 2.2352
    1.0 / (rate * spacing)
    per_second * 60.0 / 56.0
    rate / 5732.0
    np.rint((depth - fleet.depth_first[:, None] - fleet.offset) / fleet.depth_step + 1.0)
    np.floor((15.0 + fleet.hub_zero) / 0.1 + 0.5) * 0.1
    np.minimum(level, fleet.fan_limit[:, None])
    np.abs(fleet.open_share - 0.5).argmin(axis=1)
    1.0 + np.rint(np.full(shape, 0.25) * 4.0)


def measure() -> Iterable[Ratio | Spell]:
    scale = DepthScale(Q(0.5, "in"), Q(0.25, "in"), 13, {5: Q(0.1, "in")})
    own = {"depth": scale, "wheel_track_rows": frozenset({8, 29}), "load_readings": READINGS}
    planters = [planter(ROWS, name=f"P{number}", **own) for number in range(PLANTERS)]
    fleet = Fleet.of(planters, load=DOWN_PRESSURE)
    hub = ManualValue("soybean", "hub_spacing", Q(15, "mm"))
    day = job(emergence=0.9, overlap=0.03, soil_temperature=Q(51, "degF"))
    asks = [Ask(case(crop, manual=(hub,), job=day), SOY_DISC) for crop in CROPS]
    which = np.arange(PLANTERS) % len(asks)
    yield Ratio(
        "proposals for 1 000 planters of 36 rows",
        seconds_of(lambda: propose_many(fleet, asks, which), 25, 3),
        seconds_of(lambda: bare_arithmetic(fleet), 25, 3),
        "bare numpy arithmetic",
        10,
    )
    machine = planter(48)
    assert proposal(planter=machine).cells
    yield Spell(
        "proposal for a planter of 48 rows", seconds_of(lambda: proposal(planter=machine)), 0.05
    )
    deep = DepthScale(Q(0.5, "in"), Q(0.25, "in"), 13, {r: Q(r / 500, "in") for r in range(1, 49)})
    calibrated = planter(48, depth=deep)
    yield Spell(
        "the same, each row with its own depth offset",
        seconds_of(lambda: proposal(planter=calibrated)),
        0.05,
    )
    for row in calibrated.row_numbers:
        deep = deep.with_row(row, deep.offsets[row], Q(0.2 + row / 1000, "in"), DUG)
    dug = planter(48, depth=deep)
    yield Spell(
        "the same, each row with its own depth line by digs",
        seconds_of(lambda: proposal(planter=dug)),
        0.05,
    )
