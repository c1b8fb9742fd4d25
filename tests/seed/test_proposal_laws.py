"""Laws of the look-up: reasons always, the manual wins, rows do not matter, units agree."""

from hypothesis import given, settings
from hypothesis import strategies as st

from changeover.planter.entry import check_value, same_value
from changeover.planter.settings import standard
from changeover.planter.setup import Value
from changeover.quantities import Q, Units, is_quantity
from changeover.seed.fields import FieldJob, Moisture, Texture, Tillage
from changeover.seed.manual import ManualValue
from changeover.seed.reasons import Proposal, Trust
from tests.seed.made_up import PARTS, crop_table, first, ground_drive, job, lot, planter, proposal

crops = st.sampled_from(sorted(crop_table()))
jobs: st.SearchStrategy[FieldJob] = st.builds(
    job,
    st.sampled_from(Moisture),
    st.sampled_from(Texture),
    st.sampled_from(Tillage),
    speed=st.floats(2, 9).map(lambda mph: Q(mph, "mph")),
    stand=st.none() | st.floats(15_000, 300_000).map(lambda stand: Q(stand, "plant/acre")),
    soil_temperature=st.none() | st.floats(35, 75).map(lambda warmth: Q(warmth, "degF")),
)


def looked_up(crop: str, wanted: FieldJob, rows: int = 12, **changes: object) -> Proposal:
    machine = planter(rows, drives={"drive 1": ground_drive()})
    return proposal(planter=machine, lot=lot(crop), job=wanted, **changes)


@given(crops, jobs)
@settings(max_examples=30)
def test_never_a_number_without_its_reason(crop: str, wanted: FieldJob) -> None:
    found = looked_up(crop, wanted)
    for one in found.cells.values():
        assert one.reason.rule
        assert one.reason.why
        assert one.reason.source
        assert one.reason.trust in Trust
        used = [rung.trust for rung in one.reason.evidence if rung.used]
        assert used in ([], [one.reason.trust])
        if one.value is not None:
            assert used == [one.reason.trust]
        elif one.cell.setting != "sprockets":
            assert one.reason.why.startswith("No proposal: enter it from your manual.")


@given(crops, jobs)
@settings(max_examples=30)
def test_every_value_can_be_set_on_the_planter(crop: str, wanted: FieldJob) -> None:
    machine = planter(12, drives={"drive 1": ground_drive()})
    found = proposal(planter=machine, lot=lot(crop), job=wanted)
    for one in found.cells.values():
        if one.value is not None:
            check_value(standard(one.cell.setting), machine, one.cell.place, one.value)


@given(crops, jobs)
@settings(max_examples=20)
def test_only_parts_that_exist_are_proposed(crop: str, wanted: FieldJob) -> None:
    codes = {part.code for part in PARTS}
    for one in looked_up(crop, wanted).cells.values():
        if one.cell.setting in ("disc", "brush"):
            assert one.value is None or one.value in codes


@given(crops, jobs, st.integers(2, 40))
@settings(max_examples=20)
def test_more_rows_never_change_a_rows_value(crop: str, wanted: FieldJob, rows: int) -> None:
    few, many = looked_up(crop, wanted, 2), looked_up(crop, wanted, rows)
    for cell, one in few.cells.items():
        if cell.place.row is not None:
            assert many.cells[cell].value == one.value


@given(crops, jobs)
@settings(max_examples=20)
def test_us_and_metric_screens_show_the_same_physics(crop: str, wanted: FieldJob) -> None:
    us, metric = (looked_up(crop, wanted, units=units) for units in Units)
    for cell, one in us.cells.items():
        assert same_value(standard(cell.setting), one.value, metric.cells[cell].value)


@given(crops, st.floats(2, 9), st.floats(15_000, 300_000))
@settings(max_examples=20)
def test_us_and_metric_inputs_agree(crop: str, mph: float, stand: float) -> None:
    here = job(speed=Q(mph, "mph"), stand=Q(stand, "plant/acre"))
    there = job(speed=Q(mph, "mph").to("km/h"), stand=Q(stand, "plant/acre").to("plant/hectare"))
    ours, theirs = looked_up(crop, here), looked_up(crop, there)
    for cell, one in ours.cells.items():
        assert same_value(standard(cell.setting), one.value, theirs.cells[cell].value)


VALUES: dict[str, st.SearchStrategy[Value]] = {
    "singulator": st.integers(1, 4),
    "closing": st.integers(1, 5),
    "depth": st.integers(1, 13),
    "cells": st.integers(1, 400),
    "disc": st.sampled_from([part.code for part in PARTS if part.sort == "disc"]),
    "vacuum": st.floats(1, 60).map(lambda level: Q(level, "inH2O")),
}


@given(st.sampled_from(sorted(VALUES)), crops, st.data())
@settings(max_examples=40)
def test_the_manual_always_wins(setting: str, crop: str, data: st.DataObject) -> None:
    value = data.draw(VALUES[setting])
    one = first(looked_up(crop, job(), manual=(ManualValue(crop, setting, value),)), setting)
    assert same_value(standard(setting), one.value, value)
    assert one.reason.trust is Trust.MANUAL


@given(crops, jobs)
@settings(max_examples=20)
def test_a_band_holds_its_value(crop: str, wanted: FieldJob) -> None:
    for one in looked_up(crop, wanted).cells.values():
        if is_quantity(one.value) and one.low is not None and one.high is not None:
            assert one.low <= one.value <= one.high
