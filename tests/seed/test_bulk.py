"""Many planters in one call agree with the look-up of each, and a reason comes on asking."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from changeover.planter.machine import Planter
from changeover.planter.parts import Meter
from changeover.planter.scales import DepthScale
from changeover.planter.setup import Setup
from changeover.quantities import Q, Refusal, is_quantity
from changeover.seed.bulk import Ask, ManyProposals, propose_many
from changeover.seed.crops import Crop
from changeover.seed.fields import Moisture, Texture, Tillage
from changeover.seed.fleet_arrays import Fleet
from changeover.seed.manual import ManualValue
from tests.seed.made_up import (
    CORN_DISC,
    SMALL_DISC,
    SOY_DISC,
    at_row,
    case,
    first,
    job,
    planter,
    proposal,
)

HUB = ManualValue("soybean", "hub_spacing", Q(0.6, "mm"))
PLANTERS = (
    planter(12),
    planter(8, name="short scale", depth=DepthScale(Q(0.5, "in"), Q(0.25, "in"), 4)),
    planter(31, name="split", split_rows=frozenset(range(2, 31, 2))),
    planter(6, name="weak fan", fan_limit=Q(12, "inH2O"), hub_spacing_step=Q(0.25, "mm")),
    planter(
        16,
        name="dug",
        depth=DepthScale(Q(10, "mm"), Q(5, "mm"), 20, {3: Q(4, "mm"), 9: Q(-7, "mm")}),
    ),
)
METERS = (Meter("M1", "dug", 3, Q(0.13, "mm")),)
JOBS = (
    job(Moisture.DRY, Texture.SAND, Tillage.NO_TILL, seed_rate=Q(150_000, "seed/acre")),
    job(row_spacing=Q(30, "in"), soil_temperature=Q(51, "degF")),
    job(Moisture.WET, Texture.CLAY, row_spacing=Q(15, "in")),
)
ASKS = (
    Ask(case("soybean", job=JOBS[0], manual=(HUB,)), SOY_DISC),
    Ask(case("corn", job=JOBS[1]), CORN_DISC),
    Ask(case("sorghum", job=JOBS[2]), SMALL_DISC),
)


@cache
def many() -> ManyProposals:
    planters = [machine for machine in PLANTERS for _ in ASKS]
    return propose_many(Fleet.of(planters, METERS), ASKS, np.arange(len(planters)) % len(ASKS))


def alone(machine: Planter, ask: Ask) -> object:
    given = ask.case
    return proposal(
        planter=machine,
        lot=given.lot,
        job=given.job,
        manual=given.manual,
        meters=METERS,
        as_found=Setup(),
    )


PAIRS = [
    (number, machine, ask)
    for number, (machine, ask) in enumerate((machine, ask) for machine in PLANTERS for ask in ASKS)
]


@pytest.mark.parametrize(("number", "machine", "ask"), PAIRS)
def test_every_row_agrees_with_the_look_up_alone(number: int, machine: Planter, ask: Ask) -> None:
    found, bulk = alone(machine, ask), many()
    for row in machine.row_numbers:
        one = at_row(found, "depth", row)  # type: ignore[arg-type]
        if not bulk.working[number, row - 1]:
            assert "locked up" in one.reason.why
            continue
        assert (one.value or 0) == bulk.notch[number, row - 1]
        hub = at_row(found, "hub_spacing", row).value  # type: ignore[arg-type]
        size = float(hub.to("mm").magnitude) if is_quantity(hub) else np.nan
        assert bulk.hub_spacing[number, row - 1] == pytest.approx(size, nan_ok=True)


@pytest.mark.parametrize(("number", "machine", "ask"), PAIRS)
def test_positions_vacuum_and_figures_agree(number: int, machine: Planter, ask: Ask) -> None:
    found, bulk = alone(machine, ask), many()
    assert first(found, "singulator").value == bulk.singulator[number]  # type: ignore[arg-type]
    assert first(found, "closing").value == bulk.closing[number, 0]  # type: ignore[arg-type]
    level = first(found, "vacuum").value  # type: ignore[arg-type]
    kilopascals = float(level.to("kPa").magnitude) if is_quantity(level) else np.nan
    assert bulk.vacuum[number] == pytest.approx(kilopascals, nan_ok=True)
    figures = {one.key: one.quantity for one in found.figures}  # type: ignore[attr-defined]
    assert bulk.spacing[number] == pytest.approx(figures["spacing"].to("m").magnitude)
    assert bulk.disc_speed[number] == pytest.approx(figures["disc_speed"].to("rpm").magnitude)
    mass = figures["mass_rate"].to("kg/m^2").magnitude
    assert bulk.mass_rate[number] == pytest.approx(mass)


@pytest.mark.parametrize("setting", ["depth", "singulator", "closing", "vacuum", "seed_rate"])
def test_a_reason_comes_on_asking(setting: str) -> None:
    one = many().proposed(0, setting, 3)
    assert one.value is not None
    assert one.reason.why
    assert one.reason.source


def test_the_users_own_values_hold_in_bulk_too() -> None:
    own = (
        ManualValue("soybean", "depth", 7),
        ManualValue("soybean", "singulator", 1),
        ManualValue("soybean", "closing", 9),
        ManualValue("soybean", "vacuum", Q(3, "kPa")),
        ManualValue("soybean", "seed_rate", Q(30, "seed/m^2")),
    )
    ask = Ask(case("soybean", manual=own), SOY_DISC)
    found = propose_many(Fleet.of([planter(12)]), [ask], np.array([0]))
    assert set(found.notch[0]) == {7}
    assert (found.singulator[0], set(found.closing[0])) == (1, {0})
    assert (found.vacuum[0], found.seed_rate[0]) == (pytest.approx(3), pytest.approx(30))


def test_asks_and_planters_must_match() -> None:
    fleet = Fleet.of([planter(12)])
    with pytest.raises(Refusal, match="one ask"):
        propose_many(fleet, ASKS, np.array([0, 1]))
    with pytest.raises(Refusal, match="one ask"):
        propose_many(fleet, ASKS, np.array([7]))
    with pytest.raises(Refusal, match="no planter"):
        Fleet.of([])


def test_a_row_that_does_not_plant_has_no_proposal() -> None:
    with pytest.raises(Refusal, match="row 14"):
        many().proposed(0, "depth", 14)
    with pytest.raises(Refusal, match="disc of row 1"):
        many().proposed(0, "disc", 1)


def test_a_crop_without_ground_is_not_a_number() -> None:
    ask = Ask(replace(case(), crop=Crop("oats", "Oats")), None)
    found = propose_many(Fleet.of([planter(12)]), [ask], np.array([0]))
    assert found.singulator[0] == 0
    assert np.isnan(found.vacuum[0])
    assert np.isnan(found.disc_speed[0])
