"""Stands and depths of the crop table against printed tables and second sources."""

import pytest

from changeover.quantities import Q
from changeover.seed import rate
from changeover.seed.depth import Soil, target_depth
from changeover.seed.fields import Moisture, Texture
from tests.seed.made_up import crop_table

PURDUE = "Purdue University, fresh-market sweet corn trials (row spacing, spacing, plants an acre)"
CRYSTAL = "American Crystal Sugar, Ag Notes 419, table 1 (22-in rows)"


@pytest.mark.parametrize(
    ("rows", "apart", "end", "printed"), [(30, 8, "high", 26_136), (40, 12, "low", 13_068)]
)
def test_stand_of_sweet_corn_from_its_spacing(outside_check, rows, apart, end, printed) -> None:
    figure = crop_table()["sweet_corn"].best("stand")
    ours = rate.seed_rate(Q(apart, "in"), Q(rows, "in")).to("seed/acre").magnitude
    assert getattr(figure, end).to("plant/acre").magnitude == pytest.approx(ours)
    outside_check(
        calculation=f"plants an acre at {apart} in in {rows}-in rows",
        source=PURDUE,
        trust="published",
        printed=printed,
        ours=ours,
        unit="plants/ac",
        tolerance=0.5,
    )


# emergence in percent, then plants in 100 ft of row at seed spacings of 3 to 8 in
BEETS = {
    90: (360, 270, 216, 180, 155, 135),
    80: (320, 240, 192, 160, 138, 120),
    70: (280, 210, 168, 140, 120, 105),
    60: (240, 180, 144, 120, 103, 90),
    50: (200, 150, 120, 100, 86, 75),
    40: (160, 120, 96, 80, 69, 60),
}


@pytest.mark.parametrize(
    ("emergence", "apart", "printed"),
    [(share, 3 + n, plants) for share, line in BEETS.items() for n, plants in enumerate(line)],
)
def test_beets_in_a_hundred_feet_of_row(outside_check, emergence, apart, printed) -> None:
    rows = Q(22, "in")
    stand = rate.stand_from_rate(rate.seed_rate(Q(apart, "in"), rows), 1.0, emergence / 100)
    ours = rate.seeds_per_length(stand, rows).to("seed/ft").magnitude * 100
    outside_check(
        calculation=f"beets in 100 ft of row, seed {apart} in apart, {emergence} % up",
        source=CRYSTAL,
        trust="published",
        printed=printed,
        ours=ours,
        unit="plants",
        tolerance=1.0,
        note="the heads of the columns, 3 to 8 in, follow from the figures",
    )


@pytest.mark.parametrize(
    ("crop", "printed", "source"),
    [
        ("dry_bean_navy", 222_400, "a trial in North Dakota, 2017 (SCIRP 79528), black and navy"),
        ("dry_bean_pinto", 173_000, "a trial in North Dakota, 2017 (SCIRP 79528), pinto"),
    ],
)
def test_population_of_dry_bean(outside_check, crop, printed, source) -> None:
    figure = crop_table()[crop].best("seed_rate")
    assert figure is not None
    outside_check(
        calculation=f"seeds a hectare, {crop.removeprefix('dry_bean_')} bean",
        source=source,
        trust="published",
        printed=printed,
        ours=figure.middle.to("seed/hectare").magnitude,
        unit="seeds/ha",
        tolerance=100,
    )


@pytest.mark.parametrize(
    ("crop", "soil", "printed", "near", "source"),
    [
        ("sugar_beet", Soil(), 1.125, 0.125, "NDSU Sugarbeet Production Guide 2017, quoted"),
        ("sugar_beet", Soil(Moisture.DRY), 1.25, 0.01, "NDSU (Giles), 14 April 2001"),
        ("sweet_corn", Soil(), 1.0, 0.01, "Mississippi State University Extension"),
        (
            "sorghum",
            Soil(Moisture.MOIST, Texture.LOAM),
            1.5,
            0.01,
            "Kansas State University, myFields, planting sorghum too shallow",
        ),
    ],
)
def test_depth(outside_check, crop, soil, printed, near, source) -> None:
    target = target_depth(crop_table()[crop], soil)
    assert target is not None
    outside_check(
        calculation=f"depth of {crop.replace('_', ' ')}, {soil.words}",
        source=source,
        trust="published",
        printed=printed,
        ours=target.depth.to("in").magnitude,
        unit="in",
        tolerance=near,
    )
