"""A planter is kept whole: rows, groups, drives, scales; renamed, retired, never doubled."""

from dataclasses import replace
from types import MappingProxyType

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from changeover.planter.drive import GroundDrive, MotorDrive, MotorKind
from changeover.planter.groups import equal_groups
from changeover.planter.load_reading import LoadReading
from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.planter.scales import DepthScale, DugLine, Index, Position
from changeover.quantities import Q, Refusal
from changeover.store.opening import open_store
from changeover.store.refusals import Conflict

GROUND = GroundDrive((15, 18), (20, 24), Q(86.0, "in"), 0.62, 0.03)
READINGS = tuple(
    LoadReading(Place.of_row(2), Q(setting, "lbf"), Q(load, "N"))
    for setting, load in ((100.0, 300.0), (200.0, 640.0))
)
MOTOR = MotorDrive(MotorKind.HYDRAULIC, 20.0, Q(60.0, "rpm"), Q(1500.0, "rpm"), Q(2.5, "in^3"))


DUG = (None, DugLine(5, 6.0), DugLine(9, 5.5, 36.0, Q(1.25, "mm")))


@st.composite
def depth_scales(draw, rows: int) -> DepthScale:
    scale = DepthScale(Q(1.0, "cm"), Q(6.0, "mm"), 9)
    for row in draw(st.sets(st.integers(1, rows), max_size=3)):
        step = draw(st.sampled_from([None, Q(0.22, "in"), Q(5.5, "mm")]))
        offset = Q(draw(st.floats(-0.4, 0.4)), "in")
        scale = scale.with_row(row, offset, step, draw(st.sampled_from(DUG)))
    return scale


@st.composite
def planters(draw) -> Planter:
    rows = draw(st.integers(3, 64))
    groups = tuple(
        group
        for sort in (Scope.DRIVE, Scope.FAN, Scope.TANK)
        if (count := draw(st.integers(0, 3)))
        for group in equal_groups(sort, count, rows)
    )
    names = [group.name for group in groups if group.sort is Scope.DRIVE]
    drive = draw(st.sampled_from([GROUND, MOTOR]))
    return Planter(
        draw(st.sampled_from(["A", "B"])),
        rows,
        Q(draw(st.floats(6, 59)), draw(st.sampled_from(["in"]))),
        groups,
        MappingProxyType(dict.fromkeys(names, drive)),
        frozenset(range(2, rows, 2)) if draw(st.booleans()) else frozenset(),
        draw(depth_scales(rows)),
        Index((Position("half", 0.5), Position("open", 1.0))),
        Index.of("float", "hard"),
        fan_limit=draw(st.sampled_from([None, Q(7.5, "kPa")])),
        tank_capacity=draw(st.sampled_from([None, Q(50.0, "bu")])),
        wheel_track_rows=draw(st.frozensets(st.integers(1, rows), max_size=3)),
        load_readings=draw(st.sampled_from([(), READINGS])),
    )


@settings(max_examples=15)
@given(planters(), planters())
def test_any_planter_comes_back_whole_also_after_a_change(tmp_path_factory, one, other) -> None:
    store = open_store(tmp_path_factory.mktemp("p") / "s.sqlite", create=True)
    with store.work("Ada") as work:
        work.planters.put(one, None)
    with store.read() as work:
        assert work.planters.get(one.name) == one
    with store.work("Ada") as work:
        work.planters.put(other, one)
    with store.read() as work:
        assert work.planters.get(other.name) == other
    store.close()


@pytest.mark.parametrize("name", ["small bar", "SMALL BAR ", " Small Bar", "Small  Bar"])
def test_a_name_in_other_capitals_is_the_same_name(stocked, planter, name) -> None:
    with pytest.raises(Refusal, match="“Small Bar” is there already"), stocked.work("Ada") as work:
        work.planters.put(replace(planter, name=name), None)
    with stocked.work("Ada") as work:
        work.planters.put(replace(planter, name=name), planter)
        assert work.planters.get(name).rows == planter.rows


def test_a_second_planter_of_the_same_name_is_refused(stocked, planter) -> None:
    with pytest.raises(Refusal, match="“Small Bar” is there already"), stocked.work("Ada") as work:
        work.planters.put(replace(planter, rows=4), None)


def test_a_renamed_planter_keeps_its_settings(stocked, planter) -> None:
    with stocked.work("Ada") as work:
        number = work.planters.number("Small Bar")
        work.planters.put(replace(planter, name="Large Bar"), planter)
    with stocked.read() as work:
        assert work.planters.names() == ("Large Bar",)
        assert work.planters.number("Large Bar") == number


def test_a_retired_planter_leaves_the_list_and_can_come_back(stocked, planter) -> None:
    with stocked.work("Ada") as work:
        work.planters.put(None, planter)
    with stocked.read() as work:
        assert work.planters.names() == ()
    with stocked.work("Ada") as work:
        work.planters.put(planter, None)
    with stocked.read() as work:
        assert work.planters.get("Small Bar") == planter


def test_the_later_writer_of_a_planter_is_refused(stocked, planter) -> None:
    with stocked.work("Bo") as work:
        work.planters.put(replace(planter, fan_limit=Q(20.0, "inH2O")), planter)
    with pytest.raises(Conflict, match="changed by someone else"), stocked.work("Ada") as work:
        work.planters.put(replace(planter, fan_limit=Q(30.0, "inH2O")), planter)


def test_a_change_of_groups_alone_is_seen_by_who_read_before(stocked, planter) -> None:
    with stocked.read() as work:
        work.planters.get("Small Bar")
    moved = replace(planter, groups=equal_groups(Scope.FAN, 1, 4))
    with stocked.work("Bo") as work:
        work.planters.put(moved, planter)
    with stocked.read() as work:
        assert work.planters.get("Small Bar") == moved


def test_an_unknown_planter_is_refused_with_those_there_are(stocked) -> None:
    with pytest.raises(Refusal, match=r"no planter “Other”.*Small Bar"), stocked.read() as work:
        work.planters.get("Other")
