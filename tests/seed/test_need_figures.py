"""The figures on seed needed say what each tank takes, what it rests on and where to stop."""

from dataclasses import replace

import pytest

from changeover.planter.places import Place, Scope
from changeover.quantities import Q, Units
from changeover.seed.reasons import Figure, Trust
from tests.seed.made_up import first, job, lot, planter, proposal

FIELD = job().field
FULL = {
    "planter": planter(tank_capacity=Q(20, "bu")),
    "lot": lot(thousand_seed_mass=Q(160, "g"), lubricant=Q(2, "oz")),
    "job": job(
        field=replace(FIELD, run_length=Q(2000, "ft")), seed_rate=Q(140_000, "1/acre"), overlap=0.04
    ),
}


def by_key(**changes: object) -> dict[str, Figure]:
    return {one.key: one for one in proposal(**{**FULL, **changes}).figures}


def test_the_proposal_has_every_figure_on_need() -> None:
    keys = by_key().keys()
    wanted = {"seeds_needed", "mass_needed", "packages_needed", "dry_lubricant", "stops_for_seed"}
    tank = {"tank_seeds", "tank_packages", "fill_seeds", "fills", "run_out_area", "run_out_time"}
    assert wanted | tank <= keys


def test_overlap_is_counted_in_and_said() -> None:
    seeds = by_key()["seeds_needed"]
    assert seeds.quantity.magnitude == pytest.approx(80 * 140_000 * 1.04)
    assert "4.0% of it sown twice" in seeds.reason.why


def test_the_dose_of_lubricant_is_the_users_own() -> None:
    found = by_key()
    packages = found["packages_needed"].quantity.magnitude
    assert found["dry_lubricant"].quantity.to("oz").magnitude == pytest.approx(2 * packages)
    assert found["dry_lubricant"].reason.trust is Trust.RECORD


def test_a_printed_bulk_density_is_named_with_its_source() -> None:
    reason = by_key()["fill_seeds"].reason
    assert "USDA" in reason.source
    assert reason.trust is Trust.PUBLISHED


def test_without_a_tank_size_the_fills_are_left_out_but_not_the_share() -> None:
    keys = by_key(planter=planter()).keys()
    assert "tank_seeds" in keys
    assert not {"fill_seeds", "fills", "run_out_area"} & keys


def test_the_same_seed_in_either_units() -> None:
    metric = by_key(units=Units.METRIC)
    for key, figure in by_key().items():
        if key != "row_length_thousandth":
            assert metric[key].quantity == figure.quantity


def test_a_fill_that_does_not_last_is_a_warning_not_a_crash() -> None:
    far = job(field=replace(FIELD, run_length=Q(12, "mile"), area=Q(400, "acre")))
    found = proposal(**{**FULL, "job": far, "planter": planter(tank_capacity=Q(2, "bu"))})
    assert any("does not last" in warning for warning in found.warnings)
    assert "stops_for_seed" not in {one.key for one in found.figures}


def test_a_lot_that_shares_the_planter_has_its_own_need() -> None:
    tank = Place(Scope.TANK, "tank 2")
    other = lot("corn", thousand_seed_mass=Q(300, "g"))
    found = proposal(**FULL, other_lots={tank: other})
    keys = {one.key: one for one in found.figures}
    assert keys["seeds_needed"].quantity.magnitude == pytest.approx(40 * 140_000 * 1.04)
    assert f"seeds_needed:{other.number}" in keys
    assert first(found, "seed").value == FULL["lot"].number
    assert next(one for cell, one in found.cells.items() if cell.place == tank).value == (
        other.number
    )


def test_twin_rows_are_spaced_twice_as_far_as_one_row_a_pair() -> None:
    twins, single = by_key(planter=planter(twin_rows=True)), by_key(planter=planter())
    assert twins["spacing"].quantity == 2 * single["spacing"].quantity
    assert "twin" in twins["spacing"].name
    assert twins["seeds_needed"].quantity == single["seeds_needed"].quantity
