"""Words for rows, places and from → to."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.planter.places import PLANTER, Place, Scope
from changeover.switch.wording import listed, places_text, rows_text, runs


@pytest.mark.parametrize(
    ("rows", "text"),
    [
        ([14], "row 14"),
        ([11, 14], "rows 11 and 14"),
        ([1, 2, 3, 4], "rows 1–4"),
        ([1, 2, 4, 5, 6, 9], "rows 1, 2, 4–6 and 9"),
        ([1, 3, 5, 7], "every other row 1–7"),
        ([1, 3, 5], "rows 1, 3 and 5"),
    ],
)
def test_rows_are_named_in_runs(rows: list[int], text: str) -> None:
    assert rows_text(rows) == text


@given(st.sets(st.integers(1, 64), min_size=1))
def test_runs_hold_every_row_once(rows: set[int]) -> None:
    held = [row for first, last in runs(rows) for row in range(first, last + 1)]
    assert held == sorted(rows)


def test_groups_say_their_word_once() -> None:
    fans = [Place(Scope.FAN, "fan 1"), Place(Scope.FAN, "fan 2")]
    assert places_text(fans) == "fan 1 and 2"
    assert places_text([PLANTER]) == "planter"
    assert places_text([Place(Scope.TANK, "left"), Place(Scope.TANK, "right")]) == "left and right"


def test_words_are_listed_as_a_person_says_them() -> None:
    assert (listed([]), listed(["a"]), listed(["a", "b", "c"])) == ("", "a", "a, b and c")
