"""Groups and rows are read as people write them, and written back the same."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.group_text import (
    read_groups,
    read_rows,
    show_groups,
    show_rows,
)
from changeover.planter.places import Scope
from changeover.quantities import Refusal


@given(st.sets(st.integers(1, 64), min_size=1))
def test_rows_read_back_from_their_text(rows: set[int]) -> None:
    assert set(read_rows(show_rows(rows), "rows")) == rows


@given(rows=st.integers(1, 64), data=st.data())
def test_a_count_divides_evenly_and_is_written_as_a_count(rows: int, data: st.DataObject) -> None:
    count = data.draw(st.integers(1, rows))
    assert show_groups(read_groups(Scope.FAN, str(count), rows), rows) == str(count)


def test_uneven_groups_are_written_by_their_rows() -> None:
    text = "1-8, 17-24; 9-16"
    groups = read_groups(Scope.TANK, text, 24)
    assert [group.name for group in groups] == ["tank 1", "tank 2"]
    assert show_groups(groups, 24) == text


@pytest.mark.parametrize("text", ["", " ", "0"])
def test_no_groups_are_none(text: str) -> None:
    assert read_groups(Scope.TANK, text, 24) == ()
    assert show_groups((), 24) == "0"


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("25", "cannot be divided"),
        ("1-12; 14-24", "Row 13 is in no fan group"),
        ("1-12; 12-24", "Row 12 is in two"),
        ("one; two", "not a row or a run"),
        ("12-1; 13-24", "goes backwards"),
        ("1-9999999; 3", "longer than any planter"),
    ],
)
def test_groups_that_do_not_fit_are_refused(text: str, sentence: str) -> None:
    with pytest.raises(Refusal, match=sentence):
        read_groups(Scope.FAN, text, 24)
