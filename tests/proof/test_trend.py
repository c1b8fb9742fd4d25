"""The history of a meter over seasons."""

from datetime import date

import numpy as np
import pytest
from statsmodels.stats.contingency_tables import Table

from changeover.proof.trend import PastRun, trend
from changeover.quantities import Refusal


def runs(*events: int, cells: int = 500) -> list[PastRun]:
    return [PastRun(date(2021 + i, 3, 1), n, cells) for i, n in enumerate(events)]


def test_a_meter_that_wears_shows_it() -> None:
    found = trend(runs(5, 8, 14, 22))
    assert found.rising()
    assert found.per_year == pytest.approx(0.0114, abs=0.0005)


def test_a_steady_meter_has_no_trend() -> None:
    assert not trend(runs(8, 6, 9, 7)).rising()


def test_a_meter_that_was_mended_does_not_rise() -> None:
    found = trend(runs(30, 20, 10, 2))
    assert found.p < 0.001
    assert not found.rising()


def test_order_of_entry_does_not_matter() -> None:
    history = runs(5, 8, 14, 22)
    assert trend(history[::-1]) == trend(history)


@pytest.mark.parametrize(
    "history", [runs(5), runs(0, 0, 0), [PastRun(date(2024, 3, 1), 5, 99)] * 2]
)
def test_where_there_is_nothing_to_compare(history) -> None:
    assert trend(history).per_year is None


def test_no_runs_are_refused() -> None:
    with pytest.raises(Refusal, match="no bench runs"):
        trend([])


def test_agrees_with_statsmodels_on_even_spacing() -> None:
    events = np.array([5, 9, 12, 21])
    days = [date.fromordinal(738_000 + 365 * i) for i in range(4)]
    history = [PastRun(day, int(n), 500) for day, n in zip(days, events, strict=True)]
    table = np.column_stack([500 - events, events]).T
    theirs = Table(table, shift_zeros=False).test_ordinal_association(
        np.array([0, 1]), np.arange(4)
    )
    assert trend(history).p == pytest.approx(theirs.pvalue, rel=0.01)
