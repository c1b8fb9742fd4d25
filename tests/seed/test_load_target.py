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
from changeover.seed.manual import ManualValue
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


def test_a_circuit_of_wheel_track_rows_alone_takes_the_firmer_ground_in() -> None:
    no_till = job(tillage=Tillage.NO_TILL)
    tracks = frozenset(range(1, 13))
    plain, track = proposed(job=no_till), proposed(job=no_till, wheel_track_rows=tracks)
    assert track.value > plain.value


def test_only_a_pressure_or_force_of_the_circuits_is_a_load_setting() -> None:
    assert is_load_setting(OWN)
    assert not any(is_load_setting(one) for one in STANDARD)
    assert load_target(NO_RULES, Soil()) is None
