"""Quantities are read as people write them, refused in one sentence, shown so they read back."""

import math

import pint
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from changeover.quantities import (
    MEASURES,
    Q,
    Refusal,
    Units,
    as_json,
    grouped,
    how_many,
    read_quantity,
    scale_to,
    show,
    unit_of,
    unit_sign,
    ureg,
)

measures = st.sampled_from(sorted(MEASURES))
systems = st.sampled_from(Units)
figures = st.floats(-1e7, 1e7, allow_nan=False)


@pytest.mark.parametrize(
    ("text", "measure", "value", "unit"),
    [
        ("1 3/4 in", "depth", 1.75, "in"),
        ("1-3/4 in", "depth", 1.75, "in"),
        ("1¾ in", "depth", 1.75, "in"),
        ("⅝ in", "hub_spacing", 0.625, "in"),
        ("-3/4", "depth", -0.75, "in"),
        ("\u22121/2 in", "depth", -0.5, "in"),
        ('30"', "row_spacing", 30, "in"),
        ("12'", "row_length", 12, "ft"),
        ("32 000/acre", "seed_rate", 32000, "seed/acre"),
        ("32,000 seeds/ac", "seed_rate", 32000, "seed/acre"),
        ("32\u202f000 SEEDS/AC", "seed_rate", 32000, "seed/acre"),
        ("32 000 plants per acre", "seed_rate", 32000, "seed/acre"),
        ("8 seeds/m²", "seed_rate", 80000, "seed/hectare"),
        ("4 kPa", "pressure", 4, "kPa"),
        ("16 inH₂O", "pressure", 16, "inH2O"),
        ("5 MPH", "speed", 5, "mph"),
        ("8 km/h", "speed", 8, "km/h"),
        ("95 %", "share", 95, "percent"),
        ("50 °F", "temperature", 50, "degF"),
        (".5", "depth", 0.5, "in"),
        ("1.5e3 g", "mass", 1.5, "kg"),
        ("30 cells", "count", 30, "count"),
        ("45 turns/min", "disc_speed", 45, "rpm"),
    ],
)
def test_reads_what_people_write(text: str, measure: str, value: float, unit: str) -> None:
    read = read_quantity(text, measure)
    assert read.to(unit).magnitude == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "measure"),
    [
        ("", "depth"),
        ("deep", "depth"),
        ("1,75 in", "depth"),
        ("1.5.2 in", "depth"),
        ("1 5/4 in", "depth"),
        ("1/0 in", "depth"),
        ("1 200/10 in", "depth"),
        ("inf in", "depth"),
        ("nan", "depth"),
        ("1e999 in", "depth"),
        ("9" * 5000 + "/7 in", "depth"),
        ("1_000 in", "depth"),
        ("0x10 in", "depth"),
        ("5 in**9**9**9", "depth"),
        ("5 in^9^9^9", "depth"),
        ("5 " + "(" * 3000, "depth"),
        ("5 in; import os", "depth"),
        ("5 lb", "depth"),
        ("5 in^2", "depth"),
        ("5 furlongs", "distance"),
        ("0.4 bags/acre", "seed_rate"),
        ("30 in", "seed_rate"),
        ("5 rpm", "seeds_per_second"),
        ("30 %", "count"),
        ("5 seeds", "share"),
    ],
)
def test_refuses_in_one_short_sentence(text: str, measure: str) -> None:
    with pytest.raises(Refusal) as refused:
        read_quantity(text, measure, what="Depth of row 3")
    message = str(refused.value)
    assert message.startswith("Depth of row 3: ")
    assert message.endswith(".")
    assert "\n" not in message
    assert len(message) < 160


def test_a_bare_figure_takes_the_unit_on_show() -> None:
    assert read_quantity("4", "pressure", Units.METRIC) == Q(4, "kPa")
    assert read_quantity("16", "pressure", Units.US) == Q(16, "inH2O")


@given(st.text(max_size=30), measures)
@example("٣ in", "depth")
@example("5 e in", "depth")
def test_any_text_is_read_or_refused(text: str, measure: str) -> None:
    try:
        read = read_quantity(text, measure)
    except Refusal:
        return
    assert math.isfinite(read.magnitude)
    assert read.is_compatible_with(MEASURES[measure].us)


