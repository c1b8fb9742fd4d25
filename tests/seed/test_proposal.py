"""The look-up whole: one entry for every cell that applies, the order of trust, locks and lots."""

from datetime import date

import pytest

from changeover.planter.parts import Part
from changeover.planter.places import Place, Scope
from changeover.planter.settings import LOCKED_UP, STANDARD, Kind, Setting, WorkPlace, standard
from changeover.planter.setup import Cell, Setup, applies, cells_of
from changeover.quantities import Q
from changeover.seed.manual import ManualValue, ProvedSetup
from changeover.seed.reasons import Trust
from tests.seed.made_up import (
    PARTS,
    all_rows,
    at_row,
    first,
    ground_drive,
    job,
    lot,
    planter,
    proposal,
)

OWN = Setting(
    "wiper", "Wiper", Kind.CHOICE, Scope.ROW, WorkPlace.METER, options=("in", "out"), own=True
)


def test_every_cell_of_every_setting_that_applies_is_there() -> None:
    machine = planter(drives={"drive 1": ground_drive()})
    found = proposal(planter=machine)
    wanted = {
        cell
        for setting in STANDARD
        if applies(machine, setting) and not setting.record_only
        for cell in cells_of(machine, setting)
    }
    assert set(found.cells) == wanted


def test_the_seed_is_the_lot_chosen() -> None:
    one = first(proposal(), "seed")
    assert (one.value, one.reason.why) == ("L-soybean", "You chose lot L-soybean for West Bottom.")


def test_what_hangs_on_the_disc_follows_it() -> None:
    found = proposal(planter=planter(drives={"drive 1": ground_drive()}), lot=lot("corn"))
    assert at_row(found, "disc").value == "C30"
    assert first(found, "cells").value == 30
    assert first(found, "sprockets").value is not None


def test_alike_rows_share_their_reasons() -> None:
    found = proposal(planter=planter(48))
    assert len({id(one.reason) for one in found.cells.values()}) < 16


def test_own_settings_are_kept_as_found() -> None:
    machine = planter()
    found = proposal(settings=(*STANDARD, OWN), as_found=all_rows(machine, wiper="in"))
    one = at_row(found, "wiper", 5)
    assert (one.value, one.reason.why) == ("in", "Kept as found.")


def test_an_own_setting_follows_the_manual_where_it_has_one() -> None:
    manual = (ManualValue("soybean", "wiper", "out"),)
    found = proposal(settings=(*STANDARD, OWN), as_found=all_rows(planter(), wiper="in"))
    assert at_row(found, "wiper").value == "in"
    found = proposal(settings=(*STANDARD, OWN), manual=manual)
    assert (at_row(found, "wiper").value, at_row(found, "wiper").reason.trust) == (
        "out",
        Trust.MANUAL,
    )


def test_a_hidden_setting_is_kept_as_found() -> None:
    hidden = tuple(
        Setting(**{**setting.__dict__, "hidden": True}) if setting.key == "brush" else setting
        for setting in STANDARD
    )
    found = proposal(settings=hidden, as_found=all_rows(planter(), brush="tall"))
    assert at_row(found, "brush").value == "tall"


def test_where_the_disc_is_hidden_the_mounted_one_stays() -> None:
    hidden = tuple(
        Setting(**{**setting.__dict__, "hidden": True}) if setting.key == "disc" else setting
        for setting in STANDARD
    )
    found = proposal(settings=hidden, as_found=all_rows(planter(), disc="C30"))
    assert at_row(found, "disc").value == "C30"
    assert first(found, "cells").value == 30


@pytest.mark.parametrize(
    ("setting", "value"),
    [
        ("disc", "C30"),
        ("brush", "low"),
        ("singulator", 1),
        ("hub_spacing", Q(0.4, "mm")),
        ("vacuum", Q(11, "inH2O")),
        ("depth", 7),
        ("closing", 5),
        ("seed_rate", Q(120_000, "seed/acre")),
        ("cells", 60),
    ],
)
def test_the_manual_wins_for_every_setting(setting: str, value: object) -> None:
    manual = (ManualValue("soybean", setting, value, "page 3"),)  # type: ignore[arg-type]
    one = first(proposal(manual=manual), setting)
    assert one.value == value
    assert one.reason.trust is Trust.MANUAL
    assert one.reason.source == "page 3"


RECORD = ProvedSetup(
    "May",
    "soybean",
    "S56",
    None,
    {"vacuum": Q(14, "inH2O"), "singulator": 3, "closing": 5, "hub_spacing": Q(0.4, "mm")},
    "Made-up",
    date(2026, 5, 2),
    "98 % singles",
)


