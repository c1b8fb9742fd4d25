"""Seed counts, rates and stands of the crop table against second sources and arithmetic."""

import pytest

from changeover.quantities import Q
from changeover.seed import rate
from changeover.seed.seed_rate import answer_seed_rate
from tests.seed.made_up import case, crop_table, job, lot

DURSUN = "Dursun et al. 2007, J. Stored Products Research 43:149-155"
ISIK = "Isik & Izli 2007, Int. J. Agric. Research 2(8):677-686"
SWEET = "Karababa & Coşkuner 2007, Int. J. Food Properties 10:549-560"
NDSU_BEET = "NDSU Crop and Pest Report, May 2002"
NEBRASKA_BEET = "growers' notes after University of Nebraska trials, March 2000"


def seeds_per_pound(grams: float) -> float:
    return float(rate.seeds_per_mass_from_thousand(Q(grams, "g")).to("seed/lb").magnitude)


@pytest.mark.parametrize(
    ("seed", "grams", "printed", "source", "near"),
    [
        ("sugar beet, raw, dry", 12.60, 36_000, DURSUN, 10),
        ("sugar beet, raw, wet", 13.41, 33_800, DURSUN, 50),
        ("sunflower, dry", 66.0, 6_900, ISIK, 50),
        ("canola, least", 3.0, 151_200, "Canola Council of Canada, 3 g a thousand", 50),
        ("canola, most", 6.0, 75_600, "Canola Council of Canada, 6 g a thousand", 50),
        ("sweet corn, dry", 220.0, 2_100, SWEET + ", beside a seed house's 2 100", 50),
    ],
)
def test_seeds_per_pound(outside_check, seed, grams, printed, source, near) -> None:
    outside_check(
        calculation=f"seeds per pound, {seed}",
        source=source,
        trust="published",
        printed=printed,
        ours=seeds_per_pound(grams),
        unit="seeds/lb",
        tolerance=near,
    )


# crop, a figure by a second source that must lie within the table's range, seeds a pound
SECOND = [
    ("soybean", 2_600, "Iowa State University, Agron 212"),
    ("sorghum", 14_000, "Oklahoma State University"),
    ("sorghum", 14_500, "Sorghum Checkoff 2017"),
    ("dry_bean_pinto", 1_250, "NDSU Extension A1133, table 7"),
    ("dry_bean_navy", 2_500, "Northarvest Bean Growers, March 2007"),
    ("popcorn", 3_100, "Karababa 2006, J. Food Eng. 72:100-107"),
    ("sunflower", 5_600, "Seifi & Alimardani (thousand-seed masses)"),
    ("cotton", 4_800, "Cotton Incorporated, acid-delinted"),
    ("field_pea", 2_400, "Ganjloo et al. 2018: 188.89 g a thousand"),
]


@pytest.mark.parametrize("row", SECOND, ids=lambda row: f"{row[0]} {row[1]}")
def test_a_second_source_lies_within_the_range(outside_check, row) -> None:
    crop, printed, source = row
    figure = crop_table()[crop].best("seeds_per_mass")
    assert figure is not None
    assert figure.low is not None
    assert figure.high is not None
    low, high = (float(one.to("seed/lb").magnitude) for one in (figure.low, figure.high))
    outside_check(
        calculation=f"seeds per pound of {crop}, nearest in the table's range",
        source=source,
        trust="published",
        printed=printed,
        ours=min(max(printed, low), high),
        unit="seeds/lb",
        tolerance=1e-9,
        note=f"the table holds {low:g} to {high:g} ({figure.source})",
    )


@pytest.mark.parametrize(
    ("crop", "low", "typical", "high", "source"),
    [
        ("corn", 20_000, 30_000, 33_000, "Ohio State University (Thomison) 2017"),
        ("soybean", 130_000, None, 150_000, "Purdue University (Casteel)"),
        ("sunflower", 16_000, None, 22_000, "NDSU Extension; Kansas State University"),
        ("sorghum", 30_000, None, 64_000, "Kansas State University, Agronomy eUpdate"),
        ("dry_bean_pinto", None, 70_000, None, "Northarvest Bean Growers, March 2007"),
        ("dry_bean_navy", None, 90_000, None, "Northarvest Bean Growers, March 2007"),
    ],
)
def test_rates_in_print(outside_check, crop, low, typical, high, source) -> None:
    figure = crop_table()[crop].best("seed_rate")
    assert figure is not None
    for end, printed in (("low", low), ("typical", typical), ("high", high)):
        if printed is not None:
            outside_check(
                calculation=f"seed rate of {crop}, {end}",
                source=source,
                trust="published",
                printed=printed,
                ours=getattr(figure, end).to("seed/acre").magnitude,
                unit="seeds/ac",
                tolerance=1e-6,
            )


