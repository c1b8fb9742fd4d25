"""Strategies for the laws of the bulk look-up: planters, what is found of them, and asks."""

from dataclasses import replace

import numpy as np
from hypothesis import strategies as st

from changeover.planter.groups import Group, equal_groups
from changeover.planter.load_reading import LoadReading
from changeover.planter.machine import Planter
from changeover.planter.parts import Meter, Part
from changeover.planter.places import Place, Scope
from changeover.planter.scales import DepthScale
from changeover.planter.settings import DOWN, LOCKED_UP, Kind, Setting, WorkPlace
from changeover.planter.setup import Cell, Setup, Value
from changeover.quantities import Q, Quantity
from changeover.seed.bulk import Ask
from changeover.seed.fields import Field, FieldJob, Moisture, Texture, Tillage
from changeover.seed.fleet_arrays import Fleet
from changeover.seed.manual import ManualValue, ProvedSetup
from tests.seed.made_up import case, crop_table, lot, planter

LOAD = Setting(
    "springs", "Springs", Kind.QUANTITY, Scope.DOWN_PRESSURE, WorkPlace.ROW_UNIT,
    measure="force", own=True,
)  # fmt: skip
CROPS = ("corn", "soybean", "sorghum", "sunflower", "dry_bean_pinto")

lengths = st.integers(-8, 8).map(lambda mm: Q(mm / 4, "mm"))


@st.composite
def planters(draw: st.DrawFn) -> Planter:
    rows, sort = 2 * draw(st.integers(2, 6)), draw(st.sampled_from(("plain", "split", "twin")))
    offsets = draw(st.dictionaries(st.integers(1, rows), lengths, max_size=3))
    steps = {row: Q(draw(st.integers(4, 9)), "mm") for row in offsets if draw(st.booleans())}
    scale = DepthScale(
        Q(draw(st.integers(2, 6)) / 8, "in"),
        Q(draw(st.integers(4, 8)), "mm"),
        draw(st.integers(3, 14)),
        offsets,
        steps,
    )
    shared = [*equal_groups(Scope.DRIVE, 1, rows), *equal_groups(Scope.FAN, 2, rows)]
    return planter(
        rows,
        name=draw(st.sampled_from(("Low", "High"))),
        groups=(*shared, *draw(circuits(rows))),
        depth=scale,
        fan_limit=draw(st.none() | st.integers(2, 32).map(lambda level: Q(level, "inH2O"))),
        split_rows=frozenset(range(2, rows, 2)) if sort == "split" else frozenset(),
        twin_rows=sort == "twin",
        wheel_track_rows=draw(st.frozensets(st.integers(1, rows), max_size=3)),
        load_readings=draw(readings(rows)),
    )


@st.composite
def circuits(draw: st.DrawFn, rows: int) -> tuple[Group, ...]:
    count = draw(st.sampled_from((0, 1, 2)))
    return equal_groups(Scope.DOWN_PRESSURE, count, rows) if count else ()


@st.composite
def readings(draw: st.DrawFn, rows: int) -> tuple[LoadReading, ...]:
    row = Place.of_row(draw(st.integers(1, rows)))
    pairs = draw(st.lists(st.tuples(st.integers(0, 60), st.integers(10, 250)), max_size=4))
    return tuple(LoadReading(row, Q(5 * spring, "lbf"), Q(load, "lbf")) for spring, load in pairs)


@st.composite
def setups(draw: st.DrawFn, machine: Planter) -> Setup:
    cells: dict[Cell, Value] = {}
    for row in draw(st.sets(st.integers(1, machine.rows))):
        place = Place.of_row(row)
        cells[Cell("hub_spacing", place)] = Q(draw(st.integers(1, 9)) / 10, "mm")
        cells[Cell("row_lock", place)] = draw(st.sampled_from((DOWN, LOCKED_UP)))
    for place in machine.places(Scope.DOWN_PRESSURE):
        if draw(st.booleans()):
            cells[Cell(LOAD.key, place)] = Q(draw(st.integers(20, 200)), "lbf")
    return Setup(cells)


