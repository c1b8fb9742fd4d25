"""Events and times between seeds brought down to counts."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from changeover.proof.bench import BenchCount
from changeover.proof.bench_events import CellEvent, EventKind, count_events, events_from_times
from changeover.quantities import Q, Refusal

SKIP, DOUBLE = EventKind.SKIP, EventKind.DOUBLE


def times_of(seeds: list[int], beat: float = 0.1) -> np.ndarray:
    """Return the times between seeds of a disc whose cells hold so many seeds each."""
    moments = [c * beat + 0.003 * k for c, n in enumerate(seeds) for k in range(n)]
    return np.diff(moments)


def test_events_are_counted() -> None:
    events = [CellEvent(3, SKIP), CellEvent(9, DOUBLE), CellEvent(12, SKIP)]
    assert count_events(4, events, 50, "M1") == BenchCount(4, 50, 2, 1, "M1")


@pytest.mark.parametrize(
    "events",
    [[CellEvent(51, SKIP)], [CellEvent(0, SKIP)], [CellEvent(3, SKIP), CellEvent(3, DOUBLE)]],
)
def test_events_outside_the_run_are_refused(events) -> None:
    with pytest.raises(Refusal, match="Cell"):
        count_events(1, events, 50)


@given(st.lists(st.sampled_from([1, 1, 1, 1, 1, 0, 2, 3]), min_size=5, max_size=80))
def test_times_give_back_the_cells_they_came_from(seeds) -> None:
    seeds = [1, *seeds, 1]
    run = events_from_times(Q(times_of(seeds), "s"), Q(0.1, "s"))
    assert run.cells == len(seeds)
    assert [e.cell for e in run.events] == [i + 1 for i, n in enumerate(seeds) if n != 1]
    assert [e.kind for e in run.events] == [SKIP if n == 0 else DOUBLE for n in seeds if n != 1]


def test_the_beat_is_found_when_it_is_not_given() -> None:
    seeds = [1] * 20 + [0] + [1] * 20 + [2] + [1] * 20
    run = events_from_times(Q(times_of(seeds) * 1000, "ms"))
    assert run.events == (CellEvent(21, SKIP), CellEvent(42, DOUBLE))


def test_jitter_does_not_add_up_to_a_skip() -> None:
    times = np.random.default_rng(1).normal(0.1, 0.01, 3000)
    assert events_from_times(Q(times, "s")).events == ()


@pytest.mark.parametrize(
    "times", [[], [0.1, -0.1], [0.1, float("nan")], [0.0, 0.0], [0.1, 0.1, 1e9]]
)
def test_impossible_times_are_refused(times) -> None:
    with pytest.raises(Refusal):
        events_from_times(Q(np.array(times), "s"))
