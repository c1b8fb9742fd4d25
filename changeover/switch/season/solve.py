"""The season: which planter plants which field when, least late, then with least between.

    season = Season(
        jobs=(SeasonJob("home 40", {"twelve": 400}, due=12, late_cost=500), ...),
        planters=(SeasonPlanter("twelve", switch={("home 40", "creek"): 240}, ...),),
        hours_per_day=12,
        suitable_share=0.45,
    )
    plan = season_plan(season)
    plan.best.on("twelve"), plan.gap, plan.as_entered.late_cost

The core is a general one of sequencing: changes between jobs may differ both ways and by planter,
windows are optional, and one planter without windows makes it the travelling salesman's.
"""

from changeover.quantities import Refusal
from changeover.switch.search import Answer, Asking, Clock, Limits, Progress, ask
from changeover.switch.season.bounds import late_model
from changeover.switch.season.exact import Exact, add_order_hint, exact_model, read_order
from changeover.switch.season.improve import (
    TO_BE_IN_TIME,
    TO_BE_LESS_LATE,
    TO_BE_NEAR,
    TO_STAY_IN_TIME,
    Improver,
    Stage,
)
from changeover.switch.season.model import (
    YARD,
    Fixed,
    Order,
    Season,
    SeasonJob,
    SeasonPlan,
    SeasonPlanter,
    SeasonStatus,
    Slot,
)
from changeover.switch.season.numbers import (
    CENTS,
    Cost,
    Numbers,
    Placed,
    Sequences,
    numbers_of,
    order_of,
)
from changeover.switch.season.orders import as_entered, nearest_due
from changeover.switch.season.refusals import refuse_unplannable
from changeover.switch.season.relaxation import Relaxation, asked_of, late_unit, whole
from changeover.switch.season.tour import least_between

__all__ = [
    "YARD",
    "Fixed",
    "Limits",
    "Order",
    "Progress",
    "Season",
    "SeasonJob",
    "SeasonPlan",
    "SeasonPlanter",
    "SeasonStatus",
    "Slot",
    "season_plan",
]

SECONDS = 60.0
"""The time limit where none is given."""

SMALL = 1500
"""Up to this many pairs of jobs on one planter the exact model comes first; our own, by trial."""

TURNS = 200
"""Changes between two looks at the clock, some 20 ms; our own choice, by trial."""

IN_TIME_SHARE = 0.15
"""The share of the time limit in which lateness is to be avoided; our own choice, by trial."""

LESS_LATE_SHARE = 0.5
"""The share until which lateness comes first where it was not; our own choice, by trial."""

IMPROVE_SHARE = 0.58
"""The share of the time limit after which changes at random end; our own choice, by trial."""

LATE_SHARE = 0.92
"""The share after which a bound on lateness that is still short is left; our own choice."""

AGAIN_SHARE = 0.1
"""The share of the time limit for each further try to be in time; our own choice, by trial."""

MUCH = 3
"""So many days of the dearest job late or fewer, it may be in time yet; our own choice."""

AFTER = 2
"""Days after the end of the best plan that its bound on lateness looks at; our own choice."""

TOUR_SHARE = 0.1
"""The share of the time limit for the bound on one round over all jobs; our own choice."""


def season_plan(season: Season, limits: Limits | None = None) -> SeasonPlan:
    """Return the least late plan found, and of those the one with least minutes between jobs.

    The search ends when nothing is better, at the time limit (60 s where none is given), or when
    it is stopped, with its best so far; it is never worse than the two simple orders. Fixed jobs
    stay where they are. Raises Refusal for a job that no planter can do, a window that has
    passed, and fixed jobs that cannot be kept together.
    """
    refuse_unplannable(season)
    search = _Search(numbers_of(season), Clock(limits or Limits(seconds=SECONDS)))
    search.run()
    numbers = search.numbers
    late_bound = search.late_bound / CENTS
    best = order_of(numbers, search.best)
    proven = search.cost.late == search.late_bound and search.cost.between == search.between_bound
    return SeasonPlan(
        best=best,
        late_bound=late_bound,
        between_bound=search.between_bound,
        status=SeasonStatus.OPTIMAL if proven else SeasonStatus.FEASIBLE,
        as_entered=search.told(search.entered),
        nearest_due=search.told(search.by_due),
        stopped=search.clock.stopped,
    )


