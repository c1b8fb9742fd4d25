"""How long the window is held up while a timetable or a season is looked for behind it."""

import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from PySide6.QtCore import QTimer

from changeover.desk.who_does_what import CrewPlan, Question, question_of, solve
from changeover.switch.search import Limits
from changeover.window.background import Job, Report, Stop
from tests.bench.bench_window import AT_ONCE, rest, window_on_48_rows
from tests.bench.timing import milliseconds

EVERY_MS = 5
SECONDS = 5.0
SEVEN = 7 * 60


@dataclass
class Gaps:
    """Seconds between the turns of a timer of 5 ms in the event loop of the window."""

    name: str
    seconds: list[float] = field(default_factory=list)

    def line(self) -> str:
        """Return one line: the longest gap, the 99th percentile and the longest aimed at."""
        most, high = max(self.seconds), sorted(self.seconds)[int(0.99 * len(self.seconds))]
        mark = "ok  " if most <= AT_ONCE else "OVER"
        return (
            f"{mark} {self.name}: at most {milliseconds(most)}, 99 % under {milliseconds(high)}, "
            f"aim at most {milliseconds(AT_ONCE)} ({len(self.seconds)} turns of {EVERY_MS} ms)"
        )


def gaps(name: str, begin: Callable[[], object], busy: Callable[[], bool]) -> Gaps:
    """Return the gaps in the event loop from the beginning of a search to its end."""
    found = Gaps(name)
    last = time.perf_counter()

    def turn() -> None:
        nonlocal last
        now = time.perf_counter()
        found.seconds.append(now - last)
        last = now

    timer = QTimer(interval=EVERY_MS)
    timer.timeout.connect(turn)
    timer.start()
    begin()
    while busy():
        rest(50)
    rest(200)
    timer.stop()
    return found


def measure() -> Iterator[Gaps]:
    """Yield the gaps at rest, on the Work page and on the Season page while each searches."""
    with window_on_48_rows() as window:
        who = window.open_page("work").who
        rest(1000)
        yield gaps("the window at rest", lambda: None, _for(SECONDS))
        asked = question_of(who.view, who.crew, SEVEN)
        for time_of in ("first", "second"):
            name = f"Work page, timetable of 48 rows, {time_of} time"
            yield gaps(name, lambda: who.search.start(_job(asked)), lambda: who.search.busy)
        season = window.open_page("season")
        season.search.wait()
        rest(1000)
        season.seconds = SECONDS
        for time_of in ("first", "second"):
            name = f"Season page, the demo's season, {time_of} time"
            yield gaps(name, season.solve, lambda: season.search.busy)


def _job(question: Question) -> Job:
    def solved(stop: Stop, report: Report) -> CrewPlan:
        return solve(question, Limits(SECONDS, stop=stop, report=report))

    return solved


def _for(seconds: float) -> Callable[[], bool]:
    begun = time.perf_counter()
    return lambda: time.perf_counter() - begun < seconds
