"""Rows down or locked up: what the row spacing wanted asks of a split-row planter."""

from changeover.planter.places import Place
from changeover.planter.settings import DOWN, LOCKED_UP
from changeover.planter.setup import Cell, Setup
from changeover.quantities import Q, Units
from changeover.seed.row_locks import plan_rows
from tests.seed.made_up import planter

SPLIT = planter(31, split_rows=frozenset(range(2, 31, 2)))


def words(found: Setup | None = None, inches: float | None = None) -> list[object]:
    wanted = None if inches is None else Q(inches, "in")
    return [
        one.value for one in plan_rows(SPLIT, found or Setup(), wanted, Units.US).cells.values()
    ]


def test_wide_rows_lock_up_every_row_between() -> None:
    plan = plan_rows(SPLIT, Setup(), Q(30, "in"), Units.US)
    assert plan.rows == tuple(range(1, 32, 2))
    assert plan.spacing == Q(30, "in")
    assert words(inches=30).count(LOCKED_UP) == 15


def test_narrow_rows_put_every_row_down() -> None:
    plan = plan_rows(SPLIT, Setup(), Q(38.1, "cm"), Units.US)
    assert len(plan.rows) == 31
    assert plan.spacing.to("in").magnitude == 15
    assert set(words(inches=15)) == {DOWN}


def test_without_a_wish_the_rows_stay_as_found() -> None:
    found = Setup({Cell("row_lock", Place.of_row(2)): LOCKED_UP})
    assert words(found)[:3] == [DOWN, LOCKED_UP, DOWN]


def test_a_spacing_that_the_planter_lacks_is_said() -> None:
    plan = plan_rows(SPLIT, Setup(), Q(20, "in"), Units.US)
    assert "cannot plant rows 20.0 in apart: it has 15.0 in or 30.0 in" in plan.warnings[0]
    assert len(plan.rows) == 31


def test_a_planter_without_split_rows_has_no_locks() -> None:
    plain = planter(12)
    assert plan_rows(plain, Setup(), Q(30, "in"), Units.US).cells == {}
    assert plan_rows(plain, Setup(), None, Units.US).rows == tuple(range(1, 13))
    assert plan_rows(plain, Setup(), Q(15, "in"), Units.US).warnings


def test_each_row_says_why() -> None:
    plan = plan_rows(SPLIT, Setup(), Q(30, "in"), Units.METRIC)
    main, between = (one.reason.why for one in list(plan.cells.values())[:2])
    assert main == "A main row is always down."
    assert "76.2 cm apart" in between
