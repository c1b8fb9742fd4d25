"""A damaged cell: the one whose fault comes round again with every turn of the disc."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from changeover.proof.bench_events import CellEvent, EventKind, checked_events
from changeover.proof.exact import binomial_p
from changeover.proof.false_alarms import adjusted
from changeover.quantities import Refusal

MOST_DISC_CELLS = 400
MOST_PASSED = 10_000_000


@dataclass(frozen=True)
class CellCount:
    """How often one cell of the disc, numbered from 1, failed in how many passes."""

    cell: int
    events: int
    passes: int
    adjusted: float
    damaged: bool


def count_by_cell(
    events: Sequence[CellEvent],
    passed: int,
    disc_cells: int,
    kind: EventKind = EventKind.SKIP,
    level: float = 0.01,
) -> tuple[CellCount, ...]:
    """Return the count of each of the disc's cells, from 1, and which cells stand out.

    Events are numbered by cells passed, so cell 1 of the disc is the first that passed. If the
    fault struck at random, the count of a cell would be binomial with its share of the passes;
    the tail is adjusted by Holm over the cells. Raises Refusal when an event lies outside the
    run, or the disc has fewer than two cells.
    """
    if not 2 <= disc_cells <= MOST_DISC_CELLS or not 1 <= passed <= MOST_PASSED:
        raise Refusal(
            f"A disc of {disc_cells} cells, {passed} passed, is not possible; check both."
        )
    checked_events(events, passed)
    places = np.array([e.cell - 1 for e in events if e.kind is kind], dtype=np.int64)
    counts = np.bincount(places % disc_cells, minlength=disc_cells)
    passes = np.bincount(np.arange(passed) % disc_cells, minlength=disc_cells)
    total = int(counts.sum())
    raw = [binomial_p(int(c), total, int(n) / passed) for c, n in zip(counts, passes, strict=True)]
    return tuple(
        CellCount(i + 1, int(counts[i]), int(passes[i]), float(q), bool(q <= level))
        for i, q in enumerate(adjusted(raw))
    )
