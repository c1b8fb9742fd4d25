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


def ask(model: "cp_model.CpModel", clock: Clock, seconds: float, workers: int = 0) -> Answer:
    """Solve a model for at most ``seconds``, polling the wish to stop meanwhile."""
    from ortools.sat.python import cp_model

    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = 0.01 if clock.stopped else max(0.01, seconds)
    solver.parameters.num_workers = workers or clock.limits.workers
    solver.parameters.random_seed = clock.limits.seed
    watch = _Watch()
    status = _run(solver, model, watch, clock)
    return Answer(
        solver=solver,
        found=status in (cp_model.OPTIMAL, cp_model.FEASIBLE),
        proven=status == cp_model.OPTIMAL,
        impossible=status == cp_model.INFEASIBLE,
        stopped=clock.stopped,
        bound=float(solver.best_objective_bound),
    )


class _Watch:
    """The best value and bound that the solver has told so far."""

    def __init__(self) -> None:
        self.best: float | None = None
        self.bound: float | None = None


def _run(
    solver: "cp_model.CpSolver", model: "cp_model.CpModel", watch: _Watch, clock: Clock
) -> object:
    """Run the solver in a thread of its own, and ask again to stop until it has returned."""
    from ortools.sat.python import cp_model

    class Hear(cp_model.CpSolverSolutionCallback):
        def on_solution_callback(self) -> None:
            watch.best, watch.bound = self.objective_value, self.best_objective_bound

    told: list[object] = []
    failed: list[BaseException] = []

    def work() -> None:
        try:
            told.append(solver.solve(model, Hear()))
        except BaseException as error:
            failed.append(error)

    thread = threading.Thread(target=work, name="solver", daemon=True)
    thread.start()
    try:
        while thread.is_alive():
            thread.join(POLL_SECONDS)
            if clock.tick(watch.best, watch.bound):
                solver.stop_search()
    finally:
        while thread.is_alive():
            solver.stop_search()
            thread.join(POLL_SECONDS)
    if failed:
        raise failed[0]
    return told[0]