class _Search:
    """The search for a plan: simple orders, changes at random, bounds and the exact model."""

    def __init__(self, numbers: Numbers, clock: Clock) -> None:
        self.numbers = numbers
        self.clock = clock
        self.entered = as_entered(numbers)
        self.by_due = nearest_due(numbers)
        first = min((self.entered, self.by_due), key=numbers.cost)
        self._improver = Improver(numbers, first, clock.limits.seed)
        self.best: list[list[Placed]] = numbers.placed(first)
        self.cost: Cost = numbers.cost(first)
        self.late_bound = 0
        self.between_bound = 0

    def told(self, sequences: Sequences) -> Order | None:
        """Return a simple order as slots, None when it breaks a fixed job."""
        if self.numbers.cost(sequences).broken:
            return None
        return order_of(self.numbers, self.numbers.placed(sequences))

    def run(self) -> None:
        """Search until nothing is better, the time is over, or it is stopped."""
        pairs = sum(sum(1 for minutes in row if minutes) ** 2 for row in self.numbers.minutes)
        if not self.numbers.jobs:
            return
        if pairs <= SMALL:
            self._improver.turns(10 * TURNS, 0.5)
        else:
            self._improve()
        self._take_improved()
        self._exactly()

    def _take_improved(self) -> None:
        if self._improver.best_cost < self.cost:
            self.cost = self._improver.best_cost
            self.best = self.numbers.placed(self._improver.best)

    def _improve(self) -> None:
        """Change the order at random, beside the solver's bound on lateness while any is left."""
        seconds = self.clock.limits.seconds
        asking = None
        if self.cost.late:
            last_day = max(row[-1].end for row in self.best if row) // self.numbers.day
            asking = Asking(late_model(self.numbers, last_day), self.clock, seconds, 1)
        try:
            if asking is not None:
                self._anneal(TO_BE_IN_TIME, seconds * IN_TIME_SHARE)
                self._be_less_late(seconds * LESS_LATE_SHARE)
            self._anneal(TO_BE_NEAR, seconds * IMPROVE_SHARE)
        finally:
            if asking is not None:
                asking.end()
        if asking is not None:
            self.late_bound = max(self.late_bound, asking.answer().whole_bound)
        self._take_improved()
        if not self.clock.stopped:
            self._prove()

    def _be_less_late(self, until: float) -> None:
        """Go on with lateness: cooled once where there is much of it, else by turns until none."""
        again = self.clock.limits.seconds * AGAIN_SHARE
        if self._improver.best_cost.late > MUCH * max(self.numbers.cents):
            self._anneal(TO_BE_LESS_LATE, until)
        while self._improver.best_cost.late and self.clock.spent < until - again / 2:
            self._anneal(TO_BE_IN_TIME, min(until, self.clock.spent + again))
            if self.clock.stopped:
                return
        if self.clock.spent < until:
            self._anneal(TO_STAY_IN_TIME, until)

    def _prove(self) -> None:
        """Raise the bounds, beside the solver's search for a better plan."""
        if self.cost.broken:
            return
        exact = self._exact_between()
        asking = Asking(exact.model, self.clock, self.clock.left, 1)
        seconds = self.clock.limits.seconds
        try:
            if self.cost.late > self.late_bound:
                self._relax(ways=False, until=seconds * LATE_SHARE)
            until = min(seconds, self.clock.spent + seconds * TOUR_SHARE)
            tour = least_between(self.numbers, self.cost.late, self.clock, until)
            self.between_bound = max(self.between_bound, tour)
            if self.cost.between > self.between_bound and not self.clock.stopped:
                self._relax(ways=True, until=seconds)
            if self.cost.between > self.between_bound and not self.clock.stopped:
                asking.wait()
        finally:
            asking.end()
        self._take(exact, asking.answer())
        self.between_bound = max(
            self.between_bound, min(asking.answer().whole_bound, self.cost.between)
        )

    def _relax(self, *, ways: bool, until: float) -> None:
        """Raise a bound by the planters' cheapest rounds until a share of the time is over."""
        cost, numbers = self.cost, self.numbers
        over = max(row[-1].end for row in self.best if row) + AFTER * numbers.day
        asked = asked_of(numbers, cost.late, ways, self._horizon() if ways else over)

        def stop() -> bool:
            return self.clock.spent > until or self.clock.limits.wants_stop()

        def tell(bound: float) -> None:
            self.clock.tick(float(cost.between if ways else cost.late), bound)

        relaxation = Relaxation(numbers, asked, stop, tell)
        relaxation.begin(tuple(tuple(each.job for each in row) for row in self.best))
        relaxation.run()
        tell(relaxation.bound)
        bound = whole(relaxation.bound, 1 if ways else late_unit(numbers))
        if ways:
            self.between_bound = max(self.between_bound, min(bound, cost.between))
        else:
            self.late_bound = max(self.late_bound, min(bound, cost.late))

    def _anneal(self, stage: Stage, until: float) -> None:
        """Go through a stage from the best order."""
        begin = self.clock.spent
        self._improver.restart()
        while self.clock.spent < until and not self.clock.stopped:
            cooled = (self.clock.spent - begin) / (until - begin)
            self._improver.turns(TURNS, cooled, stage)
            self.clock.tick(float(self._improver.best_cost.late), float(self.late_bound))

    def _exactly(self) -> None:
        """Ask the exact model for less lateness, then for fewer minutes between jobs."""
        seconds = self.clock.limits.seconds
        if not self.clock.left and not self.cost.broken:
            return
        if self.cost.broken or self.cost.late > self.late_bound:
            half = (seconds + self.clock.spent) / 2
            self._ask_late(half)
        if self.cost.between > self.between_bound:
            self._ask_between(seconds)

    def _ask_late(self, until: float) -> None:
        exact = self._exact()
        exact.model.add(exact.late >= self.late_bound)
        exact.model.minimize(exact.late)
        answer = ask(exact.model, self.clock, until - self.clock.spent)
        if self.cost.broken and not answer.found:
            raise Refusal(_unkept(answer, self.clock))
        self._take(exact, answer)
        self.late_bound = max(self.late_bound, min(answer.whole_bound, self.cost.late))

    def _exact_between(self) -> Exact:
        exact = self._exact()
        exact.model.add(exact.late <= self.cost.late)
        exact.model.add(exact.between >= self.between_bound)
        exact.model.minimize(exact.between)
        return exact

    def _ask_between(self, until: float) -> None:
        exact = self._exact_between()
        answer = ask(exact.model, self.clock, until - self.clock.spent)
        self._take(exact, answer)
        bound = min(answer.whole_bound, self.cost.between)
        self.between_bound = max(self.between_bound, bound)

    def _exact(self) -> Exact:
        exact = exact_model(self.numbers, self._horizon())
        if not self.cost.broken:
            add_order_hint(exact, self.best)
        return exact

    def _horizon(self) -> int:
        """Return a minute by which any plan without needless waiting is over."""
        numbers = self.numbers
        wait = numbers.day if numbers.shares_parts else 0
        begin = max(*numbers.ready, *numbers.release, *(start or 0 for start in numbers.start))
        return begin + sum(
            wait
            + max(
                numbers.minutes[planter][job] + max(row[job] for row in numbers.change[planter])
                for planter in numbers.able(job)
            )
            for job in numbers.jobs
        )

    def _take(self, exact: Exact, answer: Answer) -> None:
        """Take the order that was found when it is better, as early as it can be."""
        if not answer.found:
            return
        found = read_order(exact, answer)
        sequences = tuple(tuple(each.job for each in row) for row in found)
        cost = Cost(0, answer.solver.value(exact.late), answer.solver.value(exact.between))
        early = self.numbers.cost(sequences)
        if early <= cost:
            cost, found = early, self.numbers.placed(sequences)
        if cost < self.cost:
            self.cost, self.best = cost, found


def _unkept(answer: Answer, clock: Clock) -> str:
    if answer.impossible:
        return (
            "The fixed jobs cannot all be kept where they are, with the changes and shared parts "
            "between them; move one of them or let it go."
        )
    return (
        f"No plan that keeps the fixed jobs was found in {clock.spent:.0f} s; allow more time, or "
        "let one of them go."
    )
