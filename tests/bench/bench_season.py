"""Seasons of 60 jobs on four planters: the gaps proven in 60 s, beside the two simple orders."""

import time
from collections.abc import Iterator
from dataclasses import dataclass

from changeover.switch.season.solve import Limits, Season, SeasonPlan, season_plan
from tests.switch.season_cases import contractor_season, crowded_season

SECONDS = 60.0
GAP = 0.10
SEASONS = {
    "with room": contractor_season,
    "crowded": crowded_season,
    "released, parts shared": lambda: crowded_season((8, 11, 14, 17, 20), 0.7, parts=(1, 3)),
}


@dataclass(frozen=True)
class Planned:
    """What was proven of one season, and in how many seconds, of this process and on the wall."""

    name: str
    plan: SeasonPlan
    worked: float
    seconds: float

    def line(self) -> str:
        """Return one line: the cost, its bound, and the simple orders."""
        plan = self.plan
        simple = [order.late_cost for order in (plan.as_entered, plan.nearest_due) if order]
        good = plan.late_gap <= GAP and plan.best.late_cost <= min(simple)
        return (
            f"{'ok  ' if good else 'OVER'} 60 jobs on 4 planters, {self.name}: "
            f"late {plan.best.late_cost:g}, "
            f"none under {plan.late_bound:g}, gap {plan.late_gap:.1%} in {self.seconds:.0f} s "
            f"({self.worked:.0f} s of work on the cores), "
            f"aim at most {GAP:.0%} in {SECONDS:g} s on 2 cores; "
            f"simple orders {', '.join(f'{cost:g}' for cost in simple)}; "
            f"between jobs {plan.best.between} min, none under {plan.between_bound}, "
            f"gap {plan.between_gap:.1%}"
        )


def planned(name: str, season: Season) -> Planned:
    """Plan a season within the time of the aim."""
    begun, worked = time.perf_counter(), time.process_time()
    plan = season_plan(season, Limits(seconds=SECONDS, workers=2))
    return Planned(name, plan, time.process_time() - worked, time.perf_counter() - begun)


def measure() -> Iterator[Planned]:
    """Yield what is proven of each season."""
    for name, season in SEASONS.items():
        yield planned(name, season())
