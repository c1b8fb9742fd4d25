"""History reads in the units chosen, whatever was typed, and never hides a change."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.desk.board import read_board
from changeover.desk.door import apply
from changeover.desk.edits import PutField, PutManual, PutPlanter, SetCells, Side
from changeover.desk.history_units import restated
from changeover.desk.opening import Store
from changeover.desk.records import history
from changeover.planter.places import Place, Scope
from changeover.planter.setup import Cell
from changeover.quantities import Q, Units, read_quantity
from changeover.seed.fields import Field
from changeover.seed.manual import ManualValue

BAR, VACUUM = "Bar", Cell("vacuum", Place(Scope.FAN, "fan 1"))


def newest(store: Store, setting: str, units: Units) -> tuple[str, str]:
    line = next(one for one in history(store, units=units) if one.setting == setting)
    return line.old, line.new


def set_vacuum(store: Store, value, before=None) -> None:
    apply(store, SetCells(BAR, Side.AS_FOUND, {VACUUM: value}, {VACUUM: before}), "Ada")


def test_a_vacuum_typed_in_kilopascals_reads_in_inches_of_water_for_a_us_user(small) -> None:
    set_vacuum(small, Q(4.4836, "kPa"))
    assert newest(small, "vacuum", Units.US) == ("", "18.0 inH₂O")
    assert newest(small, "vacuum", Units.METRIC) == ("", "4.4836 kPa")


def test_a_change_too_small_to_be_seen_stays_as_it_was_written(small) -> None:
    set_vacuum(small, Q(4.4836, "kPa"))
    set_vacuum(small, Q(4.485, "kPa"), Q(4.4836, "kPa"))
    assert newest(small, "vacuum", Units.US) == ("4.4836 kPa", "4.485 kPa")


def test_fields_and_manual_values_follow_and_names_do_not(small) -> None:
    apply(small, PutField(Field("40 ac corner", Q(40, "acre"))), "Ada")
    apply(small, PutManual(ManualValue("corn", "vacuum", Q(18, "inH2O"), "see 18 in")), "Ada")
    assert newest(small, "area", Units.METRIC) == ("", "16.2 ha")
    assert newest(small, "name", Units.METRIC) == ("", "40 ac corner")
    assert newest(small, "value", Units.METRIC) == ("", "4.48 kPa")
    assert newest(small, "note", Units.METRIC) == ("", "see 18 in")


def test_a_depth_scale_is_told_to_the_hundredth_of_a_millimetre(small) -> None:
    before = read_board(small, BAR, proposal=False).planter
    scale = before.depth.with_row(1, Q(0.1, "in"), Q(0.2, "in"))
    apply(small, PutPlanter(replace(before, depth=scale), before=before), "Ada")
    _, new = newest(small, "depth", Units.METRIC)
    assert new.endswith("row 1 2.54 mm deeper, 5.08 mm a notch")


@pytest.mark.parametrize(
    ("text", "measure", "us", "metric"),
    [
        (
            "13 notches, 0.5 in at the first; row 5 0.06 in deeper",
            "depth",
            "13 notches, 0.50 in at the first; row 5 0.06 in deeper",
            "13 notches, 13 mm at the first; row 5 2 mm deeper",
        ),
        (
            "0.25 in a notch; row 3 0.1 in deeper, 0.2 in a notch, by 8 digs",
            "depth_step",
            "0.250 in a notch; row 3 0.100 in deeper, 0.200 in a notch, by 8 digs",
            "6.35 mm a notch; row 3 2.54 mm deeper, 5.08 mm a notch, by 8 digs",
        ),
        ("30.25 in", "row_spacing", "30.25 in", "76.8 cm"),
        ("140000 seed/ac", "seed_rate", "140\u202f000 seeds/ac", "345\u202f948 seeds/ha"),
        ("notch 5", "depth", "notch 5", "notch 5"),
    ],
)
def test_each_quantity_in_a_text_is_restated(text, measure, us, metric) -> None:
    assert restated(text, measure, Units.US) == us
    assert restated(text, measure, Units.METRIC) == metric


@given(st.floats(0.1, 80).map(lambda figure: round(figure, 3)))
def test_restating_twice_is_restating_once(figure: float) -> None:
    once = restated(f"{figure} inH2O", "pressure", Units.METRIC)
    assert restated(once, "pressure", Units.METRIC) == once
    there = read_quantity(once, "pressure").to("inH2O").magnitude
    assert there == pytest.approx(figure, abs=0.021)
