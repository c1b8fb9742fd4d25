"""Mean diameter, sphericity and porosity of seed against the figures that journals print."""

import pytest

from changeover.quantities import Q
from changeover.seed.seed_size import (
    geometric_mean_diameter,
    porosity,
    seed_size,
    shape_of,
    sieve_size,
    sphericity,
)
from tests.seed.made_up import crop_table, lot

KARABABA = "Karababa 2006, J. Food Eng. 72:100-107"
SWEET = "Karababa & Coşkuner 2007, Int. J. Food Properties 10:549-560"
KIBAR = "Kibar 2008, Int. Agrophysics 22:239-244"
ISIK = "Isik & Izli 2007, Int. J. Agric. Research 2(8):677-686"
DURSUN = "Dursun et al. 2007, J. Stored Products Research 43:149-155"
GANJLOO = "Ganjloo et al. 2018, Int. Food Research J. 25(3):1246-1252"
DARFOUR = "Darfour et al. 2022, Int. J. Food Properties (doi 10.1080/10942912.2022.2077756)"
RAZAVI = "Razavi et al. 2009, J. Agric. Sci. Technol. 11(3):309-322"
TIAN = "Tian, Buriak & Eckhoff 2001, Cereal Chem. 78:578-582"
SORGHUM = "journal abstract on sorghum seed (author not noted)"
MEANS = "a mean of single seeds is printed, ours is of the mean seed"

# seed, three sides in mm, printed mean diameter and sphericity, source, tolerances
SHAPES = [
    ("popcorn", (8.18, 5.71, 3.65), 5.54, 0.677, KARABABA, 0.01, 0.002),
    ("soybean", (7.24, 6.79, 5.78), 6.57, 0.91, KIBAR, 0.01, 0.005),
    ("soybean, wet", (8.19, 7.12, 6.23), 7.14, 0.87, KIBAR, 0.01, 0.005),
    ("sorghum", (4.45, 3.86, 2.49), 3.50, 0.79, SORGHUM, 0.01, 0.005),
    ("sunflower", (7.79, 7.12, 4.18), 6.15, 0.789, ISIK, 0.01, 0.002),
    ("sugar beet", (4.61, 3.82, 2.20), 3.38, 0.734, DURSUN, 0.01, 0.002),
    ("sugar beet, wet", (5.30, 4.36, 2.38), 3.80, 0.717, DURSUN, 0.01, 0.002),
    ("sweet corn", (9.87, 7.41, 3.25), 6.18, 0.626, SWEET, 0.02, 0.004),
    ("sweet corn, wet", (11.09, 9.25, 4.37), 7.62, 0.688, SWEET, 0.04, 0.004),
    ("green pea, dry", (7.28, 5.80, 5.15), 5.90, 0.81, GANJLOO, 0.15, 0.02),
    ("green pea, fresh", (10.48, 8.93, 8.61), 9.10, 0.86, GANJLOO, 0.25, 0.03),
    ("canola", (1.925, 1.475, 1.475), 1.625, 0.82, RAZAVI, 0.02, 0.025),
]


@pytest.mark.parametrize("row", SHAPES, ids=lambda row: row[0])
def test_mean_diameter_and_sphericity(outside_check, row) -> None:
    seed, sides, diameter, roundness, source, near, nearly = row
    length, width, thickness = (Q(side, "mm") for side in sides)
    note = MEANS if near > 0.01 else ""
    outside_check(
        calculation=f"mean diameter of {seed}",
        source=source,
        trust="published",
        printed=diameter,
        ours=geometric_mean_diameter(length, width, thickness).to("mm").magnitude,
        unit="mm",
        tolerance=near,
        note=note,
    )
    outside_check(
        calculation=f"sphericity of {seed}",
        source=source,
        trust="published",
        printed=roundness,
        ours=sphericity(length, width, thickness).magnitude,
        unit="",
        tolerance=nearly,
        note=note,
    )


# seed, bulk and true density in kg/m³, printed porosity in percent, source, tolerance
HEAPS = [
    ("sugar beet", 447.0, 962.0, 53.6, DURSUN, 0.1),
    ("sugar beet, wet", 418.0, 851.0, 50.9, DURSUN, 0.1),
    ("sunflower", 415.40, 885.0, 53.06, ISIK, 0.01),
    ("sunflower, wet", 406.56, 902.0, 54.93, ISIK, 0.01),
    ("soybean", 766.12, 983.33, 22.58, KIBAR, 0.6),
    ("soybean, wet", 719.00, 905.67, 20.61, KIBAR, 0.01),
    ("popcorn, dry", 771.0, 1304.0, 40.87, KARABABA, 0.01),
    ("popcorn, wet", 703.0, 1224.0, 42.56, KARABABA, 0.01),
    ("maize, least", 746.0, 1250.0, 40.32, DARFOUR, 0.01),
    ("maize, most", 709.5, 1250.0, 43.24, DARFOUR, 0.01),
    ("green pea, fresh", 630.76, 1088.0, 42.02, GANJLOO, 0.02),
    ("green pea, dry", 670.70, 1132.0, 40.75, GANJLOO, 0.01),
]


@pytest.mark.parametrize("row", HEAPS, ids=lambda row: row[0])
def test_porosity(outside_check, row) -> None:
    seed, bulk, true, printed, source, near = row
    outside_check(
        calculation=f"porosity of {seed}",
        source=source,
        trust="published",
        printed=printed,
        ours=porosity(Q(bulk, "kg/m^3"), Q(true, "kg/m^3")).to("percent").magnitude,
        unit="%",
        tolerance=near,
        note=MEANS if near > 0.05 else "",
    )


@pytest.mark.parametrize(
    ("sixty_fourths", "millimetres"),
    [(12, 4.76), (13, 5.16), (14, 5.56), (15, 5.95), (16, 6.35), (17, 6.75)],
)
def test_sieve_sizes(outside_check, sixty_fourths: float, millimetres: float) -> None:
    outside_check(
        calculation=f"sieve of {sixty_fourths}/64 in",
        source=TIAN,
        trust="published",
        printed=millimetres,
        ours=sieve_size(sixty_fourths).to("mm").magnitude,
        unit="mm",
        tolerance=0.005,
    )


@pytest.mark.parametrize(
    ("crop", "diameter"),
    [("popcorn", 5.54), ("soybean", 6.57), ("sunflower", 6.15), ("sorghum", 3.50)],
)
def test_the_crop_table_gives_the_printed_diameter(outside_check, crop: str, diameter) -> None:
    size = seed_size(lot(crop), crop_table()[crop])
    assert size is not None
    outside_check(
        calculation=f"mean diameter from the crop table, {crop}",
        source={"popcorn": KARABABA, "soybean": KIBAR, "sunflower": ISIK}.get(crop, SORGHUM),
        trust="published",
        printed=diameter,
        ours=size.diameter.to("mm").magnitude,
        unit="mm",
        tolerance=0.01,
    )
    assert size.shape is shape_of(size.diameter.to("mm").magnitude / _length(crop))


def _length(crop: str) -> float:
    figure = crop_table()[crop].best("length")
    assert figure is not None
    return float(figure.middle.to("mm").magnitude)
