"""Gauge-wheel load classes against the figures in print, in newtons and in pounds."""

import pytest

from changeover.quantities import Q
from changeover.seed.down_pressure import HEAVY_LOAD, LIGHT_LOAD, MEDIUM_LOAD, load_class

SOURCE = "Hanna, Steward & Aldinger 2010, Appl. Eng. Agric. 26(4):551-556 (abstract)"


@pytest.mark.parametrize(
    ("load", "pounds"), [(LIGHT_LOAD, 40), (MEDIUM_LOAD, 110), (HEAVY_LOAD, 200)]
)
def test_the_bounds_of_the_classes_in_pounds(outside_check, load, pounds) -> None:
    outside_check(
        calculation="gauge-wheel load, lower bound of a class",
        source=SOURCE,
        trust="published",
        printed=pounds,
        ours=load.to("lbf").magnitude,
        unit="lbf",
        tolerance=0.5,
        note="printed to the nearest ten",
    )


def test_three_hundred_pounds_is_heavy() -> None:
    assert load_class(Q(300, "lbf")) == "heavy"
