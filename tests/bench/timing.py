"""Timing one thing against another in the same run, so that the machine cancels out."""

import statistics
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Ratio:
    """Seconds of ours over seconds of a reference; ``limit`` is the ratio aimed at."""

    name: str
    ours: Sequence[float]
    reference: Sequence[float]
    against: str
    limit: float

    def line(self) -> str:
        """Return one line: the ratio of medians, the limit and both medians."""
        ours, other = statistics.median(self.ours), statistics.median(self.reference)
        mark = "ok  " if ours <= self.limit * other else "OVER"
        return (
            f"{mark} {self.name}: {ours / other:.2f}x of {against_words(self.against, other)}, "
            f"aim at most {self.limit:g}x ({milliseconds(ours)})"
        )


@dataclass(frozen=True)
class Spell:
    """Seconds of one thing; ``limit`` is the median aimed at, in seconds."""

    name: str
    ours: Sequence[float]
    limit: float

    def line(self) -> str:
        """Return one line: median, 95th percentile and the limit."""
        median = statistics.median(self.ours)
        p95 = sorted(self.ours)[min(len(self.ours) - 1, int(0.95 * len(self.ours)))]
        mark = "ok  " if median <= self.limit else "OVER"
        return (
            f"{mark} {self.name}: {median / self.limit:.2f}x of the {milliseconds(self.limit)} "
            f"aimed at (median {milliseconds(median)}, p95 {milliseconds(p95)})"
        )


def against_words(name: str, seconds: float) -> str:
    return f"{name} ({milliseconds(seconds)})"


def milliseconds(seconds: float) -> str:
    return f"{seconds * 1000:.3g} ms"


def seconds_of(work: Callable[[], object], repeat: int = 9, warm: int = 1) -> list[float]:
    """Return the seconds of each of ``repeat`` runs, after ``warm`` runs that do not count."""
    for _ in range(warm):
        work()
    taken = []
    for _ in range(repeat):
        begun = time.perf_counter()
        work()
        taken.append(time.perf_counter() - begun)
    return taken
