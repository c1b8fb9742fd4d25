"""Planters, setups and lots for the tests of the switch, some by hand and some at random."""

from dataclasses import replace

from hypothesis import strategies as st

from changeover.bundled import bundled
from changeover.planter.drive import GroundDrive
from changeover.planter.groups import Group, equal_groups
from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.planter.settings import STANDARD, Kind, Setting, WorkPlace
from changeover.planter.setup import Cell, Setup, Value, cells_of
from changeover.quantities import Q, Units
from changeover.seed.lots import Purity, SeedLot, Treatment
from changeover.switch.rules import RULE_FILES, SwitchRules, read_rules
from changeover.switch.tasks import StandardTime, Worklist
from changeover.switch.worklist import plan_worklist

OWN = (
    Setting(
        "row_cleaner",
        "Row cleaner",
        Kind.INDEX,
        Scope.ROW,
        WorkPlace.ROW_UNIT,
        options=("up", "mid", "low"),
        own=True,
    ),
    Setting("seal", "Seal", Kind.PART, Scope.ROW, WorkPlace.METER, part_sort="seal", own=True),
    Setting(
        "down_pressure",
        "Down pressure",
        Kind.QUANTITY,
        Scope.DOWN_PRESSURE,
        WorkPlace.ROW_UNIT,
        measure="force",
        own=True,
    ),
)
SETTINGS = (*STANDARD, *OWN)
CORN = SeedLot(
    "H-9",
    "corn",
    "Hill Nine",
    treatment=Treatment.TREATED,
    treatment_name="fungicide",
    genetically_modified=True,
)
BEAN = SeedLot("S-114", "soybean", "Bottom Bean", treatment=Treatment.TREATED)
LOTS = {lot.number: lot for lot in (CORN, BEAN)}


def rules() -> SwitchRules:
    texts = {
        name: bundled("resources", f"{name}.toml").read_text(encoding="utf-8")
        for name in RULE_FILES
    }
    return read_rules(texts)


RULES = rules()


def groups(rows: int, **counts: int) -> tuple[Group, ...]:
    return tuple(
        group
        for name, count in counts.items()
        if count
        for group in equal_groups(Scope[name.upper()], count, rows)
    )


LONG_ACRE = Planter("Long Acre 24", 24, Q(30, "in"), groups=groups(24, fan=2, tank=2, drive=2))
SPLIT = Planter(
    "Split", 5, Q(30, "in"), groups=groups(5, fan=1, tank=1), split_rows=frozenset({2, 4})
)


def row_setup(planter: Planter, **values: Value) -> dict[Cell, Value]:
    """Set settings to one value at every place they have on a planter."""
    by_key = {setting.key: setting for setting in SETTINGS}
    return {cell: value for key, value in values.items() for cell in cells_of(planter, by_key[key])}


CORN_SET: dict[str, Value] = {
    "disc": "C30",
    "brush": "tall",
    "singulator": 2,
    "depth": 8,
    "closing": 3,
    "vacuum": Q(18, "inH2O"),
    "seed": "H-9",
    "seed_rate": Q(32_000, "seed/acre"),
    "cells": 30,
}
BEAN_SET: dict[str, Value] = {
    "disc": "S56",
    "brush": "low",
    "singulator": 4,
    "depth": 5,
    "closing": 2,
    "vacuum": Q(12, "inH2O"),
    "seed": "S-114",
    "seed_rate": Q(140_000, "seed/acre"),
    "cells": 56,
}


def corn(planter: Planter) -> Setup:
    return Setup(row_setup(planter, **CORN_SET))


def bean(planter: Planter) -> Setup:
    return Setup(row_setup(planter, **BEAN_SET))


def plan(
    planter: Planter,
    before: Setup,
    target: Setup,
    new_lot: SeedLot | None = None,
    times: tuple[StandardTime, ...] = (),
    units: Units = Units.US,
) -> Worklist:
    return plan_worklist(planter, SETTINGS, before, target, LOTS, new_lot, (), times, units, RULES)


def rows(*numbers: int) -> tuple[Place, ...]:
    return tuple(Place.of_row(number) for number in numbers)


VALUES: dict[str, st.SearchStrategy[Value]] = {
    "disc": st.sampled_from(["C30", "S56", "K20"]),
    "brush": st.sampled_from(["tall", "low"]),
    "seal": st.sampled_from(["old seal", "new seal"]),
    "singulator": st.integers(1, 4),
    "hub_spacing": st.integers(0, 30).map(lambda tenths: Q(tenths / 10, "mm")),
    "depth": st.integers(1, 13),
    "closing": st.integers(1, 5),
    "row_lock": st.sampled_from(["down", "locked up"]),
    "vacuum": st.integers(8, 24).map(lambda inches: Q(inches, "inH2O")),
    "seed": st.sampled_from(["H-9", "S-114", "unheard-of"]),
    "seed_rate": st.integers(20, 200).map(lambda t: Q(t * 1000, "seed/acre")),
    "cells": st.sampled_from([20, 30, 56]),
    "sprockets": st.sampled_from(["15/24", "20/24"]),
    "row_cleaner": st.integers(1, 3),
    "down_pressure": st.integers(5, 40).map(lambda tens: Q(10 * tens, "lbf")),
}


@st.composite
def planters(draw: st.DrawFn) -> Planter:
    count = draw(st.integers(2, 9))
    sorts = ("fan", "tank", "drive", "down_pressure")
    counts = {sort: draw(st.integers(0, min(2, count))) for sort in sorts}
    made = Planter(
        "Any",
        count,
        Q(30, "in"),
        groups=groups(count, **counts),
        split_rows=frozenset(draw(st.sets(st.integers(1, count), max_size=count - 1))),
    )
    if counts["drive"] and draw(st.booleans()):
        drive = GroundDrive((15, 20), (24,), Q(90, "in"), 0.5)
        made = replace(made, drives={"drive 1": drive})
    return made


@st.composite
def setups(draw: st.DrawFn, planter: Planter) -> Setup:
    """Draw a setup whose settings are each absent, the same everywhere, or mixed."""
    values: dict[Cell, Value] = {}
    for setting in SETTINGS:
        if setting.key not in VALUES:
            continue
        kind = draw(st.sampled_from(["absent", "same", "mixed"]))
        same = draw(VALUES[setting.key])
        for cell in cells_of(planter, setting) if kind != "absent" else ():
            one = same if kind == "same" else draw(st.one_of(st.none(), VALUES[setting.key]))
            if one is not None:
                values[cell] = one
    return Setup(values)


@st.composite
def switches(draw: st.DrawFn) -> tuple[Planter, Setup, Setup]:
    planter = draw(planters())
    return planter, draw(setups(planter)), draw(setups(planter))


@st.composite
def lots(draw: st.DrawFn) -> SeedLot:
    return SeedLot(
        draw(st.sampled_from(["A", "B", "C"])),
        draw(st.sampled_from(["corn", "soybean"])),
        treatment=draw(st.sampled_from(list(Treatment))),
        purity=draw(st.sampled_from(list(Purity))),
        genetically_modified=draw(st.booleans()),
    )
