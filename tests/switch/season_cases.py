"""Invented seasons: small ones at random and one of a contractor's size."""

import random
from itertools import permutations, product

from changeover.switch.season.solve import YARD, Season, SeasonJob, SeasonPlanter

DAY = 600


def random_season(seed: int, jobs: int, planters: int) -> Season:
    """Return a season without release days or parts, its figures drawn by a seed."""
    draw = random.Random(seed)
    names = [f"p{number}" for number in range(planters)]
    keys = [f"job {number}" for number in range(jobs)]
    return Season(
        jobs=tuple(
            SeasonJob(
                key,
                {name: draw.randint(120, 900) for name in names},
                due=draw.randint(0, 3),
                late_cost=float(draw.randint(1, 9) * 50),
            )
            for key in keys
        ),
        planters=tuple(SeasonPlanter(name, switch=_between(draw, keys)) for name in names),
    )


def contractor_season(seed: int = 5, jobs: int = 60) -> Season:
    """Return a season of four planters and five crops: changing the crop takes four hours."""
    draw = random.Random(seed)
    crops = {f"field {n}": draw.randrange(5) for n in range(jobs)}
    names = ("p0", "p1", "p2", "p3")
    planters = tuple(
        SeasonPlanter(
            name,
            switch={
                (one, other): 240 if crops[one] != crops[other] else 0
                for one in crops
                for other in crops
                if one != other
            }
            | {(YARD, key): 120 for key in crops},
            move={(one, other): draw.randint(10, 60) for one in crops for other in crops},
        )
        for name in names
    )
    listed = tuple(
        SeasonJob(
            key,
            {name: draw.randint(150, 600) for name in draw.sample(names, draw.randint(1, 4))},
            due=draw.randint(2, 16),
            late_cost=float(draw.randint(2, 20) * 50),
        )
        for key in crops
    )
    return Season(listed, planters, hours_per_day=10.0, suitable_share=0.8)


def every_late_cost(season: Season) -> float:
    """Return the least cost of lateness by trying every assignment and order."""
    names = [planter.name for planter in season.planters]
    return min(
        sum(_least(season, name, _taken(season.jobs, chosen, name)) for name in names)
        for chosen in product(names, repeat=len(season.jobs))
    )


def _taken(jobs: tuple[SeasonJob, ...], chosen: tuple[str, ...], name: str) -> list[SeasonJob]:
    return [job for job, who in zip(jobs, chosen, strict=True) if who == name]


def _least(season: Season, name: str, jobs: list[SeasonJob]) -> float:
    planter = next(p for p in season.planters if p.name == name)
    return min(late_cost(season, planter, order) for order in permutations(jobs))


def late_cost(season: Season, planter: SeasonPlanter, order: tuple[SeasonJob, ...]) -> float:
    """Reckon the lateness of one order on one planter, plainly."""
    clock, before, cost = 0, YARD, 0.0
    for job in order:
        pair = (before, job.key)
        clock += planter.switch.get(pair, 0) + planter.move.get(pair, 0) + job.minutes[planter.name]
        last_day = (clock - 1) // season.minutes_per_day
        cost += job.late_cost * max(0, last_day - (job.due or 0))
        before = job.key
    return cost


def _between(draw: random.Random, keys: list[str]) -> dict[tuple[str, str], int]:
    froms = [YARD, *keys]
    return {(one, other): draw.randint(0, 240) for one in froms for other in keys if one != other}
