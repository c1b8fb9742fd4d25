"""A damaged cell is found by its return at every turn."""

import numpy as np
import pytest

from changeover.proof.bench_events import CellEvent, EventKind
from changeover.proof.cells import count_by_cell
from changeover.quantities import Refusal


def skips(*cells: int) -> list[CellEvent]:
    return [CellEvent(cell, EventKind.SKIP) for cell in cells]


def test_a_cell_that_fails_at_every_turn_is_named() -> None:
    found = count_by_cell(skips(*range(7, 500, 30), 11, 44, 200), 500, 30)
    assert [one.cell for one in found if one.damaged] == [7]
    assert (found[6].events, found[6].passes) == (17, 17)


def test_passes_cover_the_run() -> None:
    assert sum(one.passes for one in count_by_cell([], 500, 30)) == 500


def test_two_skips_in_one_cell_prove_nothing() -> None:
    assert not any(one.damaged for one in count_by_cell(skips(7, 37, 100), 500, 30))


def test_skips_at_random_rarely_accuse_a_cell() -> None:
    rng = np.random.default_rng(1)
    accused = 0
    for _ in range(300):
        run = skips(*(rng.choice(500, 20, replace=False) + 1))
        accused += any(one.damaged for one in count_by_cell(run, 500, 30))
    assert accused <= 9


def test_only_the_kind_asked_for_counts() -> None:
    doubles = [CellEvent(cell, EventKind.DOUBLE) for cell in range(7, 500, 30)]
    assert sum(one.events for one in count_by_cell(doubles, 500, 30)) == 0
    assert count_by_cell(doubles, 500, 30, EventKind.DOUBLE)[6].damaged


@pytest.mark.parametrize(("cells", "disc"), [(600, 30), (7, 1), (7, 10**12)])
def test_impossible_runs_are_refused(cells, disc) -> None:
    with pytest.raises(Refusal):
        count_by_cell(skips(cells), 500, disc)
