"""Spacing in the row and seeds per area against printed tables of universities and the trade."""

import pytest

from changeover.quantities import Q
from changeover.seed import rate

POTATO = "Valley Potato Grower, March 2021, table 1 (geometry only)"
PURDUE = "Purdue Corn & Soybean Field Guide (quoted 2015)"
PINTO = "NDSU Extension A1133, table 7, pinto bean"
NAVY = "NDSU Extension A1133, table 7, navy bean"
LIQUI = "Liqui-Grow agronomy blog, Soybean seeding rates, 21 November 2012"
SORGHUM = "K-State Agronomy eUpdate, grain sorghum seeding rates, table 1"
SUNFLOWER = "NDSU study in the National Sunflower Association's archive"

POTATO_SPACINGS = (6, 7, 8, 9, 10, 12, 14)
POTATO_TABLE = {
    34: (30_748, 26_356, 23_061, 20_499, 18_449, 15_374, 13_178),
    36: (29_040, 24_891, 21_780, 19_360, 17_424, 14_520, 12_446),
}

SPACINGS = [
    (PURDUE, 30_000, 30, 7.0, 0.05),
    (PURDUE, 32_000, 30, 6.5, 0.05),
    (PURDUE, 34_000, 30, 6.1, 0.06),
    (PURDUE, 32_000, 20, 9.8, 0.05),
    (PURDUE, 32_000, 15, 13.1, 0.05),
    (PINTO, 62_500, 12, 8.4, 0.05),
    (PINTO, 62_500, 22, 4.6, 0.05),
    (PINTO, 62_500, 30, 3.4, 0.06),
    (PINTO, 75_000, 12, 7.0, 0.05),
    (PINTO, 75_000, 22, 3.8, 0.05),
    (PINTO, 75_000, 30, 2.8, 0.05),
    (PINTO, 87_500, 22, 3.3, 0.05),
    (PINTO, 100_000, 12, 5.2, 0.05),
    (PINTO, 100_000, 22, 2.9, 0.05),
    (PINTO, 100_000, 30, 2.1, 0.05),
    (NAVY, 125_000, 6, 8.4, 0.05),
    (NAVY, 150_000, 6, 7.0, 0.05),
    (NAVY, 200_000, 6, 5.2, 0.05),
    (NAVY, 100_000, 12, 5.2, 0.05),
    (NAVY, 125_000, 12, 4.2, 0.05),
    (NAVY, 150_000, 12, 3.5, 0.05),
    (NAVY, 175_000, 12, 3.0, 0.05),
    (NAVY, 75_000, 22, 3.8, 0.05),
    (NAVY, 150_000, 22, 1.9, 0.05),
    (NAVY, 75_000, 30, 2.8, 0.05),
    (NAVY, 150_000, 30, 1.4, 0.05),
    (LIQUI, 130_000, 30, 1.6, 0.05),
    (LIQUI, 130_000, 15, 3.2, 0.05),
    (LIQUI, 130_000, 7, 6.9, 0.05),
    (SORGHUM, 30_000, 10, 21, 0.75),
    (SORGHUM, 35_000, 20, 9, 0.75),
    (SORGHUM, 64_000, 30, 3, 0.75),
    (SORGHUM, 80_000, 10, 8, 0.75),
    (SORGHUM, 125_000, 20, 2, 0.75),
    (SUNFLOWER, 20_000, 30, 10, 0.75),
]

# Printed cells that arithmetic contradicts.
WRONG = [
    (PINTO, 87_500, 12, 6.3, "5.97: 6 272 640 / (12 · 87 500)"),
    (PINTO, 87_500, 30, 2.5, "2.39: 6 272 640 / (30 · 87 500)"),
    (NAVY, 175_000, 6, 6.1, "5.97: 6 272 640 / (6 · 175 000)"),
    (NAVY, 200_000, 22, 1.5, "1.43: 6 272 640 / (22 · 200 000)"),
]


@pytest.mark.parametrize("width", POTATO_TABLE)
@pytest.mark.parametrize("column", range(len(POTATO_SPACINGS)))
def test_seeds_per_acre_from_spacing(outside_check, width, column) -> None:
    spacing = POTATO_SPACINGS[column]
    ours = rate.seed_rate(Q(spacing, "in"), Q(width, "in")).to("seed/acre").magnitude
    outside_check(
        calculation=f"seeds per acre, {spacing} in in {width}-in rows",
        source=POTATO,
        trust="published",
        printed=POTATO_TABLE[width][column],
        ours=ours,
        unit="seeds/ac",
        tolerance=1.0,
        note="printed cut off or rounded to whole plants",
    )


@pytest.mark.parametrize(("source", "seeds", "width", "printed", "tolerance"), SPACINGS)
def test_spacing_in_the_row(outside_check, source, seeds, width, printed, tolerance) -> None:
    spacing = rate.spacing_in_row(Q(seeds, "seed/acre"), Q(width, "in"))
    outside_check(
        calculation=f"spacing in the row, {seeds} seeds/ac in {width}-in rows",
        source=source,
        trust="published",
        printed=printed,
        ours=spacing.to("in").magnitude,
        unit="in",
        tolerance=tolerance,
    )


@pytest.mark.parametrize(("source", "seeds", "width", "printed", "why"), WRONG)
def test_spacing_where_the_print_errs(outside_check, source, seeds, width, printed, why) -> None:
    spacing = rate.spacing_in_row(Q(seeds, "seed/acre"), Q(width, "in"))
    outside_check(
        calculation=f"spacing in the row, {seeds} seeds/ac in {width}-in rows",
        source=source,
        trust="published",
        printed=printed,
        derived=6_272_640 / (width * seeds),
        print_error=True,
        ours=spacing.to("in").magnitude,
        unit="in",
        tolerance=0.05,
        note=why,
    )
