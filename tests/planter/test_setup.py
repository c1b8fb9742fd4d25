"""A setup is the matrix as a value."""

from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.groups import equal_groups
from changeover.planter.machine import Planter
from changeover.planter.places import Place, Scope
from changeover.planter.settings import STANDARD, standard
from changeover.planter.setup import (
    Cell,
    Setup,
    applies,
    cells_of,
    working_rows,
    working_spacing,
)
from changeover.quantities import Q

SPLIT = Planter(
    "Split",
    5,
    Q(30, "in"),
    groups=equal_groups(Scope.FAN, 2, 5),
    split_rows=frozenset({2, 4}),
)

cells = st.sampled_from([cell for setting in STANDARD for cell in cells_of(SPLIT, setting)])


@given(st.dictionaries(cells, st.integers(1, 9)), st.dictionaries(cells, st.integers(1, 9)))
def test_changes_laid_over_a_setup_win_and_nothing_else_moves(
    start: dict[Cell, int], changes: dict[Cell, int]
) -> None:
    setup = Setup(start).with_values(changes)
    assert dict(setup.values) == {**start, **changes}


@given(st.dictionaries(cells, st.integers(1, 9)))
def test_changing_back_restores_the_setup(changes: dict[Cell, int]) -> None:
    empty = Setup()
    there = empty.with_values(changes)
    assert there.with_values(dict.fromkeys(changes)) == empty


def test_a_row_reads_its_groups_value() -> None:
    vacuum = standard("vacuum")
    setup = Setup({Cell("vacuum", Place(Scope.FAN, "fan 2")): Q(12, "inH2O")})
    assert setup.at_row(SPLIT, vacuum, 5) == Q(12, "inH2O")
    assert setup.at_row(SPLIT, vacuum, 1) is None


def test_locked_rows_do_not_work_and_widen_the_spacing() -> None:
    up = Setup({Cell("row_lock", Place.of_row(row)): "locked up" for row in (2, 4)})
    assert working_rows(SPLIT, up) == (1, 3, 5)
    assert working_spacing(SPLIT, up) == Q(30, "in")
    assert working_spacing(SPLIT, Setup()) == Q(15, "in")


def test_row_locks_and_sprockets_only_stand_where_there_are_any() -> None:
    plain = Planter("Plain", 5, Q(30, "in"))
    assert applies(SPLIT, standard("row_lock"))
    assert not applies(plain, standard("row_lock"))
    assert not applies(plain, standard("sprockets"))
    assert applies(plain, standard("disc"))
