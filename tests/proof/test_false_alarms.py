"""Laws of the control of false alarms."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from changeover.proof.false_alarms import Control, adjusted

P_VALUES = st.lists(st.floats(0, 1), min_size=1, max_size=50)


@given(P_VALUES)
def test_adjusting_never_makes_a_p_value_smaller(p) -> None:
    for control in Control:
        assert np.all(adjusted(p, control) >= np.array(p) - 1e-12)


@given(P_VALUES)
def test_holm_is_the_stricter(p) -> None:
    assert np.all(adjusted(p) >= adjusted(p, Control.BENJAMINI_HOCHBERG) - 1e-12)


@given(P_VALUES)
def test_order_is_kept(p) -> None:
    order = np.argsort(p, kind="stable")
    for control in Control:
        assert np.all(np.diff(adjusted(p, control)[order]) >= -1e-12)


def test_nothing_to_adjust() -> None:
    assert adjusted([]).size == 0


def test_no_false_alarm_among_equal_rows_in_most_planters() -> None:
    rng = np.random.default_rng(1)
    alarms = [np.any(adjusted(rng.uniform(size=24)) <= 0.05) for _ in range(2000)]
    assert np.mean(alarms) <= 0.065
