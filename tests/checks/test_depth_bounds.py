"""The depth that the look-up takes, soil by soil, against what extension services print."""

import pytest

from changeover.seed.depth import Soil, target_depth
from changeover.seed.fields import Moisture, Texture
from tests.seed.made_up import crop_table

OHIO = "Ohio State University (Thomison) 2017"
MISSOURI = "University of Missouri Extension (Luce)"
PURDUE = "Purdue University (Nielsen) 2013"
KENTUCKY = "University of Kentucky 2012"
NDSU_SUN = "NDSU Crop and Pest Report, May 2008"
NORTHARVEST = "Northarvest Bean Growers, March 2007"
GEORGIA = "University of Georgia 2021; Oklahoma State University"
NEBRASKA = "University of Nebraska 2017, from eight regions' guides"
KANSAS = "Kansas State University, sorghum production problems"
CANOLA = "Canola Council of Canada 2018, how deep is too deep"
GILES = "NDSU Extension (Giles) 2001"

DRY, MOIST, WET = Moisture.DRY, Moisture.MOIST, Moisture.WET


def inches(crop: str, moisture: Moisture = MOIST, texture: Texture = Texture.LOAM) -> float:
    target = target_depth(crop_table()[crop], Soil(moisture, texture))
    assert target is not None
    return float(target.depth.to("in").magnitude)


# crop, soil, least and most in print, source
RANGES = [
    ("corn", MOIST, Texture.LOAM, 1.5, 2.0, OHIO),
    ("corn", MOIST, Texture.LOAM, 1.5, 2.5, MISSOURI),
    ("corn", MOIST, Texture.SILT_LOAM, 1.5, 2.0, PURDUE),
    ("corn", DRY, Texture.SILT_LOAM, 2.0, 2.5, PURDUE),
    ("corn", DRY, Texture.SAND, 2.0, 3.0, MISSOURI),
    ("corn", WET, Texture.CLAY, 1.5, 2.5, MISSOURI),
    ("soybean", MOIST, Texture.LOAM, 1.0, 1.5, "Michigan State University Extension"),
    ("soybean", WET, Texture.LOAM, 0.9, 1.1, KENTUCKY),
    ("soybean", MOIST, Texture.CLAY, 1.0, 1.5, KENTUCKY),
    ("soybean", DRY, Texture.SILT_LOAM, 1.5, 2.0, KENTUCKY),
    ("soybean", MOIST, Texture.SAND, 1.9, 2.1, KENTUCKY),
    ("sunflower", MOIST, Texture.LOAM, 1.5, 2.0, NDSU_SUN),
    ("sunflower", DRY, Texture.SAND, 2.0, 3.0, NDSU_SUN),
    ("dry_bean_pinto", MOIST, Texture.LOAM, 2.0, 2.5, NORTHARVEST),
    ("dry_bean_navy", WET, Texture.CLAY, 2.0, 2.5, NORTHARVEST),
    ("cotton", MOIST, Texture.LOAM, 0.5, 1.0, GEORGIA),
    ("cotton", DRY, Texture.SAND, 0.5, 1.5, GEORGIA),
    ("field_pea", MOIST, Texture.LOAM, 1.0, 3.0, NEBRASKA),
    ("sorghum", MOIST, Texture.LOAM, 1.5, 1.5, KANSAS),
    ("canola", MOIST, Texture.LOAM, 0.5, 1.0, CANOLA),
    ("canola", DRY, Texture.SAND, 0.5, 1.0, CANOLA),
    ("sugar_beet", DRY, Texture.LOAM, 1.25, 1.25, GILES),
]


@pytest.mark.parametrize("row", RANGES, ids=lambda row: f"{row[0]} {row[1]} {row[2]}")
def test_the_depth_lies_in_the_printed_range(outside_check, row) -> None:
    crop, moisture, texture, low, high, source = row
    ours = inches(crop, moisture, texture)
    outside_check(
        calculation=f"depth of {crop} in {moisture} {texture}",
        source=source,
        trust="published",
        printed=(low + high) / 2.0,
        ours=ours,
        unit="in",
        tolerance=(high - low) / 2.0 + 1e-9,
        note=f"printed {low:g} to {high:g} in",
    )


@pytest.mark.parametrize(
    ("crop", "end", "printed", "source"),
    [
        ("corn", "low", 1.5, OHIO),
        ("corn", "high", 3.0, OHIO),
        ("soybean", "low", 1.0, KENTUCKY),
        ("soybean", "high", 2.0, KENTUCKY),
        ("sunflower", "high", 3.0, NDSU_SUN),
        ("cotton", "low", 0.5, GEORGIA),
        ("cotton", "high", 1.5, GEORGIA),
        ("field_pea", "low", 1.0, NEBRASKA),
        ("field_pea", "high", 3.0, NEBRASKA),
    ],
)
def test_the_extremes_over_every_soil_are_the_printed_bounds(
    outside_check, crop, end, printed, source
) -> None:
    every = [inches(crop, moisture, texture) for moisture in Moisture for texture in Texture]
    outside_check(
        calculation=f"depth of {crop}, {end} over every soil",
        source=source,
        trust="published",
        printed=printed,
        ours=min(every) if end == "low" else max(every),
        unit="in",
        tolerance=1e-9,
    )
