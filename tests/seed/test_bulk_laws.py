"""Law: looking many planters up at once gives, number for number, what looking up each gives."""

import numpy as np
import pytest
from hypothesis import given, settings

from changeover.planter.parts import Condition, ShelfCount
from changeover.planter.places import Scope
from changeover.planter.settings import STANDARD
from changeover.planter.setup import Cell, Value
from changeover.quantities import is_quantity
from changeover.seed.bulk import Ask, ManyProposals, propose_many
from changeover.seed.fleet_arrays import Fleet
from changeover.seed.reasons import Proposal
from tests.seed.bulk_cases import LOAD, fleets
from tests.seed.made_up import at_row, proposal

SHOWN = {
    "spacing": ("spacing", "m"),
    "seeds_per_second": ("seeds_per_second", "seed/s"),
    "disc_speed": ("disc_speed", "rpm"),
    "stand": ("expected_stand", "seed/m^2"),
    "mass_rate": ("mass_rate", "kg/m^2"),
    "seeds": ("seeds_needed", "seed"),
    "packages": ("packages_needed", "count"),
}


def alone(fleet: Fleet, number: int, ask: Ask) -> Proposal:
    disc = ask.disc
    assert disc is not None
    return proposal(
        planter=fleet.planters[number],
        settings=(*STANDARD, LOAD),
        as_found=fleet.found[number],
        lot=ask.case.lot,
        job=ask.case.job,
        parts=(disc,),
        shelf=(ShelfCount(disc.code, Condition.GOOD, 90),),
        manual=ask.case.manual,
        records=ask.case.records,
        meters=fleet.meters,
    )


def size(value: Value | None, unit: str) -> float:
    return float(value.to(unit).magnitude) if is_quantity(value) else np.nan


def same(one: float, other: float) -> bool:
    return one == pytest.approx(other, nan_ok=True)


def rows_agree(many: ManyProposals, number: int, found: Proposal) -> None:
    for row in many.fleet.planters[number].row_numbers:
        at = number, row - 1
        locked = found.cells.get(
            Cell("row_lock", many.fleet.planters[number].place(Scope.ROW, row))
        )
        assert many.working[at] == (locked is None or locked.value == "down")
        if many.working[at]:
            assert many.notch[at] == (at_row(found, "depth", row).value or 0)
            assert many.closing[at] == (at_row(found, "closing", row).value or 0)
            assert many.singulator[number] == (at_row(found, "singulator", row).value or 0)
            hub = size(at_row(found, "hub_spacing", row).value, "mm")
            assert same(many.hub_spacing[at], hub)


def groups_agree(many: ManyProposals, number: int, found: Proposal) -> None:
    planter, cells = many.fleet.planters[number], found.cells
    first = int(np.flatnonzero(many.working[number])[0]) + 1
    fan = cells[Cell("vacuum", planter.place(Scope.FAN, first))]
    assert same(many.vacuum[number], size(fan.value, "kPa"))
    drive = planter.place(Scope.DRIVE, first)
    rate = size(cells[Cell("seed_rate", drive)].value, "seed/m^2")
    assert same(many.seed_rate[number], rate)
    assert many.cells[number] == (cells[Cell("cells", drive)].value or 0)
    for circuit, place in enumerate(planter.places(Scope.DOWN_PRESSURE)):
        force = size(cells[Cell(LOAD.key, place)].value, "N")
        assert same(many.down_pressure[number, circuit], force)


def figures_agree(many: ManyProposals, number: int, found: Proposal) -> None:
    figures = {one.key: one.quantity for one in found.figures}
    for name, (key, unit) in SHOWN.items():
        shown = size(figures.get(key), unit)
        assert same(getattr(many, name)[number], shown), name


@given(fleets())
@settings(max_examples=150, deadline=None)
def test_many_at_once_are_as_each_alone(drawn: tuple[Fleet, list[Ask], np.ndarray]) -> None:
    fleet, wanted, which = drawn
    many = propose_many(fleet, wanted, which)
    for number in range(len(fleet.planters)):
        found = alone(fleet, number, wanted[int(which[number])])
        rows_agree(many, number, found)
        groups_agree(many, number, found)
        figures_agree(many, number, found)


@given(fleets())
@settings(max_examples=25, deadline=None)
def test_a_reason_on_asking_gives_the_number_of_the_array(
    drawn: tuple[Fleet, list[Ask], np.ndarray],
) -> None:
    many = propose_many(*drawn)
    for number in range(len(many.fleet.planters)):
        row = int(np.flatnonzero(many.working[number])[0]) + 1
        closing = many.proposed(number, "closing", row)
        assert (closing.value or 0) == many.closing[number, row - 1]
        hub = size(many.proposed(number, "hub_spacing", row).value, "mm")
        assert same(many.hub_spacing[number, row - 1], hub)
        springs = many.proposed(number, LOAD.key, row)
        places = many.fleet.planters[number].places(Scope.DOWN_PRESSURE)
        circuit = places.index(springs.cell.place)
        assert same(many.down_pressure[number, circuit], size(springs.value, "N"))
