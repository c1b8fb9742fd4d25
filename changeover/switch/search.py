"""Ask CP-SAT within a time limit, reporting progress and stopping soon after a wish to stop."""

import math
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from ortools.sat.python import cp_model

POLL_SECONDS = 0.1
"""How often a wish to stop is looked for; common practice, no source."""


Meanwhile = Callable[[float], bool]
"""Does something else for some seconds while the solver works; true when that is enough."""


@dataclass(frozen=True)
class Progress:
    """How far a search has come: share of its time, best value so far and proven bound."""

    fraction: float
    best: float | None = None
    bound: float | None = None


@dataclass(frozen=True)
class Limits:
    """How long and how a search may run.

    ``seconds`` is the time limit; ``workers`` the threads of the solver and ``seed`` its random
    seed, so that a search that ends by itself can be repeated. ``stop`` is asked every 100 ms
    and ends the search when it returns true; ``report`` is told how far it has come. Both are
    called in the thread that started the search.
    """

    seconds: float = 5.0
    workers: int = 2
    seed: int = 1
    stop: Callable[[], bool] | None = None
    report: Callable[[Progress], None] | None = None

    def wants_stop(self) -> bool:
        return self.stop is not None and self.stop()


@dataclass(frozen=True)
class Answer:
    """The solver with its best solution, if it ``found`` one, and what that proves."""

    solver: "cp_model.CpSolver"
    found: bool
    proven: bool
    impossible: bool
    stopped: bool
    bound: float

    @property
    def whole_bound(self) -> int:
        """The least whole number not under the bound, allowing for rounding."""
        return math.ceil(self.bound - 1e-6)


class Clock:
    """Shares one time limit among the steps of a search and reports progress over all of them."""

    def __init__(self, limits: Limits) -> None:
        self.limits = limits
        self._began = time.monotonic()
        self.stopped = False

    @property
    def spent(self) -> float:
        return time.monotonic() - self._began

    @property
    def left(self) -> float:
        return max(0.0, self.limits.seconds - self.spent)

    def tick(self, best: float | None = None, bound: float | None = None) -> bool:
        """Report progress; return whether the search is to stop."""
        if self.limits.report is not None:
            fraction = min(1.0, self.spent / max(self.limits.seconds, 1e-9))
            self.limits.report(Progress(fraction, best, bound))
        self.stopped = self.stopped or self.limits.wants_stop()
        return self.stopped


class Asking:
    """A solver at work on a model in a thread of its own, for at most ``seconds``.

    Unless it is ``heard``, it tells nothing until its end and leaves Python to other threads.
    """

    def __init__(
        self,
        model: "cp_model.CpModel",
        clock: Clock,
        seconds: float,
        workers: int = 0,
        *,
        relax: bool = True,
        heard: bool = True,
    ) -> None:
        from ortools.sat.python import cp_model

        self.best: float | None = None
        self.bound: float | None = None
        self._clock = clock
        self._model = model
        self._solver = cp_model.CpSolver()
        self._heard = heard
        self._solver.parameters.max_time_in_seconds = 0.01 if clock.stopped else max(0.01, seconds)
        self._solver.parameters.num_workers = workers or clock.limits.workers
        self._solver.parameters.random_seed = clock.limits.seed
        if not relax:
            self._solver.parameters.linearization_level = 0
        self._status: cp_model.CpSolverStatus | None = None
        self._failed: BaseException | None = None
        self._thread = threading.Thread(target=self._work, name="solver", daemon=True)
        self._thread.start()

    def _work(self) -> None:
        from ortools.sat.python import cp_model

        asking = self

        class Hear(cp_model.CpSolverSolutionCallback):
            def on_solution_callback(self) -> None:
                asking.best, asking.bound = self.objective_value, self.best_objective_bound

        try:
            self._status = self._solver.solve(self._model, Hear() if self._heard else None)
        except BaseException as error:
            self._failed = error

    def wait(self, meanwhile: Meanwhile | None = None) -> Answer:
        """Wait for the solver, reporting and polling the wish to stop; return what it found.

        ``meanwhile`` is called for as many seconds at a time, and ends the search when true.
        """
        try:
            while self._thread.is_alive():
                enough = meanwhile is not None and meanwhile(POLL_SECONDS)
                self._thread.join(0 if meanwhile is not None and not enough else POLL_SECONDS)
                if self._clock.tick(self.best, self.bound) or enough:
                    self._solver.stop_search()
        finally:
            self.end()
        return self.answer()

    def end(self) -> None:
        """Ask the solver to stop until it has returned."""
        while self._thread.is_alive():
            self._solver.stop_search()
            self._thread.join(POLL_SECONDS)

    def answer(self) -> Answer:
        """Return what the solver found; it must have returned."""
        from ortools.sat.python import cp_model

        if self._failed is not None:
            raise self._failed
        return Answer(
            solver=self._solver,
            found=self._status in (cp_model.OPTIMAL, cp_model.FEASIBLE),
            proven=self._status == cp_model.OPTIMAL,
            impossible=self._status == cp_model.INFEASIBLE,
            stopped=self._clock.stopped,
            bound=float(self._solver.best_objective_bound),
        )


def ask(
    model: "cp_model.CpModel",
    clock: Clock,
    seconds: float,
    workers: int = 0,
    *,
    relax: bool = True,
    meanwhile: Meanwhile | None = None,
) -> Answer:
    """Solve a model for at most ``seconds``, polling the wish to stop meanwhile.

    Without ``relax`` the solver does without linear relaxations, which proves small timetables
    sooner. ``meanwhile`` is called as ``Asking.wait`` says.
    """
    asking = Asking(model, clock, seconds, workers, relax=relax, heard=meanwhile is None)
    return asking.wait(meanwhile)
