"""The first pass counts what the drive truly sows, not what was wished for."""

from dataclasses import replace

import pytest

from changeover.planter.drive import GroundDrive
from changeover.planter.parts import Part
from changeover.planter.places import Place
from changeover.planter.setup import Cell
from changeover.quantities import Q, Units
from changeover.seed.sprockets import pair_rate
from changeover.switch.difference import difference
from changeover.switch.plan import Plan
from changeover.switch.proof_steps import proof_tasks
from changeover.switch.sown_rate import sown_rate
from changeover.switch.standard_minutes import Minutes
from changeover.switch.wording import Words
from tests.switch.switch_case import BEAN, LONG_ACRE, LOTS, RULES, SETTINGS, bean, corn

WHEEL = GroundDrive((24, 30), (18, 24), Q(90.0, "in"), 1.0)
GROUND = replace(LONG_ACRE, drives=dict.fromkeys(("drive 1", "drive 2"), WHEEL))
DRIVES = tuple(group.place for group in GROUND.groups if group.name.startswith("drive"))
DISCS = {"S56": Part("S56", "soybean disc", "disc", cells=56)}


def planned(*, disc: str = "S56", pair: str | None = "30/18") -> Plan:
    cells = {Cell("disc", Place.of_row(row)): disc for row in range(1, 25)}
    pairs = {Cell("sprockets", drive): pair for drive in DRIVES}
    before, target = corn(GROUND), bean(GROUND).with_values({**cells, **pairs})
    return Plan(
        planter=GROUND,
        settings=SETTINGS,
        before=before,
        target=target,
        difference=difference(GROUND, SETTINGS, before, target),
        lots=LOTS,
        new_lot=BEAN,
        parts=DISCS,
        words=Words(GROUND, Units.US),
        minutes=Minutes.of(RULES.minutes, ()),
        rules=RULES,
    )


def per_acre(plan: Plan, drive: Place) -> float:
    return float(sown_rate(plan, drive).to("seed/acre").magnitude)


def test_a_ground_drive_sows_what_its_sprockets_give() -> None:
    wanted = pair_rate(WHEEL, 30, 18, 56, GROUND.row_spacing).to("seed/acre").magnitude
    plan = planned()
    assert per_acre(plan, DRIVES[0]) == pytest.approx(wanted)
    first = next(task for task in proof_tasks(plan) if task.key.startswith("prove_rate"))
    assert f"count seeds, {wanted / 1000:.0f} in 17.4 ft of row" in first.title
    assert "140" not in first.title


def test_without_sprockets_the_rate_entered_counts() -> None:
    assert per_acre(planned(pair=None), DRIVES[0]) == pytest.approx(140_000.0)


def test_cells_entered_count_where_the_disc_is_not_known() -> None:
    known, entered = planned(), planned(disc="none of ours")
    assert entered.target.get(Cell("cells", DRIVES[0])) == 56
    assert per_acre(entered, DRIVES[0]) == pytest.approx(per_acre(known, DRIVES[0]))