@given(figures, measures, systems, systems)
def test_what_is_shown_reads_back(value: float, measure: str, shown: Units, typed: Units) -> None:
    measured = MEASURES[measure]
    quantity = Q(value, measured.unit(shown))
    read = read_quantity(show(quantity, measure, shown), measure, shown)
    assert read.units == quantity.units or measure == "count"
    assert read.magnitude == pytest.approx(value, abs=0.5000001 * 10 ** -measured.digits(shown))
    again = read_quantity(show(read, measure, shown), measure, typed)
    if unit_sign(measured.unit(shown)):
        assert again.units == read.units


@given(figures, measures)
def test_the_other_system_and_back_is_the_same(value: float, measure: str) -> None:
    us, metric = MEASURES[measure].us, MEASURES[measure].metric
    back = Q(value, us).to(metric).to(us)
    assert back.magnitude == pytest.approx(value, rel=1e-12, abs=1e-9)


@given(figures, measures, systems)
def test_json_carries_the_whole_figure(value: float, measure: str, units: Units) -> None:
    written = as_json(Q(value, MEASURES[measure].us), measure, units)
    assert set(written) == {"value", "unit"}
    read = Q(written["value"], str(written["unit"]))
    assert read.to(MEASURES[measure].us).magnitude == pytest.approx(value, rel=1e-12, abs=1e-9)


@pytest.mark.parametrize("measure", sorted(MEASURES))
def test_both_systems_measure_the_same_kind(measure: str) -> None:
    shown = MEASURES[measure]
    assert ureg.Unit(shown.us).is_compatible_with(shown.metric)
    assert min(shown.us_digits, shown.metric_digits) >= 0


def test_thousands_are_parted_by_a_narrow_space_and_nought_has_no_sign() -> None:
    assert grouped(140000, 0) == "140\u202f000"
    assert grouped(-0.04, 1) == "0.0"
    assert grouped(-0.05001, 1) == "-0.1"
    assert show(Q(2.5, "cm"), "depth", Units.US, sign=False) == "0.98"


@pytest.mark.parametrize("units", Units)
@pytest.mark.parametrize("measure", MEASURES)
def test_the_example_in_a_refusal_is_one_that_is_taken(measure: str, units: Units) -> None:
    with pytest.raises(Refusal) as refused:
        read_quantity("much", measure, units)
    example = str(refused.value).partition("for example ")[2].removesuffix(".")
    read = read_quantity(example, measure, units)
    assert unit_sign(MEASURES[measure].unit(units)) in example
    assert read.magnitude > 0


@pytest.mark.parametrize(
    ("measure", "units", "example"),
    [
        ("seed_rate", Units.US, "32000 seeds/ac"),
        ("row_spacing", Units.METRIC, "75 cm"),
        ("speed", Units.US, "5 mph"),
        ("pressure", Units.US, "15 inH₂O"),
        ("mass", Units.METRIC, "25 kg"),
    ],
)
def test_the_example_is_one_of_the_farm(measure: str, units: Units, example: str) -> None:
    with pytest.raises(Refusal, match=f"for example {example}\\."):
        read_quantity("5 furlongs of corn", measure, units)


def test_one_is_one_and_any_other_number_is_many() -> None:
    said = [how_many(count, "value differs", "values differ") for count in (0, 1, 2)]
    assert said == ["0 values differ", "1 value differs", "2 values differ"]
    assert (how_many(1, "row"), how_many(12, "row")) == ("1 row", "12 rows")


@given(st.floats(-1e6, 1e6), st.sampled_from([("inH2O", "kPa"), ("mph", "m/s"), ("in", "mm")]))
def test_a_scale_turns_a_unit_as_the_registry_does(figure: float, units: tuple[str, str]) -> None:
    given, wanted = units
    scale = scale_to(unit_of(given), wanted)
    assert scale is not None
    assert figure * scale == Q(figure, given).to(wanted).magnitude


def test_degrees_have_no_scale_and_other_kinds_are_refused() -> None:
    assert scale_to(unit_of("degF"), "degC") is None
    with pytest.raises(pint.DimensionalityError):
        scale_to(unit_of("inch"), "kg")
