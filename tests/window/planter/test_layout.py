"""Where the parts of the planter are drawn."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.places import Scope
from changeover.window.planter.layout import Column, brackets, heights
from tests.window.invented import ground_planter, long_planter

COLUMNS = tuple(Column(row, 15 + 30 * (row - 1), 30) for row in range(1, 25))


def test_a_fan_has_one_bracket_over_its_rows() -> None:
    one, two = brackets(long_planter(), Scope.FAN, COLUMNS)
    assert (one.left, one.right) == (0, 360)
    assert (two.left, two.right) == (360, 720)
    assert one.middle == 180


def test_a_group_with_rows_apart_has_a_stretch_for_each() -> None:
    shown = [column for column in COLUMNS if column.row not in (5, 6)]
    (one, _) = brackets(long_planter(), Scope.TANK, shown)
    assert len(one.runs) == 1
    apart = [COLUMNS[0], COLUMNS[13], COLUMNS[2]]
    assert len(brackets(long_planter(), Scope.TANK, apart)[0].runs) == 2


def test_groups_without_a_row_in_view_are_left_out() -> None:
    assert len(brackets(long_planter(), Scope.FAN, COLUMNS[:5])) == 1


def test_a_drive_says_what_turns_it() -> None:
    columns = COLUMNS[:12]
    assert brackets(ground_planter(), Scope.DRIVE, columns)[0].words == "drive 1 · ground wheel"
    assert brackets(long_planter(), Scope.DRIVE, COLUMNS)[0].words == "drive 1 · hydraulic"


@given(st.integers(168, 400))
def test_the_levels_follow_from_the_top_down_and_fit(whole: int) -> None:
    at = heights(whole)
    order = [at.tank_top, at.tank_foot, at.fan, at.bar_top, at.bar_foot, at.unit_top, at.numbers]
    assert order == sorted(order)
    assert at.unit_top + at.unit < at.numbers < at.drives
    assert at.drives + 16 <= whole


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_column_reaches_half_its_width_to_each_side(side: str) -> None:
    assert getattr(Column(1, 15, 30), side) == {"left": 0, "right": 30}[side]
