"""A planter is one machine whose places answer for every row."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.drive import GroundDrive, MotorDrive, MotorKind
from changeover.planter.groups import equal_groups
from changeover.planter.load_reading import LoadReading
from changeover.planter.machine import Planter
from changeover.planter.places import GROUP_SORTS, PLANTER, Place, Scope
from changeover.planter.setup import Setup, working_spacing
from changeover.quantities import Q, Refusal

SPLIT = Planter("Split", 23, Q(30, "in"), split_rows=frozenset(range(2, 23, 2)))


def planter(rows: int = 12, fans: int = 2) -> Planter:
    return Planter("One", rows, Q(30, "in"), groups=equal_groups(Scope.FAN, fans, rows))


@given(rows=st.integers(2, 64), scope=st.sampled_from([Scope.ROW, Scope.PLANTER, *GROUP_SORTS]))
def test_the_places_of_a_scope_cover_every_row_once(rows: int, scope: Scope) -> None:
    machine = planter(rows)
    covered = [row for place in machine.places(scope) for row in machine.rows_of(place)]
    assert covered == list(machine.row_numbers)


@given(row=st.integers(1, 12), scope=st.sampled_from([Scope.ROW, Scope.PLANTER, *GROUP_SORTS]))
def test_the_place_of_a_row_covers_that_row(row: int, scope: Scope) -> None:
    machine = planter()
    assert row in machine.rows_of(machine.place(scope, row))


def test_without_tanks_seed_lies_in_row_hoppers_and_other_groups_are_the_planters() -> None:
    machine = planter()
    assert machine.place(Scope.TANK, 3) == Place.of_row(3)
    assert machine.place(Scope.DRIVE, 3) == PLANTER


def test_the_width_of_a_split_row_planter_is_that_of_its_main_rows() -> None:
    assert SPLIT.main_rows == tuple(range(1, 24, 2))
    assert SPLIT.width.to("ft").magnitude == pytest.approx(30)
    assert SPLIT.narrow_spacing == Q(15, "in")


@pytest.mark.parametrize(("rows", "controllers"), [(12, 1), (24, 1), (25, 2), (32, 2), (49, 3)])
def test_rows_beyond_a_controllers_sensors_need_another(rows: int, controllers: int) -> None:
    assert planter(rows).controllers == controllers


@pytest.mark.parametrize(
    ("given_", "sentence"),
    [
        ({"name": " "}, "no name"),
        ({"rows": 0}, "1 to 64"),
        ({"rows": 65}, "1 to 64"),
        ({"row_spacing": Q(2, "in")}, "row spacing"),
        ({"split_rows": frozenset({13})}, "Row 13 cannot be locked up"),
        ({"split_rows": frozenset(range(1, 13))}, "At least one row"),
        ({"sensors_per_controller": 0}, "at least one seed sensor"),
        ({"fan_limit": Q(0, "kPa")}, "fan limit"),
        ({"hub_spacing_step": Q(0, "mm")}, "hub spacing step"),
    ],
)
def test_parts_that_do_not_make_one_machine_are_refused(given_: dict, sentence: str) -> None:
    with pytest.raises(Refusal, match=sentence):
        Planter(**{"name": "One", "rows": 12, "row_spacing": Q(30, "in"), **given_})


def test_a_drive_needs_a_group_of_its_name() -> None:
    motor = MotorDrive(MotorKind.ELECTRIC, 1.0, Q(5, "rpm"), Q(100, "rpm"))
    with pytest.raises(Refusal, match="no drive group"):
        Planter("One", 12, Q(30, "in"), drives={"drive 1": motor})


def test_a_ground_drive_lists_every_pair() -> None:
    drive = GroundDrive((20, 15), (24,), Q(90, "in"), ratio=0.5)
    assert drive.pairs == ("15/24", "20/24")


@pytest.mark.parametrize(
    "bad",
    [
        lambda: GroundDrive((), (24,), Q(90, "in"), 0.5),
        lambda: GroundDrive((15,), (24,), Q(0, "in"), 0.5),
        lambda: GroundDrive((15,), (24,), Q(90, "in"), 0.5, slip=0.9),
        lambda: MotorDrive(MotorKind.ELECTRIC, 0, Q(5, "rpm"), Q(100, "rpm")),
        lambda: MotorDrive(MotorKind.ELECTRIC, 1, Q(50, "rpm"), Q(10, "rpm")),
        lambda: MotorDrive(MotorKind.HYDRAULIC, 1, Q(5, "rpm"), Q(9, "rpm"), Q(0, "l")),
    ],
)
def test_an_impossible_drive_is_refused(bad) -> None:
    with pytest.raises(Refusal):
        bad()


def test_twin_rows_count_by_the_pair() -> None:
    twins = Planter("Twins", 24, Q(30, "in"), twin_rows=True)
    assert (twins.width, twins.narrow_spacing) == (Q(360.0, "in"), Q(15.0, "in"))
    assert working_spacing(twins, Setup()) == Q(15.0, "in")


@pytest.mark.parametrize(
    ("wrong", "words"),
    [
        ({"twin_rows": True}, "even"),
        ({"twin_rows": True, "rows": 4, "split_rows": frozenset({2})}, "none locks up"),
        ({"wheel_track_rows": frozenset({9})}, "Row 9"),
        ({"tank_capacity": Q(0, "l")}, "holds 1 to 20 000 l"),
        ({"load_readings": (LoadReading(Place.of_row(8), Q(1, "psi"), Q(1, "N")),)}, "row 8"),
    ],
)
def test_what_cannot_be_a_planter_is_refused(wrong, words) -> None:
    with pytest.raises(Refusal, match=words):
        Planter(**{"name": "Wrong", "rows": 3, "row_spacing": Q(30, "in"), **wrong})


@pytest.mark.parametrize(
    ("setting", "load", "words"),
    [
        (Q(4, "in"), Q(1, "N"), "force or a pressure"),
        (Q(-1, "lbf"), Q(1, "N"), "below zero"),
        (Q(100, "lbf"), Q(1, "m"), "is a force"),
    ],
)
def test_a_load_reading_of_the_wrong_kind_is_refused(setting, load, words) -> None:
    with pytest.raises(Refusal, match=words):
        LoadReading(Place.of_row(1), setting, load)
