"""Groups hold every row exactly once."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.groups import Group, check_groups, equal_groups
from changeover.planter.places import Place, Scope
from changeover.quantities import Refusal


@given(rows=st.integers(1, 64), data=st.data())
def test_equal_groups_hold_every_row_once(rows: int, data: st.DataObject) -> None:
    count = data.draw(st.integers(1, rows))
    groups = equal_groups(Scope.FAN, count, rows)
    assert [row for group in groups for row in group.rows] == list(range(1, rows + 1))
    assert max(len(g.rows) for g in groups) - min(len(g.rows) for g in groups) <= 1


def test_more_groups_than_rows_are_refused() -> None:
    with pytest.raises(Refusal, match="4 rows cannot be divided into 5 fan groups"):
        equal_groups(Scope.FAN, 5, 4)


@pytest.mark.parametrize(
    ("groups", "sentence"),
    [
        ([Group(Scope.FAN, "a", (1, 2))], "Row 3 is in no fan group"),
        ([Group(Scope.FAN, "a", (1, 2, 3)), Group(Scope.FAN, "b", (3,))], "Row 3 is in two"),
        ([Group(Scope.FAN, "a", (1, 2)), Group(Scope.FAN, "a", (3,))], "are called “a”"),
        ([Group(Scope.FAN, "a", (1, 2, 3, 4))], "names row 4"),
    ],
)
def test_groups_that_do_not_fit_the_rows_are_refused(groups: list[Group], sentence: str) -> None:
    with pytest.raises(Refusal, match=sentence):
        check_groups(groups, rows=3)


@pytest.mark.parametrize(
    ("sort", "name", "rows"),
    [(Scope.ROW, "a", (1,)), (Scope.FAN, "  ", (1,)), (Scope.FAN, "a", ())],
)
def test_a_group_without_sort_name_or_rows_is_refused(
    sort: Scope, name: str, rows: tuple[int, ...]
) -> None:
    with pytest.raises(Refusal):
        Group(sort, name, rows)


@pytest.mark.parametrize(
    "place", [Place.of_row(14), Place(Scope.FAN, "fan: 1"), Place(Scope.PLANTER)]
)
def test_a_place_reads_back_from_its_text(place: Place) -> None:
    assert Place.from_text(str(place)) == place


@pytest.mark.parametrize(
    ("count", "rows", "says"),
    [
        (2, 1, "1 row cannot be divided into 2 fan groups; enter 1."),
        (0, 12, "12 rows cannot be divided into 0 fan groups; enter 1 to 12."),
        (13, 12, "12 rows cannot be divided into 13 fan groups; enter 1 to 12."),
    ],
)
def test_one_row_is_no_rows_and_what_may_be_entered_is_said(count, rows, says) -> None:
    with pytest.raises(Refusal) as refused:
        equal_groups(Scope.FAN, count, rows)
    assert str(refused.value) == says
