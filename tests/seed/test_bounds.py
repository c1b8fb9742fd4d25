"""Bounds of inputs: whatever is refused is refused in one sentence that says what to enter."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from changeover.quantities import Q, Refusal
from changeover.seed import bounds


@given(st.floats(bounds.SPEED.low, bounds.SPEED.high))
def test_a_figure_within_bounds_is_taken(value) -> None:
    assert bounds.SPEED.of(Q(value, "m/s")) == value


@given(st.floats(allow_nan=True, allow_infinity=True))
def test_any_other_figure_is_refused_in_one_sentence(value) -> None:
    assume(not bounds.SPEED.low <= value <= bounds.SPEED.high)
    with pytest.raises(Refusal, match=r"^Ground speed: .* is not possible; enter .*\.$"):
        bounds.SPEED.of(Q(value, "m/s"))


def test_the_limits_are_told_in_the_unit_of_the_input() -> None:
    with pytest.raises(Refusal, match=r"0 mph is not possible; enter 0\.112 to 33\.6 mph"):
        bounds.SPEED.of(Q(0.0, "mph"))


def test_the_entry_that_is_wrong_is_named() -> None:
    with pytest.raises(Refusal, match=r"\(entry 3\)"):
        bounds.GERMINATION.of(np.array([0.9, 1.0, 1.2]))


def test_a_bare_number_is_no_length() -> None:
    with pytest.raises(Refusal, match="wrong kind of unit"):
        bounds.ROW_SPACING.of(30.0)


def test_an_empty_array_is_nothing_to_refuse() -> None:
    assert bounds.RATE.of(Q(np.array([]), "seed/acre")).size == 0
