"""The units against NIST Special Publication 811 and pint's own default registry."""

from collections.abc import Callable

import pint
import pytest

from changeover.quantities import MEASURES, Q, ureg

NIST = "NIST SP 811 (2008), appendix B.8"
OutsideCheck = Callable[..., None]


@pytest.mark.parametrize(
    ("unit", "printed", "to", "digits"),
    [
        ("inch", 2.54, "cm", 0),
        ("foot", 0.3048, "m", 0),
        ("mile", 1.609344, "km", 0),
        ("pound", 0.45359237, "kg", 0),
        ("ounce", 28.34952, "g", 5),
        ("pound_force", 4.448222, "N", 6),
        ("psi", 6.894757, "kPa", 6),
        ("inH2O", 249.0889, "Pa", 3),
        ("bar", 100.0, "kPa", 0),
        ("gallon", 3.785412, "l", 6),
        ("mph", 1.609344, "km/h", 0),
        ("hectare", 10000.0, "m^2", 0),
    ],
)
def test_units_as_nist_prints_them(
    outside_check: OutsideCheck, unit: str, printed: float, to: str, digits: int
) -> None:
    tolerance = 0.5 * 10.0**-digits if digits else 1e-12 * printed
    outside_check(
        calculation=f"one {unit.replace('_', ' ')}",
        source=NIST,
        trust="published",
        printed=printed,
        ours=Q(1, unit).to(to).magnitude,
        unit=to,
        tolerance=tolerance,
    )


def test_acre_of_the_international_foot(outside_check: OutsideCheck) -> None:
    outside_check(
        calculation="one acre",
        source=NIST,
        trust="published",
        printed=4046.873,
        ours=Q(1, "acre").to("m^2").magnitude,
        unit="m^2",
        tolerance=0.02,
        note="print is of the US survey foot, whose acre is 4 parts in a million larger",
    )


# Counted units are nouns of the trade, which pint does not define; pint's rpm is an angle.
SHARED = ["in", "ft", "mile", "acre", "hectare", "lb", "oz", "metric_ton", "gallon", "l", "lbf"]
SHARED += ["psi", "bar", "N", "Pa", "mph", "kph", "day", "J", "W", "bushel"]


@pytest.mark.parametrize("name", SHARED)
def test_units_as_pint_defines_them(outside_check: OutsideCheck, name: str) -> None:
    theirs = pint.UnitRegistry()(name).to_base_units()
    ours = Q(1, "tonne" if name == "metric_ton" else name)
    base = {"kilogram": "kg", "meter": "m", "second": "s"}
    unit = " ".join(f"{base[n]}^{p:g}" for n, p in sorted(theirs.unit_items()))
    outside_check(
        calculation=f"one {name.replace('_', ' ')}",
        source="pint, its default registry",
        trust="published",
        printed=theirs.magnitude,
        ours=ours.to(unit).magnitude,
        unit=unit,
        tolerance=4.1e-6 * theirs.magnitude if name == "acre" else 1e-12 * theirs.magnitude,
        note="pint takes the US survey foot" if name == "acre" else "",
    )


@pytest.mark.parametrize(("fahrenheit", "celsius"), [(50.0, 10.0), (32.0, 0.0), (-40.0, -40.0)])
def test_degrees(outside_check: OutsideCheck, fahrenheit: float, celsius: float) -> None:
    outside_check(
        calculation=f"{fahrenheit:g} °F",
        source=f"{NIST}: t/°C = (t/°F - 32)/1.8",
        trust="published",
        printed=celsius,
        ours=Q(fahrenheit, "degF").to("degC").magnitude,
        unit="°C",
        tolerance=1e-9,
    )


def test_seeds_per_area_from_acre_to_hectare(outside_check: OutsideCheck) -> None:
    outside_check(
        calculation="seeds per hectare at one per acre",
        source="by definition, ten figures: 10 000 m² over 4 046.8564224 m²",
        trust="derived",
        printed=2.471054,
        ours=Q(1, "seed/acre").to("seed/hectare").magnitude,
        unit="seed/hectare",
        tolerance=5e-7,
    )


@pytest.mark.parametrize("measure", sorted(MEASURES))
def test_pint_agrees_on_how_the_two_systems_relate(measure: str) -> None:
    nouns = {"seed": "count", "rpm": "count/minute", "inH2O": "(249.089 pascal)"}
    pair = [MEASURES[measure].us, MEASURES[measure].metric]
    if "degF" in pair or ureg.Unit(pair[0]) == ureg.Unit(pair[1]):
        assert pair[0] == pair[1] or "degF" in pair
        return
    theirs = pint.UnitRegistry()
    for noun, plain in nouns.items():
        pair = [unit.replace(noun, plain) for unit in pair]
    ratio = (theirs(pair[0]) / theirs(pair[1])).to("").magnitude
    ours = Q(1, MEASURES[measure].us).to(MEASURES[measure].metric).magnitude
    assert ours == pytest.approx(ratio, rel=4.1e-6)
