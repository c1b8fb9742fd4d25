"""Fan laws against a printed factor and the law's statement in print."""

import pytest

from changeover.proof.fan import speed_factor
from changeover.quantities import Q


def test_fan_speed_for_more_vacuum(outside_check) -> None:
    outside_check(
        calculation="factor on the fan's speed from 16 to 20 inH₂O",
        source="fan laws: pressure goes with speed squared",
        trust="from memory",
        printed=1.118,
        ours=speed_factor(Q(16, "inH2O"), Q(20, "inH2O")),
        unit="",
        tolerance=0.0005,
    )


@pytest.mark.parametrize("factor", [0.5, 1.1, 2.0])
def test_pressure_is_the_square_of_speed(outside_check, factor) -> None:
    outside_check(
        calculation=f"factor on the fan's speed for {factor:g}² of the vacuum",
        source="Process Heating, Fan Laws and Formulas: pressure varies as the rpm ratio squared",
        trust="published",
        printed=factor,
        ours=speed_factor(Q(8, "inH2O"), Q(8 * factor**2, "inH2O")),
        unit="",
        tolerance=1e-9,
    )
