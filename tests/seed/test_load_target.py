"""Gauge-wheel load: a class by soil, a setting from the circuit's own readings, else as found."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.groups import equal_groups
from changeover.planter.load_reading import LoadReading
from changeover.planter.places import Place, Scope
from changeover.planter.settings import STANDARD, Kind, Setting, WorkPlace
from changeover.planter.setup import Cell, Setup
from changeover.quantities import Q, is_quantity
from changeover.seed.depth import Soil
from changeover.seed.fields import Moisture, Texture, Tillage
from changeover.seed.load_target import is_load_setting, load_target
from changeover.seed.manual import ManualValue, ProvedSetup
from changeover.seed.reasons import Proposed, Trust
from changeover.seed.rules import NO_RULES
from tests.seed.made_up import crop_table, first, job, planter, proposal

RULES = crop_table()["corn"].rules
OWN = Setting(
    "down", "Down", Kind.QUANTITY, Scope.DOWN_PRESSURE, WorkPlace.CAB, measure="force", own=True
)
CIRCUIT = Place(Scope.DOWN_PRESSURE, "down pressure 1")
READINGS = tuple(
    LoadReading(CIRCUIT, Q(setting, "lbf"), Q(2.0 * setting + 90, "N"))
    for setting in (0.0, 100.0, 400.0)
)


def proposed(readings: tuple[LoadReading, ...] = READINGS, **changes: object) -> Proposed:
    groups = (*planter().groups, *equal_groups(Scope.DOWN_PRESSURE, 1, 12))
    tracks = changes.pop("wheel_track_rows", frozenset())
    machine = planter(groups=groups, load_readings=readings, wheel_track_rows=tracks)
    given_ = {"planter": machine, "settings": (*STANDARD, OWN), **changes}
    return first(proposal(**given_), "down")


@pytest.mark.parametrize(
    ("soil", "name"),
    [
        (Soil(Moisture.MOIST, Texture.LOAM, Tillage.TILLED), "medium"),
        (Soil(Moisture.WET, Texture.LOAM, Tillage.TILLED), "light"),
        (Soil(Moisture.MOIST, Texture.SAND, Tillage.TILLED), "light"),
        (Soil(Moisture.DRY, Texture.LOAM, Tillage.NO_TILL), "heavy"),
    ],
)
def test_the_class_follows_the_soil(soil: Soil, name: str) -> None:
    found = load_target(RULES, soil)
    assert found is not None
    assert found.name == name


@given(st.sampled_from(Moisture), st.sampled_from(Texture), st.sampled_from(Tillage))
def test_a_wheel_track_never_takes_less(moisture, texture, tillage) -> None:
    soil = Soil(moisture, texture, tillage)
    plain, track = load_target(RULES, soil), load_target(RULES, soil, wheel_track=True)
    assert track.load >= plain.load


def test_the_setting_is_the_one_at_which_the_line_gives_the_load() -> None:
    found = proposed()
    assert is_quantity(found.value)
    assert found.value.to("lbf").magnitude == pytest.approx((690 - 90) / 2)
    assert found.reason.trust is Trust.RECORD
    assert "medium load" in found.reason.why


def scattered(*off: float) -> tuple[LoadReading, ...]:
    """Return readings on a line from 90 N, 2 N a lbf, each off by so many newtons."""
    return tuple(
        LoadReading(CIRCUIT, Q(100.0 * number, "lbf"), Q(90 + 200.0 * number + by, "N"))
        for number, by in enumerate(off)
    )


def test_the_band_is_that_of_the_class_where_the_readings_lie_on_a_line() -> None:
    found = proposed()
    low, high = (end.to("lbf").magnitude for end in (found.low, found.high))
    assert (low, high) == (pytest.approx(200, abs=0.1), pytest.approx(400, abs=0.1))
    assert (
        "band 200 to 400 lbf, the settings whose load may lie from 110 lbf to 200 lbf"
        in found.reason.how
    )


def test_readings_that_scatter_widen_the_band_beyond_the_class() -> None:
    exact, loose = proposed(scattered(0, 0, 0, 0, 0, 0)), proposed(scattered(9, -9, 6, -9, 9, -6))
    assert loose.low < exact.low < exact.value < exact.high < loose.high
    assert "by the 95 % prediction interval of a reading" in loose.reason.how


def test_two_readings_bound_only_the_class_and_say_so() -> None:
    found = proposed((READINGS[0], READINGS[2]))
    assert found.low.to("lbf").magnitude == pytest.approx(200, abs=0.1)
    assert "two readings leave its own interval untold, a third would show it" in found.reason.how


def test_a_band_that_no_reading_ends_is_held_to_the_readings() -> None:
    wild = proposed(scattered(300, -90, 250, -300, 100))
    assert (wild.low, wild.high) == (Q(0, "lbf"), Q(400, "lbf"))
    assert "scatter too widely to bound them" in wild.reason.how


def test_a_heavy_load_has_no_upper_end_but_that_of_the_readings() -> None:
    hard = job(Moisture.DRY, tillage=Tillage.NO_TILL)
    found = proposed(scattered(9, -9, 6, -9, 9, -6), job=hard)
    assert found.high == Q(500, "lbf")
    assert "held to the settings that were read at the high end" in found.reason.how


def test_a_value_of_the_manual_has_no_band() -> None:
    manual = (ManualValue("soybean", "down", Q(150, "lbf"), "page 9"),)
    assert (proposed(manual=manual).low, proposed(manual=manual).high) == (None, None)


def test_readings_of_the_rows_serve_where_the_circuit_has_none() -> None:
    rows = tuple(LoadReading(Place.of_row(3), one.setting, one.load) for one in READINGS)
    assert proposed(rows).value == proposed().value
    assert "row 3" in proposed(rows).reason.source


def test_without_readings_it_stays_as_found_and_states_the_class() -> None:
    found = Setup({Cell("down", CIRCUIT): Q(120, "lbf")})
    kept = proposed((), as_found=found)
    assert kept.value == Q(120, "lbf")
    says = {rung.trust: rung.says for rung in kept.reason.evidence}
    assert "Hanna" in says[Trust.PUBLISHED]
    assert says[Trust.PRACTICE] == "medium load for moist loam, tilled"


def test_without_readings_or_a_value_found_there_is_no_ground() -> None:
    found = proposed(())
    assert found.value is None
    assert "enter two readings" in found.reason.why


def test_a_load_beyond_what_was_measured_is_not_guessed() -> None:
    found = proposed(READINGS[:2])
    assert found.value is None
    assert "cannot be reached" in found.reason.why


def test_the_manual_wins() -> None:
    manual = (ManualValue("soybean", "down", Q(150, "lbf"), "page 9"),)
    assert proposed(manual=manual).value == Q(150, "lbf")


def test_readings_outweigh_a_proved_setup_which_the_record_tells_beside_them() -> None:
    proved = ProvedSetup("May", "soybean", "S56", values={"down": Q(150, "lbf")}, planter="Made-up")
    found = proposed(records=(proved,))
    assert found.value == proposed().value
    (record,) = (rung for rung in found.reason.evidence if rung.used)
    assert record.says == (
        "your readings on down pressure 1; 150 lbf, setup “May”; not used, the soil of the day "
        "decides"
    )


def test_a_circuit_of_wheel_track_rows_alone_takes_the_firmer_ground_in() -> None:
    no_till = job(tillage=Tillage.NO_TILL)
    tracks = frozenset(range(1, 13))
    plain, track = proposed(job=no_till), proposed(job=no_till, wheel_track_rows=tracks)
    assert track.value > plain.value


def test_only_a_pressure_or_force_of_the_circuits_is_a_load_setting() -> None:
    assert is_load_setting(OWN)
    assert not any(is_load_setting(one) for one in STANDARD)
    assert load_target(NO_RULES, Soil()) is None
