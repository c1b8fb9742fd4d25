"""Vacuum against published optima, the fan law, the standard atmosphere and the force balance."""

import tomllib
from typing import Any

import pytest

from changeover.bundled import bundled
from changeover.quantities import Q
from changeover.seed import vacuum

KARAYEL = "Karayel, Barut & Özmerzi 2004, Biosystems Engineering 87(4):437-444"
ATMOSPHERE = "ISO 2533:1975, standard atmosphere"

# Thousand-seed mass (g) and hole (mm) that go with the optima; from memory, of the usual order.
SEEDS = {
    "corn": (330.0, 5.0),
    "soybean": (170.0, 4.5),
    "cotton": (90.0, 3.5),
    "sugar_beet": (15.0, 2.0),
    "onion": (4.3, 1.2),
}


def optima() -> list[dict[str, Any]]:
    with bundled("resources", "vacuum.toml").open("rb") as file:
        return tomllib.load(file)["optimum"]


@pytest.mark.parametrize(
    ("crop", "printed"),
    [
        ("corn", 4.0),
        ("cotton", 3.0),
        ("soybean", 3.0),
        ("sugar_beet", 2.0),
        ("onion", 1.5),
        ("melon", 2.5),
    ],
)
def test_optima_of_the_table(outside_check, crop, printed) -> None:
    mine = next(one for one in optima() if one["crop"] == crop and one["source"] == KARAYEL)
    outside_check(
        calculation=f"published optimum of vacuum, {crop}",
        source=KARAYEL,
        trust="published",
        printed=printed,
        ours=Q(mine["value"], mine["unit"]).to("kPa").magnitude,
        unit="kPa",
        tolerance=1e-9,
    )


def test_chickpea_in_millibars(outside_check) -> None:
    mine = next(one for one in optima() if one["crop"] == "chickpea")
    outside_check(
        calculation="published optimum of vacuum, chickpea",
        source="Bagherpour, CIGR Journal, vacuum-cylinder seeder for chickpea",
        trust="published",
        printed=60,
        ours=Q(mine["value"], mine["unit"]).to("bar").magnitude * 1000,
        unit="mbar",
        tolerance=1e-9,
    )


@pytest.mark.parametrize("crop", SEEDS)
def test_force_balance_is_far_below_the_optima(crop) -> None:
    """A lower bound must lie under every optimum in print, by a factor of 3 at least."""
    grams, hole = SEEDS[crop]
    bound = vacuum.least_holding_vacuum(
        Q(grams / 1000, "g"), Q(hole, "mm"), Q(0.3, "m/s"), Q(0.2, "m")
    )
    printed = min(one["value"] for one in optima() if one["crop"] == crop)
    assert bound.to("kPa").magnitude < printed / 3


@pytest.mark.parametrize("crop", SEEDS)
def test_holding_ratio_lies_in_the_range_of_the_optima(outside_check, crop) -> None:
    grams, hole = SEEDS[crop]
    printed = min(one["value"] for one in optima() if one["crop"] == crop)
    ours = vacuum.holding_ratio(Q(printed, "kPa"), Q(grams / 1000, "g"), Q(hole, "mm"))
    outside_check(
        calculation=f"holding force over weight at the optimum, {crop}",
        source="ten published optima (range 13 to 106)",
        trust="derived",
        printed=(13 + 106) / 2,
        ours=ours.to("count").magnitude,
        unit="",
        tolerance=(106 - 13) / 2,
        note="seed mass and hole from memory",
    )


def test_band_of_soybean_holds_both_figures(outside_check) -> None:
    levels = [Q(one["value"], one["unit"]) for one in optima() if one["crop"] == "soybean"]
    band = vacuum.start_from_optima(levels)
    assert band.low <= Q(3, "kPa") <= Q(6, "kPa") <= band.high
    outside_check(
        calculation="start value of vacuum, soybean (3 and 6 kPa)",
        source="Karayel et al. 2004 against Lauriano et al., Bioscience Journal",
        trust="published",
        printed=(3 * 6) ** 0.5,
        ours=band.start.to("kPa").magnitude,
        unit="kPa",
        tolerance=1e-9,
        note="geometric mean of two figures that differ by two",
    )


def test_fan_speed_goes_with_the_root_of_pressure(outside_check) -> None:
    ours = vacuum.fan_speed_for(Q(16, "inH2O"), Q(20, "inH2O"), Q(4_000, "rpm"))
    outside_check(
        calculation="fan speed from 16 to 20 inH2O",
        source="Process Heating, Fan laws and formulas: rpm goes with the root of pressure",
        trust="published",
        printed=(20 / 16) ** 0.5,
        ours=ours.to("rpm").magnitude / 4_000,
        unit="times",
        tolerance=0.0005,
    )


@pytest.mark.parametrize(
    ("height", "unit", "printed"),
    [(1_000, "m", 0.9075), (2_000, "m", 0.8216), (5_000, "ft", 0.8617), (10_000, "ft", 0.7385)],
)
def test_air_density_at_altitude(outside_check, height, unit, printed) -> None:
    outside_check(
        calculation=f"air density at {height} {unit} over sea level",
        source=ATMOSPHERE,
        trust="from memory",
        printed=printed,
        ours=vacuum.air_density_share(Q(height, unit)).to("count").magnitude,
        unit="",
        tolerance=0.0002,
    )


def test_air_density_worked_by_hand(outside_check) -> None:
    outside_check(
        calculation="air density at 10000 ft",
        source="0685.com, Convert the given altitude (worked example of the standard atmosphere)",
        trust="published",
        printed=0.905,
        ours=1.225 * vacuum.air_density_share(Q(10_000, "ft")).to("count").magnitude,
        unit="kg/m³",
        tolerance=0.001,
    )


@pytest.mark.parametrize(("value", "printed"), [(1, 0.249089), (16, 3.985424)])
def test_inches_of_water(outside_check, value, printed) -> None:
    outside_check(
        calculation=f"{value} inH2O in kPa",
        source="NIST SP 811, appendix B.8 (inch of water at 4 °C)",
        trust="published",
        printed=printed,
        ours=Q(value, "inH2O").to("kPa").magnitude,
        unit="kPa",
        tolerance=1e-6,
    )