VALUES: dict[str, st.SearchStrategy[Value]] = {
    "depth": st.integers(1, 16) | st.integers(10, 90).map(lambda mm: Q(mm, "mm")),
    "singulator": st.integers(1, 9),
    "closing": st.integers(1, 9),
    "vacuum": st.integers(2, 400).map(lambda level: Q(level / 10, "inH2O")),
    "hub_spacing": st.integers(0, 12).map(lambda tenths: Q(tenths / 10, "mm")),
    "seed_rate": st.integers(10_000, 250_000).map(lambda rate: Q(rate, "seed/acre")),
    "cells": st.integers(1, 500),
    LOAD.key: st.integers(10, 300).map(lambda force: Q(force, "lbf")),
}
names = st.none() | st.sampled_from(("Low", "High"))


@st.composite
def manuals(draw: st.DrawFn, crop: str) -> ManualValue:
    key = draw(st.sampled_from(sorted(VALUES)))
    return ManualValue(crop, key, draw(VALUES[key]), "", draw(names))


@st.composite
def records(draw: st.DrawFn, crop: str, disc: str) -> ProvedSetup:
    keys = draw(st.sets(st.sampled_from(("singulator", "vacuum", "closing", LOAD.key))))
    values = {key: draw(VALUES[key]) for key in sorted(keys)}
    return ProvedSetup("proved", crop, disc, values=values, planter=draw(names))


def some(figures: st.SearchStrategy[int], unit: str) -> st.SearchStrategy[Quantity | None]:
    return st.none() | figures.map(lambda figure: Q(figure, unit))


jobs: st.SearchStrategy[FieldJob] = st.builds(
    FieldJob,
    st.builds(
        Field,
        st.just("West"),
        st.integers(1, 400).map(lambda area: Q(area, "acre")),
        st.sampled_from(Texture),
    ),
    st.just("L"),
    st.integers(4, 18).map(lambda speed: Q(speed / 2, "mph")),
    seed_rate=some(st.integers(15_000, 200_000), "seed/acre"),
    stand=some(st.integers(15_000, 180_000), "plant/acre"),
    emergence=st.none() | st.integers(50, 100).map(lambda share: share / 100),
    moisture=st.sampled_from(Moisture),
    tillage=st.sampled_from(Tillage),
    soil_temperature=some(st.integers(35, 75), "degF"),
    row_spacing=st.none() | st.sampled_from((Q(15, "in"), Q(30, "in"), Q(20, "in"))),
    area=some(st.integers(1, 90), "acre"),
    overlap=st.none() | st.integers(0, 30).map(lambda share: share / 100),
    meter_error=st.none() | st.integers(-5, 10).map(lambda share: share / 100),
)


@st.composite
def asks(draw: st.DrawFn) -> Ask:
    crop = draw(st.sampled_from(CROPS))
    suits, hole = (
        crop_table()[crop].keys,
        draw(st.none() | st.sampled_from((Q(2.0, "mm"), Q(3.5, "mm")))),
    )
    disc = Part("D1", "the disc", "disc", suits, draw(st.integers(20, 90)), hole)
    package = draw(st.sampled_from(({"package_seeds": None}, {"package_mass": Q(50, "lb")}, {})))
    given = {"package_seeds": None} | package if "package_mass" in package else package
    bag = lot(crop, germination=draw(st.none() | st.just(0.92)), **given)
    own = tuple(draw(st.lists(manuals(crop), max_size=4)))
    proved = tuple(draw(st.lists(records(crop, disc.code), max_size=2)))
    return Ask(case(crop, lot=bag, job=draw(jobs), manual=own, records=proved), disc)


@st.composite
def fleets(draw: st.DrawFn) -> tuple[Fleet, list[Ask], np.ndarray]:
    drawn = [draw(planters()) for _ in range(draw(st.integers(1, 3)))]
    machines = [
        replace(one, name=f"{one.name}{'' if n == 0 else n}") for n, one in enumerate(drawn)
    ]
    found = {machine.name: draw(setups(machine)) for machine in machines}
    meters = tuple(Meter(f"M{n}", one.name, 1, Q(0.13, "mm")) for n, one in enumerate(machines))
    wanted = draw(st.lists(asks(), min_size=1, max_size=2))
    which = np.array([draw(st.integers(0, len(wanted) - 1)) for _ in machines])
    return Fleet.of(machines, meters, found, LOAD), wanted, which
