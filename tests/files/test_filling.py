"""What a sheet is filled with: figures in the display unit, depths through each row's own line."""

from dataclasses import replace

import pytest

from changeover.files.filling import shown
from changeover.planter.places import Place
from changeover.planter.settings import standard
from changeover.quantities import Q, Units
from tests.switch.switch_case import LONG_ACRE

OWN = replace(LONG_ACRE, depth=LONG_ACRE.depth.with_row(11, Q(0.1, "in"), Q(0.2, "in")))


@pytest.mark.parametrize(
    ("row", "units", "depth"),
    [(10, Units.US, 1.5), (11, Units.US, 1.4), (11, Units.METRIC, 35.56)],
)
def test_a_depth_is_that_of_the_rows_own_line(row: int, units: Units, depth: float) -> None:
    assert shown(standard("depth"), OWN, Place.of_row(row), 5, units) == pytest.approx(depth)


def test_what_is_not_known_stays_empty() -> None:
    assert not shown(standard("depth"), OWN, Place.of_row(11), None, Units.US)
