"""A catch test shows rate and correction, agrees with print, and refuses what lacks its partner."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.desk.catch_test import CatchTest, catch_shown, catch_words
from changeover.quantities import Q, Refusal, Units

TWO_ROWS = CatchTest(Q(2, "count"), Q(30, "in"), seeds=Q(360, "count"), distance=Q(100, "ft"))


@given(st.integers(50, 5000), st.floats(20, 500))
def test_the_correction_brings_the_rate_wanted(seeds: int, feet: float) -> None:
    wanted = Q(32_000, "seed/acre")
    shown = catch_shown(
        replace(TWO_ROWS, seeds=Q(seeds, "count"), distance=Q(feet, "ft"), wanted=wanted)
    )
    assert shown.rate is not None
    assert shown.correction is not None
    assert (shown.rate * shown.correction).m_as("1/acre") == pytest.approx(32_000)


def test_turns_of_the_wheel_stand_for_a_distance() -> None:
    test = replace(TWO_ROWS, distance=None, turns=Q(20, "count"), round=Q(84, "in"))
    assert catch_shown(test).distance.m_as("ft") == pytest.approx(140)
    slipping = replace(test, slip=Q(4, "percent"))
    assert catch_shown(slipping).distance.m_as("ft") == pytest.approx(140 / 0.96)


def test_a_mass_gives_seeds_where_their_size_is_known() -> None:
    weighed = replace(TWO_ROWS, seeds=None, mass=Q(100, "g"))
    assert catch_shown(weighed).rate is None
    assert "Enter the seeds per mass" in catch_words(weighed, Units.US)[-1]
    known = replace(weighed, seeds_per_mass=Q(3600, "seed/kg"))
    counted, by_mass = catch_shown(TWO_ROWS).rate, catch_shown(known).rate
    assert counted is not None
    assert by_mass is not None
    assert by_mass.m_as("1/m^2") == pytest.approx(counted.m_as("1/m^2"))


def test_words_say_how_far_off_and_what_to_do() -> None:
    words = catch_words(replace(TWO_ROWS, wanted=Q(32_000, "seed/acre")), Units.US)
    assert words[0] == "Over 100.0 ft the planter drops 31\u202f363 seeds/ac."
    assert words[1] == "That is 2.0% below the 32\u202f000 seeds/ac wanted."
    assert "1.020 times as fast" in words[2]


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"seeds": None}, "one of them"),
        ({"mass": Q(3, "oz")}, "one of them"),
        ({"distance": None}, "the distance driven or the wheel turns"),
        ({"distance": None, "turns": Q(20, "count")}, "ground covered in one turn"),
        ({"rows": Q(0, "count")}, "not possible"),
        ({"distance": Q(0, "ft")}, "not possible"),
    ],
)
def test_a_test_that_lacks_something_is_refused(change: dict[str, object], says: str) -> None:
    with pytest.raises(Refusal, match=says):
        catch_shown(replace(TWO_ROWS, **change))  # type: ignore[arg-type]
