"""Row length of a thousandth of an acre, seeds per length and stand counts against print."""

import pytest

from changeover.quantities import Q
from changeover.seed import catch, rate

TENNESSEE = "University of Tennessee, UT Crops News, Checking corn populations, 2011"
MICHIGAN = "Michigan State Extension, Have you estimated your dry bean yields yet?"
OHIO = "Ohio State University, C.O.R.N. newsletter, Time to evaluate soybean stands"
PENN_STATE = "Penn State Extension, Early-season stand assessment, 2019"
LIQUI = "Liqui-Grow agronomy blog, Corn stands in 2014"
IOWA = "Iowa State University, Agron 212, Seeds per foot of row"
SOYBEAN = "Liqui-Grow agronomy blog, Soybean seeding rates, 21 November 2012"
TEXAS = "Texas A&M AgriLife, Cutting field sorghum plant population"
BEET_MICHIGAN = "Michigan State Extension, Ten key components for sugarbeet quality, tip 3"
BEET_DAKOTA = "NDSU, Crop and Pest Report, 31 May 2001"

ROW_LENGTHS = [
    (TENNESSEE, 15, 34 + 10 / 12, 0.05),
    (TENNESSEE, 20, 26 + 2 / 12, 0.05),
    (TENNESSEE, 30, 17 + 5 / 12, 0.05),
    (TENNESSEE, 36, 14 + 6 / 12, 0.05),
    (TENNESSEE, 38, 13 + 9 / 12, 0.05),
    (MICHIGAN, 22, 23 + 9 / 12, 0.05),
    (LIQUI, 30, 17.424, 0.0005),
    (LIQUI, 20, 26.135, 0.0015),
    (LIQUI, 15, 34.848, 0.0005),
    (OHIO, 7.5, 70, 0.5),
    (OHIO, 15, 35, 0.5),
    (OHIO, 30, 17.5, 0.5),
]


@pytest.mark.parametrize(("source", "width", "printed", "tolerance"), ROW_LENGTHS)
def test_row_length_of_a_thousandth_acre(outside_check, source, width, printed, tolerance) -> None:
    outside_check(
        calculation=f"row length of 1/1000 acre, {width}-in rows",
        source=source,
        trust="published",
        printed=printed,
        ours=rate.row_length_thousandth(Q(width, "in")).to("ft").magnitude,
        unit="ft",
        tolerance=tolerance,
    )


def test_row_length_where_the_print_errs(outside_check) -> None:
    outside_check(
        calculation="row length of 1/1000 acre, 7.5-in rows",
        source=PENN_STATE,
        trust="published",
        printed=69 + 7 / 12,
        derived=522.72 / 7.5,
        print_error=True,
        ours=rate.row_length_thousandth(Q(7.5, "in")).to("ft").magnitude,
        unit="ft",
        tolerance=0.05,
        note="69 ft 8.35 in: 522.72 / 7.5",
    )


@pytest.mark.parametrize(
    ("source", "seeds", "width", "printed", "tolerance"),
    [
        (IOWA, 200_000, 15, 5.74, 0.005),
        (SOYBEAN, 130_000, 30, 7.46, 0.005),
        (SOYBEAN, 130_000, 15, 3.73, 0.005),
    ],
)
def test_seeds_per_foot(outside_check, source, seeds, width, printed, tolerance) -> None:
    outside_check(
        calculation=f"seeds per foot, {seeds} seeds/ac in {width}-in rows",
        source=source,
        trust="published",
        printed=printed,
        ours=rate.seeds_per_length(Q(seeds, "seed/acre"), Q(width, "in")).to("seed/ft").magnitude,
        unit="seeds/ft",
        tolerance=tolerance,
    )


def test_seeds_per_foot_where_the_print_errs(outside_check) -> None:
    ours = rate.seeds_per_length(Q(130_000, "seed/acre"), Q(7, "in"))
    outside_check(
        calculation="seeds per foot, 130000 seeds/ac in 7-in rows",
        source=SOYBEAN,
        trust="published",
        printed=1.71,
        derived=130_000 * 7 / 522_720,
        print_error=True,
        ours=ours.to("seed/ft").magnitude,
        unit="seeds/ft",
        tolerance=0.02,
        note="1.74: 130 000 · 7 / 522 720",
    )


@pytest.mark.parametrize(
    ("source", "plants", "feet", "rows", "width", "printed", "tolerance"),
    [
        (TEXAS, 110, 25, 2, 30, 38_332, 5.0),
        (PENN_STATE, 17, 10, 1, 30, 29_621, 1.0),
        (IOWA, 5, 1, 1, 15, 174_240, 0.5),
        (BEET_MICHIGAN, 200, 100, 1, 30, 35_000, 200.0),
        (BEET_MICHIGAN, 200, 100, 1, 22, 48_000, 500.0),
        (BEET_DAKOTA, 150, 100, 1, 22, 35_000, 700.0),
    ],
)
def test_stand_from_a_count(
    outside_check, source, plants, feet, rows, width, printed, tolerance
) -> None:
    stand = catch.rate_from_seeds(plants, Q(feet, "ft"), rows, Q(width, "in"))
    outside_check(
        calculation=f"stand from {plants} plants in {feet} ft of {rows} rows at {width} in",
        source=source,
        trust="published",
        printed=printed,
        ours=stand.to("plant/acre").magnitude,
        unit="plants/ac",
        tolerance=tolerance,
    )


def test_row_length_of_a_thousandth_hectare(outside_check) -> None:
    outside_check(
        calculation="row length of 1/1000 ha, 50-cm rows",
        source="definition of the hectare: 1000 / cm",
        trust="derived",
        printed=20.0,
        ours=rate.row_length_thousandth(Q(50, "cm"), "hectare").to("m").magnitude,
        unit="m",
        tolerance=1e-9,
    )
