"""Bench runs recorded event by event, or as times between seeds, brought down to counts."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from changeover.proof.bench import BenchCount
from changeover.proof.divisions import steps_apart
from changeover.quantities import Quantity, Refusal

LONGEST_GAP = 1000  # cells without a seed: more is a run that stood still (from memory)


class EventKind(StrEnum):
    """What went wrong at a cell."""

    SKIP = "skip"
    DOUBLE = "double"


@dataclass(frozen=True)
class CellEvent:
    """A skip or a double at the cell that passed as number ``cell``, from 1."""

    cell: int
    kind: EventKind


@dataclass(frozen=True)
class TimedRun:
    """What the times between seeds tell: cells passed and the events among them."""

    cells: int
    events: tuple[CellEvent, ...]


def checked_events(events: Sequence[CellEvent], passed: int) -> None:
    """Raise Refusal when an event lies outside the cells passed, or two share a cell."""
    seen: set[int] = set()
    for event in events:
        if not 1 <= event.cell <= passed:
            raise Refusal(f"Cell {event.cell} lies outside the {passed} cells passed.")
        if event.cell in seen:
            raise Refusal(f"Cell {event.cell} has two events; a cell either skips or doubles.")
        seen.add(event.cell)


def count_events(row: int, events: Sequence[CellEvent], passed: int, meter: str = "") -> BenchCount:
    """Return the counts of one row from its list of events.

    Raises Refusal when an event lies outside the cells passed, or two share a cell.
    """
    checked_events(events, passed)
    skips = sum(event.kind is EventKind.SKIP for event in events)
    return BenchCount(row, passed, skips, len(events) - skips, meter)


def events_from_times(between: Quantity, interval: Quantity | None = None) -> TimedRun:
    """Return cells passed and events from the times between successive seeds, an array.

    ``interval`` is the time between cells; without it the median of the times is taken, which
    holds as long as most seeds come singly. A time of at most half the interval is a second
    seed of the same cell, one above 1.5 intervals spans skips, as ISO 7256-1 divides spacings.
    Cell 1 is that of the first seed. Raises Refusal without times, or when one is not above 0.
    """
    times = np.atleast_1d(np.asarray(between.to("s").magnitude, dtype=np.float64))
    if times.size == 0 or not np.all(np.isfinite(times)) or np.any(times < 0):
        raise Refusal("Times between seeds must be one or more figures of 0 or above.")
    beat = float(np.median(times)) if interval is None else float(interval.to("s").magnitude)
    if not beat > 0:
        raise Refusal("The time between cells must be above zero.")
    if times.max() > LONGEST_GAP * beat:
        at = int(np.argmax(times))
        raise Refusal(
            f"Time {at + 1} ({times[at]:g} s) is a stop of the run; enter its parts apart."
        )
    places = 1 + np.concatenate(([0], np.cumsum(steps_apart(times / beat))))
    held = np.bincount(places)[1:]
    events = tuple(
        CellEvent(i + 1, EventKind.SKIP if n == 0 else EventKind.DOUBLE)
        for i, n in enumerate(held)
        if n != 1
    )
    return TimedRun(int(held.size), events)
