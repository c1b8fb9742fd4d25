"""Hoppers are read by their rows and written back the same; tanks go whole or not at all."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.groups import equal_groups
from changeover.planter.hopper_text import read_hoppers, show_hoppers
from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.quantities import Q, Refusal

HOPPERS = Planter("Bar", 24, Q(30, "in"))
TANKS = Planter("Bar", 24, Q(30, "in"), equal_groups(Scope.TANK, 6, 24))


@given(st.sets(st.integers(1, 24), min_size=1))
def test_row_hoppers_read_back_from_their_text(rows: set[int]) -> None:
    places = tuple(Place.of_row(row) for row in sorted(rows))
    assert read_hoppers(HOPPERS, show_hoppers(HOPPERS, places), "Rows") == places


@given(st.sets(st.integers(0, 5), min_size=1))
def test_tanks_read_back_from_their_rows(numbers: set[int]) -> None:
    places = tuple(TANKS.places(Scope.TANK)[number] for number in sorted(numbers))
    assert read_hoppers(TANKS, show_hoppers(TANKS, places), "Rows") == places


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "say which rows"),
        ("1-25", "rows 1 to 24, not 25"),
        ("0", "rows 1 to 24, not 0"),
        ("3, 1-4", "row 3 is named twice"),
        ("six", "not a row"),
    ],
)
def test_rows_that_cannot_be_meant_are_refused(text: str, says: str) -> None:
    with pytest.raises(Refusal, match=says):
        read_hoppers(HOPPERS, text, "Rows with another lot")


def test_half_a_tank_is_refused_with_all_its_rows() -> None:
    with pytest.raises(Refusal, match="tank 2 feeds rows 5-8"):
        read_hoppers(TANKS, "1-6", "Rows with another lot")
