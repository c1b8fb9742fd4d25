"""The season of 60 jobs on four planters: the gap proven in 60 s, beside the two simple orders."""

import time
from collections.abc import Iterator
from dataclasses import dataclass

from changeover.switch.season.solve import Limits, SeasonPlan, season_plan
from tests.switch.season_cases import contractor_season

SECONDS = 60.0
GAP = 0.10


@dataclass(frozen=True)
class Planned:
    """What was proven of one season, and in how many seconds."""

    plan: SeasonPlan
    seconds: float

    def line(self) -> str:
        """Return one line: the cost, its bound, and the simple orders."""
        plan = self.plan
        simple = [order.late_cost for order in (plan.as_entered, plan.nearest_due) if order]
        good = plan.late_gap <= GAP and plan.best.late_cost <= min(simple)
        return (
            f"{'ok  ' if good else 'OVER'} 60 jobs on 4 planters: late {plan.best.late_cost:g}, "
            f"none under {plan.late_bound:g}, gap {plan.late_gap:.1%} in {self.seconds:.0f} s, "
            f"aim at most {GAP:.0%} in {SECONDS:g} s; "
            f"simple orders {', '.join(f'{cost:g}' for cost in simple)}; "
            f"between jobs {plan.best.between} min, none under {plan.between_bound}"
        )


def measure() -> Iterator[Planned]:
    """Yield the proof of the season."""
    begun = time.perf_counter()
    plan = season_plan(contractor_season(), Limits(seconds=SECONDS, workers=2))
    yield Planned(plan, time.perf_counter() - begun)
