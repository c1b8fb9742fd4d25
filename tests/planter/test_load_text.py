"""Load readings are read as they are written, and refused with what to write instead."""

import pytest

from changeover.planter.load_text import read_loads, show_loads
from changeover.planter.places import Place, Scope
from changeover.quantities import Q, Refusal, Units

TEXT = "springs: 100 lbf = 70 lbf, 200 lbf = 150 lbf; row 5: 80 psi = 90 lbf"


def test_places_settings_and_loads_are_read() -> None:
    found = read_loads(TEXT, ["springs"], Units.US)
    assert [one.place for one in found] == [Place(Scope.DOWN_PRESSURE, "springs")] * 2 + [
        Place.of_row(5)
    ]
    assert (found[1].setting, found[1].load) == (Q(200, "lbf"), Q(150, "lbf"))
    assert found[2].setting == Q(80, "psi")


def test_what_is_shown_reads_back() -> None:
    found = read_loads(TEXT, ["springs"], Units.US)
    assert show_loads(found, Units.US) == TEXT
    assert read_loads(show_loads(found, Units.US), ["springs"], Units.US) == found


@pytest.mark.parametrize("units", list(Units))
def test_nothing_is_no_reading(units: Units) -> None:
    assert read_loads(" ; ", (), units) == ()
    assert show_loads((), units) == ""


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("100 lbf = 70 lbf", "has no place"),
        ("row 5: 100 lbf", "has no load"),
        ("wing: 100 lbf = 70 lbf", "no row and no circuit"),
        ("row 5: 4 in = 70 lbf", "not a unit of force"),
        ("row 5: 100 lbf = 70 mph", "not a unit of force"),
    ],
)
def test_what_cannot_be_read_is_refused(text: str, words: str) -> None:
    with pytest.raises(Refusal, match=words):
        read_loads(text, ["springs"], Units.US)