def spacing_inches(per_acre: float, row_inches: float) -> float:
    spacing = rate.spacing_in_row(Q(per_acre, "seed/acre"), Q(row_inches, "in"))
    return float(spacing.to("in").magnitude)


@pytest.mark.parametrize(("row_inches", "printed"), [(30, 4.0), (22, 5.25)])
def test_beet_spacing_for_a_stand(outside_check, row_inches: float, printed: float) -> None:
    seeds = rate.rate_for_stand(Q(35_000, "plant/acre"), 1.0, 0.65).to("seed/acre").magnitude
    outside_check(
        calculation=f"spacing for 35 000 beets at 65 % emergence, {row_inches}-in rows",
        source=NEBRASKA_BEET,
        trust="published",
        printed=printed,
        ours=spacing_inches(seeds, row_inches),
        unit="in",
        tolerance=0.13,
        note="printed as about 4 and about 5 1/4",
    )


def test_beets_per_hundred_feet(outside_check) -> None:
    stand = rate.seed_rate(Q(8.0, "in"), Q(22, "in")).to("plant/acre").magnitude
    outside_check(
        calculation="150 beets to 100 ft of 22-in row, plants an acre",
        source=NDSU_BEET,
        trust="published",
        printed=35_560,
        ours=stand,
        unit="plants/ac",
        tolerance=100,
        note="arithmetic gives 35 640",
    )


def test_sunflower_overplanted_by_fifteen_percent(outside_check) -> None:
    sown = answer_seed_rate(
        case(
            "sunflower",
            lot=lot("sunflower", germination=1.0),
            job=job(stand=Q(20_000, "plant/acre")),
        )
    )
    outside_check(
        calculation="sunflower seed for 20 000 plants, overplanted by 15 %",
        source="NDSU Crop and Pest Report, May 2008",
        trust="published",
        printed=23_000,
        ours=sown.value.to("seed/acre").magnitude,
        unit="seeds/ac",
        tolerance=50,
    )


def test_sorghum_stand_from_the_rate(outside_check) -> None:
    for seeds, plants in ((35_000, 25_000), (64_000, 45_000)):
        stand = rate.stand_from_rate(Q(seeds, "seed/acre"), 1.0, 0.70).to("plant/acre").magnitude
        outside_check(
            calculation=f"sorghum stand from {seeds} seeds an acre at 70 % field germination",
            source="Kansas State University, north central Kansas guideline 2018",
            trust="published",
            printed=plants,
            ours=stand,
            unit="plants/ac",
            tolerance=600,
            note="printed to the thousand, with 65 to 70 percent",
        )


@pytest.mark.parametrize(
    ("what", "per_square_foot", "printed"), [("least", 7, 300_000), ("most", 8, 350_000)]
)
def test_field_pea_plants_by_area(outside_check, what, per_square_foot, printed) -> None:
    outside_check(
        calculation=f"field pea, {per_square_foot} plants a square foot, plants an acre",
        source="NDSU Extension A1166",
        trust="published",
        printed=printed,
        ours=Q(per_square_foot, "plant/ft^2").to("plant/acre").magnitude,
        unit="plants/ac",
        tolerance=5_000,
        note="printed to the nearest 50 000",
    )


@pytest.mark.parametrize(("plants", "printed"), [(7, 304_920), (10, 435_600)])
def test_canola_stand_by_area(outside_check, plants: int, printed: float) -> None:
    figure = crop_table()["canola"].best("stand")
    assert figure is not None
    end = figure.low if plants == 7 else figure.high
    assert end is not None
    outside_check(
        calculation=f"canola, {plants} plants a square foot, plants an acre",
        source="Canola Council of Canada 2015; 43 560 ft² to the acre",
        trust="published",
        printed=printed,
        ours=end.to("plant/acre").magnitude,
        unit="plants/ac",
        tolerance=1,
    )
