"""The vacuum and the hole that the look-up takes, against published optima."""

import pytest

from changeover.planter.places import Place, Scope
from changeover.planter.settings import standard
from changeover.quantities import Q
from changeover.seed.disc import HOLE_FROM, HOLE_TO
from changeover.seed.vacuum_start import answer_vacuum
from tests.seed.made_up import SOY_DISC, case

KARAYEL = "Karayel, Barut & Özmerzi 2004, Biosystems Engineering 87(4):437-444"
FAN = Place(Scope.FAN, "fan 1")


def band(crop: str) -> tuple[float, float, float]:
    found = answer_vacuum(standard("vacuum"), FAN, [(case(crop), SOY_DISC)])
    sizes = (found.low, found.value, found.high)
    low, start, high = (float(one.to("kPa").magnitude) for one in sizes)  # type: ignore[union-attr]
    return low, start, high


@pytest.mark.parametrize(
    ("crop", "printed", "source"),
    [
        ("corn", 4.0, KARAYEL),
        ("corn", 4.5, "Yan, Gao & Zhang 2020, IOP Conf. Series 512:012093"),
        ("cotton", 3.0, KARAYEL),
        ("soybean", 3.0, KARAYEL),
        ("soybean", 6.0, "Lauriano et al., Bioscience Journal"),
        ("sugar_beet", 2.0, KARAYEL),
    ],
)
def test_every_optimum_lies_in_the_proposed_band(outside_check, crop, printed, source) -> None:
    low, start, high = band(crop)
    outside_check(
        calculation=f"vacuum of {crop}, nearest in the proposed band",
        source=source,
        trust="published",
        printed=printed,
        ours=min(max(printed, low), high),
        unit="kPa",
        tolerance=1e-9,
        note=f"band {low:.2f} to {high:.2f} kPa, start {start:.2f}",
    )


@pytest.mark.parametrize(("crop", "printed"), [("corn", 4.0), ("cotton", 3.0), ("sugar_beet", 2.0)])
def test_the_start_is_near_the_one_optimum(outside_check, crop: str, printed: float) -> None:
    outside_check(
        calculation=f"vacuum to start {crop}",
        source=KARAYEL,
        trust="published",
        printed=printed,
        ours=band(crop)[1],
        unit="kPa",
        tolerance=0.25,
    )


# seed, its width in mm, the hole at the optimum in print, and where both come from
HOLES = [
    ("maize", 7.87, 4.0, "universal vacuum disc with hole adaptors, 2017"),
    ("chickpea", 8.0, 4.0, "Bagherpour, CIGR Journal; width from memory"),
    ("cotton", 4.8, 2.5, "universal vacuum disc with hole adaptors, 2017; width from memory"),
    ("peanut", 10.5, 6.94, "Ege University, Appl. Sci. 2024, 14:7525; width from memory"),
]


@pytest.mark.parametrize("row", HOLES, ids=lambda row: row[0])
def test_holes_in_print_lie_in_the_range_that_gains_points(outside_check, row) -> None:
    seed, width, hole, source = row
    share = float((Q(hole, "mm") / Q(width, "mm")).to("count").magnitude)
    outside_check(
        calculation=f"hole over seed width, {seed}, nearest in the range that gains points",
        source=source,
        trust="from memory" if "from memory" in source else "published",
        printed=share,
        ours=min(max(share, HOLE_FROM), HOLE_TO),
        unit="",
        tolerance=1e-9,
        note=f"range {HOLE_FROM:g} to {HOLE_TO:g}",
    )
