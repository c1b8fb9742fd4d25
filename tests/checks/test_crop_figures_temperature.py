"""Least soil temperatures of the crop table against a second table, in the other unit."""

import pytest

from changeover.quantities import Q, Units
from changeover.seed.depth import cold_warning
from tests.seed.made_up import crop_table

MANITOBA = "Manitoba Agriculture 2014, minimum germination temperatures"
NDSU = "North Dakota extension agent, Divide County, April 2010"
KANSAS = "Kansas State University (Fjell) 2004"


def least(crop: str, unit: str, index: int = 0) -> float:
    figure = crop_table()[crop].of("least_soil_temperature")[index]
    return float(figure.middle.to(unit).magnitude)


@pytest.mark.parametrize(
    ("crop", "printed"),
    [
        ("corn", 10),
        ("canola", 5),
        ("sunflower", 6),
        ("dry_bean_navy", 10),
        ("field_pea", 4),
        ("soybean", 10),
    ],
)
def test_against_a_table_in_celsius(outside_check, crop: str, printed: float) -> None:
    outside_check(
        calculation=f"least soil temperature of {crop}",
        source=MANITOBA,
        trust="published",
        printed=printed,
        ours=least(crop, "degC"),
        unit="°C",
        tolerance=1.3,
        note="the table has NDSU's °F; the two are rounded apart",
    )


@pytest.mark.parametrize(
    ("crop", "printed"),
    [
        ("corn", 50),
        ("canola", 40),
        ("sunflower", 45),
        ("dry_bean_pinto", 50),
        ("field_pea", 40),
        ("soybean", 50),
    ],
)
def test_against_a_table_in_fahrenheit(outside_check, crop: str, printed: float) -> None:
    outside_check(
        calculation=f"least soil temperature of {crop}",
        source=NDSU,
        trust="published",
        printed=printed,
        ours=least(crop, "degF"),
        unit="°F",
        tolerance=0.1,
    )


@pytest.mark.parametrize(
    ("crop", "printed", "index"),
    [("soybean", 55, 1), ("sorghum", 65, 1), ("sunflower", 50, 1), ("cotton", 65, 0)],
)
def test_a_stricter_source_is_kept_beside_it(outside_check, crop, printed, index) -> None:
    outside_check(
        calculation=f"least soil temperature of {crop}, stricter source",
        source=KANSAS,
        trust="published",
        printed=printed,
        ours=least(crop, "degF", index),
        unit="°F",
        tolerance=0.1,
    )


def test_sorghum_and_beet(outside_check) -> None:
    outside_check(
        calculation="least soil temperature of sorghum",
        source="Texas A&M AgriLife, Coastal Bend planting tips, February 2012",
        trust="published",
        printed=60,
        ours=least("sorghum", "degF"),
        unit="°F",
        tolerance=0.1,
    )
    outside_check(
        calculation="least soil temperature of sugar beet",
        source="NDSU Crop and Pest Report, May 2002",
        trust="published",
        printed=37.4,
        ours=least("sugar_beet", "degF"),
        unit="°F",
        tolerance=0.1,
    )


@pytest.mark.parametrize("crop", sorted(crop_table()))
def test_the_warning_begins_at_the_printed_figure(crop: str) -> None:
    known = crop_table()[crop].of("least_soil_temperature")
    most = max(float(figure.middle.to("degF").magnitude) for figure in known)
    assert cold_warning(crop_table()[crop], Q(most - 0.5, "degF"), Units.US)
    assert cold_warning(crop_table()[crop], Q(most + 0.5, "degF"), Units.US) is None
