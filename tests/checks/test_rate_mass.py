"""Mass rates, seeds per mass and stands through germination against printed examples."""

import pytest

from changeover.quantities import Q
from changeover.seed import catch, rate

IOWA = "Iowa State University, Agron 212"
KENTUCKY = "University of Kentucky, wheat seeding rates"
KANSAS = "K-State on wheat seed size (quoted)"
IRELAND = "Agriland, Tillage management: what factors affect seeding rate"
BRITAIN = "Agriland UK, Getting the right seed rate in your spring cereals"
AUSTRALIA = "Plant Science Consulting (Australia), sowing rate of wheat"
ZEALAND = "PGG Wrightson Grain (New Zealand), Cereal seed sowing rates"
ARIZONA = "University of Arizona az1203, cotton"
SUGAR = "Michigan State Extension 2014, sugar beet emergence"

KENTUCKY_TABLE = [
    (10_000, 30, 131),
    (12_000, 35, 127),
    (12_000, 30, 109),
    (14_000, 35, 109),
    (14_000, 30, 93),
    (16_000, 35, 95),
    (16_000, 30, 82),
    (18_000, 35, 85),
    (18_000, 30, 73),
    (20_000, 35, 76),
    (20_000, 30, 65),
]


@pytest.mark.parametrize(("size", "per_foot", "printed"), KENTUCKY_TABLE)
def test_pounds_of_wheat_per_acre(outside_check, size, per_foot, printed) -> None:
    mass = rate.mass_rate(Q(per_foot, "seed/ft^2"), Q(size, "seed/lb"))
    outside_check(
        calculation=f"mass rate, {per_foot} seeds/ft² at {size} seeds/lb",
        source=KENTUCKY,
        trust="published",
        printed=printed,
        ours=mass.to("lb/acre").magnitude,
        unit="lb/ac",
        tolerance=0.5,
    )


def test_pounds_of_wheat_where_the_print_errs(outside_check) -> None:
    outside_check(
        calculation="mass rate, 35 seeds/ft² at 10000 seeds/lb",
        source=KENTUCKY,
        trust="published",
        printed=150,
        derived=35 * 43_560 / 10_000,
        print_error=True,
        ours=rate.mass_rate(Q(35, "seed/ft^2"), Q(10_000, "seed/lb")).to("lb/acre").magnitude,
        unit="lb/ac",
        tolerance=0.5,
        note="152.5: 35 · 43 560 / 10 000, rounded in print",
    )


@pytest.mark.parametrize(
    ("source", "seeds", "size", "printed", "tolerance"),
    [
        (IOWA, 150_000, 2_750, 54.5, 0.05),
        (KANSAS, 750_000, 12_000, 63, 0.55),
        (KANSAS, 750_000, 16_000, 47, 0.5),
        ("NDSU Extension A1133, table 7", 62_500, 1_250, 50, 0.01),
        ("NDSU Extension A1133, table 7", 200_000, 2_500, 80, 0.01),
    ],
)
def test_pounds_per_acre(outside_check, source, seeds, size, printed, tolerance) -> None:
    mass = rate.mass_rate(Q(seeds, "seed/acre"), Q(size, "seed/lb"))
    outside_check(
        calculation=f"mass rate, {seeds} seeds/ac at {size} seeds/lb",
        source=source,
        trust="published",
        printed=printed,
        ours=mass.to("lb/acre").magnitude,
        unit="lb/ac",
        tolerance=tolerance,
    )


@pytest.mark.parametrize(
    ("source", "plants", "grams", "germination", "emergence", "printed", "tolerance"),
    [
        (IRELAND, 300, 51.9, 1.0, 0.85, 183, 0.5),
        (BRITAIN, 300, 50, 1.0, 0.85, 176, 0.5),
        (AUSTRALIA, 150, 40, 0.80, 1.0, 75, 0.01),
        (ZEALAND, 100, 45, 0.95, 0.90, 53, 0.5),
        (ZEALAND, 200, 50, 0.95, 0.90, 117, 0.5),
        (ZEALAND, 250, 55, 0.95, 0.90, 161, 0.5),
        (ZEALAND, 300, 45, 0.95, 0.90, 158, 0.5),
        (ZEALAND, 300, 55, 0.95, 0.90, 193, 0.5),
    ],
)
def test_kilograms_per_hectare_for_a_stand(
    outside_check, source, plants, grams, germination, emergence, printed, tolerance
) -> None:
    seeds = rate.rate_for_stand(Q(plants, "plant/m^2"), germination, emergence)
    mass = rate.mass_rate(seeds, rate.seeds_per_mass_from_thousand(Q(grams, "g")))
    outside_check(
        calculation=f"mass rate for {plants} plants/m², {grams} g, {germination * emergence:.1%}",
        source=source,
        trust="published",
        printed=printed,
        ours=mass.to("kg/hectare").magnitude,
        unit="kg/ha",
        tolerance=tolerance,
    )


def test_stand_of_cotton_from_mass(outside_check) -> None:
    seeds = rate.rate_from_mass(Q(14, "lb/acre"), Q(4_000, "seed/lb"))
    outside_check(
        calculation="stand from 14 lb/ac at 4000 seeds/lb and 70 %",
        source=ARIZONA,
        trust="published",
        printed=39_200,
        ours=rate.stand_from_rate(seeds, 0.70).to("plant/acre").magnitude,
        unit="plants/ac",
        tolerance=1.0,
    )


def test_live_seeds_less_field_loss(outside_check) -> None:
    outside_check(
        calculation="stand from 170000 live seeds less 8 %",
        source="NDSU Extension A1961",
        trust="published",
        printed=155_000,
        ours=rate.stand_from_rate(Q(170_000, "seed/acre"), 1.0, 0.92).to("plant/acre").magnitude,
        unit="plants/ac",
        tolerance=2_000,
        note="printed as about 155 000; exact 156 400",
    )


def test_emergence_of_sugar_beet_from_spacing(outside_check) -> None:
    sown = rate.seed_rate(Q(4, "in"), Q(30, "in"))
    stand = catch.rate_from_seeds(200, Q(100, "ft"), 1, Q(30, "in"))
    outside_check(
        calculation="emergence, 200 beets in 100 ft at a seed every 4 in",
        source=SUGAR,
        trust="published",
        printed=66.7,
        ours=(stand / sown).to("percent").magnitude,
        unit="%",
        tolerance=0.05,
    )


@pytest.mark.parametrize("seeds", [40, 250])
def test_seeds_per_pound_from_a_sample(outside_check, seeds) -> None:
    size = rate.seeds_per_mass_from_sample(seeds, Q(20, "g"))
    outside_check(
        calculation=f"seeds per pound from {seeds} seeds in 20 g",
        source=KENTUCKY,
        trust="published",
        printed=seeds * 22.68,
        ours=size.to("seed/lb").magnitude,
        unit="seeds/lb",
        tolerance=0.0002 * seeds * 22.68,
    )


def test_seeds_per_pound_from_a_thousand(outside_check) -> None:
    outside_check(
        calculation="seeds per pound at 174.4 g per thousand",
        source="definition of the pound (NIST SP 811): 453 592.37 / g",
        trust="derived",
        printed=453_592.37 / 174.4,
        ours=rate.seeds_per_mass_from_thousand(Q(174.4, "g")).to("seed/lb").magnitude,
        unit="seeds/lb",
        tolerance=1e-6,
    )
