"""The crew timetable of 48 rows, 12 kinds of task and four persons: what is proven in 5 s."""

import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from changeover.switch.timetable import Limits, Timetable, Work, timetable
from tests.bench.switch_for_four import by_turns, corn_to_beans, short_of_hands, with_lunch

SECONDS = 5.0
GAP = 0.03


@dataclass(frozen=True)
class Proven:
    """What was proven of one timetable, and in how many seconds."""

    name: str
    plan: Timetable
    seconds: float

    def line(self) -> str:
        """Return one line: the length, the proven bound and the gap aimed at."""
        mark = "ok  " if self.plan.gap <= GAP and self.seconds <= SECONDS + 0.5 else "OVER"
        return (
            f"{mark} {self.name}: {self.plan.length} min, none under {self.plan.bound}, gap "
            f"{self.plan.gap:.1%} in {self.seconds:.1f} s, aim at most {GAP:.0%} in {SECONDS:g} s; "
            f"walk {self.plan.walk} rows"
        )


def measure() -> Iterator[Proven]:
    """Yield the proof of each switch."""
    for name, work in (
        ("corn to beans, from the standard minutes", corn_to_beans),
        ("the same, with an hour's lunch for all", with_lunch),
        ("three of four skilled, one seed vacuum before every meter", short_of_hands),
        ("the same, with lunch by turns", by_turns),
    ):
        yield _proven(name, work)


def _proven(name: str, work: Callable[[], Work]) -> Proven:
    begun = time.perf_counter()
    plan = timetable(work(), Limits(seconds=SECONDS, workers=2))
    return Proven(name, plan, time.perf_counter() - begun)
