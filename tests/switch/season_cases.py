"""Invented seasons: small ones at random and one of a contractor's size."""

import random
from itertools import pairwise, permutations, product
from math import dist

from changeover.switch.season.solve import YARD, Season, SeasonJob, SeasonPlanter

DAY = 600


def random_season(seed: int, jobs: int, planters: int, release: int = 0) -> Season:
    """Return a season without parts, its figures drawn by a seed, released by day ``release``."""
    draw = random.Random(seed)
    names = [f"p{number}" for number in range(planters)]
    keys = [f"job {number}" for number in range(jobs)]
    return Season(
        jobs=tuple(
            SeasonJob(
                key,
                {name: draw.randint(120, 900) for name in names},
                due=draw.randint(release, 3),
                release=draw.randint(0, release) if release else 0,
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


CROPS = 5
NAMES = ("p0", "p1", "p2", "p3")
SPEED = (1.0, 1.0, 0.75, 0.6)
FIT = ("p0 p1 p2", "p0 p1 p2 p3", "p0 p1 p3", "p0 p1 p2 p3", "p1 p2 p3")


def crowded_season(
    ends: tuple[int, ...] = (5, 7, 10, 12, 15), share: float = 0.6, parts: tuple[int, ...] = ()
) -> Season:
    """Return a season of 60 jobs in which each crop has its own window, of some eight days.

    ``ends`` are the last days of the crops' windows and ``share`` that of days fit for planting;
    for each crop in ``parts`` there is but one set of parts. Fields lie in 30 by 20 miles.
    """
    draw = random.Random(11)
    crops = {f"field {number}": number % CROPS for number in range(60)}
    places = {key: (draw.uniform(0, 30), draw.uniform(0, 20)) for key in crops} | {YARD: (15, 10)}
    area = {key: draw.randint(150, 600) for key in crops}
    due = {key: ends[crop] - draw.randint(0, 3) for key, crop in crops.items()}
    jobs = tuple(
        SeasonJob(
            key,
            {name: round(area[key] / SPEED[NAMES.index(name)]) for name in FIT[crop].split()},
            release=max(0, due[key] - 8 - draw.randint(0, 3)),
            due=due[key],
            late_cost=50.0 * draw.randint(2, 20),
            parts=frozenset({f"set {crop}"} if crop in parts else ()),
        )
        for key, crop in crops.items()
    )
    pairs = [(one, other) for one in places for other in places if one != other]
    move = {pair: round(10 + 1.5 * dist(places[pair[0]], places[pair[1]])) for pair in pairs}
    switch = {
        (come, go): 120 if come == YARD else 240
        for come, go in pairs
        if go != YARD and (come == YARD or crops[come] != crops[go])
    }
    planters = tuple(SeasonPlanter(name, switch, move) for name in NAMES)
    return Season(jobs, planters, hours_per_day=10.0, suitable_share=share)


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


def every_plan(season: Season) -> tuple[float, int]:
    """Return the least cost of lateness, and of the plans with it the least minutes between jobs.

    Every assignment and order is tried, the way home included; seasons of two or three jobs a
    planter at most.
    """
    names = [planter.name for planter in season.planters]
    plans = []
    for chosen in product(names, repeat=len(season.jobs)):
        choices = [
            [
                (late_cost(season, planter, order), between(planter, order))
                for order in permutations(_taken(season.jobs, chosen, planter.name))
            ]
            for planter in season.planters
        ]
        plans += [[sum(part) for part in zip(*plan, strict=True)] for plan in product(*choices)]
    late, minutes = min(plans)
    return late, int(minutes)


def between(planter: SeasonPlanter, order: tuple[SeasonJob, ...]) -> int:
    """Reckon the minutes between the jobs of one order, the way out and home included."""
    stops = [YARD, *(job.key for job in order), YARD]
    return sum(
        planter.switch.get(pair, 0) + planter.move.get(pair, 0) for pair in pairwise(stops) if order
    )


def late_cost(season: Season, planter: SeasonPlanter, order: tuple[SeasonJob, ...]) -> float:
    """Reckon the lateness of one order on one planter, plainly."""
    clock, before, cost = 0, YARD, 0.0
    for job in order:
        pair = (before, job.key)
        clock += planter.switch.get(pair, 0) + planter.move.get(pair, 0)
        clock = max(clock, job.release * season.minutes_per_day) + job.minutes[planter.name]
        last_day = (clock - 1) // season.minutes_per_day
        cost += job.late_cost * max(0, last_day - (job.due or 0))
        before = job.key
    return cost


def _between(draw: random.Random, keys: list[str]) -> dict[tuple[str, str], int]:
    froms = [YARD, *keys]
    return {(one, other): draw.randint(0, 240) for one in froms for other in keys if one != other}
