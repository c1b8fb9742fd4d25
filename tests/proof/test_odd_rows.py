"""Odd rows against the rest."""

import numpy as np
import pytest

from changeover.proof.exact import Side
from changeover.proof.odd_rows import Against, RowEvents, odd_rows
from changeover.quantities import Refusal


def rows(*events: int, trials: int = 500) -> list[RowEvents]:
    return [RowEvents(i + 1, n, trials) for i, n in enumerate(events)]


@pytest.mark.parametrize("against", Against)
def test_the_bad_row_is_found_and_only_that(against) -> None:
    found = odd_rows(rows(10, 9, 40, 11, 8, 12), against=against)
    assert [one.row for one in found if one.odd] == [3]
    assert found[2].rest == pytest.approx(50 / 2500)


def test_a_better_row_is_odd_only_when_asked() -> None:
    counts = rows(0, 25, 24, 26, 25, 25)
    assert not any(one.odd for one in odd_rows(counts))
    assert [one.row for one in odd_rows(counts, side=Side.BOTH) if one.odd] == [1]


def test_fisher_is_the_more_careful_with_two_rows() -> None:
    counts = rows(4, 14)
    fisher, binomial = (odd_rows(counts, against=one)[1].p for one in Against)
    assert fisher > binomial


def test_one_row_has_no_rest() -> None:
    assert odd_rows(rows(10)) == ()


def test_false_alarms_stay_below_the_level() -> None:
    rng = np.random.default_rng(2)
    planters = rng.binomial(500, 0.02, (400, 12))
    alarms = sum(any(one.odd for one in odd_rows(rows(*events))) for events in planters)
    assert alarms / 400 <= 0.07


@pytest.mark.parametrize(
    "counts", [[RowEvents(1, 1, 9), RowEvents(1, 1, 9)], [RowEvents(1, 0, 0), RowEvents(2, 1, 9)]]
)
def test_impossible_rows_are_refused(counts) -> None:
    with pytest.raises(Refusal):
        odd_rows(counts)
