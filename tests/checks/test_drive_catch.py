"""Catch tests and ground drives against worked examples of extension services and a textbook."""

import pytest

from changeover.planter.drive import GroundDrive
from changeover.quantities import Q
from changeover.seed import catch, sprockets

WYOMING = "University of Wyoming Extension 2012, Calibration is key to accurate seeding rates"
TEXTBOOK = "agricultural engineering textbook, metric problems (grain drill, table 8.4)"
CAROLINA = "Soil Health Labs, How to calibrate a grain drill"


def test_length_of_ten_turns(outside_check) -> None:
    outside_check(
        calculation="distance of 10 turns of a wheel 8.5 ft round",
        source=WYOMING,
        trust="published",
        printed=85,
        ours=catch.distance_of_turns(10, Q(8.5, "ft")).to("ft").magnitude,
        unit="ft",
        tolerance=1e-9,
    )


@pytest.mark.parametrize(
    ("source", "rows", "width", "feet", "unit", "printed", "tolerance"),
    [
        (WYOMING, 10, 7, 85, "acre", 0.0114, 0.00005),
        (CAROLINA, 1, 7.5, 160, "ft^2", 100, 1e-9),
    ],
)
def test_area_of_a_catch(
    outside_check, source, rows, width, feet, unit, printed, tolerance
) -> None:
    outside_check(
        calculation=f"area of a catch test, {rows} rows at {width} in over {feet} ft",
        source=source,
        trust="published",
        printed=printed,
        ours=catch.sown_area(Q(feet, "ft"), rows, Q(width, "in")).to(unit).magnitude,
        unit=unit,
        tolerance=tolerance,
    )


def test_rate_from_two_ounces(outside_check) -> None:
    ours = catch.mass_rate_from_mass(Q(2, "oz"), Q(85, "ft"), 10, Q(7, "in"))
    outside_check(
        calculation="mass rate of 2 oz from 10 rows at 7 in over 85 ft",
        source=WYOMING,
        trust="published",
        printed=11,
        ours=ours.to("lb/acre").magnitude,
        unit="lb/ac",
        tolerance=0.05,
        note="exact 10.98",
    )


def test_rate_of_a_grain_drill(outside_check) -> None:
    distance = catch.distance_of_turns(50, Q(3.14159265, "count") * Q(80, "cm"))
    ours = catch.mass_rate_from_mass(Q(270.9, "g"), distance, 12, Q(20, "cm"))
    outside_check(
        calculation="mass rate of 270.9 g from 12 rows at 20 cm over 50 turns of 80 cm",
        source=TEXTBOOK,
        trust="published",
        printed=8.9,
        ours=ours.to("kg/hectare").magnitude,
        unit="kg/ha",
        tolerance=0.1,
        note="printed cut off; exact 8.98",
    )


@pytest.mark.parametrize(
    ("driver", "driven", "printed", "tolerance"), [(15, 20, 0.75, 1e-9), (15, 18, 0.833, 0.0005)]
)
def test_chain_ratio(outside_check, driver, driven, printed, tolerance) -> None:
    wheel = GroundDrive((15,), (18, 20), Q(1, "m"), 1.0)
    outside_check(
        calculation=f"turns of the driven shaft in one of the driver, {driver}/{driven} teeth",
        source="trade article, How to calculate sprocket ratio for a seed drill",
        trust="published",
        printed=printed,
        ours=sprockets.disc_turns_per_length(wheel, driver, driven).to("turn/m").magnitude,
        unit="",
        tolerance=tolerance,
    )


def test_rate_gained_by_a_smaller_driven_sprocket(outside_check) -> None:
    wheel = GroundDrive((15,), (18, 20), Q(2, "m"), 1.2)
    slow, fast = (sprockets.pair_rate(wheel, 15, teeth, 30, Q(30, "in")) for teeth in (20, 18))
    outside_check(
        calculation="seed rate gained from 15/20 to 15/18 teeth",
        source="trade article, How to calculate sprocket ratio for a seed drill",
        trust="published",
        printed=11,
        ours=float((fast / slow - 1).to("percent").magnitude),
        unit="%",
        tolerance=0.2,
    )


def test_rate_of_a_ground_drive(outside_check) -> None:
    """30 cells, 1.1 disc turns a wheel turn at 24/22 and 2 m round, 5 % slip, 30-in rows."""
    wheel = GroundDrive((24,), (22,), Q(2, "m"), 1.1, slip=0.05)
    outside_check(
        calculation="seed rate of 24/22 teeth, ratio 1.1, 2 m round, 5 % slip, 30 cells, 30 in",
        source="definition: cells · ratio · driver / driven · (1 − slip) / (round · spacing)",
        trust="derived",
        printed=30 * 1.1 * (24 / 22) * 0.95 / (2 * 0.762) * 4046.8564224,
        ours=sprockets.pair_rate(wheel, 24, 22, 30, Q(30, "in")).to("seed/acre").magnitude,
        unit="seeds/ac",
        tolerance=1e-6,
    )
