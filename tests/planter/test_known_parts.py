"""A part code is taken when a part of that sort has it, and refused with the nearest ones."""

import pytest

from changeover.planter.known_parts import known_code, nearest_codes
from changeover.planter.parts import Part
from changeover.quantities import Refusal

PARTS = (
    Part("C30", "Corn disc", "disc"),
    Part("S60", "Soybean disc", "disc"),
    Part("S56", "Soybean disc", "disc"),
    Part("G45", "Sorghum disc", "disc"),
    Part("Soft", "Soft brush", "brush"),
)


def refused(sort: str, typed: str) -> str:
    with pytest.raises(Refusal) as refusal:
        known_code(PARTS, sort, typed, "Disc, row 3")
    return str(refusal.value)


@pytest.mark.parametrize("typed", ["S60", "s60", " S60 "])
def test_capitals_and_blanks_are_set_right(typed: str) -> None:
    assert known_code(PARTS, "disc", typed, "Disc, row 3") == "S60"


def test_an_unknown_code_is_refused_with_the_nearest_and_what_to_do() -> None:
    says = refused("disc", "S65")
    assert says.startswith("Disc, row 3: there is no disc “S65”; choose S60 or S56")
    assert "C30" not in says
    assert says.endswith("add the disc on the Shelf page first.")


def test_a_brush_is_no_disc() -> None:
    assert "“soft” is a brush and no disc; choose" in refused("disc", "soft")


def test_where_none_of_the_sort_is_entered_it_says_so() -> None:
    says = refused("wiper", "W1")
    assert says == (
        "Disc, row 3: there is no wiper “W1”; no wiper is entered yet: add it on the Shelf page "
        "first."
    )


def test_with_nothing_like_it_the_first_codes_are_named() -> None:
    assert nearest_codes(["C30", "S60", "G45", "B1"], "???") == ("B1", "C30", "G45")
    assert nearest_codes([], "S60") == ()
