"""Difference and worklist of 64 rows by 20 settings, every one of them changed."""

from collections.abc import Iterator
from itertools import cycle

from changeover.planter.machine import Planter
from changeover.planter.places import Scope
from changeover.planter.settings import Kind, Setting, WorkPlace
from changeover.planter.setup import Setup, Value, cells_of
from changeover.quantities import Q, Units
from changeover.switch.difference import difference
from changeover.switch.worklist import plan_worklist
from tests.bench.timing import Ratio, Spell, seconds_of
from tests.switch.switch_case import BEAN, BEAN_SET, CORN_SET, LOTS, RULES, SETTINGS, groups

PLANTER = Planter(
    "Big", 64, Q(30, "in"), groups=groups(64, fan=4, tank=2, drive=4, down_pressure=3)
)
NOTCHES = tuple(
    Setting(
        f"notch_{number}",
        f"Notch {number}",
        Kind.INDEX,
        Scope.ROW,
        WorkPlace.ROW_UNIT,
        options=("a", "b", "c"),
        own=True,
    )
    for number in range(8)
)
EVERY = (*SETTINGS, *NOTCHES)


def measure() -> Iterator[Ratio | Spell]:
    """Yield the time of the difference alone, and of the whole plan of work."""
    before = _setup({**CORN_SET, "seal": "old", "down_pressure": Q(100, "lbf")}, [1], 0.3)
    target = _setup({**BEAN_SET, "seal": "new", "down_pressure": Q(150, "lbf")}, [2, 3], 0.9)
    taken = seconds_of(lambda: difference(PLANTER, EVERY, before, target), 25)
    yield Spell("difference of 64 rows by 20 settings", taken, 0.020)
    taken = seconds_of(
        lambda: plan_worklist(PLANTER, EVERY, before, target, LOTS, BEAN, (), (), Units.US, RULES),
        25,
    )
    yield Spell("difference and worklist of 64 rows by 20 settings", taken, 0.020)


def _setup(values: dict[str, Value], notches: list[int], hub: float) -> Setup:
    """Return a setup with a hub spacing of its own on every row and notches that alternate."""
    by_key = {setting.key: setting for setting in EVERY}
    cells = {c: value for key, value in values.items() for c in cells_of(PLANTER, by_key[key])}
    for setting in NOTCHES:
        cells |= dict(zip(cells_of(PLANTER, setting), cycle(notches), strict=False))
    for row, cell in enumerate(cells_of(PLANTER, by_key["hub_spacing"])):
        cells[cell] = Q(round(hub + row % 7 / 10, 1), "mm")
    return Setup(cells)