@pytest.mark.parametrize(("setting", "value"), [("vacuum", Q(14, "inH2O")), ("singulator", 3)])
def test_a_proved_setup_comes_next(setting: str, value: object) -> None:
    one = first(proposal(records=(RECORD,)), setting)
    assert (one.value, one.reason.trust) == (value, Trust.RECORD)
    assert one.reason.source == "setup “May”, 2 May 2026, 98 % singles"


@pytest.mark.parametrize(
    ("setting", "aside"),
    [("closing", "the soil of the day decides"), ("hub_spacing", "each meter has its own zero")],
)
def test_a_record_may_only_bear_witness(setting: str, aside: str) -> None:
    one = first(proposal(records=(RECORD,)), setting)
    says = {rung.trust: rung for rung in one.reason.evidence}
    assert says[Trust.RECORD].says.endswith(f"not used, {aside}")
    assert not says[Trust.RECORD].used


def test_a_manual_disc_that_is_no_part_is_not_proposed() -> None:
    found = proposal(manual=(ManualValue("soybean", "disc", "Z99"),))
    assert at_row(found, "disc").value is None
    assert "Disc Z99 is not among your parts; enter it on the shelf first." in found.warnings


def test_an_impossible_manual_position_is_said_and_left_out() -> None:
    found = proposal(manual=(ManualValue("soybean", "singulator", 9),))
    assert at_row(found, "singulator").value is None
    assert any("position 9 does not exist" in one for one in found.warnings)


def test_a_manual_value_of_another_kind_is_said_and_left_out() -> None:
    found = proposal(manual=(ManualValue("soybean", "vacuum", 12),))
    assert first(found, "vacuum").value is None
    assert any("“12” is not a value of this setting" in one for one in found.warnings)


def test_what_you_ask_for_comes_before_the_manual() -> None:
    manual = (ManualValue("soybean", "seed_rate", Q(120_000, "seed/acre")),)
    wanted = job(seed_rate=Q(150_000, "seed/acre"))
    assert first(proposal(manual=manual, job=wanted), "seed_rate").value == wanted.seed_rate


def test_locked_rows_are_left_alone() -> None:
    machine = planter(7, split_rows=frozenset({2, 4, 6}))
    found = proposal(
        planter=machine,
        job=job(row_spacing=Q(30, "in")),
        as_found=all_rows(machine, disc="C30"),
    )
    assert at_row(found, "row_lock", 2).value == LOCKED_UP
    assert at_row(found, "disc", 2).value == "C30"
    assert at_row(found, "disc", 1).value == "S56"
    assert "locked up" in at_row(found, "depth", 4).reason.why


def test_locked_rows_change_the_spacing_between_rows() -> None:
    machine = planter(7, split_rows=frozenset({2, 4, 6}))
    spacings = [
        next(f for f in proposal(planter=machine, job=wanted).figures if f.key == "spacing")
        for wanted in (job(row_spacing=Q(30, "in")), job(row_spacing=Q(15, "in")))
    ]
    narrow = spacings[1].quantity / spacings[0].quantity
    assert narrow.to("count").magnitude == pytest.approx(2)


def test_two_lots_on_two_tanks_each_get_their_own() -> None:
    machine = planter(12)
    other = {Place(Scope.TANK, "tank 2"): lot("corn")}
    found = proposal(planter=machine, other_lots=other)
    assert found.cells[Cell("seed", Place(Scope.TANK, "tank 2"))].value == "L-corn"
    assert [at_row(found, "disc", row).value for row in (1, 12)] == ["S56", "C30"]
    assert [at_row(found, "depth", row).value for row in (1, 12)] == [4, 6]
    both = found.cells[Cell("seed_rate", Place(Scope.DRIVE, "drive 1"))]
    assert both.value is None
    assert any("ask for different values" in one for one in found.warnings)


def test_an_unknown_crop_gets_no_numbers_but_reasons() -> None:
    found = proposal(lot=lot("oats"), parts=(Part("X", "x", "disc"),))
    assert at_row(found, "depth").value is None
    assert first(found, "vacuum").value is None
    assert any("No figures for the crop “oats”" in one for one in found.warnings)
    assert all(one.reason.why for one in found.cells.values())


def test_the_values_alone_can_be_taken_over() -> None:
    found = proposal()
    taken = Setup().with_values(found.values())
    assert taken.get(Cell("disc", Place.of_row(3))) == "S56"
    assert None not in found.values().values()


def test_a_planter_without_groups_has_row_hoppers() -> None:
    machine = planter(4, groups=())
    found = proposal(planter=machine)
    assert at_row(found, "seed", 4).value == "L-soybean"
    assert first(found, "vacuum").cell.place.scope is Scope.PLANTER
    assert standard("vacuum").scope is Scope.FAN
    assert len(PARTS) == 4
